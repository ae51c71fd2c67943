package lift

// motion is a way in which a model moves sideways or turns about the axes through x = z = 0.
type motion int

const (
	sideslip motion = iota // the stream comes from starboard, rad
	rollRate               // starboard goes down, p b/(2 V)
	yawRate                // the nose goes to starboard, r b/(2 V)
	motions
)

// vector is a velocity over speed, or a force.
type vector struct{ x, y, z float64 }

// velocityAt returns the velocity of the air that a unit of the motion adds at a place, over speed.
//
// Formula: (0, -1, 0) in sideslip; 2/b (0, -z, y) in roll; 2/b (-y, x, 0) in yaw; where b span, m.
// Valid for: small angles, x aft, y to starboard, z up.
// Source: kinematics.
func (m motion) velocityAt(at point, span float64) vector {
	switch m {
	case rollRate:
		return vector{0, -float64(2*at.z) / span, float64(2*at.y) / span}
	case yawRate:
		return vector{-float64(2*at.y) / span, float64(2*at.x) / span, 0}
	default:
		return vector{0, -1, 0}
	}
}

// motionColumn returns the right-hand side of a unit of a motion: the normal velocity that the circulation must undo.
func (l *lattice) motionColumn(m motion, span float64) []float64 {
	column := make([]float64, len(l.panels))
	for i := range l.panels {
		p := &l.panels[i]
		v := m.velocityAt(p.control, span)
		column[i] = -float64(p.normalY*v.y) - float64(p.normalZ*v.z)
	}
	return column
}

// streamColumn returns the right-hand side that a motion makes of a symmetric one, as the local speed along the stream changes.
//
// Formula: column times the change of speed along x at the control point.
// Valid for: columns that are proportional to the speed: incidence, twist and camber.
// Source: boundary condition, to the first order of the motion.
func (l *lattice) streamColumn(column []float64, m motion, span float64) []float64 {
	out := make([]float64, len(column))
	for i := range column {
		out[i] = float64(column[i] * m.velocityAt(l.panels[i].control, span).x)
	}
	return out
}

// addTiltedYaw adds to a right-hand side of yaw, per rad of incidence, that the axis of yaw is across the stream: what lies higher is further
// behind it and feels more sideslip. That what lies further to starboard moves down, streamColumn holds.
//
// Formula: -ny 2 z/b; where ny normal's part to starboard.
// Valid for: small angles.
// Source: kinematics.
func (l *lattice) addTiltedYaw(column []float64, span float64) {
	for i := range column {
		p := &l.panels[i]
		column[i] -= float64(p.normalY*float64(2*p.control.z)) / span
	}
}

// lateralForces are side force to starboard (m2), rolling moment starboard down and yawing moment nose to starboard (m3), all over dynamic
// pressure, about x = z = 0; or their coefficients.
type lateralForces struct{ side, roll, yaw float64 }

// plus returns the sum with a multiple of others.
func (f lateralForces) plus(factor float64, g lateralForces) lateralForces {
	return lateralForces{f.side + float64(factor*g.side), f.roll + float64(factor*g.roll), f.yaw + float64(factor*g.yaw)}
}

// about returns the same forces with their moments about another point; arms over span.
func (f lateralForces) about(x, z float64) lateralForces {
	return lateralForces{f.side, f.roll - float64(z*f.side), f.yaw + float64(x*f.side)}
}

// add adds a force at a place.
//
// Formula: roll = -(y Fz - z Fy), yaw = -(x Fy - y Fx).
// Valid for: x aft, y to starboard, z up.
// Source: moment of a force.
func (f *lateralForces) add(at point, force vector) {
	f.side += force.y
	f.roll += float64(at.z*force.y) - float64(at.y*force.z)
	f.yaw += float64(at.y*force.x) - float64(at.x*force.y)
}

// forcesOf returns the lateral forces of circulations in the undisturbed stream, both sides.
//
// Formula: F/q = 2 g (0, -lz, ly); where g circulation over speed, l the bound leg.
// Valid for: circulations opposite at port, or a whole lattice.
// Source: Kutta-Joukowski theorem.
func (l *lattice) forcesOf(strength []float64) lateralForces {
	var sum lateralForces
	for i := range l.panels {
		p := &l.panels[i]
		factor := float64(2 * float64(strength[i]*l.strips[p.strip].sides()))
		sum.add(p.boundMiddle(), vector{0, -float64(factor * (p.b.z - p.a.z)), float64(factor * (p.b.y - p.a.y))})
	}
	return sum
}

// boundMiddle returns the middle of the bound leg.
func (p *panel) boundMiddle() point { return middleOf(p.a, p.b) }

// middleOf returns the place midway between two.
func middleOf(a, b point) point {
	return point{float64(0.5 * (a.x + b.x)), float64(0.5 * (a.y + b.y)), float64(0.5 * (a.z + b.z))}
}

