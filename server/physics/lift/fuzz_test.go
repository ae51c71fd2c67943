package lift

import (
	"errors"
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

// FuzzSolve asks that no geometry gives a figure that is not a number, whatever the surfaces.
func FuzzSolve(f *testing.F) {
	f.Add(0.25, 0.2, 1.0, 0.1, 0.05, 0.15, 0.7, 0.3, 0.02, 0.03)
	f.Add(0.25, 0.2, 1.0, 0.0, 0.0, 0.25, 0.0, 1.0, 0.0, 0.0)
	f.Add(1.0, 0.001, 9.0, -3.0, 5.0, 1.0, 0.25, 4.0, 1.5, -0.1)
	f.Fuzz(func(t *testing.T, root, tip, span, sweep, rise, tailChord, tailX, tailSpan, twist, camber float64) {
		surfaces := []planform.Surface{
			{Name: "wing", Role: planform.RoleWing, Mirrored: true, Stations: []planform.Station{
				{Chord: root, Section: planform.Section{Camber: camber, CamberPosition: 0.4}},
				{X: sweep, Y: span, Z: rise, Chord: tip, Twist: twist},
			}},
			rectangle(planform.RoleTailplane, tailSpan, tailChord, tailX, 0),
		}
		surfaces[1].Controls = []planform.Control{{Name: "elevator", Outer: 1, ChordRatio: 0.3}}
		s, err := Solve(surfaces, Reference{Grid: Grid{Chordwise: 2, Spanwise: 4}})
		if err != nil {
			if !errors.Is(err, planform.ErrImpossible) && !errors.Is(err, ErrUnsolvable) && !errors.Is(err, ErrNothingLifts) {
				t.Fatalf("unknown error %v", err)
			}
			return
		}
		m := s.MaximumLift(func(chord float64) float64 { return 1e6 * chord }, 1)
		_, rate := s.PitchRateAt(0.1)
		sum := s.LiftSlope + s.NeutralPointX + s.SpanEfficiency + s.InducedDrag(0.5) + m.Coefficient + m.Spread + rate + s.Controls[0].MomentAt(0.1)
		if math.IsNaN(sum) || math.IsInf(sum, 0) {
			t.Fatalf("%+v gives %+v and %+v", surfaces, s, m)
		}
	})
}

func BenchmarkSolve(b *testing.B) {
	surfaces := wingAndTail(0.1)
	surfaces[1].Controls = []planform.Control{{Name: "elevator", Outer: 1, ChordRatio: 0.3}}
	b.ReportAllocs()
	for b.Loop() {
		mustSolve(b, surfaces, Grid{})
	}
}

// BenchmarkSolveFourHundred solves a lattice of 400 horseshoes on the half span.
func BenchmarkSolveFourHundred(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		mustSolve(b, []planform.Surface{tapered(7, 0.5, 20)}, Grid{Chordwise: 10, Spanwise: 40})
	}
}

func BenchmarkMaximumLift(b *testing.B) {
	s := mustSolve(b, wingAndTail(0.1), Grid{})
	for b.Loop() {
		s.MaximumLift(func(chord float64) float64 { return 1e6 * chord }, 1)
	}
}
