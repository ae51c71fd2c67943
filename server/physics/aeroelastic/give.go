package aeroelastic

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/stability"
	"pitgate/server/physics/structure"
)

// RodBow is how far a pushrod is bent in its middle before any load, over its length.
//
// Source: judgement; a rod with bends at its ends is no straighter, struts of regulations for buildings are taken with 1/150 to 1/350.
const RodBow = 1.0 / 200

// RodShortening returns how much shorter a rod gets under a push, m; Euler's load and more have no answer, which is infinite.
//
// Formula: d = P L/(E A) + (pi^2 a^2/(4 L)) (1/(1 - P/P_e)^2 - 1); where P push, N, L length, m, E A stiffness, N, a bow of the middle without load, m,
// P_e Euler's load, N.
// Valid for: hinged ends, a bow of half a sine, P below P_e, bows small against the length.
// Source: initially curved struts, Timoshenko and Gere, Theory of Elastic Stability, section 1.12; the length of a shallow sine.
func RodShortening(push, length, stiffness, bow, euler float64) float64 {
	left := 1 - push/euler
	if !(left > 0) {
		return math.Inf(1)
	}
	grown := 1/float64(left*left) - 1
	return float64(push*length)/stiffness + float64(math.Pi*math.Pi*float64(bow*bow)*grown)/float64(4*length)
}

// rod returns stiffness E A and Euler's load of the pushrod, N.
func (l Linkage) rod() (stiffness, euler float64) {
	stiffness = l.RodMaterial.Modulus * structure.RingArea(l.RodDiameter, 0)
	return stiffness, structure.EulerLoad(l.RodMaterial.Modulus, structure.RingInertia(l.RodDiameter, 0), l.RodLength, 1)
}

// Give returns the angle that the air pushes a control back by while its pushrod is pressed and the servo stands still, rad; infinite where the rod buckles,
// 0 without measures of the rod. moment is that of the hinge, N m, throw the angle held, rad. Errors name the impossible field.
//
// Formula: a = d/(r cos t), P = H/(r cos t); where d RodShortening, H hinge moment, N m, r horn arm, m, t throw.
// Valid for: servo, tray and horn stiff; a pushrod that is pulled gives less.
// Source: statics and geometry of the linkage.
func (l Linkage) Give(moment, throw float64) (float64, error) {
	err := checkPositive(named{"hornArm", l.HornArm}, named{"half pi less throw", math.Pi/2 - math.Abs(throw)})
	if err != nil {
		return 0, err
	}
	if err := checkNotNegative(named{"hinge moment", moment}, named{"rodLength", l.RodLength}); err != nil || l.RodLength == 0 {
		return 0, err
	}
	if err := checkPositive(named{"rodDiameter", l.RodDiameter}, named{"rodMaterial modulus", l.RodMaterial.Modulus}); err != nil {
		return 0, err
	}
	arm := float64(l.HornArm * elementary.Cos(throw))
	stiffness, euler := l.rod()
	if err := checkPositive(named{"rod stiffness", stiffness}, named{"rod buckling load", euler}, named{"horn arm at the throw", arm}); err != nil {
		return 0, err
	}
	return RodShortening(moment/arm, l.RodLength, stiffness, l.RodLength*RodBow, euler) / arm, nil
}

// RodLimits are the speeds at which a pushrod is at its end, true, m/s.
type RodLimits struct {
	// Buckles is where the rod buckles or is crushed with structure.SafetyFactor, Soft where the air pushes the control back by the share looked at.
	Buckles, Soft float64
	Load          float64 // what the rod stands, N
}

// Least returns the lesser of both speeds.
func (r RodLimits) Least() float64 { return min(r.Buckles, r.Soft) }

// RodLimits returns the speeds at which the pushrod of a control at full throw buckles, or lets the air push the control back by a share of its throw, in air
// of a density (kg/m3). Errors name the impossible field; a linkage without measures of its rod is one.
//
// Formula: V = sqrt(2 H/(rho A h)); where H hinge moment at which the rod is at its end, N m: P r cos t/1.5 with the lesser of Euler's load and crushing, or
// that at which Give is the share of the throw; A h moment over dynamic pressure of Control.
// Valid for: as Linkage.Limits and Give.
// Source: statics; Euler.
func (l Linkage) RodLimits(c Control, share, density float64) (RodLimits, error) {
	if err := checkPositive(named{"rodLength", l.RodLength}, named{"share of the throw", share}); err != nil {
		return RodLimits{}, err
	}
	all, err := l.Limits(c, 0, density)
	if err != nil {
		return RodLimits{}, err
	}
	soft, err := l.softMoment(c.Throw, share)
	if err != nil {
		return RodLimits{}, err
	}
	r := RodLimits{Buckles: all.RodSpeed, Soft: stability.SpeedOf(soft/c.perPressure(), density), Load: all.RodLoad}
	return r, checkResult(r.Buckles, r.Soft, r.Load)
}

// softMoment returns the hinge moment at which the control gives a share of its throw, by halving between none and the one that buckles the rod.
func (l Linkage) softMoment(throw, share float64) (float64, error) {
	const halvings = 50
	_, euler := l.rod()
	low, high := 0.0, euler*l.HornArm*elementary.Cos(throw)
	for range halvings {
		middle := float64(0.5 * (low + high))
		give, err := l.Give(middle, throw)
		if err != nil {
			return 0, err
		}
		if give < float64(share*throw) {
			low = middle
		} else {
			high = middle
		}
	}
	return low, nil
}
