package stability

import "math"

// NeutralPointSpread is the uncertainty of a neutral point put together by parts, over the mean chord: the build-up of the textbook's light aeroplane lies
// 0.07 to 0.10 aft of the figure from its whole-model derivatives.
const NeutralPointSpread = 0.05

// LiftingPart is one lifting surface by its own figures.
type LiftingPart struct {
	LiftSlope float64 // per rad, on its own area
	Area      float64 // m2
	X         float64 // its aerodynamic centre, aft of the datum, m
	// PressureRatio is the dynamic pressure there over that of free flight (tail efficiency); 1 for the wing.
	PressureRatio float64
	// Downwash is the slope of the downwash angle with incidence; negative in upwash ahead of a wing.
	Downwash float64
}

// weight returns the lift slope times area that counts for the model, m2 per rad.
func (p LiftingPart) weight() float64 {
	return float64(float64(float64(p.PressureRatio*p.LiftSlope)*p.Area) * (1 - p.Downwash))
}

// NeutralPoint returns the neutral point (m) and the lift slope of the model on the reference area (per rad) from its parts.
//
// bodyMomentSlope is Cm with incidence of the bodies, per rad, positive destabilising. Errors name the impossible field.
// Formula: x_np = (sum eta S a (1 - e) x - Cm_body S c)/sum eta S a (1 - e); where e slope of downwash.
// Valid for: attached flow, power off; NeutralPointSpread.
// Source: Raymer, Aircraft Design: A Conceptual Approach, Eq. 16.9.
func NeutralPoint(parts []LiftingPart, area, chord, bodyMomentSlope float64) (x, slope float64, err error) {
	if err := checkPositive(named{"area", area}, named{"chord", chord}); err != nil {
		return 0, 0, err
	}
	moment, total := -float64(float64(bodyMomentSlope*area)*chord), 0.0
	for _, p := range parts {
		total += p.weight()
		moment += float64(p.weight() * p.X)
	}
	if err := checkPositive(named{"sum of lift slopes", total}); err != nil {
		return 0, 0, err
	}
	x, slope = moment/total, total/area
	return x, slope, checkResult(x, slope)
}

// NeutralPointByVolume returns the neutral point over mean chord from wing figures and the tail's volume.
//
// Formula: x_np = x_ac,wing - Cm_body/a_w + eta V_H a_t (1 - e)/a_w.
// Valid for: tail arm from the balance point, tail lift small beside the wing's; a cross-check of NeutralPoint.
// Source: Nelson, Flight Stability and Automatic Control, chapter 2.
func NeutralPointByVolume(wingCentre, wingSlope, tailSlope, tailVolume, pressureRatio, downwash, bodyMomentSlope float64) (float64, error) {
	if err := checkPositive(named{"wingSlope", wingSlope}); err != nil {
		return 0, err
	}
	tail := float64(float64(float64(pressureRatio*tailVolume)*tailSlope) * (1 - downwash))
	x := wingCentre + (tail-bodyMomentSlope)/wingSlope
	return x, checkResult(x)
}

// NeutralPointByAspect returns a first guess of the neutral point over mean chord from aspect ratios and tail volume alone.
//
// Formula: 1/4 + (1 + 2/A)/(1 + 2/A_t) (1 - 4/(A + 2)) V_H.
// Valid for: unswept wings, no body; within 0.03 of the lattice.
// Source: Drela, Basic Aircraft Design Rules, university course notes.
func NeutralPointByAspect(aspect, tailAspect, tailVolume float64) (float64, error) {
	if err := checkPositive(named{"aspect", aspect}, named{"tailAspect", tailAspect}); err != nil {
		return 0, err
	}
	x := 0.25 + float64(float64((1+2/aspect)/(1+2/tailAspect)*(1-4/(aspect+2)))*tailVolume)
	return x, checkResult(x)
}

// SimpleDownwash returns the slope of the downwash angle far behind a wing.
//
// Formula: 2 a/(pi A); where a lift slope of the wing per rad.
// Valid for: elliptic loading, tail far behind and near the wing's plane; a cross-check.
// Source: Nelson, Flight Stability and Automatic Control, chapter 2.
func SimpleDownwash(wingSlope, aspect float64) float64 {
	if !(aspect > 0) {
		return 0
	}
	return float64(2*wingSlope) / float64(math.Pi*aspect)
}

