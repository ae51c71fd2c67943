package lift

import "math"

// skewMatrix returns the change of normal velocity at every control point per unit circulation of every strip and sideslip, row by row:
// behind the trailing edge the wake runs with the stream, to port in sideslip, and no longer along x, which changes the wash on the surface
// that sheds it and on those joined to it.
//
// Valid for: small sideslip; the shift of a wing's wake at the tail is left out.
// Source: Biot-Savart law for legs along the stream, first order in the sideslip.
func (l *lattice) skewMatrix() []float64 {
	n := len(l.strips)
	matrix := make([]float64, len(l.panels)*n)
	for i := range l.panels {
		p := &l.panels[i]
		receiver := l.strips[p.strip].surface
		for j := range l.strips {
			if s := &l.strips[j]; l.joints.joined(receiver, s.surface) {
				v := l.skewed(s, p.control)
				matrix[i*n+j] = float64(p.normalY*v.y) + float64(p.normalZ*v.z)
			}
		}
	}
	return matrix
}

// skewColumn returns the right-hand side that a unit of a motion makes of a symmetric loading by shifting its wake.
//
// Formula: -sum k g b; where k skewMatrix, g circulation over speed of a strip, b the motion's sideslip at its trailing edge.
func (l *lattice) skewColumn(skew, strips []float64, m motion, span float64) []float64 {
	drift := make([]float64, len(strips))
	for j := range l.strips {
		end := l.strips[j].middle
		end.x += l.strips[j].Chord
		drift[j] = -float64(strips[j] * m.velocityAt(end, span).y)
	}
	column := make([]float64, len(l.panels))
	for i := range column {
		for j, g := range drift {
			column[i] -= float64(skew[i*len(drift)+j] * g)
		}
	}
	return column
}

// skewed returns the change of velocity at a place per unit circulation of a strip and sideslip, of its wake, its port twin's and their
// images below the ground. At port the same shift is outward, hence the sign of the twin.
func (l *lattice) skewed(s *latticeStrip, place point) velocity {
	v := l.skewedPair(s, place)
	if s.alone {
		return v
	}
	twin := l.skewedPair(s, place.mirrored())
	return v.plus(velocity{twin.y, -twin.z})
}

// skewedPair returns the change by a strip's own wake and its image below the ground.
func (l *lattice) skewedPair(s *latticeStrip, place point) velocity {
	v := s.skewedWake(place)
	if l.ground > 0 {
		under := s.skewedWake(point{place.x, place.y, -float64(2*l.ground) - place.z})
		v = v.plus(velocity{under.y, -under.z})
	}
	return v
}

// skewedWake returns the change by the two legs of a strip from its trailing edge on.
func (s *latticeStrip) skewedWake(place point) velocity {
	a, b := s.a, s.b
	a.x += s.chordA
	b.x += s.chordB
	in, out := skewedLeg(a, place), skewedLeg(b, place)
	return velocity{float64((out.y - in.y) * inverseFourPi), float64((out.z - in.z) * inverseFourPi)}
}

// skewedLeg returns the change of velocity, times 4 pi, of a leg from a place along x as its direction turns to port.
//
// Formula: v = d x r/(|r| (|r| - d r)); dv = d' x r/D + d x r |r| (d' r)/D^2; where d = (1, 0, 0), d' = (0, -1, 0), D = |r| (|r| - x); the
// part along x is left out.
// Valid for: places off the leg; nothing on it.
// Source: Biot-Savart law for a leg without end, differentiated.
func skewedLeg(from, place point) velocity {
	x, y, z := place.x-from.x, place.y-from.y, place.z-from.z
	square := float64(y*y) + float64(z*z)
	r := math.Sqrt(float64(x*x) + square)
	if !(square > float64(1e-12*float64(r*r))) {
		return velocity{}
	}
	// |r| - x without cancellation where the place lies far behind.
	ahead := r - x
	if x > 0 {
		ahead = square / (r + x)
	}
	d := float64(r * ahead)
	turn := -float64(r*y) / float64(d*d)
	return velocity{-float64(turn * z), x/d + float64(turn*y)}
}
