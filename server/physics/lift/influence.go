package lift

// coreFactor is the core radius of a trailing leg felt by another surface, over the wider of the two strips.
const coreFactor = 0.7

// velocity is a velocity across the stream over the speed.
type velocity struct{ y, z float64 }

// influence returns the matrices of normal velocities at the control points per unit circulation over speed, port side included, one
// for each image: 1 for the same circulation there (symmetric flight), -1 for the opposite one (rolling, yawing, sideslip).
func (l *lattice) influence(images ...float64) [][]float64 {
	n := len(l.panels)
	matrices := make([][]float64, len(images))
	for k := range matrices {
		matrices[k] = make([]float64, n*n)
	}
	cores, own, twin := make([]float64, len(l.strips)), make([]float64, n), make([]float64, n)
	for i := range l.panels {
		if i == 0 || l.panels[i].strip != l.panels[i-1].strip {
			l.coresAround(l.panels[i].strip, cores)
		}
		l.normalWash(&l.panels[i], cores, own, twin)
		for k, image := range images {
			row := matrices[k][i*n : (i+1)*n]
			for j := range row {
				row[j] = own[j] + float64(image*twin[j])
			}
		}
	}
	for _, matrix := range matrices {
		l.decamber(matrix)
	}
	return matrices
}

// normalWash fills in the normal velocities at one control point of all horseshoes and of their port twins.
func (l *lattice) normalWash(at *panel, cores, own, twin []float64) {
	for j := range l.panels {
		source := &l.panels[j]
		here, there := l.induced(source, at.control, cores[source.strip])
		own[j] = float64(at.normalY*here.y) + float64(at.normalZ*here.z)
		twin[j] = float64(at.normalY*there.y) + float64(at.normalZ*there.z)
	}
}

// coresAround fills in the squares of the core radii that one strip feels in all others.
func (l *lattice) coresAround(strip int, cores []float64) {
	for j := range cores {
		cores[j] = l.coreBetween(strip, j)
	}
}

// decamber adds what every strip loses of its incidence by its own lift, so that its section has its own lift slope.
//
// Formula: -2/c loss at every pair of panels of one strip; where loss as loseSlope gives it, 2/c the lift coefficient of unit circulation.
// Valid for: attached flow.
// Source: decambering of strips, linear in the lift.
func (l *lattice) decamber(matrix []float64) {
	n := len(l.panels)
	for i := range l.panels {
		strip := &l.strips[l.panels[i].strip]
		if strip.slopeLoss == 0 {
			continue
		}
		lost := float64(2*strip.slopeLoss) / strip.Chord
		for j := range l.panels {
			if l.panels[j].strip == l.panels[i].strip {
				matrix[i*n+j] -= lost
			}
		}
	}
}

// induced returns the velocity at a point per unit circulation of a horseshoe and that of its port twin, which a lone one does not have.
func (l *lattice) induced(p *panel, place point, core float64) (own, twin velocity) {
	own.y, own.z = p.velocity(place, core)
	if l.ground > 0 {
		own = own.plus(p.belowGround(place, l.ground))
	}
	if l.strips[p.strip].alone {
		return own, twin
	}
	place.y = -place.y
	twin.y, twin.z = p.velocity(place, core)
	if l.ground > 0 {
		twin = twin.plus(p.belowGround(place, l.ground))
	}
	twin.y = -twin.y
	return own, twin
}

// plus adds two velocities.
func (v velocity) plus(w velocity) velocity { return velocity{v.y + w.y, v.z + w.z} }

// belowGround returns the velocity of a horseshoe's image below the ground.
//
// Formula: v_image(P) = R v(R P); where R turns z into -2 h - z for places and w into -w for velocities, so that nothing passes the ground.
// Valid for: level ground, the wake along x.
// Source: method of images.
func (p *panel) belowGround(place point, height float64) velocity {
	y, z := p.velocity(point{place.x, place.y, -float64(2*height) - place.z}, 0)
	return velocity{y, -z}
}

// coreBetween returns the square of the core radius that a strip feels in the trailing legs of another.
//
// Within a surface, and between surfaces that meet edge to edge, the legs run along strip edges and need none. Between other surfaces
// a leg may pass through a control point, where the bare vortex would give any velocity whatever; the core spreads it over the wider strip.
func (l *lattice) coreBetween(receiver, source int) float64 {
	r, s := &l.strips[receiver], &l.strips[source]
	if l.joints.joined(r.surface, s.surface) {
		return 0
	}
	core := float64(coreFactor * max(r.Width, s.Width))
	return float64(core * core)
}
