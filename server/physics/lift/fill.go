package lift

import "math"

// fill turns the circulations into coefficients.
func (s *Solution) fill(strengths [][]float64, controls []control) {
	area, chord := s.Reference.Area, s.Reference.Chord
	liftSlope, momentSlope := s.lattice.liftAndMoment(strengths[columnIncidence])
	basicLift, basicMoment := s.lattice.liftAndMoment(strengths[columnBasic])
	basicMoment += s.lattice.camberMoment()
	rateLift, rateMoment := s.lattice.liftAndMoment(strengths[columnRate])
	s.LiftSlope, s.momentZeroSlope = liftSlope/area, momentSlope/float64(area*chord)
	s.rateLift, s.rateMomentZero = rateLift/area, rateMoment/float64(area*chord)
	s.ZeroLiftIncidence = -basicLift / liftSlope
	s.NeutralPointX = -float64(chord*s.momentZeroSlope) / s.LiftSlope
	s.ZeroLiftMoment = basicMoment/float64(area*chord) + float64(s.momentZeroSlope*s.ZeroLiftIncidence)
	s.fillInduced(strengths)
	s.fillStrips(strengths, controls)
	s.fillSurfaces(strengths)
	for i, c := range controls {
		lift, moment := s.lattice.liftAndMoment(strengths[columnControls+i])
		moment += s.lattice.controlMoment(c)
		s.Controls = append(s.Controls, ControlEffect{
			Surface: c.surface, Name: c.name, Role: c.role, ThrowUp: c.throwUp, ThrowDown: c.throwDown, LiftSlope: lift / area, whole: c.whole,
			momentZero: moment / float64(area*chord), chord: chord,
		})
	}
}

// fillInduced stores the induced drag as a quadratic of the incidence.
func (s *Solution) fillInduced(strengths [][]float64) {
	slope, basic := s.lattice.stripStrength(strengths[columnIncidence]), s.lattice.stripStrength(strengths[columnBasic])
	far := s.lattice.trefftzMatrix()
	washSlope, washBasic := washOf(far, slope), washOf(far, basic)
	area := s.Reference.Area
	quadratic := s.lattice.inducedArea(slope, washSlope) / area
	s.inducedCross = (s.lattice.inducedArea(slope, washBasic) + s.lattice.inducedArea(basic, washSlope)) / area
	s.inducedBasic = s.lattice.inducedArea(basic, washBasic) / area
	s.InducedFactor = quadratic / float64(s.LiftSlope*s.LiftSlope)
	aspect := float64(s.Reference.Span*s.Reference.Span) / area
	s.SpanEfficiency = 1 / float64(float64(math.Pi*aspect)*s.InducedFactor)
}

// fillStrips stores the span loading.
func (s *Solution) fillStrips(strengths [][]float64, controls []control) {
	columns := make([][]float64, len(strengths))
	for k := range strengths {
		columns[k] = s.lattice.stripStrength(strengths[k])
	}
	for i, strip := range s.lattice.strips {
		out := strip.Strip
		out.LiftSlope = float64(2*columns[columnIncidence][i]) / strip.Chord
		out.BasicLift = float64(2*columns[columnBasic][i]) / strip.Chord
		for k, c := range controls {
			out.controls = append(out.controls, float64(2*columns[columnControls+k][i])/strip.Chord)
			out.chordRatio = append(out.chordRatio, float64(c.chordRatio*c.cover[i]))
		}
		s.Strips = append(s.Strips, out)
	}
}

// fillSurfaces stores the share of each surface.
func (s *Solution) fillSurfaces(strengths [][]float64) {
	for _, name := range s.lattice.names {
		only := s.lattice.only(name)
		slope, moment := only.liftAndMoment(strengths[columnIncidence])
		basic, _ := only.liftAndMoment(strengths[columnBasic])
		share := SurfaceLift{Name: name.name, Role: name.role, LiftSlope: slope / s.Reference.Area, BasicLift: basic / s.Reference.Area}
		if slope != 0 {
			share.CentreX = -moment / slope
		}
		s.Surfaces = append(s.Surfaces, share)
	}
}

// finite reports whether every figure that leaves the package is a number.
func (s *Solution) finite() bool {
	sum := s.LiftSlope + s.ZeroLiftIncidence + s.ZeroLiftMoment + s.NeutralPointX + s.InducedFactor + s.SpanEfficiency +
		s.inducedBasic + s.inducedCross + s.rateLift + s.rateMomentZero
	for _, strip := range s.Strips {
		sum += strip.LiftSlope + strip.BasicLift
	}
	for _, c := range s.Controls {
		sum += c.LiftSlope + c.momentZero
	}
	return !math.IsNaN(sum) && !math.IsInf(sum, 0)
}
