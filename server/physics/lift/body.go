package lift

import (
	"math"

	"pitgate/server/physics/elementary"
)

// BodySection is one cross section of a body: place along x and width, m.
type BodySection struct{ X, Width float64 }

// BodyMomentSlope returns the slope of the pitching-moment coefficient that a body adds, per rad, nose up positive (destabilising).
//
// Formula: Cm_alpha = pi/(2 S c) integral w^2 (1 + upwash slope) dx; upwash from the lattice ahead of and behind the wing, nothing
// between rootLeadingX and rootTrailingX, where the wing guides the stream. z is the height of the body's axis.
// Valid for: slender bodies on or near the plane of symmetry. It does not depend on the reference point.
// Source: Multhopp 1941 (NACA TM 1036), upwash from the lattice instead of the chart.
func (s *Solution) BodyMomentSlope(sections []BodySection, rootLeadingX, rootTrailingX, z float64) float64 {
	const steps = 8
	sum := 0.0
	for i := 1; i < len(sections); i++ {
		a, b := sections[i-1], sections[i]
		dx := (b.X - a.X) / steps
		for k := range steps {
			share := (float64(k) + 0.5) / steps
			x, w := blend(a.X, b.X, share), blend(a.Width, b.Width, share)
			if x > rootLeadingX && x < rootTrailingX {
				continue
			}
			sum += float64(float64(float64(w*w)*s.bodyStream(x, z)) * dx)
		}
	}
	return float64(math.Pi/2*sum) / float64(s.Reference.Area*s.Reference.Chord)
}

// bodyStream returns 1 + upwash slope at a place of the body axis, held between 0 and 2 where the lattice is too near.
func (s *Solution) bodyStream(x, z float64) float64 {
	return max(0, min(2, 1+s.UpwashAt(x, 0, z)))
}

// NeutralPointWith returns the neutral point when a body adds a moment slope, m.
//
// Formula: x_np = x_np,surfaces - c Cm_alpha,body/CL_alpha.
// Valid for: bodies whose lift is small.
// Source: definition of the neutral point.
func (s *Solution) NeutralPointWith(bodyMomentSlope float64) float64 {
	return s.NeutralPointX - float64(s.Reference.Chord*bodyMomentSlope)/s.LiftSlope
}

// MunkMomentSlope returns the pitching-moment slope over dynamic pressure of a body alone, m3 per rad.
//
// Formula: 2 volume (k2 - k1); where k2 - k1 is the ApparentMassFactor of its fineness ratio.
// Valid for: bodies of revolution of fineness above 4, without wing.
// Source: Munk, NACA Report 184.
func MunkMomentSlope(volume, fineness float64) float64 {
	return float64(2 * float64(volume*ApparentMassFactor(fineness)))
}

// ApparentMassFactor returns k2 - k1 of a prolate spheroid, the difference of its crosswise and lengthwise apparent mass.
//
// Formula: e^2 = 1 - 1/f^2; a = 2(1-e^2)/e^3 (L - e), b = 1/e^2 - (1-e^2)/e^3 L, L = ln((1+e)/(1-e))/2; k1 = a/(2-a), k2 = b/(2-b).
// Valid for: f above 1; 0 at or below 1.
// Source: Lamb, Hydrodynamics, article 114; Munk, NACA Report 184.
func ApparentMassFactor(fineness float64) float64 {
	if !(fineness > 1.001) {
		return 0
	}
	e2 := 1 - 1/float64(fineness*fineness)
	e := math.Sqrt(e2)
	l := float64(0.5 * elementary.Log((1+e)/(1-e)))
	cube := float64(e2 * e)
	a := float64(2 * (1 - e2) / cube * (l - e))
	b := 1/e2 - float64((1-e2)/cube*l)
	return b/(2-b) - a/(2-a)
}
