package stability

import (
	"math"
	"slices"
)

// SectionReversalPressure returns the dynamic pressure at which a wing on a torsion spring loses its aileron, Pa; false when it never does.
//
// Formula: q = K CL_d/(-Cm_d S c CL_a); where K spring, N m/rad, CL_d and Cm_d (about the aerodynamic centre) with aileron angle, CL_a with incidence.
// Valid for: a typical section that twists as one piece.
// Source: Megson, Aircraft Structures for Engineering Students, Eq. 29.18; Bisplinghoff, Ashley and Halfman, Aeroelasticity, chapter 8.
func SectionReversalPressure(spring, area, chord, liftSlope, liftControl, momentControl float64) (float64, bool) {
	q := float64(spring*liftControl) / -float64(float64(momentControl*float64(area*chord))*liftSlope)
	return q, finite(q) && q > 0
}

// AileronEffectiveness returns the share of the rigid aileron's power that is left at a dynamic pressure; negative beyond reversal.
//
// Formula: (1 - q/q_r)/(1 - q/q_d); where q_r reversal, q_d divergence (0: none, which is the cautious choice).
// Valid for: below divergence; 0 at or beyond it, 1 without reversal (q_r 0).
// Source: Megson, Aircraft Structures for Engineering Students, Eq. 29.22.
func AileronEffectiveness(pressure, reversal, divergence float64) float64 {
	left := 1.0
	if reversal > 0 {
		left -= pressure / reversal
	}
	if !(divergence > 0) {
		return left
	}
	if pressure >= divergence {
		return 0
	}
	return left / (1 - pressure/divergence)
}

// TwistingWing is one half of a wing that twists under its aileron.
type TwistingWing struct {
	// Stiffness is the moment at the tip over the twist that it causes there, N m/rad, root held.
	Stiffness float64
	// HalfSpan from the root to the tip, m.
	HalfSpan float64
	// Chords at equal steps from root to tip, at least two, m.
	Chords []float64
	// AileronFrom and AileronTo are the ends of the aileron over the half span.
	AileronFrom, AileronTo float64
	LiftSlope              float64 // of the sections in the wing, per rad
	// Section lift and moment about the quarter chord (negative) with aileron angle, per rad: section.FlapEffectiveness times the slope and
	// section.FlapMoment, both times section.FlapEfficiency.
	LiftControl, MomentControl float64
}

// ReversalPressure returns the dynamic pressure at which the aileron no longer rolls the model, Pa; false when it never happens. Errors name the field.
//
// Formula: q = G J c_l,d I_1/(-c_m,d a I_2); I_1 = integral over the aileron of c y dy, I_2 = integral over the wing of c y theta dy with
// theta(y) = integral over the aileron of min(y, n) c(n)^2 dn; G J = Stiffness HalfSpan, even along the span.
// Valid for: wings without much sweep. Left out is the lift that twists the wing, which at reversal nearly cancels: with the elastic axis up to 0.15 of the
// chord aft of the quarter chord it takes at most 6 % off the pressure. Even stiffness is the cautious choice for one that falls outboard. The speed goes
// with the root of the stiffness: one measured within 20 % gives it within 10 %.
// Source: strip theory after Fung, An Introduction to the Theory of Aeroelasticity, section 4.5; Bisplinghoff, Ashley and Halfman, Aeroelasticity, chapter 8.
func (w TwistingWing) ReversalPressure() (float64, bool, error) {
	if err := w.check(); err != nil {
		return 0, false, err
	}
	roll, twist := w.integrals()
	torsion := float64(w.Stiffness * w.HalfSpan)
	q := float64(float64(torsion*w.LiftControl)*roll) / -float64(float64(w.MomentControl*w.LiftSlope)*twist)
	if math.IsNaN(q) {
		return 0, false, ErrOutOfRange
	}
	if !(q > 0) || math.IsInf(q, 0) {
		return 0, false, nil
	}
	return q, true, nil
}

