package drag

import (
	"math"
	"slices"

	"pitgate/server/physics/order"
)

// Spreads of one kind of component, one standard deviation over its value.
//
// Source: judgement; bands of the tables and of the methods they stand for.
const (
	spreadFriction = 0.10 // shared by all friction: one method, one finish
	spreadGear     = 0.30
	spreadItem     = 0.20
	spreadBase     = 0.30
	spreadUpsweep  = 0.30
	spreadDuct     = 0.30
	spreadSpillage = 0.50
	spreadLeakage  = 0.50
	spreadHinge    = 0.50
)

// usable returns a measure, or 0 when it is negative, infinite or not a number.
func usable(x float64) float64 {
	if !(x > 0) || math.IsInf(x, 0) {
		return 0
	}
	return x
}

// settle fills coefficient, spread and share of each component from its area.
func settle(parts []Component, total, reference float64) {
	for i := range parts {
		p := &parts[i]
		p.Coefficient = perReference(p.Area, reference)
		p.Spread = float64(p.Coefficient * math.Sqrt(float64(p.spread*p.spread)+float64(p.shared*p.shared)))
		if total > 0 {
			p.Share = p.Area / total
		}
	}
}

// TotalSpread returns one standard deviation of the sum of components.
//
// Formula: sqrt((sum f C)^2 + sum (s C)^2); where C coefficient, f spread of the friction method, which all friction shares, s spread that a
// component has of its own.
// Valid for: components of BuildUp.
// Source: sum of variances; friction fully correlated.
func TotalSpread(parts []Component) float64 {
	shared, square := 0.0, 0.0
	for _, p := range parts {
		own := float64(p.Coefficient * p.spread)
		shared += float64(p.Coefficient * p.shared)
		square += float64(own * own)
	}
	return math.Sqrt(float64(shared*shared) + square)
}

// Breakdown returns the components sorted by share, largest first; equal shares keep their order.
func Breakdown(parts []Component) []Component {
	sorted := slices.Clone(parts)
	order.Stable(sorted, func(a, b Component) int {
		switch {
		case a.Area > b.Area:
			return -1
		case a.Area < b.Area:
			return 1
		}
		return 0
	})
	return sorted
}
