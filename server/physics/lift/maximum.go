package lift

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/planform"
)

// Maximum is the greatest lift of the whole model: where the first strip reaches its own limit.
type Maximum struct {
	Coefficient        float64 // on the reference area
	Spread             float64 // one standard deviation from the section tables
	Incidence          float64 // of the model's x axis, rad
	Surface            string  // surface that stalls first
	SpanRatio          float64 // 2y/b of the strip that stalls first
	SectionCoefficient float64 // its limit
	Reynolds           float64 // on its chord
	Inside             bool    // section and Reynolds number lie inside the tables
	Note               string
	Found              bool // false when no wing or canard strip gains lift with incidence; the other fields are then zero
}

// Setting is a control held at an angle, trailing edge down positive, rad; Index points into Solution.Controls.
type Setting struct {
	Index int
	Angle float64
}

// MaximumLift returns the greatest lift with controls neutral.
//
// re gives the Reynolds number of a chord (m) at the speed of the question; factor multiplies every section limit (1 = table) and
// carries finish, frost or a sampled spread.
//
// Formula: incidence = min over strips of (clmax(Re) factor - cl_basic)/cl_slope; CLmax = CL at that incidence.
// Valid for: wings and canards of moderate sweep; a stall of the tailplane is not looked for.
// Source: critical-section method, Anderson, Wing loading and stalling, NACA Report 572 (method).
func (s *Solution) MaximumLift(re func(chord float64) float64, factor float64) Maximum {
	return s.MaximumLiftSet(re, factor, nil)
}

// MaximumLiftSet returns the greatest lift with controls held at angles, as MaximumLift does with neutral ones.
func (s *Solution) MaximumLiftSet(re func(chord float64) float64, factor float64, settings []Setting) Maximum {
	best := Maximum{}
	for i := range s.Strips {
		strip := &s.Strips[i]
		if !strip.stallsTheModel() || !(strip.LiftSlope > 1e-6) {
			continue
		}
		candidate := strip.limit(re(strip.Chord), factor, settings)
		if !best.Found || candidate.Incidence < best.Incidence {
			best = candidate
		}
	}
	if !best.Found {
		return best
	}
	best.Coefficient = s.Lift(best.Incidence)
	for _, set := range settings {
		best.Coefficient += float64(s.Controls[set.Index].LiftSlope * set.Angle)
	}
	best.Spread = float64(best.Spread * s.LiftSlope)
	return best
}

// stallsTheModel reports whether a stall of this strip ends the model's lift.
func (s *Strip) stallsTheModel() bool {
	return s.Role == planform.RoleWing || s.Role == planform.RoleSecondWing || s.Role == planform.RoleCanard
}

// limit returns the state in which this strip stalls; Spread is that of the incidence.
func (s *Strip) limit(reynolds, factor float64, settings []Setting) Maximum {
	table := s.Limit(reynolds)
	value, basic := float64(table.Value*factor), s.BasicLift
	for _, set := range settings {
		basic += float64(s.controls[set.Index] * set.Angle)
		value += FlapLimitGain(s.chordRatio[set.Index], set.Angle)
	}
	return Maximum{
		Incidence: (value - basic) / s.LiftSlope, Spread: float64(table.Spread*factor) / s.LiftSlope, Surface: s.Surface,
		SpanRatio: s.SpanRatio, SectionCoefficient: value, Reynolds: reynolds, Inside: table.Inside, Note: table.Note, Found: true,
	}
}

// Limit returns the greatest section lift coefficient of the strip at a Reynolds number, between those of its two stations.
func (s *Strip) Limit(reynolds float64) SectionLimit {
	a, b := SectionMaximum(s.inner, reynolds), SectionMaximum(s.outer, reynolds)
	out := a
	if s.outerShare > 0.5 {
		out = b
	}
	out.Value = blend(a.Value, b.Value, s.outerShare)
	out.Spread = blend(a.Spread, b.Spread, s.outerShare)
	out.Inside = a.Inside && b.Inside
	return out
}

// FlapLimitGain returns what a plain flap adds to the greatest lift coefficient of its section.
//
// Formula: 0.9 k sin(d)/sin(60 deg) min(1, E/0.25); where d angle, E flap chord ratio, k = 0.65 for Re below 5e5.
// Valid for: plain flaps to 60 degrees; an upward flap takes as much away.
// Source: 0.9 by Arnedo, Fundamentals of Aerospace Engineering, Table 3.1; k is judgement.
func FlapLimitGain(chordRatio, angle float64) float64 {
	const full, lowReynolds = 0.9, 0.65
	bounded := max(-math.Pi/3, min(math.Pi/3, angle))
	share := math.Sin(bounded) / (math.Sqrt(3) / 2)
	return float64(float64(full*lowReynolds) * float64(share*max(0, min(1, chordRatio/0.25))))
}

// SweptLimit returns the greatest lift coefficient of a plain wing by the flat rule, for comparison only.
//
// Formula: CLmax = 0.9 clmax cos(sweep of the quarter chord).
// Valid for: aspect ratio above 5; optimistic for rectangular wings, which reach 0.82 to 0.87.
// Source: Raymer, Aircraft Design: A Conceptual Approach, chapter 12 (from memory).
func SweptLimit(sectionMaximum, quarterChordSweep float64) float64 {
	return float64(float64(0.9*sectionMaximum) * math.Cos(quarterChordSweep))
}

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
	return HelmboldSlope(float64(sectionSlope*math.Cos(halfChordSweep)), aspectRatio)
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
	product := float64(float64(float64(ka*kl)*kh) * math.Sqrt(math.Cos(quarterChordSweep)))
	return float64(4.44 * elementary.Pow(product, 1.19))
}
