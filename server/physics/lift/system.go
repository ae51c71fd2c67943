package lift

import "pitgate/server/physics/planform"

// LinearSystem is the set of equations of one geometry with its answers, so that another program can solve the same matrix.
//
// Every unknown is the circulation over speed of one horseshoe (m), every equation the normal velocity over speed at one control point.
type LinearSystem struct {
	Size      int
	Matrix    []float64   // Size x Size, row by row
	Columns   [][]float64 // right-hand sides: unit incidence, twist and camber, unit pitch rate, then one for each control
	Strengths [][]float64 // the answer to each column
}

// System returns the equations that Solve solves for the surfaces and their answers. Errors as Solve.
func System(surfaces []planform.Surface, reference Reference) (LinearSystem, error) {
	l, _, err := prepare(surfaces, reference, tableSlope)
	if err != nil {
		return LinearSystem{}, err
	}
	if len(l.panels) == 0 {
		return LinearSystem{}, ErrNothingLifts
	}
	matrix := l.influence(1)[0]
	out := LinearSystem{Size: len(l.panels), Matrix: append([]float64(nil), matrix...), Columns: l.boundaryColumns(listControls(surfaces, &l))}
	out.Strengths, err = solveColumns(matrix, out.Columns)
	return out, err
}
