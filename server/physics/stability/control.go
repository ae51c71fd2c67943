package stability

import "math"

// Pitch holds what pitch control needs of a model, coefficients about the balance point.
type Pitch struct {
	LiftSlope     float64 // CL with incidence, per rad
	MomentSlope   float64 // Cm with incidence, per rad
	MomentZero    float64 // Cm without lift, control neutral
	LiftControl   float64 // CL with control angle, per rad
	MomentControl float64 // Cm with control angle, per rad; negative for a tail, positive for a canard
	PitchDamping  float64 // Cm with q c/(2V)
	LiftPitchRate float64 // CL with q c/(2V)
}

// determinant returns CL_a Cm_d - CL_d Cm_a, per rad2.
func (p Pitch) determinant() float64 {
	return float64(p.LiftSlope*p.MomentControl) - float64(p.LiftControl*p.MomentSlope)
}

// Trimmed is a state without pitching moment.
type Trimmed struct {
	Control   float64 // control angle, rad
	Incidence float64 // above the incidence without lift at neutral control, rad
}

// Trim returns control angle and incidence that give a lift coefficient without pitching moment.
//
// extraMoment is the moment coefficient of thrust and what else acts. It returns ErrOutOfRange when the control has no power over the moment.
// Formula: CL_a a + CL_d d = CL; Cm_0 + Cm_a a + Cm_d d + Cm_extra = 0.
// Valid for: attached flow; the caller compares the angle with the throw.
// Source: Nelson, Flight Stability and Automatic Control, chapter 2.
func (p Pitch) Trim(lift, extraMoment float64) (Trimmed, error) {
	moment := p.MomentZero + extraMoment
	t := Trimmed{
		Control:   -(float64(p.LiftSlope*moment) + float64(p.MomentSlope*lift)) / p.determinant(),
		Incidence: (float64(p.MomentControl*lift) + float64(p.LiftControl*moment)) / p.determinant(),
	}
	return t, checkResult(t.Control, t.Incidence)
}

// TrimAt returns the trim at a speed in level flight with a moment of thrust about the balance point (N m, nose up positive).
//
// Formula: CL = m g/(q S), Cm_extra = M/(q S c).
// Valid for: thrust small beside the weight in the balance of lift.
// Source: Nelson, Flight Stability and Automatic Control, chapter 2.
func (p Pitch) TrimAt(s State, thrustMoment float64) (Trimmed, error) {
	if err := s.checkPitch(); err != nil {
		return Trimmed{}, err
	}
	force := float64(s.Pressure() * s.Area)
	return p.Trim(float64(s.Mass*s.Gravity)/force, thrustMoment/float64(force*s.Chord))
}

// Sensitivity is how the model answers the pitch control in a pull-up.
type Sensitivity struct {
	// AnglePerLoad is the control angle for one more g, rad; negative trailing edge up.
	AnglePerLoad float64
	// LoadPerDegree is the load factor that one degree of control adds, 0 where Reversed.
	LoadPerDegree float64
	// ManoeuvreMargin is the distance from the balance point to the manoeuvre point over the mean chord.
	ManoeuvreMargin float64
	// Reversed says that the balance point lies at or aft of the manoeuvre point: the model pitches up by itself.
	Reversed bool
}

// dampingRatio returns rho S c/(4 m), the pitch rate q c/(2V) of a pull-up per lift coefficient.
func (s State) dampingRatio() float64 {
	return float64(s.Density*float64(s.Area*s.Chord)) / float64(4*s.Mass)
}

// Sensitivity returns the answer to the pitch control at the state's speed. Errors name the impossible field.
//
// Formula: d(delta)/dn = -CW (Cm_a (1 - k CL_q) + k CL_a Cm_q)/(CL_a Cm_d - CL_d Cm_a); CW = m g/(q S), k = rho S c/(4 m).
// Valid for: steady pull-ups, attached flow, rigid model.
// Source: Etkin and Reid, Dynamics of Flight, section 3.1, as -CW (h_m - h)/Cm_d.
func (p Pitch) Sensitivity(s State) (Sensitivity, error) {
	if err := s.checkPitch(); err != nil {
		return Sensitivity{}, err
	}
	k := s.dampingRatio()
	weight := float64(s.Mass*s.Gravity) / float64(s.Pressure()*s.Area)
	stiffness := float64(p.MomentSlope*(1-float64(k*p.LiftPitchRate))) + float64(k*float64(p.LiftSlope*p.PitchDamping))
	answer := Sensitivity{
		AnglePerLoad:    -float64(weight*stiffness) / p.determinant(),
		ManoeuvreMargin: -stiffness / p.LiftSlope,
	}
	if err := checkResult(answer.AnglePerLoad, answer.ManoeuvreMargin); err != nil {
		return Sensitivity{}, err
	}
	answer.Reversed = answer.ManoeuvreMargin <= 0
	if perDegree := math.Pi / 180 / math.Abs(answer.AnglePerLoad); !answer.Reversed && finite(perDegree) {
		answer.LoadPerDegree = perDegree
	}
	return answer, nil
}

// ManoeuvreShift returns how far the manoeuvre point lies aft of the neutral point, over the mean chord.
//
// Formula: -Cm_q k/(1 - k CL_q), k = rho S c/(4 m).
// Valid for: Cm_q taken as constant over the shift. Errors name the impossible field.
// Source: Nelson, Flight Stability and Automatic Control, chapter 2.
func (p Pitch) ManoeuvreShift(s State) (float64, error) {
	if err := s.checkPitch(); err != nil {
		return 0, err
	}
	k := s.dampingRatio()
	shift := -float64(p.PitchDamping*k) / (1 - float64(k*p.LiftPitchRate))
	return shift, checkResult(shift)
}

// ThrowReduction returns the factor on the throw that brings the load factor per degree down to a limit; 1 when it is within already.
//
// Formula: min(1, limit/(n per degree)).
// Valid for: the full stick then moves the surface that much less, so that a degree of the old throw gives the limit.
// Source: proportion.
func ThrowReduction(loadPerDegree, limit float64) float64 {
	if !(loadPerDegree > limit) || !(limit > 0) {
		return 1
	}
	return limit / loadPerDegree
}

// LoadAtThrow returns the load factor of a pull-up with a control angle (rad) away from trim, by the sensitivity; the wing stalls first where lift ends.
//
// Formula: n = 1 + |angle| (n per degree) 180/pi.
// Valid for: attached flow.
// Source: proportion.
func (s Sensitivity) LoadAtThrow(angle float64) float64 {
	return 1 + float64(math.Abs(angle)*s.LoadPerDegree)*180/math.Pi
}
