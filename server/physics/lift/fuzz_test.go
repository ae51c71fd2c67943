package lift

import (
	"errors"
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

// FuzzSolve asks that no geometry gives a figure that is not a number, whatever the surfaces, the ground, the Reynolds number and the balance.
func FuzzSolve(f *testing.F) {
	f.Add(0.25, 0.2, 1.0, 0.1, 0.05, 0.15, 0.7, 0.3, 0.02, 0.03, 0.5, 1e6, 0.1)
	f.Add(0.25, 0.2, 1.0, 0.0, 0.0, 0.25, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0, 0.0)
	f.Add(1.0, 0.001, 9.0, -3.0, 5.0, 1.0, 0.25, 4.0, 1.5, -0.1, 1e-3, 1e-300, -40.0)
	f.Add(99.0, 44.0, 1.5e-5, -9.6, 38.0, 88.0, -79.0, 94.0, 0.0, 0.0, 5.2, 61.0, 0.0)
	f.Add(0.3, 0.2, 1.0, 0.0, 0.0, 0.15, 0.2, 0.3, 0.0, 0.0, 1e300, 1e300, 1e300)
	f.Fuzz(func(t *testing.T, root, tip, span, sweep, rise, tailChord, tailX, tailSpan, twist, camber, height, reynolds, x float64) {
		surfaces := []planform.Surface{
			{Name: "wing", Role: planform.RoleWing, Mirrored: true, Stations: []planform.Station{
				{Chord: root, Section: planform.Section{Camber: camber, CamberPosition: 0.4}},
				{X: sweep, Y: span, Z: rise, Chord: tip, Twist: twist},
			}},
			rectangle(planform.RoleTailplane, tailSpan, tailChord, tailX, 0),
			{Name: "fin", Role: planform.RoleFin, Stations: []planform.Station{{X: tailX, Chord: tailChord}, {X: tailX, Z: tailSpan, Chord: tailChord}}},
		}
		surfaces[0].Controls = []planform.Control{{Name: "elevon", Role: planform.ControlElevon, Inner: 0.3, Outer: 1, ChordRatio: 0.3}}
		surfaces[1].Controls = []planform.Control{{Name: "elevator", Role: planform.ControlElevator, Outer: 1, ChordRatio: 0.3}}
		reference := Reference{Grid: Grid{Chordwise: 2, Spanwise: 4}, GroundHeight: height, ReynoldsPerMeter: reynolds}
		fuzzSymmetric(t, surfaces, reference, x)
		fuzzLateral(t, surfaces, reference, x)
	})
}

// knownError reports whether a geometry was refused by name; any other error fails the test.
func knownError(t *testing.T, err error) bool {
	t.Helper()
	if err != nil && !errors.Is(err, planform.ErrImpossible) && !errors.Is(err, ErrUnsolvable) && !errors.Is(err, ErrNothingLifts) {
		t.Fatalf("unknown error %v", err)
	}
	return err != nil
}

// fuzzSymmetric asks all figures of the symmetric solution, in balance about a place within 100 m.
func fuzzSymmetric(t *testing.T, surfaces []planform.Surface, reference Reference, x float64) {
	t.Helper()
	s, err := Solve(surfaces, reference)
	if knownError(t, err) {
		return
	}
	re := func(chord float64) float64 { return 1e6 * chord }
	b := Balance{X: max(-100, min(100, x)), Moment: 0.01, MomentSlope: 0.1, Pitch: []Setting{{1, 1}}, Held: []Setting{{0, 0.1}}}
	m, trimmed, state := s.MaximumLift(re, 1), s.TrimmedMaximum(re, 1, b), s.Trim(b, 0.5)
	_, rate := s.PitchRateAt(0.1)
	slope, angle, _ := s.Downwash(planform.RoleTailplane)
	sum := s.LiftSlope + s.NeutralPointX + s.SpanEfficiency + s.InducedDrag(0.5) + m.Coefficient + m.Spread + m.TipMarginIncidence + rate +
		trimmed.Coefficient + trimmed.Spread + trimmed.ControlAngle + trimmed.TipMarginIncidence +
		state.Incidence + state.Command + slope + angle + s.MinimumLift(re, 1).Coefficient
	for _, c := range s.Controls {
		sum += c.MomentAt(0.1)
	}
	for _, strip := range s.StripStates(0.1, b.Held, re, 1) {
		sum += strip.Coefficient + strip.Limit + strip.MarginIncidence
	}
	if math.IsNaN(sum) || math.IsInf(sum, 0) {
		t.Fatalf("%+v gives %+v, %+v, %+v and %+v", surfaces, s, m, trimmed, state)
	}
}

// fuzzLateral asks all lateral figures, once with the fin in the middle and once beside it.
func fuzzLateral(t *testing.T, surfaces []planform.Surface, reference Reference, x float64) {
	t.Helper()
	for _, aside := range []float64{0, 0.1} {
		for i := range surfaces[2].Stations {
			surfaces[2].Stations[i].Y = aside
		}
		a, err := SolveLateral(surfaces, reference)
		if knownError(t, err) {
			return
		}
		sum := a.ProfileYawDamping(0.02)
		place := max(-100, min(100, x))
		for _, v := range a.At(place, 0.1, 0.5).list() {
			sum += v
		}
		for _, c := range a.Controls(place, 0.1, 0.5) {
			sum += c.SideForce + c.Roll + c.Yaw
		}
		if math.IsNaN(sum) || math.IsInf(sum, 0) {
			t.Fatalf("%+v gives %+v", surfaces, a.At(place, 0.1, 0.5))
		}
	}
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

func BenchmarkSolveLateral(b *testing.B) {
	surfaces := glider()
	b.ReportAllocs()
	for b.Loop() {
		mustSolveLateral(b, surfaces, Reference{})
	}
}

func BenchmarkTrimmedMaximum(b *testing.B) {
	s := mustSolve(b, trimModel(), Grid{})
	for b.Loop() {
		s.TrimmedMaximum(steadyReynolds, 1, elevator(0.07))
	}
}
