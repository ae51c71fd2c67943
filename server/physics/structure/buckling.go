package structure

import (
	"math"

	"pitgate/server/physics/elementary"
)

// EulerLoad returns the load that buckles a straight strut, N; 0 without length.
//
// Formula: P = pi^2 E I/(k L)^2; where k effective length over length: 1 both ends hinged, 2 one end free, 0.5 both ends held.
// Valid for: slender struts, stress below the material's own limit.
// Source: Euler, in any text on strength of materials.
func EulerLoad(modulus, inertia, length, k float64) float64 {
	if !(length > 0) || !(k > 0) {
		return 0
	}
	return math.Pi * math.Pi * modulus * inertia / float64(float64(k*length)*float64(k*length))
}

// BendingShellFactor returns the share of the classical buckling stress that a thin round tube in bending reaches, dents and unevenness included.
//
// Formula: g = 1 - 0.731 (1 - exp(-sqrt(R/t)/16)); where R radius of the middle of the wall, t wall, m.
// Valid for: R/t up to 1500.
// Source: NASA SP-8007, Buckling of Thin-Walled Circular Cylinders, from memory.
func BendingShellFactor(radiusOverWall float64) float64 {
	return 1 - float64(0.731*(1-elementary.Exp(-math.Sqrt(max(0, radiusOverWall))/16)))
}

// AxialShellFactor returns BendingShellFactor's like for pressure along the axis.
//
// Formula: g = 1 - 0.901 (1 - exp(-sqrt(R/t)/16)).
// Valid for, source: BendingShellFactor.
func AxialShellFactor(radiusOverWall float64) float64 {
	return 1 - float64(0.901*(1-elementary.Exp(-math.Sqrt(max(0, radiusOverWall))/16)))
}

// TubeBucklingStress returns the stress at which the wall of a thin tube wrinkles, Pa, before BendingShellFactor.
//
// Formula: s = 0.605 E t/R.
// Valid for: isotropic walls (E/sqrt(3 (1 - 0.3^2))); others with the root of the moduli along and across.
// Source: classical theory of cylindrical shells, Timoshenko and Gere, Theory of Elastic Stability.
func TubeBucklingStress(modulus, wall, radius float64) float64 {
	return 0.605 * modulus * wall / radius
}

// Coefficients of PlateBucklingStress for long plates with hinged edges.
//
// Source: Bryan; Timoshenko and Gere, Theory of Elastic Stability; NACA TN 3781.
const (
	PlatePressed      = 4.0  // pressed, both edges held
	PlatePressedFree  = 0.43 // pressed, one edge free
	PlateInShear      = 5.35
	poissonsRatio     = 0.3
	isotropicShear    = 2.6 // E/G at that ratio
	coreWrinkleFactor = 0.5
)

// PlateBucklingStress returns the stress at which a flat plate buckles, Pa.
//
// Formula: s = k pi^2 E/(12 (1 - 0.3^2)) (t/b)^2; where t thickness, b breadth between the held edges (or to the free one), m.
// Valid for: long plates, elastic.
// Source: Bryan, in Timoshenko and Gere, Theory of Elastic Stability.
func PlateBucklingStress(k, modulus, thickness, breadth float64) float64 {
	ratio := thickness / breadth
	return k * math.Pi * math.Pi * modulus / (12 * (1 - poissonsRatio*poissonsRatio)) * float64(ratio*ratio)
}

// WrinklingStress returns the stress at which a skin bonded to a core wrinkles, Pa.
//
// Formula: s = 0.5 (E_f E_c G_c)^(1/3); where E_f skin, E_c and G_c core.
// Valid for: thick cores; 0.5 is the practical value, 0.825 the theoretical one.
// Source: Hoff and Mautner 1945, from memory.
func WrinklingStress(skin, core, coreShear float64) float64 {
	product := float64(skin*core) * coreShear
	if !(product > 0) {
		return 0
	}
	return coreWrinkleFactor * elementary.Exp(elementary.Log(product)/3)
}

// plateModulus returns the modulus that a thin wall of a material buckles with, Pa.
//
// Formula: sqrt(E min(E, 2.6 G)), E itself when the material is isotropic.
// Valid for: materials stiffer along than across, whose modulus across the fibre goes with G.
// Source: orthotropic plates buckle with the root of both stiffnesses; 2.6 G for the one across is judgement.
func plateModulus(m Material) float64 {
	return math.Sqrt(float64(m.Modulus * min(m.Modulus, isotropicShear*m.ShearModulus)))
}
