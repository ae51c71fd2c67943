package lift

// sideAnswers are the circulations of the symmetric and of the lateral columns.
type sideAnswers struct {
	lift     [2][]float64 // per rad of incidence, and at zero incidence
	motion   [motions][]float64
	yawLift  [2][]float64          // the answer to the yaw rate's change of speed on each of lift
	skewLift [motions][2][]float64 // the answer to the shift of the wake by each motion on each of lift, and to the tilted axis of yaw
	control  [][]float64
	controls []control
}

// solveSides solves both flights: two matrices where the sides are images of each other, one for a whole lattice. The lateral columns need
// the symmetric answers, for the wake that sideslip shifts.
func (l *lattice) solveSides(controls []control, span float64) (sideAnswers, error) {
	basic := l.boundaryColumns(nil)
	matrices := l.matricesOfSides()
	out := sideAnswers{controls: controls}
	same, err := solveColumns(matrices[0], basic[:columnRate])
	if err != nil {
		return out, err
	}
	copy(out.lift[:], same)
	opposite, err := solveColumns(matrices[1], l.lateralColumns(basic, same, controls, span))
	if err != nil {
		return out, err
	}
	next := func() (first []float64) { first, opposite = opposite[0], opposite[1:]; return first }
	for m := range motions {
		out.motion[m] = next()
		for k := range same {
			out.skewLift[m][k] = next()
		}
	}
	for k := range same {
		out.yawLift[k] = next()
	}
	out.control = opposite
	return out, nil
}

// lateralColumns returns the right-hand sides of opposite flight in the order in which solveSides takes their answers.
func (l *lattice) lateralColumns(basic, lift [][]float64, controls []control, span float64) [][]float64 {
	var columns [][]float64
	skew := l.skewMatrix()
	for m := range motions {
		columns = append(columns, l.motionColumn(m, span))
		for k := range lift {
			column := l.skewColumn(skew, l.stripStrength(lift[k]), m, span)
			if m == yawRate && k == 0 {
				l.addTiltedYaw(column, span)
			}
			columns = append(columns, column)
		}
	}
	for k := range lift {
		columns = append(columns, l.streamColumn(basic[k], yawRate, span))
	}
	for _, c := range controls {
		columns = append(columns, l.sideColumn(c))
	}
	return columns
}

// matricesOfSides returns the matrices of symmetric and of opposite flight, the same one twice for a whole lattice.
func (l *lattice) matricesOfSides() [][]float64 {
	if l.whole() {
		one := l.influence(1)[0]
		return [][]float64{one, append([]float64(nil), one...)}
	}
	return l.influence(1, -1)
}
