package lift

import (
	"math"
)

// Balance says about which point a model is trimmed, by which controls, and what else turns it.
type Balance struct {
	X           float64   // point of balance, m
	Moment      float64   // pitching-moment coefficient of body and thrust at zero incidence, nose up positive
	MomentSlope float64   // what the body adds to it per rad of incidence
	Pitch       []Setting // controls that trim together; Angle is the angle of each per radian of command, usually one control with 1
	Held        []Setting // controls held at an angle, as flaps
}

// Trimmed is a state in which lift and pitching moment are as asked.
type Trimmed struct {
	Incidence   float64 // of the model's x axis, rad
	Command     float64 // of the pitch controls, trailing edge down positive, rad
	WithinThrow bool    // every control of the command stays within its throws; a control whose throws are not known reaches 60 degrees
	Found       bool    // false when the controls have no power over the moment or a figure is none; the other fields are then zero
}

// Trim returns the incidence and the command of the pitch controls at a lift coefficient without pitching moment about the balance point.
//
// Formula: CL = CLa (a - a0) + CLh + CLd e, 0 = Cm0 + Cma (a - a0) + m + m' a + Cmh + Cmd e; where a incidence, e effective command, which a
// hinged control keeps only a part of beyond 12 degrees, h controls held, m and m' moment from elsewhere.
// Valid for: attached flow.
// Source: balance of lift and moment, linear in the lattice.
func (s *Solution) Trim(b Balance, liftCoefficient float64) Trimmed {
	t := s.balanceLine(b)
	slope := s.LiftSlope + float64(t.controlLift*t.slope)
	if !t.found || !(math.Abs(slope) > 1e-9) || math.IsNaN(liftCoefficient) || math.IsInf(liftCoefficient, 0) {
		return Trimmed{}
	}
	incidence := (liftCoefficient - t.lift(s, 0)) / slope
	pitch := s.known(b.Pitch)
	table := s.commandsOf(pitch)
	command, reached := table.commandFor(t.effective(incidence))
	low, high := s.throwsOf(pitch)
	return Trimmed{incidence, command, reached && command >= low-1e-9 && command <= high+1e-9, true}
}

// balanceLine is the effective command that balances the moment, a straight line of the incidence, with the lift that goes with it.
type balanceLine struct {
	atZero, slope float64 // effective command at zero incidence, and per rad
	controlLift   float64 // lift coefficient per effective command
	heldLift      float64 // of the controls held
	found         bool
}

// effective returns the effective command at an incidence.
func (t balanceLine) effective(incidence float64) float64 {
	return t.atZero + float64(t.slope*incidence)
}

// lift returns the lift coefficient in balance at an incidence.
func (t balanceLine) lift(s *Solution, incidence float64) float64 {
	return s.Lift(incidence) + t.heldLift + float64(t.controlLift*t.effective(incidence))
}

// balanceLine solves the balance of moments for the effective command.
func (s *Solution) balanceLine(b Balance) balanceLine {
	t := balanceLine{}
	power, held := 0.0, 0.0
	for _, set := range s.known(b.Pitch) {
		t.controlLift += float64(set.Angle * s.Controls[set.Index].LiftSlope)
		power += float64(set.Angle * s.Controls[set.Index].MomentAt(b.X))
	}
	for _, set := range s.known(b.Held) {
		angle := s.effectiveAngle(set)
		t.heldLift += float64(angle * s.Controls[set.Index].LiftSlope)
		held += float64(angle * s.Controls[set.Index].MomentAt(b.X))
	}
	if !(math.Abs(power) > 1e-9) {
		return t
	}
	t.atZero = -(s.MomentAt(b.X, 0) + b.Moment + held) / power
	t.slope = -(s.MomentSlopeAt(b.X) + b.MomentSlope) / power
	sum := t.atZero + t.slope
	t.found = !math.IsNaN(sum) && !math.IsInf(sum, 0)
	return t
}
