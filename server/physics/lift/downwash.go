package lift

// UpwashAt returns the upward velocity at a point over speed, per radian of the model's incidence: positive ahead of a wing,
// negative behind it (downwash slope = -UpwashAt). Wings and canards count, tails do not.
//
// Valid for: points off the surfaces by more than a strip.
// Source: the solved lattice.
func (s *Solution) UpwashAt(x, y, z float64) float64 {
	return s.upwash(s.slopeStrength, point{x, y, z}, func(strip *latticeStrip) bool { return strip.stallsTheModel() })
}

// upwash returns the upward velocity over speed that circulations make at a point; counts says which strips take part.
func (s *Solution) upwash(strength []float64, place point, counts func(*latticeStrip) bool) float64 {
	sum := 0.0
	for j := range s.lattice.panels {
		p := &s.lattice.panels[j]
		strip := &s.lattice.strips[p.strip]
		if !counts(strip) {
			continue
		}
		core := float64(coreFactor * strip.Width)
		own, twin := s.lattice.induced(p, place, float64(core*core))
		sum += float64(strength[j] * (own.z + twin.z))
	}
	return sum
}

// Downwash returns the mean angle by which all other surfaces turn the stream down at a surface, controls neutral: its slope with the
// model's incidence and its value at zero incidence, rad. found is false when no such surface takes part.
//
// Formula: mean over the surface's quarter-chord line of -w/V, weighted by area.
// Valid for: surfaces off the wake sheet by more than a strip, or in it as the cores smooth it.
// Source: the solved lattice.
func (s *Solution) Downwash(surface string) (slope, atZero float64, found bool) {
	area := 0.0
	others := func(strip *latticeStrip) bool { return strip.Surface != surface }
	for i := range s.lattice.strips {
		strip := &s.lattice.strips[i]
		if strip.Surface != surface {
			continue
		}
		place := point{strip.QuarterX, strip.Y, strip.Z}
		weight := float64(strip.Chord * strip.Width)
		area += weight
		slope -= float64(weight * s.upwash(s.slopeStrength, place, others))
		atZero -= float64(weight * s.upwash(s.basicStrength, place, others))
	}
	if area == 0 {
		return 0, 0, false
	}
	return slope / area, atZero / area, true
}
