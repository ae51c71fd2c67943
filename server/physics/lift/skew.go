package lift

import "math"

// skewMatrix returns the change of normal velocity at every control point per unit circulation of every strip and sideslip, row by row:
// behind the trailing edge the wake runs with the stream, to port in sideslip, and no longer along x, which changes the wash on the surface
// that sheds it and, more, on those behind it, past which the wake has moved aside.
//
// Formula: normal velocity of skewed with skewedLeg within a surface and between joined ones; with turnedLeg plus shifted between others.
// Valid for: small sideslip; straight wakes without rolling up.
// Source: Biot-Savart law for legs along the stream, first order in the sideslip.
func (l *lattice) skewMatrix() []float64 {
	n := len(l.strips)
	matrix, cores := make([]float64, len(l.panels)*n), make([]float64, n)
	for i := range l.panels {
		p := &l.panels[i]
		if i == 0 || p.strip != l.panels[i-1].strip {
			l.coresAround(p.strip, cores)
		}
		receiver := &l.strips[p.strip]
		for j := range l.strips {
			s, leg, shift := &l.strips[j], skewedLeg, 0.0
			if !l.joints.joined(receiver.surface, s.surface) {
				leg, shift = turnedLeg, l.shifted(s, receiver, p.control.x, cores[j])
			}
			v := l.skewed(s, p.control, cores[j], leg)
			matrix[i*n+j] = float64(p.normalY*v.y) + float64(p.normalZ*v.z) + shift
		}
	}
	return matrix
}

// skewColumn returns the right-hand side that a unit of a motion makes of a symmetric loading by shifting its wake.
//
// Formula: -sum k g b; where k skewMatrix, g circulation over speed of a strip, b the motion's sideslip at its trailing edge or, for a place
// behind on another surface, midway between: a wake that bends in yaw has moved aside there as far as a straight one at that sideslip.
func (l *lattice) skewColumn(skew, strips []float64, m motion, span float64) []float64 {
	column := make([]float64, len(l.panels))
	for i := range column {
		for j, g := range strips {
			drift := -float64(g * m.velocityAt(l.bend(&l.panels[i], &l.strips[j]), span).y)
			column[i] -= float64(skew[i*len(strips)+j] * drift)
		}
	}
	return column
}

// bend returns the place whose stream gives the direction of a strip's wake as a panel feels it.
func (l *lattice) bend(receiver *panel, s *latticeStrip) point {
	end := s.middle
	end.x += s.Chord
	if behind := receiver.control.x - end.x; behind > 0 && !l.joints.joined(l.strips[receiver.strip].surface, s.surface) {
		end.x += float64(0.5 * behind)
	}
	return end
}

// legChange gives the change of velocity, times 4 pi, of a leg from a place along x with its direction, felt with the square of a core radius.
type legChange func(from, place point, core float64) velocity

// skewed returns the change of velocity at a place per unit circulation of a strip and sideslip, of its wake, its port twin's and their
// images below the ground. At port the same shift is outward, hence the sign of the twin.
func (l *lattice) skewed(s *latticeStrip, place point, core float64, leg legChange) velocity {
	v := l.skewedPair(s, place, core, leg)
	if s.alone {
		return v
	}
	twin := l.skewedPair(s, place.mirrored(), core, leg)
	return v.plus(velocity{twin.y, -twin.z})
}

// skewedPair returns the change by a strip's own wake and its image below the ground.
func (l *lattice) skewedPair(s *latticeStrip, place point, core float64, leg legChange) velocity {
	v := s.skewedWake(place, core, leg)
	if l.ground > 0 {
		under := s.skewedWake(place.below(l.ground), 0, leg)
		v = v.plus(velocity{under.y, -under.z})
	}
	return v
}

// skewedWake returns the change by the two legs of a strip from its trailing edge on.
func (s *latticeStrip) skewedWake(place point, core float64, leg legChange) velocity {
	a, b := s.wakeStarts()
	in, out := leg(a, place, core), leg(b, place, core)
	return velocity{float64((out.y - in.y) * inverseFourPi), float64((out.z - in.z) * inverseFourPi)}
}

