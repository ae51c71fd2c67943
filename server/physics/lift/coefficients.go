package lift

// Lift returns the lift coefficient at an incidence of the model's x axis, controls neutral.
func (s *Solution) Lift(incidence float64) float64 {
	return float64(s.LiftSlope * (incidence - s.ZeroLiftIncidence))
}

// IncidenceFor returns the incidence of the model's x axis at a lift coefficient, controls neutral, rad.
func (s *Solution) IncidenceFor(liftCoefficient float64) float64 {
	return s.ZeroLiftIncidence + liftCoefficient/s.LiftSlope
}

// MomentSlopeAt returns the slope of the pitching-moment coefficient about x with incidence, per rad, nose up positive.
//
// Formula: Cm_alpha = CL_alpha (x - x_np)/c.
// Valid for: lifting surfaces alone; add BodyMomentSlope for bodies.
// Source: definition of the neutral point.
func (s *Solution) MomentSlopeAt(x float64) float64 {
	return float64(s.LiftSlope*(x-s.NeutralPointX)) / s.Reference.Chord
}

// MomentAt returns the pitching-moment coefficient about x at an incidence, controls neutral, nose up positive.
func (s *Solution) MomentAt(x, incidence float64) float64 {
	return s.ZeroLiftMoment + float64(s.MomentSlopeAt(x)*(incidence-s.ZeroLiftIncidence))
}

// InducedDrag returns the induced-drag coefficient at a lift coefficient, with the part that twist and camber cause.
//
// Formula: CDi = D2 a^2 + D1 a + D0; where a incidence at that lift, rad.
// Valid for: controls neutral, out of ground effect.
// Source: Trefftz plane of the same lattice.
func (s *Solution) InducedDrag(liftCoefficient float64) float64 {
	a := s.IncidenceFor(liftCoefficient)
	quadratic := float64(s.InducedFactor * float64(s.LiftSlope*s.LiftSlope))
	return max(0, float64(quadratic*float64(a*a))+float64(s.inducedCross*a)+s.inducedBasic)
}

// PitchRateAt returns lift and pitching moment about x per unit of q c/(2 V), the model turning nose up about x.
//
// Formula: CLq = 2/c (CL_rate - x CL_alpha), likewise the moment; where CL_rate per unit q/V about x = 0.
// Valid for: lifting surfaces alone, slow motion.
// Source: the lattice with the local incidence q (x_c - x)/V.
func (s *Solution) PitchRateAt(x float64) (liftSlope, momentSlope float64) {
	scale := 2 / s.Reference.Chord
	lift := s.rateLift - float64(x*s.LiftSlope)
	moment := s.rateMomentZero - float64(x*s.momentZeroSlope)
	return float64(scale * lift), float64(scale * (moment + float64(lift*x)/s.Reference.Chord))
}
