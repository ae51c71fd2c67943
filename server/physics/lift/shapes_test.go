package lift

import (
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

// finOf returns a fin of an aspect ratio (height squared over area), taper and quarter-chord sweep in degrees, of unit area.
func finOf(aspect, taper, sweep float64) planform.Surface {
	wing := tapered(2*aspect, taper, sweep)
	scale := 1 / math.Sqrt(aspect)
	fin := planform.Surface{Name: "fin", Role: planform.RoleFin}
	for _, s := range wing.Stations {
		fin.Stations = append(fin.Stations, planform.Station{X: s.X * scale, Z: s.Y * scale, Chord: s.Chord * scale})
	}
	return fin
}

// A fin alone is a wing of its own aspect ratio: the closed form lies up to 9 % above the lattice, as it does for wings.
func TestFinAlone(t *testing.T) {
	t.Parallel()
	for _, aspect := range []float64{0.8, 1.2, 1.8, 2.5} {
		for _, sweep := range []float64{0, 30} {
			fin := finOf(aspect, 0.6, sweep)
			d := mustSolveLateral(t, []planform.Surface{fin}, Reference{Area: 1, Chord: 1, Span: 1}).At(0, 0, 0)
			m, err := planform.Measure(fin)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "measured aspect ratio", m.AspectRatio, aspect, 1e-9)
			near(t, "closed form over lattice", SweptSlope(2*math.Pi, aspect, m.HalfChordSweep)/-d.SideForceBeta, 1.04, 0.06)
		}
	}
}

// A plate below a fin doubles its effective aspect ratio when it is large.
func TestEndPlateRaisesTheSlopeOfAFin(t *testing.T) {
	t.Parallel()
	reference := Reference{Area: 1, Chord: 1, Span: 1, Grid: Grid{Chordwise: 8, Spanwise: 24}}
	fin := finOf(1.2, 0.6, 0)
	alone := -mustSolveLateral(t, []planform.Surface{fin}, reference).At(0, 0, 0).SideForceBeta
	last := alone
	for _, span := range []float64{0.5, 1, 2, 8} {
		plate := rectangle(planform.RoleTailplane, span, 3, -1, 0)
		with := -mustSolveLateral(t, []planform.Surface{fin, plate}, reference).At(0, 0, 0).SideForceBeta
		if with < last-0.01 {
			t.Errorf("plate of span %v: slope %v, want it not below %v", span, with, last)
		}
		last = with
	}
	// A reflecting plane makes it the half of a wing of twice the aspect ratio.
	wing := tapered(2.4, 0.6, 0)
	near(t, "great plate", last, mustSolve(t, []planform.Surface{wing}, Grid{}).LiftSlope, 0.08*last)
}

// An isolated V-tail turns its flat slope by its dihedral: cos^2 in lift, where the halves disturb each other less the steeper they stand, and
// sin^2 times the factor of opposite loads on the two halves in side force.
func TestVTail(t *testing.T) {
	t.Parallel()
	const aspect = 5.0
	tail := func(dihedral float64) planform.Surface {
		s := tapered(aspect, 0.7, 0)
		s.Role = planform.RoleVTail
		s.Stations[1].Y, s.Stations[1].Z = aspect/2*math.Cos(degrees(dihedral)), aspect/2*math.Sin(degrees(dihedral))
		s.Controls = []planform.Control{{Name: "ruddervator", Role: planform.ControlRuddervator, Outer: 1, ChordRatio: 0.3}}
		return s
	}
	reference := Reference{Area: aspect, Chord: 1, Span: aspect}
	flat, err := Solve([]planform.Surface{tail(0)}, reference)
	if err != nil {
		t.Fatal(err)
	}
	for _, dihedral := range []float64{15, 25, 35, 45} {
		s, err := Solve([]planform.Surface{tail(dihedral)}, reference)
		if err != nil {
			t.Fatal(err)
		}
		cosine, sine := math.Cos(degrees(dihedral)), math.Sin(degrees(dihedral))
		near(t, "lift slope over cos^2", s.LiftSlope/flat.LiftSlope/(cosine*cosine), 1, 0.25*sine*sine)
		near(t, "ruddervators lift by cos", s.Controls[0].LiftSlope/flat.Controls[0].LiftSlope/cosine, 1, 0.25*sine*sine)
		a := mustSolveLateral(t, []planform.Surface{tail(dihedral)}, reference)
		near(t, "side force over sin^2", -a.At(0, 0, 0).SideForceBeta/flat.LiftSlope/(sine*sine), 0.67, 0.07)
		if rudder := a.Controls(0.25, 0, 0)[0]; rudder.SideForce <= 0 {
			t.Errorf("ruddervators %+v: starboard up must push to starboard", rudder)
		}
	}
}

