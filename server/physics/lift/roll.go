package lift

import "pitgate/server/physics/planform"

// RollControl is what one control does in roll when it moves up to starboard and down to port by one radian.
type RollControl struct {
	Surface string
	Name    string
	Role    string
	Power   float64 // rolling-moment coefficient per rad, starboard down positive
}

// RollSolution is the answer of the lattice in rolling motion.
type RollSolution struct {
	Damping  float64 // rolling-moment coefficient per unit p b/(2 V), negative
	Controls []RollControl
}

// RateFor returns p b/(2 V) of a steady roll for a deflection of one control, rad.
//
// Formula: p b/(2V) = -power angle/damping.
// Valid for: rigid wings below the stall.
// Source: balance of the two moments.
func (r *RollSolution) RateFor(index int, angle float64) float64 {
	return -float64(r.Controls[index].Power*angle) / r.Damping
}

// SolveRoll solves the lattice for opposite loads on the two sides: damping in roll and the rolling power of each control.
// Errors as Solve.
//
// Valid for: attached flow, no sideslip; fins take no part.
// Source: vortex-lattice method with the image reversed.
func SolveRoll(surfaces []planform.Surface, reference Reference) (*RollSolution, error) {
	if err := planform.CheckAll(surfaces); err != nil {
		return nil, err
	}
	reference, err := completeReference(surfaces, reference)
	if err != nil {
		return nil, err
	}
	l := newLattice(surfaces, reference.Grid)
	if len(l.panels) == 0 {
		return nil, ErrNothingLifts
	}
	controls := listControls(surfaces, l)
	columns := l.boundaryColumns(controls)
	columns[columnIncidence] = l.rollColumn(reference.Span)
	strengths, err := solveColumns(l.influence(-1), columns)
	if err != nil {
		return nil, err
	}
	scale := 1 / float64(reference.Area*reference.Span)
	r := &RollSolution{Damping: float64(scale * l.rollMoment(strengths[columnIncidence]))}
	for k, c := range controls {
		power := -float64(scale * l.rollMoment(strengths[columnControls+k]))
		r.Controls = append(r.Controls, RollControl{c.surface, c.name, c.role, power})
	}
	return r, nil
}

// rollColumn returns the right-hand side of unit p b/(2 V), starboard going down.
func (l lattice) rollColumn(span float64) []float64 {
	column := make([]float64, len(l.panels))
	for i := range l.panels {
		p := &l.panels[i]
		normal := float64(p.control.y*p.normalZ) - float64(p.control.z*p.normalY)
		column[i] = -float64(normal*2) / span
	}
	return column
}

// rollMoment returns the rolling moment over dynamic pressure (m3), starboard down positive, both sides.
//
// Formula: -4 sum g (y dy + z dz); where y, z middle of the bound leg.
// Valid for: opposite circulation on the port side.
// Source: Kutta-Joukowski theorem.
func (l lattice) rollMoment(strength []float64) float64 {
	sum := 0.0
	for i := range l.panels {
		p := &l.panels[i]
		y, z := float64(0.5*(p.a.y+p.b.y)), float64(0.5*(p.a.z+p.b.z))
		arm := float64(y*(p.b.y-p.a.y)) + float64(z*(p.b.z-p.a.z))
		sum -= float64(4 * float64(strength[i]*arm))
	}
	return sum
}
