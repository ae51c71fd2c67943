package lift

// Columns of the boundary condition, in this order; the controls follow.
const (
	columnIncidence = iota
	columnBasic
	columnRate
	columnControls
)

// boundaryColumns returns the right-hand sides: unit incidence, built-in incidence and camber, unit pitch rate about x = 0, and unit
// deflection of each control as the equivalent incidence of its strips.
func (l *lattice) boundaryColumns(controls []control) [][]float64 {
	columns := make([][]float64, columnControls+len(controls))
	for k := range columns {
		columns[k] = make([]float64, len(l.panels))
	}
	for i := range l.panels {
		p := &l.panels[i]
		strip := &l.strips[p.strip]
		columns[columnIncidence][i] = -p.normalZ
		columns[columnBasic][i] = strip.zeroLift - float64(p.normalZ*strip.incidence)
		columns[columnRate][i] = -float64(p.normalZ * p.control.x)
		for k, c := range controls {
			columns[columnControls+k][i] = -float64(c.effectiveness * c.cover[p.strip])
		}
	}
	return columns
}

// liftAndMoment returns lift over dynamic pressure (m2) and nose-up moment about x = 0 over dynamic pressure (m3), both sides.
//
// Formula: L/q = 4 sum g dy, M/q = -4 sum x g dy (half as much for a strip without image); where g circulation over speed, x middle of the bound leg, dy its width.
// Valid for: symmetric flight, small angles.
// Source: Kutta-Joukowski theorem.
func (l *lattice) liftAndMoment(strength []float64) (lift, moment float64) {
	for i := range l.panels {
		p := &l.panels[i]
		if !l.counts(p.strip) {
			continue
		}
		force := float64(2 * float64(l.strips[p.strip].sides()*float64(strength[i]*(p.b.y-p.a.y))))
		lift += force
		moment -= float64(force * float64(0.5*(p.a.x+p.b.x)))
	}
	return lift, moment
}

// camberMoment returns the moment over dynamic pressure (m3) that the sections' own moments add, both sides.
//
// Formula: 2 sum cm c^2 dy.
// Valid for: thin-aerofoil moments about the quarter chord.
// Source: strip theory.
func (l *lattice) camberMoment() float64 {
	sum := 0.0
	for _, s := range l.strips {
		sum += float64(float64(2*s.camberMoment) * float64(float64(s.Chord*s.Chord)*s.projected))
	}
	return sum
}

// controlMoment returns the moment over dynamic pressure per radian that the sections' own moments add for a control, both sides.
//
// Formula: 2 sum cm_delta c^2 dy over the covered strips.
// Valid for: as camberMoment.
// Source: strip theory.
func (l *lattice) controlMoment(c control) float64 {
	sum := 0.0
	for i, s := range l.strips {
		sum += float64(float64(2*float64(c.momentSlope*c.cover[i])) * float64(float64(s.Chord*s.Chord)*s.projected))
	}
	return sum
}

// stripStrength sums the circulation of the panels of each strip.
func (l *lattice) stripStrength(strength []float64) []float64 {
	sums := make([]float64, len(l.strips))
	for i, g := range strength {
		sums[l.panels[i].strip] += g
	}
	return sums
}
