// Package lift solves the lifting surfaces of a model together by a vortex lattice and reads from it what the other packages need:
// lift slope, pitching moment, neutral point, induced drag, control powers, span loading and the lift at which the first strip stalls.
// Axes: x aft, y to starboard, z up; metres, radians, coefficients on the reference of the main wing.
package lift

import (
	"errors"

	"pitgate/server/physics/planform"
)

// ErrNothingLifts reports that no surface takes part in the symmetric solution.
var ErrNothingLifts = errors.New("surfaces: no mirrored lifting surface")

// ErrUnsolvable reports that the lattice has no solution: surfaces coincide or a measure is out of all proportion.
var ErrUnsolvable = errors.New("surfaces: lattice has no solution, surfaces may coincide")

// Solve builds and solves the lattice of all surfaces together in symmetric flight.
//
// Surfaces in the plane of symmetry and surfaces that exist on one side only take no part and are listed in Skipped; SolveLateral
// counts them. Errors: planform.ErrImpossible, ErrNothingLifts, ErrUnsolvable.
//
// Valid for: attached flow, incidence within about 0.2 rad of zero lift, Mach below 0.3, aspect ratio above 0.5.
// Source: vortex-lattice method as in Bertin and Smith, Aerodynamics for Engineers; Katz and Plotkin, Low-Speed Aerodynamics.
func Solve(surfaces []planform.Surface, reference Reference) (*Solution, error) {
	return solveWith(surfaces, reference, tableSlope)
}

// solveWith is Solve with the lift slopes of the sections by another rule.
func solveWith(surfaces []planform.Surface, reference Reference, slope slopeOf) (*Solution, error) {
	l, reference, err := prepare(surfaces, reference, slope)
	if err != nil {
		return nil, err
	}
	if len(l.panels) == 0 {
		return nil, ErrNothingLifts
	}
	controls := listControls(surfaces, &l)
	strengths, err := solveColumns(l.influence(1)[0], l.boundaryColumns(controls))
	if err != nil {
		return nil, err
	}
	s := &Solution{
		Reference: reference, Skipped: l.skipped, lattice: l,
		slopeStrength: strengths[columnIncidence], basicStrength: strengths[columnBasic],
	}
	s.fill(strengths, controls)
	if !s.finite() {
		return nil, ErrUnsolvable
	}
	return s, nil
}