// Equal wings of equal load one over the other: half the induced drag of one wing of the whole load times 1 + sigma.
func TestBiplane(t *testing.T) {
	t.Parallel()
	checkPublished(t, "biplane_theory", map[string]formula{
		"sigma": func(t *testing.T, _ string, in inputs) float64 {
			upper := tapered(8, 0.5, 0)
			lower := tapered(8, 0.5, 0)
			lower.Role, lower.Name = planform.RoleSecondWing, "lower wing"
			for i := range lower.Stations {
				lower.Stations[i].Z = -8 * in.number(t, "gap")
			}
			two := mustSolve(t, []planform.Surface{upper, lower}, Grid{})
			near(t, "equal shares", two.Surfaces[0].LiftSlope, two.Surfaces[1].LiftSlope, 1e-9)
			return 2*two.InducedFactor/mustSolve(t, []planform.Surface{upper}, Grid{}).InducedFactor - 1
		},
	})
}

func TestWingletsRaiseSpanEfficiencyAboveOne(t *testing.T) {
	t.Parallel()
	wing := tapered(7, 0.5, 0)
	last := mustSolve(t, []planform.Surface{wing}, Grid{}).SpanEfficiency
	for _, height := range []float64{0.2, 0.5, 1} {
		s := mustSolve(t, []planform.Surface{wing, wingletOf(wing, height)}, Grid{})
		if s.SpanEfficiency <= last || s.SpanEfficiency > 1.5 {
			t.Errorf("winglets %v high: efficiency %v, want above %v", height, s.SpanEfficiency, last)
		}
		last = s.SpanEfficiency
	}
	if last <= 1.1 {
		t.Errorf("efficiency %v, want well above 1", last)
	}
	side := func(surfaces ...planform.Surface) float64 {
		return mustSolveLateral(t, surfaces, Reference{}).At(0.3, 0, 0).SideForceBeta
	}
	if side(wing, wingletOf(wing, 0.5)) >= side(wing)-0.02 {
		t.Error("winglets must resist sideslip")
	}
}

// wingletOf returns a winglet standing on the tip of a wing.
func wingletOf(wing planform.Surface, height float64) planform.Surface {
	tip := wing.Stations[len(wing.Stations)-1]
	return planform.Surface{Name: "winglet", Role: planform.RoleWinglet, Mirrored: true, Stations: []planform.Station{
		{X: tip.X, Y: tip.Y, Z: tip.Z, Chord: tip.Chord}, {X: tip.X + 0.2*height, Y: tip.Y, Z: tip.Z + height, Chord: 0.7 * tip.Chord},
	}}
}

