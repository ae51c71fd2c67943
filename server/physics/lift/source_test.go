package lift

import (
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

// rowWing returns the wing of a row: aspect ratio, taper, sweep in degrees.
func rowWing(t *testing.T, in inputs) planform.Surface {
	t.Helper()
	return tapered(in.number(t, "aspect"), in.number(t, "taper"), in.number(t, "sweep"))
}

// sweptWing solves the wing of constant chord of the textbook example on its own grid.
func sweptWing(t *testing.T, in inputs) *Solution {
	t.Helper()
	wing := tapered(in.number(t, "aspect"), 1, in.number(t, "sweep"))
	grid := Grid{Chordwise: int(in.number(t, "rows")), Spanwise: int(in.number(t, "strips")), Equal: in["equal"] == "1"}
	return mustSolve(t, []planform.Surface{wing}, grid)
}

func TestSweptWingExample(t *testing.T) {
	t.Parallel()
	checkPublished(t, "bertin_smith", map[string]formula{
		"lift-slope": func(t *testing.T, _ string, in inputs) float64 { return sweptWing(t, in).LiftSlope },
		"circulation": func(t *testing.T, _ string, in inputs) float64 {
			return sweptWing(t, in).slopeStrength[int(in.number(t, "strip"))] / (4 * math.Pi * in.number(t, "aspect"))
		},
	})
}

func TestSeparateLattice(t *testing.T) {
	t.Parallel()
	wing := func(f func(t *testing.T, s *Solution, in inputs) float64) formula {
		return func(t *testing.T, _ string, in inputs) float64 {
			return f(t, mustSolve(t, []planform.Surface{rowWing(t, in)}, Grid{}), in)
		}
	}
	steady := func(float64) float64 { return 1e6 }
	tail := func(f func(s *Solution) float64) formula {
		return func(t *testing.T, _ string, in inputs) float64 {
			return f(mustSolve(t, wingAndTail(in.number(t, "height")), Grid{}))
		}
	}
	checkPublished(t, "separate_lattice", map[string]formula{
		"lift-slope": wing(func(_ *testing.T, s *Solution, _ inputs) float64 { return s.LiftSlope }),
		"efficiency": wing(func(_ *testing.T, s *Solution, _ inputs) float64 { return s.SpanEfficiency }),
		"centre": wing(func(t *testing.T, s *Solution, in inputs) float64 {
			m, err := planform.Measure(rowWing(t, in))
			if err != nil {
				t.Fatal(err)
			}
			return (s.NeutralPointX - m.LeadingEdgeX) / m.MeanAerodynamicChord
		}),
		"stall-ratio": wing(func(_ *testing.T, s *Solution, _ inputs) float64 {
			m := s.MaximumLift(steady, 1)
			return m.Coefficient / m.SectionCoefficient
		}),
		"stall-place": wing(func(_ *testing.T, s *Solution, _ inputs) float64 { return s.MaximumLift(steady, 1).SpanRatio }),
		"loading": wing(func(t *testing.T, s *Solution, in inputs) float64 {
			return loadingAt(s, in.number(t, "place"))
		}),
		"tail-neutral-point": tail(func(s *Solution) float64 { return s.NeutralPointX / 0.25 }),
		"tail-lift-slope":    tail(func(s *Solution) float64 { return s.LiftSlope }),
		"tail-ratio": func(t *testing.T, _ string, in inputs) float64 {
			surfaces := wingAndTail(in.number(t, "height"))
			alone, err := Solve(surfaces[1:], Reference{Area: 0.5, Chord: 0.25, Span: 2})
			if err != nil {
				t.Fatal(err)
			}
			return mustSolve(t, surfaces, Grid{}).Surfaces[1].LiftSlope / alone.LiftSlope
		},
	})
}

// loadingAt returns section lift over wing lift at 2y/b, straight between strips.
func loadingAt(s *Solution, place float64) float64 {
	for i := 1; i < len(s.Strips); i++ {
		a, b := s.Strips[i-1], s.Strips[i]
		if place <= b.SpanRatio {
			share := (place - a.SpanRatio) / (b.SpanRatio - a.SpanRatio)
			return blend(a.LiftSlope, b.LiftSlope, share) / s.LiftSlope
		}
	}
	return math.NaN()
}

func TestWingTheory(t *testing.T) {
	t.Parallel()
	checkPublished(t, "wing_theory", map[string]formula{
		"helmbold": func(t *testing.T, _ string, in inputs) float64 {
			return HelmboldSlope(in.number(t, "section"), in.number(t, "aspect"))
		},
		"elliptic": func(t *testing.T, _ string, in inputs) float64 {
			return EllipticSlope(in.number(t, "section"), in.number(t, "aspect"))
		},
		"swept": func(t *testing.T, _ string, in inputs) float64 {
			return SweptSlope(in.number(t, "section"), in.number(t, "aspect"), degrees(in.number(t, "sweep")))
		},
		"compressible": func(t *testing.T, _ string, in inputs) float64 {
			return CompressibleSlope(in.number(t, "aspect"), in.number(t, "mach"), degrees(in.number(t, "sweep")))
		},
		"ground": func(t *testing.T, _ string, in inputs) float64 {
			return GroundFactor(in.number(t, "height"), in.number(t, "span"))
		},
		"lattice": func(t *testing.T, _ string, in inputs) float64 {
			a0 := 2 * math.Pi
			if in["section"] != "" {
				a0 = in.number(t, "section")
			}
			return mustSolveWith(t, []planform.Surface{rowWing(t, in)}, Reference{}, a0).LiftSlope
		},
		"downwash": func(t *testing.T, _ string, in inputs) float64 {
			return DownwashSlope(in.number(t, "aspect"), in.number(t, "taper"), in.number(t, "sweep"), in.number(t, "arm"), in.number(t, "height"))
		},
		"flat-rule": func(t *testing.T, _ string, in inputs) float64 {
			return SweptLimit(in.number(t, "limit"), degrees(in.number(t, "sweep")))
		},
	})
}