// StaticMargin returns how far the balance point lies ahead of the neutral point, over the mean chord.
//
// Formula: (x_np - x)/c.
// Valid for: all; 0 for a chord of 0.
// Source: definition.
func StaticMargin(neutralX, balanceX, chord float64) float64 {
	if !(chord > 0) {
		return 0
	}
	return (neutralX - balanceX) / chord
}

// MomentSlope returns Cm with incidence, per rad.
//
// Formula: Cm_a = -CL_a margin.
// Valid for: attached flow.
// Source: Raymer, Aircraft Design: A Conceptual Approach, Eq. 16.10.
func MomentSlope(liftSlope, margin float64) float64 { return -float64(liftSlope * margin) }

// TailVolume returns the volume of a tail: horizontal with the mean chord as length, vertical with the span.
//
// Formula: V = S_t l/(S length); where l distance from the balance point to the quarter chord of the tail.
// Valid for: positive area and length; 0 otherwise.
// Source: definition.
func TailVolume(tailArea, arm, area, length float64) float64 {
	if !(area > 0) || !(length > 0) {
		return 0
	}
	return float64(tailArea*arm) / float64(area*length)
}

// TailPitchDamping returns Cm with q c/(2V) and with the rate of incidence, of the tail alone.
//
// Formula: Cm_q = -2 eta V_H a_t l/c; Cm_a' = Cm_q e.
// Valid for: tails behind the wing; adds up to 45 % more than measured on the textbook's light aeroplane.
// Source: Nelson, Flight Stability and Automatic Control, chapter 3.
func TailPitchDamping(tailSlope, tailVolume, pressureRatio, armOverChord, downwash float64) (pitchRate, incidenceRate float64) {
	pitchRate = -float64(2 * float64(float64(float64(pressureRatio*tailVolume)*tailSlope)*armOverChord))
	return pitchRate, float64(pitchRate * downwash)
}

// BodyMomentSlope returns Cm with incidence of a body by the position of the wing on it, per rad, positive destabilising.
//
// Formula: k w^2 l/(S c); where w greatest width, l length of the body, k of BodyFactor.
// Valid for: a cross-check of the lattice's body moment.
// Source: Raymer, Aircraft Design: A Conceptual Approach, chapter 16, after Gilruth and White, NACA TR 711.
func BodyMomentSlope(factor, width, length, area, chord float64) float64 {
	if !(area > 0) || !(chord > 0) {
		return 0
	}
	return float64(float64(factor*float64(width*width))*length) / float64(area*chord)
}

// bodyFactors is k per rad at every tenth of the body's length from 0.1 on.
var bodyFactors = [...]float64{0.115, 0.172, 0.344, 0.487, 0.688, 0.888, 1.146}

// BodyFactor returns k of BodyMomentSlope, per rad, and whether the position lies inside the table.
//
// position is the quarter chord of the wing's root behind the nose of the body, over its length.
// Valid for: 0.1 to 0.7; the nearest end outside.
// Source: Gilruth and White, NACA TR 711, as printed in aerodynamics textbooks, from memory.
func BodyFactor(position float64) (factor float64, inside bool) {
	place := float64(10*position) - 1
	last := float64(len(bodyFactors) - 1)
	inside = place >= -1e-9 && place <= last+1e-9
	if !(place > 0) {
		return bodyFactors[0], inside
	}
	if place >= last {
		return bodyFactors[len(bodyFactors)-1], inside
	}
	i := int(place)
	return bodyFactors[i] + float64((place-float64(i))*(bodyFactors[i+1]-bodyFactors[i])), inside
}

// Shift is what a change of balance takes.
type Shift struct {
	Forward float64 // m; negative aft
	Moment  float64 // mass times arm that the change takes, kg m
}

// BalanceShiftFor returns how far the balance point must move forward for a static margin, and the mass times arm of it.
//
// Formula: dx = x - (x_np - target c); moment = m dx.
// Valid for: moving what is on board; added mass needs its own equation.
// Source: balance of moments.
func BalanceShiftFor(target, neutralX, balanceX, chord, mass float64) Shift {
	forward := balanceX - (neutralX - float64(target*chord))
	return Shift{Forward: forward, Moment: float64(mass * forward)}
}

// MassToShift returns the mass (kg) that, added at a place, brings the balance point to a target; false when the place lies on the wrong side.
//
// Formula: m_a = m (x - x_target)/(x_target - x_place).
// Valid for: places beyond the target in the direction of the shift.
// Source: balance of moments.
func MassToShift(mass, balanceX, targetX, placeX float64) (float64, bool) {
	added := float64(mass*(balanceX-targetX)) / (targetX - placeX)
	return added, finite(added) && added >= 0
}