// Twin fins at the tips of a tailplane act as its end plates and push as two fins do.
func TestTwinFins(t *testing.T) {
	t.Parallel()
	wing := rectangle(planform.RoleWing, 2, 0.25, 0, 0)
	tail := rectangle(planform.RoleTailplane, 0.6, 0.15, 0.725, 0.1)
	fin := planform.Surface{
		Name: "fins", Role: planform.RoleFin, Mirrored: true,
		Stations: []planform.Station{{X: 0.7, Y: 0.3, Z: 0.1, Chord: 0.17}, {X: 0.75, Y: 0.3, Z: 0.3, Chord: 0.1}},
		Controls: []planform.Control{{Name: "rudders", Role: planform.ControlRudder, Outer: 1, ChordRatio: 0.4}},
	}
	plain, with := mustSolve(t, []planform.Surface{wing, tail}, Grid{}), mustSolve(t, []planform.Surface{wing, tail, fin}, Grid{})
	if with.Surfaces[1].LiftSlope <= plain.Surfaces[1].LiftSlope || with.NeutralPointX <= plain.NeutralPointX {
		t.Errorf("tail lift %v and neutral point %v with fins, want above %v and %v", with.Surfaces[1].LiftSlope, with.NeutralPointX,
			plain.Surfaces[1].LiftSlope, plain.NeutralPointX)
	}
	one := fin
	one.Mirrored = false
	one.Stations = []planform.Station{{X: 0.7, Z: 0.1, Chord: 0.17}, {X: 0.75, Z: 0.3, Chord: 0.1}}
	two := mustSolveLateral(t, []planform.Surface{wing, tail, fin}, Reference{})
	single := mustSolveLateral(t, []planform.Surface{wing, tail, one}, Reference{})
	near(t, "side force of two over one", two.At(0.1, 0, 0).SideForceBeta/single.At(0.1, 0, 0).SideForceBeta, 1.85, 0.25)
	near(t, "rudders over rudder", two.Controls(0.1, 0, 0)[0].Yaw/single.Controls(0.1, 0, 0)[0].Yaw, 1.85, 0.25)
}

// A tailplane that climbs along the fin and a fin that moves along the wing must not make the answer jump as edges pass control points.
func TestJointsMoveWithoutJumps(t *testing.T) {
	t.Parallel()
	side := func(surfaces ...planform.Surface) float64 {
		return mustSolveLateral(t, surfaces, Reference{}).At(0.1, 0, 0).SideForceBeta
	}
	wing := rectangle(planform.RoleWing, 2, 0.25, 0, 0)
	last := side(wing, rectangle(planform.RoleTailplane, 0.6, 0.15, 0.725, 0), finAt(0.7, 0))
	for z := 0.0125; z < 0.301; z += 0.0125 {
		now := side(wing, rectangle(planform.RoleTailplane, 0.6, 0.15, 0.725, z), finAt(0.7, 0))
		near(t, "tail along the fin", now/last, 1, 0.055)
		last = now
	}
	onWing := func(y float64) planform.Surface {
		fin := finAt(0.1, 0)
		fin.Mirrored = true
		fin.Stations[0].Y, fin.Stations[1].Y = y, y
		return fin
	}
	last = side(wing, onWing(0.1))
	for y := 0.15; y < 0.9; y += 0.05 {
		now := side(wing, onWing(y))
		near(t, "fins along the wing", now/last, 1, 0.06)
		last = now
	}
}

func TestJointsOfSurfaces(t *testing.T) {
	t.Parallel()
	wing := rectangle(planform.RoleWing, 2, 0.25, 0, 0)
	fin := finAt(0.1, 0)
	fin.Mirrored = true
	fin.Stations[0].Y, fin.Stations[1].Y = 0.4, 0.4
	tail := rectangle(planform.RoleTailplane, 0.6, 0.15, 0.725, 0)
	ready, j := join([]planform.Surface{wing, fin, tail}, inSymmetry)
	if len(ready[0].Stations) != 3 || ready[0].Stations[1].Y != 0.4 || !j.joined(0, 1) {
		t.Errorf("wing %+v, want a station where the fin stands", ready[0].Stations)
	}
	if len(ready[2].Stations) != 2 || j.joined(0, 2) || j.joined(1, 2) {
		t.Error("a tail behind the wing in its plane is not joined to it")
	}
	if again := cutAt(ready[0], []float64{0.4, 0.402, 0, 1}); len(again.Stations) != 3 {
		t.Errorf("%d stations, want no second one beside the first", len(again.Stations))
	}
	if len(wing.Stations) != 2 {
		t.Error("the caller's surface must stay as it is")
	}
}
