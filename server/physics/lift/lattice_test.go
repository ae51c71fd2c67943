package lift

import (
	"errors"
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

func TestRefinementChangesLittle(t *testing.T) {
	t.Parallel()
	cases := map[string][]planform.Surface{
		"tapered": {tapered(7, 0.5, 25)}, "rectangular": {tapered(6, 1, 0)}, "wing and tail": wingAndTail(0), "raised tail": wingAndTail(0.1),
	}
	for name, surfaces := range cases {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			coarse, fine := mustSolve(t, surfaces, Grid{}), mustSolve(t, surfaces, Grid{Chordwise: 10, Spanwise: 30})
			near(t, "lift slope", coarse.LiftSlope, fine.LiftSlope, 0.004*fine.LiftSlope)
			near(t, "neutral point over chord", coarse.NeutralPointX/coarse.Reference.Chord, fine.NeutralPointX/fine.Reference.Chord, 0.006)
			near(t, "efficiency", coarse.SpanEfficiency, fine.SpanEfficiency, 0.006)
		})
	}
}

// A trailing leg of the wing that runs through a control point of the tail once made the lift of a wing and tail jump from 5.2 to 66.
func TestTrailingLegsThroughTheTailDoNoHarm(t *testing.T) {
	t.Parallel()
	surfaces := []planform.Surface{
		rectangle(planform.RoleWing, 2, 0.25, 0, 0), rectangle(planform.RoleTailplane, 0.7, 0.175, 1, 0),
	}
	reference := mustSolve(t, surfaces, Grid{Chordwise: 4, Spanwise: 30})
	for strips := 6; strips < 30; strips++ {
		s := mustSolve(t, surfaces, Grid{Chordwise: 4, Spanwise: strips})
		near(t, "lift slope", s.LiftSlope, reference.LiftSlope, 0.012)
		near(t, "neutral point over chord", s.NeutralPointX/0.25, reference.NeutralPointX/0.25, 0.012)
		near(t, "efficiency", s.SpanEfficiency, reference.SpanEfficiency, 0.004)
	}
}

// Here the span of the tail is chosen so that a leg of the wing passes exactly through a control point of the tail.
func TestLegExactlyThroughAControlPoint(t *testing.T) {
	t.Parallel()
	wing := rectangle(planform.RoleWing, 2, 0.25, 0, 0)
	for _, strip := range mustSolve(t, []planform.Surface{wing}, Grid{}).lattice.strips[:5] {
		half := strip.b.y / math.Sin(math.Pi/2*5.5/10)
		if half > 0.9 {
			continue
		}
		surfaces := []planform.Surface{wing, rectangle(planform.RoleTailplane, 2*half, 0.175, 1, 0)}
		s, fine := mustSolve(t, surfaces, Grid{}), mustSolve(t, surfaces, Grid{Chordwise: 6, Spanwise: 31})
		near(t, "leg through a strip's middle", s.lattice.strips[17].middle.y, strip.b.y, 1e-12)
		near(t, "lift slope", s.LiftSlope, fine.LiftSlope, 0.02)
	}
}

func TestAWingInTwoPiecesIsOneWing(t *testing.T) {
	t.Parallel()
	whole := tapered(7, 0.5, 15)
	a, b := whole.Stations[0], whole.Stations[1]
	middle := between(a, b, 0.6)
	single := whole
	single.Stations = []planform.Station{a, middle, b}
	inner, outer := whole, whole
	inner.Stations, outer.Stations = []planform.Station{a, middle}, []planform.Station{middle, b}
	outer.Name, outer.Role = "outer panel", planform.RoleSecondWing
	reference := Reference{Area: 7, Chord: 1.037, Span: 7}
	one, err := Solve([]planform.Surface{single}, reference)
	if err != nil {
		t.Fatal(err)
	}
	two, err := Solve([]planform.Surface{inner, outer}, reference)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "lift slope", two.LiftSlope, one.LiftSlope, 0.003*one.LiftSlope)
	near(t, "neutral point", two.NeutralPointX, one.NeutralPointX, 0.003)
	near(t, "efficiency", two.SpanEfficiency, one.SpanEfficiency, 0.005)
}

func TestErrorsAndSkippedSurfaces(t *testing.T) {
	t.Parallel()
	fin := planform.Surface{Name: "fin", Role: planform.RoleFin, Stations: []planform.Station{{X: 0.8, Chord: 0.2}, {X: 0.85, Z: 0.2, Chord: 0.1}}}
	with := mustSolve(t, append(wingAndTail(0.1), fin), Grid{})
	if len(with.Skipped) != 1 || with.Skipped[0] != "fin" {
		t.Errorf("skipped %v, want the fin", with.Skipped)
	}
	near(t, "a fin changes nothing", with.LiftSlope, mustSolve(t, wingAndTail(0.1), Grid{}).LiftSlope, 0)
	if _, err := Solve([]planform.Surface{fin}, Reference{}); !errors.Is(err, ErrNothingLifts) {
		t.Errorf("fin alone: %v", err)
	}
	if _, err := Solve(nil, Reference{}); !errors.Is(err, ErrNothingLifts) {
		t.Errorf("nothing: %v", err)
	}
	broken := tapered(6, 1, 0)
	broken.Stations[1].Chord = math.NaN()
	if _, err := Solve([]planform.Surface{broken}, Reference{}); !errors.Is(err, planform.ErrImpossible) {
		t.Errorf("broken: %v", err)
	}
}

func TestWingletsAndDihedral(t *testing.T) {
	t.Parallel()
	wing := tapered(6, 1, 0)
	tip := wing.Stations[1]
	winglet := planform.Surface{Name: "winglet", Role: planform.RoleWinglet, Mirrored: true, Stations: []planform.Station{
		{X: tip.X, Y: tip.Y, Z: 0, Chord: tip.Chord}, {X: tip.X + 0.3, Y: tip.Y, Z: 0.6, Chord: 0.6 * tip.Chord},
	}}
	plain, with := mustSolve(t, []planform.Surface{wing}, Grid{}), mustSolve(t, []planform.Surface{wing, winglet}, Grid{})
	if with.InducedFactor >= plain.InducedFactor || with.LiftSlope <= plain.LiftSlope {
		t.Errorf("winglets: K %v and slope %v, want better than %v and %v", with.InducedFactor, with.LiftSlope, plain.InducedFactor, plain.LiftSlope)
	}
	raised := tapered(6, 1, 0)
	raised.Stations[1].Z = raised.Stations[1].Y * math.Tan(degrees(20))
	if v := mustSolve(t, []planform.Surface{raised}, Grid{}); v.LiftSlope >= plain.LiftSlope {
		t.Errorf("dihedral: slope %v, want below %v", v.LiftSlope, plain.LiftSlope)
	}
}
