package loads

import "pitgate/server/physics/lift"

// FromLattice returns the strips of one surface of a solved lattice, starboard side, for a model of a weight (N) at a dynamic pressure (Pa). moment is the
// sections' moment
// coefficient about the quarter chord (nose up positive: camber, and a control that is held); 0 when not known. A surface that the solution does not hold
// gives no strips. Errors name
// the impossible field.
//
// Formula: F = q c w (cl_0 + cl_a a_0) + n c w cl_a W/(S a), M = q c^2 w cm; where c chord, w breadth, cl_0 and cl_a of the strip, a_0 incidence without
// lift, S area and a lift slope
// of the model, n load factor.
// Valid for: attached flow, controls in the middle: the download that trims the tail is not in it, so the wing carries that much more.
// Source: lift.Solution, whose strip loads are linear in the incidence.
func FromLattice(s *lift.Solution, surface string, weight, pressure, moment float64) ([]Strip, error) {
	err := checkPositive(named{"weight", weight}, named{"pressure", pressure}, named{"lift slope of the model", s.LiftSlope}, named{"area", s.Reference.Area})
	if err != nil {
		return nil, err
	}
	if err := checkFinite(named{"moment", moment}); err != nil {
		return nil, err
	}
	perLoad := weight / float64(s.Reference.Area*s.LiftSlope)
	count := 0
	for i := range s.Strips {
		if s.Strips[i].Surface == surface {
			count++
		}
	}
	if count == 0 {
		return nil, nil
	}
	out := make([]Strip, 0, count)
	for i := range s.Strips {
		strip := &s.Strips[i]
		if strip.Surface != surface {
			continue
		}
		area := float64(strip.Chord * strip.Width)
		basic := strip.BasicLift + float64(strip.LiftSlope*s.ZeroLiftIncidence)
		out = append(out, Strip{
			Y: strip.Y, Width: strip.Width, X: strip.QuarterX,
			Force:  Line{AtZero: float64(pressure * area * basic), PerLoad: float64(area * strip.LiftSlope * perLoad)},
			Moment: Line{AtZero: float64(pressure * area * strip.Chord * moment)},
		})
	}
	return out, nil
}
