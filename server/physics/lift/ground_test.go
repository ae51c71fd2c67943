package lift

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pitgate/server/physics/planform"
)

func mustSolveAt(t testing.TB, surfaces []planform.Surface, height float64) *Solution {
	t.Helper()
	s, err := Solve(surfaces, Reference{GroundHeight: height})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestGroundRaisesLiftAndLowersDrag(t *testing.T) {
	t.Parallel()
	wing := []planform.Surface{tapered(7, 0.5, 0)}
	free := mustSolveAt(t, wing, 0)
	last := Solution{LiftSlope: math.Inf(1)}
	for _, height := range []float64{0.05, 0.1, 0.2, 0.4, 0.8, 1.6} {
		s := mustSolveAt(t, wing, height*7)
		if s.LiftSlope >= last.LiftSlope || s.LiftSlope <= free.LiftSlope || s.InducedFactor <= last.InducedFactor || s.InducedFactor >= free.InducedFactor {
			t.Errorf("height %v: slope %v and factor %v must lie between the ones below, %v and %v, and free air's, %v and %v", height,
				s.LiftSlope, s.InducedFactor, last.LiftSlope, last.InducedFactor, free.LiftSlope, free.InducedFactor)
		}
		last = *s
	}
	near(t, "high up", mustSolveAt(t, wing, 700).LiftSlope, free.LiftSlope, 1e-4)
	near(t, "higher than any ground", mustSolveAt(t, wing, 1e200).LiftSlope, free.LiftSlope, 0)
}

// Nothing may pass the ground: the upward velocity there must vanish.
func TestNothingPassesTheGround(t *testing.T) {
	t.Parallel()
	s := mustSolveAt(t, wingAndTail(0.1), 0.3)
	for _, x := range []float64{-0.5, 0.1, 0.6, 3} {
		for _, y := range []float64{0, 0.4, 1.2} {
			w := s.upwash(s.slopeStrength, point{x, y, -0.3}, func(*latticeStrip) bool { return true })
			near(t, "velocity through the ground", w, 0, 1e-6)
		}
	}
}

// McCormick's factor fits flight tests of full wings; Wieselsberger's theory is an elliptic loading over its image. The lattice must agree
// with the theory within 0.02 and lie below McCormick's as the theory does.
func TestGroundFactors(t *testing.T) {
	t.Parallel()
	checkPublished(t, "ground_theory", map[string]formula{
		"induced": func(t *testing.T, _ string, in inputs) float64 {
			wing := []planform.Surface{tapered(8, 0.5, 0)}
			return mustSolveAt(t, wing, 8*in.number(t, "height")).InducedFactor / mustSolveAt(t, wing, 0).InducedFactor
		},
		"two-dimensional": func(t *testing.T, _ string, in inputs) float64 {
			s, err := Solve([]planform.Surface{endless(0)}, Reference{GroundHeight: 0.02 * in.number(t, "height"), Grid: Grid{Spanwise: 9, Equal: true}})
			if err != nil {
				t.Fatal(err)
			}
			return s.Strips[4].LiftSlope / (2 * math.Pi)
		},
	})
}

func TestGroundIsRefusedByName(t *testing.T) {
	t.Parallel()
	cases := map[string]Reference{
		"ground_height_meters: surface": {GroundHeight: 1e-5},
		"ground_height_meters: -1":      {GroundHeight: -1},
		"ground_height_meters: NaN":     {GroundHeight: math.NaN()},
		"reynolds_per_meter: NaN":       {ReynoldsPerMeter: math.NaN()},
		"reynolds_per_meter: +Inf":      {ReynoldsPerMeter: math.Inf(1)},
		"reynolds_per_meter: -5":        {ReynoldsPerMeter: -5},
	}
	for want, reference := range cases {
		for name, solve := range map[string]func() error{
			"solve":   func() error { _, err := Solve(wingAndTail(0), reference); return err },
			"lateral": func() error { _, err := SolveLateral(wingAndTail(0), reference); return err },
		} {
			if err := solve(); !errors.Is(err, planform.ErrImpossible) || !strings.Contains(err.Error(), want) {
				t.Errorf("%s: %v, want it to say %q", name, err, want)
			}
		}
	}
}
