package weighing

import (
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
)

// TiltShift returns by how much a model that is not level seems to balance further aft than it does.
//
//	dx = h tan(theta)
//
// where h is the height of the balance point above the supports (m) and theta the nose-up angle (rad), both may be negative. Every degree moves the
// point by 1.7 % of its height.
// Valid for: |theta| < 60 degrees; supports that keep their place on the model (axle centres when wheels stand free). Source: statics, moments
// about a support of the tilted model. Returns zero beyond the range.
func TiltShift(height, tilt float64) float64 {
	if !within(height) || !(math.Abs(tilt) < math.Pi/3) {
		return 0
	}
	return height * elementary.Tan(tilt)
}

// TiltOf returns the angle of a model whose one support stands higher than the other.
//
//	theta = asin(h/L) = atan2(h, sqrt(L^2 - h^2))
//
// where h is by how much the front support was raised (m) and L the distance of the supports (m). Nose-up is positive.
// Valid for: |h| < L. Source: trigonometry. Error: rise or base that cannot be.
func TiltOf(rise, base float64) (float64, error) {
	if !within(rise) || !within(base) || !(math.Abs(rise) < base) {
		return 0, fmt.Errorf("rise: must be less than the distance of the supports, %g m, got %g m", base, rise)
	}
	return elementary.Atan2(rise, math.Sqrt(float64((base-rise)*(base+rise)))), nil
}

// leastTilt is the angle below which a tilted weighing says nothing about the height, rad.
const leastTilt = 0.05

// BalanceHeight returns the height of the balance point above the supports from a level and a tilted weighing on the same supports.
//
//	h = (x' - x) / tan(theta)
//	u(h)^2 = (u(x)^2 + u(x')^2 + sum((w'_i - w_i)^2 u(x_i)^2)) / tan^2(theta) + (h/(sin(theta) cos(theta)))^2 u(theta)^2
//
// where x is the balance point level and x' tilted, both in the model's own axes (m), theta the nose-up angle (rad), w_i and w'_i the shares of the
// mass on support i, u(x_i) the spread of its place, and u(x), u(x') the parts of their spread that come from the scales: an error of the places
// is the same in both and cancels but for the change of the shares.
// Valid for: 3 to 60 degrees; nothing shifts inside the model, tanks empty or full; supports that keep their place on the model.
// Source: axle-lift method of ISO 10392; moments about a support of the tilted model; JCGM 100:2008, 5.1.2.
// Error: a tilt out of range, another number of supports, or a weighing that gives no x.
func BalanceHeight(level, tilted Weighed, tilt, tiltSpread float64) (Estimate, error) {
	if !(math.Abs(tilt) >= leastTilt && math.Abs(tilt) < math.Pi/3) {
		return Estimate{}, fmt.Errorf("tilt: must be 3 to 60 degrees either way, got %.3g rad", tilt)
	}
	if !(tiltSpread >= 0 && tiltSpread < 1) {
		return Estimate{}, fmt.Errorf("tilt spread: must be 0 to 1 rad, got %g", tiltSpread)
	}
	if len(level.Lines) != len(tilted.Lines) || !level.X.Known || !tilted.X.Known {
		return Estimate{}, fmt.Errorf("tilted weighing: needs the same supports with their x, got %d and %d", len(level.Lines), len(tilted.Lines))
	}
	tangent := elementary.Tan(tilt)
	height := (tilted.X.Value - level.X.Value) / tangent
	variance := level.scaleVariance() + tilted.scaleVariance()
	for i := range level.Lines {
		variance += square((tilted.Lines[i].Share - level.Lines[i].Share) * level.Lines[i].XSpread)
	}
	slope := height / (elementary.Sin(tilt) * elementary.Cos(tilt))
	return known(height, variance/square(tangent)+square(slope*tiltSpread)), nil
}

// scaleVariance returns the variance of x that comes from the scales alone.
func (w *Weighed) scaleVariance() float64 {
	variance := 0.0
	for i := range w.Lines {
		variance += square((*w.Lines[i].X - w.X.Value) / w.Mass.Value * w.Lines[i].Net.Spread)
	}
	return variance
}
