package lift

import (
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

// legAlong returns the velocity, times 4 pi, of a leg without end from the origin along (cos b, -sin b, 0).
func legAlong(place point, b, core float64) velocity {
	dx, dy := math.Cos(b), -math.Sin(b)
	along := dx*place.x + dy*place.y
	r := math.Sqrt(place.x*place.x + place.y*place.y + place.z*place.z)
	factor := legFactor(along, r*r-along*along, r, core-place.z*place.z)
	return velocity{-dx * place.z * factor, (dx*place.y - dy*place.x) * factor}
}

// shiftAlone is the change of the velocity of a leg along x as the whole of it moves to port by the distance x of a place behind its start.
func shiftAlone(from, place point, core float64) velocity {
	const step = 1e-5
	plus := point{place.x - from.x, place.y - from.y + step, place.z - from.z}
	minus := point{plus.x, plus.y - 2*step, plus.z}
	v, w := legAlong(plus, 0, core), legAlong(minus, 0, core)
	return velocity{(v.y - w.y) * plus.x / (2 * step), (v.z - w.z) * plus.x / (2 * step)}
}

func TestSkewedLegIsTheDerivative(t *testing.T) {
	t.Parallel()
	for _, core := range []float64{0, 0.01, 0.5} {
		for _, place := range []point{{-0.5, 0.3, 0.1}, {0.2, -0.4, 0.2}, {3, 0.2, -0.3}, {-2, -1, 0}, {40, 2, 1}} {
			const step = 1e-5
			plus, minus := legAlong(place, step, core), legAlong(place, -step, core)
			got := turnedLeg(point{}, place, core).plus(shiftAlone(point{}, place, core))
			near(t, "y", got.y, (plus.y-minus.y)/(2*step), 1e-6*(1+math.Abs(got.y)))
			near(t, "z", got.z, (plus.z-minus.z)/(2*step), 1e-6*(1+math.Abs(got.z)))
			if core == 0 {
				whole := skewedLeg(point{}, place, 0)
				near(t, "y in one", whole.y, got.y, 1e-6*(1+math.Abs(got.y)))
				near(t, "z in one", whole.z, got.z, 1e-6*(1+math.Abs(got.z)))
			}
		}
	}
	if v := skewedLeg(point{}, point{2, 0, 0}, 0); v != (velocity{}) {
		t.Errorf("on the leg %v, want nothing", v)
	}
}

// The difference between the edges is the mean of the normal velocity over the strip, whichever way it leans, images included.
func TestShiftedIsTheMeanOverTheStrip(t *testing.T) {
	t.Parallel()
	surfaces := append(wingAndTail(0.1), finAt(0.8, 0.3))
	surfaces[1].Stations[1].Z += 0.2
	l := newLateralLattice(surfaces, Reference{GroundHeight: 0.6, Grid: Grid{Chordwise: 1, Spanwise: 4}}, tableSlope)
	for _, p := range l.panels {
		r := &l.strips[p.strip]
		for j := range l.strips {
			s := &l.strips[j]
			if l.joints.joined(r.surface, s.surface) {
				continue
			}
			const n = 100
			mean := 0.0
			for k := range n + 1 {
				share, weight := float64(k)/n, float64(2+2*(k%2))/(3*n)
				if k == 0 || k == n {
					weight /= 2
				}
				v := l.skewed(s, point{p.control.x, blend(r.a.y, r.b.y, share), blend(r.a.z, r.b.z, share)}, 0, shiftAlone)
				mean += weight * (p.normalY*v.y + p.normalZ*v.z)
			}
			near(t, r.Surface+" behind "+s.Surface, l.shifted(s, r, p.control.x, 0), mean, 1e-5*(1+math.Abs(mean)))
		}
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