// wakeStarts returns the ends of the trailing edge of a strip.
func (s *latticeStrip) wakeStarts() (a, b point) {
	a, b = s.a, s.b
	a.x += s.chordA
	b.x += s.chordB
	return a, b
}

// below returns the place that the ground at a height under the origin reflects to this one.
func (p point) below(height float64) point { return point{p.x, p.y, -float64(2*height) - p.z} }

// skewedLeg returns the change of a leg's velocity, times 4 pi, as its direction turns to port.
//
// Formula: v = d x r/(|r| (|r| - d r)); dv = d' x r/D + d x r |r| (d' r)/D^2; where d = (1, 0, 0), d' = (0, -1, 0), D = |r| (|r| - x); the
// part along x is left out.
// Valid for: places off the leg; nothing on it; no core.
// Source: Biot-Savart law for a leg without end, differentiated.
func skewedLeg(from, place point, _ float64) velocity {
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

// turnedLeg returns what skewedLeg has over the change of velocity as the whole leg moves to port by x, which shifted takes.
//
// Formula: dv = f s y/|r|^3 (0, z, -y); where s = y^2 + z^2, f = 1/s or, with a core, legFactor's over 1 + x/|r|.
// Valid for: any place; nothing on the leg.
// Source: skewedLeg less x times the derivative of the leg's velocity with y.
func turnedLeg(from, place point, core float64) velocity {
	x, y, z := place.x-from.x, place.y-from.y, place.z-from.z
	square := float64(y*y) + float64(z*z)
	r := math.Sqrt(float64(x*x) + square)
	core = max(0, core-float64(z*z))
	if !(square > float64(1e-12*float64(r*r))) {
		return velocity{}
	}
	sum := square + core
	turn := float64(float64(square*y)*(square+float64(3*core))) / float64(float64(sum*sum)*float64(r*float64(r*r)))
	return velocity{float64(turn * z), -float64(turn * y)}
}

// shifted returns the change of the normal velocity of a receiving strip at a place x along the stream, per unit circulation of another and
// sideslip, as the wake there moves aside, in the mean over the width of the receiving strip: a wake close to a control point changes the
// velocity there by any amount whatever, but over the strip by no more than its edges feel.
//
// Formula: (W(b) - W(a))/w; where W aside at the edges, w width. Across the stream the velocity of a wake has neither source nor, but for
// what is left out along x, rotation, so that its normal part changes with y as its upward part does along the strip.
// Valid for: legs along x.
// Source: mean of a derivative; continuity.
func (l *lattice) shifted(s, receiver *latticeStrip, x, core float64) float64 {
	a, b := receiver.a, receiver.b
	a.x, b.x = x, x
	return (l.aside(s, b, core) - l.aside(s, a, core)) / receiver.Width
}

// aside returns how far the wake of a strip and sideslip has moved to port at a place times the upward velocity that it makes there per unit
// circulation, with its port twin's and their images below the ground, each with the sign that it has in shifted.
func (l *lattice) aside(s *latticeStrip, place point, core float64) float64 {
	sum := l.asidePair(s, place, core)
	if !s.alone {
		sum += l.asidePair(s, place.mirrored(), core)
	}
	return sum
}

// asidePair returns aside of a strip's own wake and its image below the ground.
func (l *lattice) asidePair(s *latticeStrip, place point, core float64) float64 {
	sum := s.asideWake(place, core)
	if l.ground > 0 {
		sum -= s.asideWake(place.below(l.ground), 0)
	}
	return sum
}

// asideWake returns aside of the two legs of a strip from its trailing edge on.
func (s *latticeStrip) asideWake(place point, core float64) float64 {
	a, b := s.wakeStarts()
	return float64((asideLeg(b, place, core) - asideLeg(a, place, core)) * inverseFourPi)
}

// asideLeg returns x times the upward velocity of a leg from a place along x, times 4 pi; x counts from its start.
func asideLeg(from, place point, core float64) float64 {
	x, y, z := place.x-from.x, place.y-from.y, place.z-from.z
	square := float64(y*y) + float64(z*z)
	factor := legFactor(x, square, math.Sqrt(float64(x*x)+square), core-float64(z*z))
	return float64(float64(x*y) * factor)
}
