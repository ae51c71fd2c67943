package lift

import (
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

// legAlong returns the velocity, times 4 pi, of a leg without end from a place along (cos b, -sin b, 0).
func legAlong(from, place point, b float64) velocity {
	x, y, z := place.x-from.x, place.y-from.y, place.z-from.z
	dx, dy := math.Cos(b), -math.Sin(b)
	r := math.Sqrt(x*x + y*y + z*z)
	d := r * (r - dx*x - dy*y)
	return velocity{-dx * z / d, (dx*y - dy*x) / d}
}

func TestSkewedLegIsTheDerivative(t *testing.T) {
	t.Parallel()
	for _, place := range []point{{-0.5, 0.3, 0.1}, {0.2, -0.4, 0.2}, {3, 0.2, -0.3}, {-2, -1, 0}, {40, 2, 1}} {
		const step = 1e-5
		plus, minus := legAlong(point{}, place, step), legAlong(point{}, place, -step)
		got := skewedLeg(point{}, place)
		near(t, "y", got.y, (plus.y-minus.y)/(2*step), 1e-6*(1+math.Abs(got.y)))
		near(t, "z", got.z, (plus.z-minus.z)/(2*step), 1e-6*(1+math.Abs(got.z)))
	}
	if v := skewedLeg(point{}, point{2, 0, 0}); v != (velocity{}) {
		t.Errorf("on the leg %v, want nothing", v)
	}
}

// The closed form of a wing's roll due to sideslip under lift, and that of the opposite limits: sweep adds about half of its tangent times
// the place of the lift, a rectangle of aspect ratio 6 has about -0.1.
func TestRollDueToSideslipUnderLift(t *testing.T) {
	t.Parallel()
	slope := func(aspect, taper, sweep float64) float64 {
		a := mustSolveLateral(t, []planform.Surface{tapered(aspect, taper, sweep)}, Reference{})
		return a.At(1, 0, 1).RollBeta - a.At(1, 0, 0).RollBeta
	}
	near(t, "rectangle", slope(6, 1, 0), -0.10, 0.02)
	if !(slope(3, 1, 0) < slope(6, 1, 0) && slope(6, 1, 0) < slope(12, 1, 0) && slope(12, 1, 0) < 0) {
		t.Error("a longer wing must feel less")
	}
	for _, sweep := range []float64{20, 40} {
		change := slope(12, 1, sweep) - slope(12, 1, 0)
		near(t, "sweep", change/(-0.5*0.44*math.Tan(degrees(sweep))), 1.1, 0.25)
	}
}
