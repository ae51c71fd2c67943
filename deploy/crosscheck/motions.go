package main

import (
	"fmt"
	"math/rand/v2"

	"pitgate/server/physics/stability"
)

// natural is a system matrix with the roots that the core finds; the inputs stand beside it where it comes from an aircraft.
type natural struct {
	Name         string                  `json:"name"`
	Longitudinal *stability.Longitudinal `json:"longitudinal,omitempty"`
	Lateral      *stability.Lateral      `json:"lateral,omitempty"`
	State        *stability.State        `json:"state,omitempty"`
	Matrix       stability.Matrix        `json:"matrix"`
	Roots        [4]stability.Root       `json:"roots"`
}

// SI units of the books' feet, slugs and pounds.
const (
	foot      = 0.3048
	slug      = 14.593903
	slugFoot2 = slug * foot * foot
)

// lightAeroplane is the general-aviation aircraft of Nelson, Flight Stability and Automatic Control, at sea level.
func lightAeroplane() (stability.State, stability.Longitudinal, stability.Lateral) {
	state := stability.State{
		Mass: 85.4 * slug, Speed: 176 * foot, Density: 0.002378 * slug / (foot * foot * foot), Area: 184 * foot * foot, Chord: 5.7 * foot,
		Span: 33.4 * foot, Lift: 0.41, Drag: 0.05, Gravity: 32.174 * foot, PathAngle: radians(4),
		Inertia: stability.Inertia{Roll: 1048 * slugFoot2, Pitch: 3000 * slugFoot2, Yaw: 3530 * slugFoot2, Product: 90 * slugFoot2},
	}
	pitching := stability.Longitudinal{
		LiftSlope: 4.44, DragSlope: 0.33, MomentSlope: -0.683, PitchDamping: -9.96, IncidenceRateDamping: -4.36, LiftPitchRate: 3.8, LiftIncidenceRate: 1.2,
	}
	lateral := stability.Lateral{
		SideForceBeta: -0.564, RollBeta: -0.074, YawBeta: 0.071, RollRollRate: -0.410, RollYawRate: 0.107, YawRollRate: -0.0575, YawYawRate: -0.125,
		SideForceRollRate: -0.03, SideForceYawRate: 0.21,
	}
	return state, pitching, lateral
}

// motions returns the matrices: the light aeroplane's two, a large jet's in feet as Etkin prints it, and some without meaning.
func motions() ([]natural, error) {
	state, pitching, sideways := lightAeroplane()
	forces, err := pitching.Dimensional(state)
	if err != nil {
		return nil, err
	}
	lateral, err := sideways.Dimensional(state)
	if err != nil {
		return nil, err
	}
	all := []natural{
		{Name: "light aeroplane, pitching", Longitudinal: &pitching, State: &state, Matrix: forces.Matrix()},
		{Name: "light aeroplane, lateral", Lateral: &sideways, State: &state, Matrix: lateral.Matrix()},
		{Name: "large jet, pitching", Matrix: stability.Matrix{
			{-.006868, .01395, 0, -32.2}, {-.09055, -.3151, 773.98, 0}, {.0001187, -.001026, -.4285, 0}, {0, 0, 1, 0},
		}},
	}
	all = append(all, randomMotions(200)...)
	for i := range all {
		if all[i].Roots, err = all[i].Matrix.Roots(); err != nil {
			return nil, fmt.Errorf("%s: %w", all[i].Name, err)
		}
	}
	return all, nil
}

// randomMotions returns matrices whose entries differ by up to six powers of ten, the same in every run.
func randomMotions(count int) []natural {
	r := rand.New(rand.NewPCG(3, 5))
	all := make([]natural, count)
	for i := range all {
		all[i].Name = fmt.Sprintf("random matrix %d", i)
		for row := range all[i].Matrix {
			scale := []float64{1e-3, 1, 1e3}[r.IntN(3)]
			for column := range all[i].Matrix[row] {
				all[i].Matrix[row][column] = scale * (2*r.Float64() - 1)
			}
		}
	}
	return all
}
