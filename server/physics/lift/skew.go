package lift

// wakeMotion is what a motion does to the wake of a strip, or what comes of it, in each of three ways: the wake runs aside to port or up by
// the distance behind its trailing edge, or is bent to port by half the square of that distance.
type wakeMotion struct{ aside, raised, bent float64 }

// plus returns the sum with a multiple of another.
func (w wakeMotion) plus(factor float64, v wakeMotion) wakeMotion {
	return wakeMotion{w.aside + float64(factor*v.aside), w.raised + float64(factor*v.raised), w.bent + float64(factor*v.bent)}
}

// wakeMotion returns what a unit of the motion does to a wake from a place on: it runs with the stream.
//
// Formula: -v and w to port and up, -dv/dx for the bend; where v, w velocities of the motion to starboard and up over speed.
// Valid for: small motions.
// Source: streamlines of a rotation.
func (m motion) wakeMotion(from point, span float64) wakeMotion {
	v := m.velocityAt(from, span)
	out := wakeMotion{aside: -v.y, raised: v.z}
	if m == yawRate {
		out.bent = -2 / span
	}
	return out
}

// skewMatrix returns the change of normal velocity at every control point per unit circulation of every strip and motion of its wake, row by
// row: behind the trailing edge the wake runs with the stream and no longer along x, which changes the wash on the surface that sheds it
// and, more, on those behind it, past which the wake has moved.
//
// Formula: turned of b's leg less that of a's, over 4 pi, images included; between surfaces that are not joined with the mean over the strip,
// by passing, of the part by the shift of the legs.
// Valid for: small motions; wakes without rolling up.
// Source: Biot-Savart law for legs along the stream, first order in the motion.
func (l *lattice) skewMatrix() []wakeMotion {
	n := len(l.strips)
	matrix, cores, seen := make([]wakeMotion, len(l.panels)*n), make([]float64, n), make([]reception, 0, 4)
	for i := range l.panels {
		p := &l.panels[i]
		if i == 0 || p.strip != l.panels[i-1].strip {
			l.coresAround(p.strip, cores)
		}
		seen = l.receptions(p, seen[:0])
		for j := range l.strips {
			s, those := &l.strips[j], seen
			if s.alone {
				those = seen[:len(seen)/2]
			}
			matrix[i*n+j] = s.skewed(those, cores[j], l.joints.joined(l.strips[p.strip].surface, s.surface))
		}
	}
	return matrix
}

// skewColumn returns the right-hand side that a unit of a motion makes of a symmetric loading by moving its wake.
//
// Formula: -sum k g b; where k skewMatrix, g circulation over speed of a strip, b wakeMotion at its trailing edge, over the three ways.
func (l *lattice) skewColumn(skew []wakeMotion, strips []float64, m motion, span float64) []float64 {
	drifts := make([]wakeMotion, len(strips))
	for j, g := range strips {
		end := l.strips[j].middle
		end.x += l.strips[j].Chord
		drifts[j] = wakeMotion{}.plus(g, m.wakeMotion(end, span))
	}
	column := make([]float64, len(l.panels))
	for i := range column {
		sum := 0.0
		for j, k := range skew[i*len(drifts) : (i+1)*len(drifts)] {
			b := &drifts[j]
			sum += float64(k.aside*b.aside) + float64(k.raised*b.raised) + float64(k.bent*b.bent)
		}
		column[i] = -sum
	}
	return column
}