func (w TwistingWing) check() error {
	err := checkPositive(named{"stiffness", w.Stiffness}, named{"halfSpan", w.HalfSpan}, named{"liftSlope", w.LiftSlope},
		named{"chords less one", float64(len(w.Chords) - 1)}, named{"aileronTo less aileronFrom", w.AileronTo - w.AileronFrom},
		named{"1 + aileronFrom", 1 + w.AileronFrom}, named{"2 - aileronTo", 2 - w.AileronTo})
	if err != nil {
		return err
	}
	if err := checkFinite(named{"liftControl", w.LiftControl}, named{"momentControl", w.MomentControl}); err != nil {
		return err
	}
	if slices.ContainsFunc(w.Chords, func(c float64) bool { return !(c >= 0) || math.IsInf(c, 0) }) {
		return checkPositive(named{"chords", slices.Min(w.Chords)})
	}
	return nil
}

// chordAt returns the chord at a share of the half span.
func (w TwistingWing) chordAt(share float64) float64 {
	place := float64(share * float64(len(w.Chords)-1))
	i := min(int(place), len(w.Chords)-2)
	return w.Chords[i] + float64((place-float64(i))*(w.Chords[i+1]-w.Chords[i]))
}

// integrals returns I_1 (m3) and I_2 (m6) by the midpoint rule, the twist at a strip from what lies inboard and outboard of it; the strips that the aileron's ends cut count by their covered share.
func (w TwistingWing) integrals() (roll, twist float64) {
	const strips = 200
	step := w.HalfSpan / strips
	y, moment, twisting := [strips]float64{}, [strips]float64{}, [strips]float64{}
	outboard := 0.0 // of what twists
	for i := range strips {
		share := (float64(i) + 0.5) / strips
		chord := w.chordAt(share)
		low, high := float64(i)/strips, float64(i+1)/strips
		covered := float64(float64(max(0, min(high, w.AileronTo)-max(low, w.AileronFrom))*strips) * step)
		y[i] = float64(share * w.HalfSpan)
		moment[i], twisting[i] = float64(chord*y[i]), float64(float64(chord*chord)*covered)
		roll += float64(moment[i] * covered)
		outboard += twisting[i]
	}
	inboard := 0.0 // of what twists, times its place
	for i := range strips {
		outboard -= twisting[i]
		inboard += float64(twisting[i] * y[i])
		twist += float64(float64(moment[i]*(inboard+float64(y[i]*outboard))) * step)
	}
	return roll, twist
}

// SpeedOf returns the speed of a dynamic pressure, m/s; 0 without density or pressure.
//
// Formula: V = sqrt(2 q/rho).
// Valid for: incompressible flow.
// Source: definition.
func SpeedOf(pressure, density float64) float64 {
	if !(density > 0) || !(pressure > 0) {
		return 0
	}
	return math.Sqrt(float64(2*pressure) / density)
}

// Box is a closed thin-walled box that carries torsion.
type Box struct {
	Width, Depth float64 // of the middle line of the wall, m
	Wall         float64 // m
	ShearModulus float64 // Pa
}

// TwistStiffness returns the moment at the tip over the twist there of a box that runs even along a half span, N m/rad. Errors name the impossible field.
//
// Formula: G J = 4 A^2 G t/s; K = G J/half span; A = w d enclosed, s = 2 (w + d) round it.
// Valid for: one closed cell of even wall; an open or cracked cell has next to nothing.
// Source: Bredt's second formula, in Megson, Aircraft Structures for Engineering Students, chapter 18.
func (b Box) TwistStiffness(halfSpan float64) (float64, error) {
	err := checkPositive(named{"box.width", b.Width}, named{"box.depth", b.Depth}, named{"box.wall", b.Wall},
		named{"box.shearModulus", b.ShearModulus}, named{"halfSpan", halfSpan})
	if err != nil {
		return 0, err
	}
	area := float64(b.Width * b.Depth)
	torsion := float64(float64(4*float64(area*area))*float64(b.ShearModulus*b.Wall)) / float64(2*(b.Width+b.Depth))
	stiffness := torsion / halfSpan
	return stiffness, checkResult(stiffness)
}
