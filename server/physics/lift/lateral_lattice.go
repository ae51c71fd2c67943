package lift

import "pitgate/server/physics/planform"

// newLateralLattice cuts all surfaces into panels, fins on the plane of symmetry too. A model with a surface off that plane on one side
// only has no symmetry to use: its lattice is unfolded.
func newLateralLattice(surfaces []planform.Surface, reference Reference, slope slopeOf) lattice {
	ready, joints := join(surfaces, func(planform.Surface) bool { return true })
	l := lattice{chosen: -1, meanWidth: make([]float64, len(surfaces)), joints: joints, ground: reference.GroundHeight}
	lopsided := false
	for i, s := range surfaces {
		lopsided = lopsided || !s.Mirrored && !onPlane(s)
		l.addSurface(i, ready[i], reference.Grid, !inSymmetry(s))
	}
	l.loseSlope(reference.ReynoldsPerMeter, slope)
	if lopsided {
		l.unfold()
	}
	return l
}

// unfold adds the port twins of all strips as strips of their own.
func (l *lattice) unfold() {
	twin := make([]int, len(l.strips))
	for i := range twin {
		if l.strips[i].alone {
			continue
		}
		twin[i] = len(l.strips)
		l.strips = append(l.strips, l.strips[i].mirrored())
		l.strips[i].alone = true
	}
	for _, p := range l.panels {
		if at := twin[p.strip]; at > 0 {
			l.panels = append(l.panels, p.mirrored(at))
		}
	}
}

// mirrored returns the port twin of a strip; its edges change places so that it still runs to starboard.
func (s *latticeStrip) mirrored() latticeStrip {
	m := *s
	m.alone, m.port, m.Y = true, true, -s.Y
	m.a, m.b, m.middle = s.b.mirrored(), s.a.mirrored(), s.middle.mirrored()
	m.chordA, m.chordB = s.chordB, s.chordA
	m.builtA, m.builtB = s.builtB, s.builtA
	return m
}

// mirrored returns the port twin of a panel as part of a strip.
func (p panel) mirrored(strip int) panel {
	p.a, p.b, p.control = p.b.mirrored(), p.a.mirrored(), p.control.mirrored()
	p.normalY, p.strip = -p.normalY, strip
	return p
}

// mirrored returns the place at the other side of the plane of symmetry.
func (p point) mirrored() point { return point{p.x, -p.y, p.z} }

// whole reports whether no strip has an image.
func (l *lattice) whole() bool {
	for i := range l.strips {
		if !l.strips[i].alone {
			return false
		}
	}
	return true
}
