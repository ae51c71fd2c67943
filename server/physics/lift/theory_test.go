package lift

import (
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

// elliptic returns an elliptic wing of an aspect ratio with its quarter-chord line straight; 24 stations to the tip.
func elliptic(aspect float64) planform.Surface {
	const n = 24
	wing := planform.Surface{Name: "wing", Role: planform.RoleWing, Mirrored: true}
	root := 8 / (math.Pi * aspect) // of half span 1: area pi root/2, span 2
	for i := range n + 1 {
		y := math.Sin(math.Pi / 2 * float64(i) / n)
		c := root * max(0.02, math.Sqrt(max(0, 1-y*y)))
		wing.Stations = append(wing.Stations, planform.Station{X: -0.25 * c, Y: y, Chord: c})
	}
	return wing
}

// circle returns a circular plate of radius 1.
func circle() planform.Surface {
	wing := elliptic(4 / math.Pi)
	for i := range wing.Stations {
		wing.Stations[i].X = -0.5 * wing.Stations[i].Chord
	}
	return wing
}

// lateralOf solves the lateral motion of one wing about its quarter chord at a lift coefficient.
func lateralOf(t *testing.T, wing planform.Surface, lift float64) LateralDerivatives {
	t.Helper()
	return mustSolveLateral(t, []planform.Surface{wing}, Reference{}).At(0, 0, lift)
}

func TestLiftingSurfaceTheory(t *testing.T) {
	t.Parallel()
	checkPublished(t, "lifting_surface_theory", map[string]formula{
		"roll-damping": func(t *testing.T, _ string, in inputs) float64 {
			return lateralOf(t, elliptic(in.number(t, "aspect")), 0).RollRollRate
		},
		"slender": func(t *testing.T, _ string, in inputs) float64 {
			return mustSolve(t, []planform.Surface{tapered(in.number(t, "aspect"), 1, 0)}, Grid{Chordwise: 16}).LiftSlope
		},
		"circle": func(t *testing.T, _ string, _ inputs) float64 {
			return mustSolve(t, []planform.Surface{circle()}, Grid{Chordwise: 10}).LiftSlope
		},
		"v-tail-side": func(t *testing.T, _ string, in inputs) float64 {
			aspect, dihedral := in.number(t, "aspect"), degrees(in.number(t, "dihedral"))
			reference := Reference{Area: aspect, Chord: 1, Span: aspect}
			flat, err := Solve([]planform.Surface{tapered(aspect, 0.5, 0)}, reference)
			if err != nil {
				t.Fatal(err)
			}
			tail := tapered(aspect, 0.5, 0)
			tail.Role = planform.RoleVTail
			tail.Stations[1].Y, tail.Stations[1].Z = aspect/2*math.Cos(dihedral), aspect/2*math.Sin(dihedral)
			side := mustSolveLateral(t, []planform.Surface{tail}, reference).At(0, 0, 0).SideForceBeta
			return -side / flat.LiftSlope / math.Pow(math.Sin(dihedral), 2)
		},
		"dihedral-roll": func(t *testing.T, _ string, in inputs) float64 {
			wing := tapered(in.number(t, "aspect"), in.number(t, "taper"), 0)
			wing.Stations[1].Z = wing.Stations[1].Y * math.Tan(degrees(3))
			return lateralOf(t, wing, 0).RollBeta / degrees(3)
		},
	})
}

func TestLiftingLine(t *testing.T) {
	t.Parallel()
	ellipse := func(f func(d LateralDerivatives) float64) formula {
		return func(t *testing.T, _ string, in inputs) float64 {
			return f(lateralOf(t, elliptic(in.number(t, "aspect")), 1))
		}
	}
	wing := func(f func(s *Solution) float64) formula {
		return func(t *testing.T, _ string, in inputs) float64 {
			return f(mustSolve(t, []planform.Surface{tapered(in.number(t, "aspect"), in.number(t, "taper"), 0)}, Grid{}))
		}
	}
	checkPublished(t, "lifting_line", map[string]formula{
		"slope":      wing(func(s *Solution) float64 { return s.LiftSlope }),
		"efficiency": wing(func(s *Solution) float64 { return s.SpanEfficiency }),
		"elliptic-slope": func(t *testing.T, _ string, in inputs) float64 {
			return mustSolve(t, []planform.Surface{elliptic(in.number(t, "aspect"))}, Grid{}).LiftSlope
		},
		"elliptic-roll":        ellipse(func(d LateralDerivatives) float64 { return d.RollRollRate }),
		"elliptic-yaw-by-roll": ellipse(func(d LateralDerivatives) float64 { return d.YawRollRate }),
		"elliptic-roll-by-yaw": ellipse(func(d LateralDerivatives) float64 { return d.RollYawRate }),
	})
}

// lightAeroplane builds wing, tail and fin of the textbook aeroplane; the balance point is the second value.
func lightAeroplane(t *testing.T) (surfaces []planform.Surface, reference Reference, leading, balance float64) {
	t.Helper()
	const root, tip, half = 2.2194, 1.1386, 5.09015
	wing := planform.Surface{Name: "wing", Role: planform.RoleWing, Mirrored: true, Stations: []planform.Station{
		{Chord: root}, {X: 0.25 * (root - tip), Y: half, Z: half * math.Tan(degrees(7.5)), Chord: tip},
	}}
	m, err := planform.Measure(wing)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "wing area", m.Area, 17.0942, 0.01)
	near(t, "mean chord", m.MeanAerodynamicChord, 1.73736, 0.002)
	balance = m.LeadingEdgeX + 0.295*m.MeanAerodynamicChord
	chord, height := math.Sqrt(3.9948/4), math.Sqrt(0.64*3)
	tail := rectangle(planform.RoleTailplane, 4*chord, chord, balance+4.8768-0.25*chord, 0.4)
	fin := planform.Surface{Name: "fin", Role: planform.RoleFin, Stations: []planform.Station{
		{X: balance + 5.5 - 0.25*0.64/height, Z: 0.4, Chord: 0.64 / height}, {X: balance + 5.5 - 0.25*0.64/height, Z: 0.4 + height, Chord: 0.64 / height},
	}}
	reference = Reference{Area: 17.0942, Chord: 1.73736, Span: 10.1803, ReynoldsPerMeter: 53.645 / 1.46e-5}
	return []planform.Surface{wing, tail, fin}, reference, m.LeadingEdgeX, balance
}

func TestLightAeroplaneFromItsDimensions(t *testing.T) {
	t.Parallel()
	surfaces, reference, leading, balance := lightAeroplane(t)
	s, err := Solve(surfaces, reference)
	if err != nil {
		t.Fatal(err)
	}
	derivatives := mustSolveLateral(t, surfaces, reference).At(balance, 0.25, 0.41).list()
	lateral := func(t *testing.T, _ string, in inputs) float64 { return derivatives[int(in.number(t, "derivative"))] }
	checkPublished(t, "light_aeroplane_geometry", map[string]formula{
		"lift-slope": func(_ *testing.T, _ string, in inputs) float64 {
			if in["surface"] == "wing" {
				return s.Surfaces[0].LiftSlope
			}
			return s.LiftSlope
		},
		"tail-downwash": func(_ *testing.T, _ string, in inputs) float64 {
			slope, _, _ := s.Downwash(in["surface"])
			return slope
		},
		"neutral-point": func(t *testing.T, _ string, in inputs) float64 {
			return (s.NeutralPointWith(in.number(t, "body")) - leading) / reference.Chord
		},
		"roll": lateral, "yaw": lateral,
	})
}
