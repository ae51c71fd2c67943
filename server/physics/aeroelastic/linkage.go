package aeroelastic

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/stability"
	"pitgate/server/physics/structure"
)

// TorqueReserve is what a servo's rated torque must exceed the moment at it by: makers rate the torque at which it stops, on a full pack.
//
// Source: judgement, common practice 1.5 to 2.
const TorqueReserve = 1.5

// Linkage is what holds a control.
type Linkage struct {
	Torque   float64 // of one servo, N m, as rated
	Count    int     // servos that share the control
	ServoArm float64 // m
	HornArm  float64 // m
	// Rod of the pushrod; RodLength 0 when it is not known, then it is not looked at.
	RodLength, RodDiameter float64 // m
	RodMaterial            structure.Material
}

func (l Linkage) check() error {
	err := checkPositive(named{"servoTorque", l.Torque}, named{"servoCount", float64(l.Count)}, named{"servoArm", l.ServoArm}, named{"hornArm", l.HornArm})
	if err != nil {
		return err
	}
	if err := checkNotNegative(named{"rodLength", l.RodLength}); err != nil || l.RodLength == 0 {
		return err
	}
	return checkPositive(named{"rodDiameter", l.RodDiameter}, named{"rod modulus", l.RodMaterial.Modulus}, named{"rod compression", l.RodMaterial.Compression})
}

// Travel is where the linkage stands at full throw.
type Travel struct {
	ServoAngle float64 // of the arm from the middle, rad
	Ratio      float64 // moment at the servos over moment at the hinge
	Reached    bool    // false when the servo's arm is too short for the throw: the ratio is then that of the middle
}

// Travel returns how a linkage stands at a throw (rad) of the control. Errors name the impossible field.
//
// Formula: r_s sin(s) = r_h sin(d); ratio = r_s cos(s)/(r_h cos(d)); where s servo, d control angle, r arms.
// Valid for: a rod long against the arms, both arms square to it in the middle.
// Source: geometry of the four-bar linkage with a long coupler.
func (l Linkage) Travel(throw float64) (Travel, error) {
	if err := l.check(); err != nil {
		return Travel{}, err
	}
	if err := checkNotNegative(named{"throw", throw}); err != nil {
		return Travel{}, err
	}
	if err := checkPositive(named{"half pi less throw", math.Pi/2 - throw}); err != nil {
		return Travel{}, err
	}
	sine := float64(l.HornArm*elementary.Sin(throw)) / l.ServoArm
	if !(sine < 1) {
		middle := l.ServoArm / l.HornArm
		return Travel{Ratio: middle}, checkResult(middle)
	}
	cosine := math.Sqrt(1 - float64(sine*sine))
	ratio := float64(l.ServoArm*cosine) / float64(l.HornArm*elementary.Cos(throw))
	return Travel{ServoAngle: elementary.Atan2(sine, cosine), Ratio: ratio, Reached: true}, checkResult(ratio)
}

// HoldingLimits are the speeds at which a control can no longer be held at full throw.
type HoldingLimits struct {
	Travel Travel
	// ServoSpeed is where the hinge moment takes the rated torque over TorqueReserve, ServoStallSpeed where it takes all of it, true, m/s; 0 when the control's
	// own weight takes it already.
	ServoSpeed, ServoStallSpeed float64
	// RodSpeed is where the pushrod buckles or is crushed with structure.SafetyFactor; RodKnown is false without measures of the rod.
	RodSpeed float64
	RodKnown bool
	RodLoad  float64 // what the rod stands, N
}

// Limits returns the speeds at which servo or pushrod give in, the control at full throw and the model at a load factor, in air of a density (kg/m3). Errors
// name the impossible field.
//
// Formula: q = (N T/(r k) - n g S)/(A h); where r torque reserve, k Travel's ratio, A h moment over dynamic pressure of Control; rod: q = (P r_h cos d/1.5 -
// n g S)/(A h), P lesser of Euler's load and compression.
// Valid for: as Control.HingeMoment and Linkage.Travel; rod hinged at both ends, straight, unguided.
// Source: statics; Euler.
func (l Linkage) Limits(c Control, loadFactor, density float64) (HoldingLimits, error) {
	travel, err := l.Travel(c.Throw)
	if err != nil {
		return HoldingLimits{}, err
	}
	weight, err := c.HingeMoment(0, loadFactor)
	if err != nil {
		return HoldingLimits{}, err
	}
	if err := checkPositive(named{"density", density}); err != nil {
		return HoldingLimits{}, err
	}
	h := HoldingLimits{Travel: travel, RodKnown: l.RodLength > 0}
	speed := func(moment float64) float64 { return stability.SpeedOf((moment-weight)/c.perPressure(), density) }
	atHinge := float64(float64(l.Count)*l.Torque) / travel.Ratio
	h.ServoStallSpeed, h.ServoSpeed = speed(atHinge), speed(atHinge/TorqueReserve)
	if h.RodKnown {
		h.RodLoad = l.rodLoad()
		h.RodSpeed = speed(float64(h.RodLoad*l.HornArm*elementary.Cos(c.Throw)) / structure.SafetyFactor)
	}
	return h, checkResult(h.ServoSpeed, h.ServoStallSpeed, h.RodSpeed, h.RodLoad)
}

// rodLoad returns the load that buckles or crushes the rod, N.
func (l Linkage) rodLoad() float64 {
	euler := structure.EulerLoad(l.RodMaterial.Modulus, structure.RingInertia(l.RodDiameter, 0), l.RodLength, 1)
	return min(euler, float64(l.RodMaterial.Compression*structure.RingArea(l.RodDiameter, 0)))
}

// SlackLimit is the slack of a control beyond which a bench check asks for a tighter linkage, rad.
//
// Source: judgement; regulations for full-size tabs and controls ask for fractions of a degree.
const SlackLimit = 0.0087

// FreePlay returns the slack at the trailing edge of a control as an angle, rad. Errors name the impossible field.
//
// Formula: play over flap chord.
// Valid for: small angles. A bench item: slack lets a control flutter far below any computed speed.
// Source: geometry.
func FreePlay(play, chord float64) (float64, error) {
	if err := checkNotNegative(named{"freePlay", play}); err != nil {
		return 0, err
	}
	if err := checkPositive(named{"flap chord", chord}); err != nil {
		return 0, err
	}
	angle := play / chord
	return angle, checkResult(angle)
}
