package lift

import (
	"fmt"
	"math"

	"pitgate/server/physics/planform"
)

// Grid chooses the lattice. The zero value is the standard one, chosen by the convergence study of the tests.
type Grid struct {
	Chordwise int  // rows of panels; 0 = 6 on wings and canards, 4 on tails and fins
	Spanwise  int  // strips on the half span; 0 = 12 on wings and canards, 10 on tails and fins
	Equal     bool // equal strips instead of strips that narrow towards the tip
}

// Reference holds what the coefficients are made with. Area, Chord and Span left at zero are taken from the main wing.
type Reference struct {
	Area             float64 // m2
	Chord            float64 // mean aerodynamic chord, m
	Span             float64 // m
	ReynoldsPerMeter float64 // speed over kinematic viscosity, 1/m: every section then has its own lift slope; 0 = 2 pi everywhere
	GroundHeight     float64 // of z = 0 above level ground, m; 0 = free air
	Grid             Grid
}

// farthestGround is the height above which the ground is not felt by any model, m.
const farthestGround = 1e4

// ReferenceOf returns area, chord and span of the main wing.
func ReferenceOf(surfaces []planform.Surface) (Reference, error) {
	return completeReference(surfaces, Reference{})
}

// completeReference fills the missing fields from the main wing.
func completeReference(surfaces []planform.Surface, r Reference) (Reference, error) {
	if r.Area > 0 && r.Chord > 0 && r.Span > 0 {
		return r, nil
	}
	i := planform.MainWing(surfaces)
	if i < 0 {
		return r, ErrNothingLifts
	}
	m, err := planform.Measure(surfaces[i])
	if err != nil {
		return r, err
	}
	if !(m.Area > 0) {
		return r, fmt.Errorf("surface %q: projected area is zero: %w", surfaces[i].Name, planform.ErrImpossible)
	}
	if !(r.Area > 0) {
		r.Area = m.Area
	}
	if !(r.Chord > 0) {
		r.Chord = m.MeanAerodynamicChord
	}
	if !(r.Span > 0) {
		r.Span = m.Span
	}
	return r, nil
}

// check refuses a Reynolds number or a height that cannot be, and a model that touches the ground.
func (r *Reference) check(surfaces []planform.Surface) error {
	if !(r.ReynoldsPerMeter >= 0) || math.IsInf(r.ReynoldsPerMeter, 0) {
		return fmt.Errorf("reynolds_per_meter: %v is not a possible value: %w", r.ReynoldsPerMeter, planform.ErrImpossible)
	}
	if !(r.GroundHeight >= 0) {
		return fmt.Errorf("ground_height_meters: %v is not a possible height: %w", r.GroundHeight, planform.ErrImpossible)
	}
	if r.GroundHeight > farthestGround {
		r.GroundHeight = 0
	}
	if r.GroundHeight == 0 {
		return nil
	}
	for _, s := range surfaces {
		for i, station := range s.Stations {
			if clearance := r.GroundHeight + station.Z; !(clearance > float64(0.01*station.Chord)) {
				return fmt.Errorf("ground_height_meters: surface %q stations[%d] is %v m above the ground: %w", s.Name, i, clearance, planform.ErrImpossible)
			}
		}
	}
	return nil
}

// prepare checks the surfaces, completes the reference and cuts the lattice of the symmetric solution, which may be empty.
func prepare(surfaces []planform.Surface, reference Reference, slope slopeOf) (lattice, Reference, error) {
	if err := planform.CheckAll(surfaces); err != nil {
		return lattice{}, reference, err
	}
	reference, err := completeReference(surfaces, reference)
	if err != nil {
		return lattice{}, reference, err
	}
	if err := reference.check(surfaces); err != nil {
		return lattice{}, reference, err
	}
	return newLattice(surfaces, reference, slope), reference, nil
}