// crossForces returns the lateral forces that a unit of a motion makes of symmetric circulations: on the bound legs and on the trailing
// legs as far as the trailing edge. It holds the roll due to sideslip of swept wings under lift and the tilt of the lift in roll.
//
// Formula: F/q = 2 g U x l; where U the velocity of the motion over speed at the middle of the leg l.
// Valid for: small motions; behind the trailing edge the wake bears no force.
// Source: Kutta-Joukowski theorem, first order in the product of lift and motion.
func (l *lattice) crossForces(strength []float64, m motion, span float64) lateralForces {
	var sum lateralForces
	for i := range l.panels {
		p := &l.panels[i]
		strip := &l.strips[p.strip]
		factor := float64(2 * float64(strength[i]*strip.sides()))
		corners := p.corners(strip)
		for k, start := range corners[:3] {
			end := corners[k+1]
			middle := middleOf(start, end)
			sum.add(middle, legForce(factor, m.velocityAt(middle, span), start, end))
		}
	}
	return sum
}

// corners returns the ends of the legs of a panel up to the trailing edge, from a's leg to b's.
func (p *panel) corners(strip *latticeStrip) [4]point {
	endA, endB := p.a, p.b
	endA.x, endB.x = strip.a.x+strip.chordA, strip.b.x+strip.chordB
	return [4]point{endA, p.a, p.b, endB}
}

// inclinedForces returns the lateral forces that circulations of a lateral motion gain as their legs drop aft: per rad of incidence of the
// model, or by the incidence and twist that are built in. They hold most of the side force in roll of a swept wing under lift.
//
// Formula: F/q = 2 g (0, -lz, 0) of the inclined leg, and its arms; where z falls by the distance behind the origin per rad of incidence, or by
// incidence and twist times the distance behind the leading edge. With the model's incidence x grows by z; the roll of that and the forces
// along x follow from turning the axes (At).
// Valid for: small angles; circulations opposite at port, or a whole lattice.
// Source: Kutta-Joukowski theorem, first order in the product of incidence and motion.
func (l *lattice) inclinedForces(strength []float64, built bool) lateralForces {
	var sum lateralForces
	for i := range l.panels {
		p := &l.panels[i]
		strip := &l.strips[p.strip]
		factor := float64(2 * float64(strength[i]*strip.sides()))
		corners := p.corners(strip)
		drops := [4]float64{corners[0].x, corners[1].x, corners[2].x, corners[3].x}
		if built {
			drops = strip.builtDrops(p)
		}
		for k, start := range corners[:3] {
			end := corners[k+1]
			middle, rise := middleOf(start, end), float64(factor*(end.z-start.z))
			sum.add(middle, vector{0, float64(factor * (drops[k+1] - drops[k])), 0})
			if built {
				sum.roll += float64(float64(0.5*(drops[k]+drops[k+1])) * rise)
			} else {
				sum.yaw += float64(middle.z * rise)
			}
		}
	}
	return sum
}

// builtDrops returns how far incidence and twist lower the corners of a panel.
func (s *latticeStrip) builtDrops(p *panel) [4]float64 {
	a, b := float64(p.normalZ*s.builtA), float64(p.normalZ*s.builtB)
	return [4]float64{float64(a * s.chordA), float64(a * (p.a.x - s.a.x)), float64(b * (p.b.x - s.b.x)), float64(b * s.chordB)}
}

// legForce returns factor U x l for a leg between two points.
func legForce(factor float64, u vector, start, end point) vector {
	lx, ly, lz := end.x-start.x, end.y-start.y, end.z-start.z
	return vector{
		float64(factor * (float64(u.y*lz) - float64(u.z*ly))),
		float64(factor * (float64(u.z*lx) - float64(u.x*lz))),
		float64(factor * (float64(u.x*ly) - float64(u.y*lx))),
	}
}

// dragYaw returns the yawing moment over dynamic pressure (m3) of the induced drag that two loadings make with each other's wash.
//
// Formula: N/q = -sum y (g1 w2 + g2 w1) ds; where g circulation over speed of a strip, w normal velocity far behind it, half of which acts
// on the strip.
// Valid for: one loading symmetric, the other opposite at port.
// Source: lifting-line theory; a swept wing shares the drag of the whole wing differently among its strips.
func (l *lattice) dragYaw(one, two loading) float64 {
	sum := 0.0
	for i := range l.strips {
		s := &l.strips[i]
		drag := float64(one.strength[i]*two.wash[i]) + float64(two.strength[i]*one.wash[i])
		sum -= float64(float64(s.sides()*s.middle.y) * float64(drag*s.Width))
	}
	return sum
}

// loading is the circulation of every strip over speed (m) with the normal velocity that it makes far behind them.
type loading struct{ strength, wash []float64 }

// loadingOf sums circulations to strips and adds their wash by a matrix of farMatrix.
func (l *lattice) loadingOf(strength, far []float64) loading {
	strips := l.stripStrength(strength)
	return loading{strips, washOf(far, strips)}
}
