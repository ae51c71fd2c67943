package drag

import "math"

// BaseDrag returns drag over dynamic pressure of a blunt base, m2.
//
// Formula: CD = 0.029/sqrt(CfB) on the base area; where CfB friction drag of the forebody over base area.
// Valid for: bodies with a wake behind the base; a running jet fills its own part.
// Source: Hoerner, Fluid-Dynamic Drag (from memory).
func BaseDrag(forebodyFrictionArea, baseArea float64) float64 {
	if !(baseArea > 0) || !(forebodyFrictionArea > 0) {
		return 0
	}
	coefficient := BaseCoefficient(forebodyFrictionArea / baseArea)
	return float64(coefficient * baseArea)
}

// BaseCoefficient returns the drag coefficient of a base, never above the 0.3 of a bullet.
//
// Formula: 0.029/sqrt(CfB).
// Valid for: CfB above 0.01.
// Source: Hoerner, Fluid-Dynamic Drag (from memory).
func BaseCoefficient(frictionRatio float64) float64 { return min(0.3, 0.029/math.Sqrt(frictionRatio)) }

// UpsweepDrag returns drag over dynamic pressure of a fuselage whose tail sweeps up, m2.
//
// Formula: D/q = 3.83 u^2.5 A; where u upsweep angle, rad, A greatest cross section, m2.
// Valid for: u to 0.5 rad.
// Source: Raymer, Aircraft Design: A Conceptual Approach, Eq. 12.36.
func UpsweepDrag(upsweep, crossSection float64) float64 {
	u := max(0, upsweep)
	return float64(float64(3.83*float64(float64(u*u)*math.Sqrt(u))) * crossSection)
}
