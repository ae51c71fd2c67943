package lift

import (
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

// displaced returns the change of velocity at a place, times 4 pi, of a leg along x from the origin to far away as each of its points moves by
// a shift, per unit of it: the law of Biot and Savart for the moved line, by Simpson's rule over equal steps of the angle.
func displaced(place point, shift func(s float64) (y, z, slopeY, slopeZ float64)) velocity {
	const n, low, high = 40000, 0.0, 14.0
	var sum velocity
	for k := range n + 1 {
		u := low + (high-low)*float64(k)/n
		s, weight := math.Sinh(u), math.Cosh(u)*(high-low)/(3*n)*float64(2+2*(k%2))
		if k == 0 || k == n {
			weight /= 2
		}
		y, z, slopeY, slopeZ := shift(s)
		x := place.x - s
		square := x*x + place.y*place.y + place.z*place.z
		cube, nearer := square*math.Sqrt(square), 3*(place.y*y+place.z*z)/square
		sum.y += weight * (slopeZ*x + z - place.z*nearer) / cube
		sum.z += weight * (-slopeY*x - y + place.y*nearer) / cube
	}
	return sum
}

func TestTurnedIsTheMovedLine(t *testing.T) {
	t.Parallel()
	for _, place := range []point{{-0.5, 0.3, 0.1}, {0.2, -0.4, 0.2}, {3, 0.2, -0.3}, {-2, -1, 0}, {8, 2, 1}} {
		for _, normal := range []velocity{{0, 1}, {-1, 0}, {0.6, 0.8}} {
			r := reception{control: place, normalY: normal.y, normalZ: normal.z}
			other := point{-0.1, 0.5, 0.05}
			got, ahead := r.turned(point{}, 0, true)
			less, lessAhead := r.turned(other, 0, true)
			got = got.plus(-1, less)
			got.bent += 0.5 * normal.z * math.Log(ahead/lessAhead)
			across := func(shift func(s float64) (y, z, slopeY, slopeZ float64)) float64 {
				v, w := displaced(place, shift), displaced(point{place.x - other.x, place.y - other.y, place.z - other.z}, shift)
				return normal.y*(v.y-w.y) + normal.z*(v.z-w.z)
			}
			near(t, "aside", got.aside, across(func(s float64) (y, z, slopeY, slopeZ float64) { return -s, 0, -1, 0 }), 1e-5*(1+math.Abs(got.aside)))
			near(t, "raised", got.raised, across(func(s float64) (y, z, slopeY, slopeZ float64) { return 0, s, 0, 1 }), 1e-5*(1+math.Abs(got.raised)))
			near(t, "bent", got.bent, across(func(s float64) (y, z, slopeY, slopeZ float64) { return -s * s / 2, 0, -s, 0 }), 1e-5*(1+math.Abs(got.bent)))
		}
	}
	if change, _ := (&reception{control: point{2, 0, 0}, normalZ: 1}).turned(point{}, 0, true); change != (wakeMotion{}) {
		t.Errorf("on the leg %v, want nothing", change)
	}
}

// What turned leaves to passing between surfaces is the same shift: the mean over a strip whichever way it leans, images included.
func TestPassingIsTheMeanOverTheStrip(t *testing.T) {
	t.Parallel()
	surfaces := append(wingAndTail(0.1), finAt(0.8, 0.3))
	surfaces[1].Stations[1].Z += 0.2
	l := newLateralLattice(surfaces, Reference{GroundHeight: 0.6, Grid: Grid{Chordwise: 1, Spanwise: 4}}, tableSlope)
	var none [4]reception
	for i := range l.panels {
		p := &l.panels[i]
		for j := range l.strips {
			s := &l.strips[j]
			if l.joints.joined(l.strips[p.strip].surface, s.surface) {
				continue
			}
			seen := l.receptions(p, none[:0])
			if s.alone {
				seen = seen[:2]
			}
			got, mean := s.skewed(seen, 0, false), s.skewed(seen, 0, true).plus(-1, shiftAlone(s, seen)).plus(1, meanShift(&l, s, p))
			size := 1 + math.Abs(got.aside) + math.Abs(got.raised) + math.Abs(got.bent)
			for what, difference := range map[string]float64{"aside": got.aside - mean.aside, "raised": got.raised - mean.raised, "bent": got.bent - mean.bent} {
				near(t, l.strips[p.strip].Surface+" behind "+s.Surface+", "+what, difference, 0, 1e-5*size)
			}
		}
	}
}

// shiftAlone returns what the shift alone does at the control point itself.
func shiftAlone(s *latticeStrip, seen []reception) wakeMotion {
	whole, rest := s.skewed(seen, 0, true), wakeMotion{}
	a, b := s.a, s.b
	a.x += s.chordA
	b.x += s.chordB
	for i := range seen {
		in, inAhead := seen[i].turned(a, 0, false)
		out, outAhead := seen[i].turned(b, 0, false)
		rest = rest.plus(inverseFourPi, out).plus(-inverseFourPi, in)
		rest.bent += 0.5 * inverseFourPi * seen[i].normalZ * math.Log(outAhead/inAhead)
	}
	return whole.plus(-1, rest)
}

// meanShift returns the mean over the strip of a panel of what the shift alone does, by Simpson's rule.
func meanShift(l *lattice, s *latticeStrip, p *panel) wakeMotion {
	const n = 100
	var mean wakeMotion
	strip := &l.strips[p.strip]
	for k := range n + 1 {
		share, weight := float64(k)/n, float64(2+2*(k%2))/(3*n)
		if k == 0 || k == n {
			weight /= 2
		}
		at := *p
		at.control.y, at.control.z = blend(strip.a.y, strip.b.y, share), blend(strip.a.z, strip.b.z, share)
		seen := l.receptions(&at, nil)
		if s.alone {
			seen = seen[:2]
		}
		mean = mean.plus(weight, shiftAlone(s, seen))
	}
	return mean
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

// A canard in the plane of the wing: its wake passes the wing's control points at any distance, yet the roll converges with the grid.
func TestRollBehindACanardConverges(t *testing.T) {
	t.Parallel()
	roll := func(z float64, strips int) float64 {
		wing, canard := rectangle(planform.RoleWing, 1, 0.25, 0, 0), rectangle(planform.RoleCanard, 0.35, 0.14, -0.6, z)
		canard.Incidence = degrees(2)
		a := mustSolveLateral(t, []planform.Surface{wing, canard}, Reference{Grid: Grid{Chordwise: 4, Spanwise: strips}})
		return a.At(0.1, 0, 0.5).RollBeta
	}
	for _, z := range []float64{0, 0.02, 0.05, 0.12} {
		fine := roll(z, 48)
		near(t, "16 strips", roll(z, 16)/fine, 1, 0.05)
		near(t, "24 strips", roll(z, 24)/fine, 1, 0.04)
	}
	if low, high := roll(0, 16), roll(1.5, 16); !(low < high && high < 0) {
		t.Errorf("roll in sideslip %.4f behind a canard, %.4f under it: the wake that passes aside must raise the side it moves to", low, high)
	}
}

// An unswept leading edge: the same wing at the same lift, whether its incidence is built in or flown.
func TestIncidenceBuiltInOrFlown(t *testing.T) {
	t.Parallel()
	flown := planform.Surface{Name: "wing", Role: planform.RoleWing, Mirrored: true, Stations: []planform.Station{{Chord: 0.3}, {Y: 1, Chord: 0.15}}}
	built := flown
	built.Incidence = degrees(4)
	one, two := mustSolveLateral(t, []planform.Surface{flown}, Reference{}), mustSolveLateral(t, []planform.Surface{built}, Reference{})
	near(t, "incidence", one.IncidenceFor(0.3)-two.IncidenceFor(0.3), degrees(4), 1e-12)
	a, b := one.At(0.1, 0.02, 0.3).list(), two.At(0.1, 0.02, 0.3).list()
	for i := range a {
		near(t, "derivative", b[i], a[i], 1e-12)
	}
	if !(one.At(0.1, 0, 0.3).SideForceRollRate > 0.01) {
		t.Error("in roll the lift of the wing leans to the side that goes down")
	}
}
