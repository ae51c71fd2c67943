package lift

import (
	"math"

	"pitgate/server/physics/elementary"
)

// GroundFactor returns the part of the induced drag that is left near the ground.
//
// Formula: phi = (16 h/b)^2/(1 + (16 h/b)^2); where h height of the wing over the ground, b span, m (McCormick).
// Valid for: h/b 0.03 to 1; kinder to take-off than to float in the landing.
// Source: McCormick, as in Anderson, Introduction to Flight, Eq. 6.77.
func GroundFactor(height, span float64) float64 {
	if !(span > 0) || !(height > 0) {
		return 0
	}
	ratio := 16 * height / span
	square := float64(ratio * ratio)
	if math.IsInf(square, 0) {
		return 1
	}
	return square / (1 + square)
}

// HelmboldSlope returns the lift slope of a straight wing, per rad.
//
// Formula: a = a0/(sqrt(1 + k^2) + k), k = a0/(pi A); where a0 section slope per rad, A aspect ratio.
// Valid for: A above 0.5, no sweep; 7 % above the lattice for straight wings.
// Source: Anderson, Aircraft Performance and Design, Eq. 2.18a.
func HelmboldSlope(sectionSlope, aspectRatio float64) float64 {
	k := sectionSlope / float64(math.Pi*aspectRatio)
	return sectionSlope / (math.Sqrt(1+float64(k*k)) + k)
}

// SweptSlope returns the lift slope of a swept wing, per rad.
//
// Formula: Helmbold with a0 cos(sweep of the half-chord line).
// Valid for: sweep to 45 degrees, within 8 % of the lattice.
// Source: Kuechemann, in Anderson, Aircraft Performance and Design, Eq. 2.19.
func SweptSlope(sectionSlope, aspectRatio, halfChordSweep float64) float64 {
	return HelmboldSlope(float64(sectionSlope*elementary.Cos(halfChordSweep)), aspectRatio)
}

// EllipticSlope returns the lift slope of a wing of elliptic loading, per rad.
//
// Formula: a = a0/(1 + a0/(pi A)).
// Valid for: A above 5, no sweep.
// Source: Prandtl's lifting line.
func EllipticSlope(sectionSlope, aspectRatio float64) float64 {
	return sectionSlope / (1 + sectionSlope/float64(math.Pi*aspectRatio))
}

// DownwashSlope returns the slope of the downwash angle at a tail with incidence.
//
// Formula: 4.44 (K_A K_l K_H sqrt(cos sweep))^1.19; K_A = 1/A - 1/(1 + A^1.7), K_l = (10 - 3 taper)/7,
// K_H = (1 - h/b)/(2 l/b)^(1/3); where l tail arm, h tail height over the wing.
// Valid for: A 4 to 10, subsonic; within 0.05 of the lattice; 0 for a tail that is not behind the wing.
// Source: DATCOM, as in Nelson, Flight Stability and Automatic Control.
func DownwashSlope(aspectRatio, taper, quarterChordSweep, armOverSpan, heightOverSpan float64) float64 {
	if !(armOverSpan > 0) || !(aspectRatio > 0) {
		return 0
	}
	ka := 1/aspectRatio - 1/(1+elementary.Pow(aspectRatio, 1.7))
	kl := (10 - float64(3*taper)) / 7
	kh := max(0, 1-heightOverSpan) / elementary.Pow(float64(2*armOverSpan), 1.0/3)
	product := float64(float64(float64(ka*kl)*kh) * math.Sqrt(elementary.Cos(quarterChordSweep)))
	return float64(4.44 * elementary.Pow(product, 1.19))
}

// CompressibleSlope returns the lift slope of a wing, tail or fin by its planform and Mach number, per rad.
//
// Formula: 2 pi A/(2 + sqrt(4 + A^2 (b2 + tan^2 sweep))), b2 = 1 - M^2; where A aspect ratio (of a fin: times its end-plate factor).
// Valid for: M below 0.6, sweep below 60 degrees; sections of slope 2 pi. Equal to SweptSlope at M = 0 with the half-chord sweep.
// Source: Raymer, Aircraft Design: A Conceptual Approach, Eq. 12.6 (DATCOM).
func CompressibleSlope(aspectRatio, mach, sweep float64) float64 {
	tangent := elementary.Tan(sweep)
	b2 := 1 - float64(mach*mach)
	square := float64(float64(aspectRatio*aspectRatio) * (b2 + float64(tangent*tangent)))
	return float64(2*math.Pi*aspectRatio) / (2 + math.Sqrt(4+max(0, square)))
}

// SweptLimit returns the greatest lift coefficient of a plain wing by the flat rule, for comparison only.
//
// Formula: CLmax = 0.9 clmax cos(sweep of the quarter chord).
// Valid for: aspect ratio above 5; optimistic for rectangular wings, which reach 0.82 to 0.87.
// Source: Raymer, Aircraft Design: A Conceptual Approach, chapter 12 (from memory).
func SweptLimit(sectionMaximum, quarterChordSweep float64) float64 {
	return float64(float64(0.9*sectionMaximum) * elementary.Cos(quarterChordSweep))
}
