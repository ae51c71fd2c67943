package lift

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/planform"
)

// spacing says how strips crowd along a surface.
type spacing int

const (
	towardsTip  spacing = iota // a surface that begins at the plane of symmetry
	towardsEnds                // a surface with two free or joined ends, as every fin
	evenly
)

// spacingOf returns the spacing of a surface.
func spacingOf(s planform.Surface, grid Grid) spacing {
	switch {
	case grid.Equal:
		return evenly
	case s.Stations[0].Y > 0 || s.Vertical():
		return towardsEnds
	}
	return towardsTip
}

// angle returns the strip variable of a place from 0 to 1; strips are even in it.
//
// Formula: asin(place); asin(2 place - 1)/2 + pi/4 for two ends; pi/2 place for even strips.
// Valid for: places from 0 to 1, giving 0 to pi/2.
// Source: cosine spacing of lattices.
func (sp spacing) angle(place float64) float64 {
	switch sp {
	case evenly:
		return float64(place * math.Pi / 2)
	case towardsEnds:
		return float64(0.5*arcSine(float64(2*place)-1)) + math.Pi/4
	default:
		return arcSine(place)
	}
}

// place is the inverse of angle.
func (sp spacing) place(angle float64) float64 {
	switch sp {
	case evenly:
		return angle / (math.Pi / 2)
	case towardsEnds:
		return float64(0.5 * (1 + elementary.Sin(float64(2*angle)-math.Pi/2)))
	default:
		return elementary.Sin(angle)
	}
}

// arcSine returns the arc sine of a number from -1 to 1.
func arcSine(x float64) float64 { return elementary.Atan2(x, math.Sqrt(max(0, 1-float64(x*x)))) }

// cutSegment divides one straight segment between two places into strips.
func cutSegment(from, to float64, count int, sp spacing) (edges, middles []float64) {
	low, high := sp.angle(from), sp.angle(to)
	n := max(1, int(math.Round(float64(count)*(high-low)/(math.Pi/2))))
	step := (high - low) / float64(n)
	edges, middles = make([]float64, n+1), make([]float64, n)
	for i := range middles {
		edges[i] = sp.place(low + float64(step*float64(i)))
		middles[i] = sp.place(low + float64(step*(float64(i)+0.5)))
	}
	edges[0], edges[n] = from, to
	return edges, middles
}

// between returns the station at a share of the way from p to q.
func between(p, q planform.Station, share float64) planform.Station {
	return planform.Station{
		X: blend(p.X, q.X, share), Y: blend(p.Y, q.Y, share), Z: blend(p.Z, q.Z, share),
		Chord: blend(p.Chord, q.Chord, share), Twist: blend(p.Twist, q.Twist, share),
	}
}

// at returns the point of a station at a fraction of its chord.
func at(s planform.Station, fraction float64) point {
	return point{s.X + float64(fraction*s.Chord), s.Y, s.Z}
}

// blend returns the value at a share of the way from a to b.
func blend(a, b, share float64) float64 { return a + float64(share*(b-a)) }
