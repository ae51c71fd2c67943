package drag

import (
	"math"

	"pitgate/server/physics/elementary"
)

// WingFormFactor returns the form factor of a wing or tail.
//
// Formula: FF = [1 + 0.6/(x/c)_m t/c + 100 (t/c)^4] max(1, 1.34 M^0.18 cos^0.28(sweep)); where (x/c)_m place and t/c size of greatest
// thickness, M Mach number, sweep of the line of greatest thickness. The Mach factor falls below 1 at model speeds and is floored.
// Valid for: t/c to 0.25, subsonic.
// Source: Raymer, Aircraft Design: A Conceptual Approach, Eq. 12.30; floor our own.
func WingFormFactor(thickness, thicknessPlace, mach, sweep float64) float64 {
	return float64(max(1, plateFactor(thickness, thicknessPlace)) * max(1, machFactor(mach, sweep)))
}

// plateFactor returns 1 + 0.6/(x/c) t/c + 100 (t/c)^4.
func plateFactor(thickness, place float64) float64 {
	square := float64(thickness * thickness)
	return 1 + float64(0.6/max(0.05, place)*thickness) + float64(100*float64(square*square))
}

// machFactor returns 1.34 M^0.18 cos^0.28(sweep).
func machFactor(mach, sweep float64) float64 {
	if !(mach > 0) {
		return 0
	}
	return float64(float64(1.34*elementary.Pow(mach, 0.18)) * elementary.Pow(max(0.01, elementary.Cos(sweep)), 0.28))
}

// BodyFormFactor returns the form factor of a fuselage or pod.
//
// Formula: FF = 0.9 + 5/f^1.5 + f/400; where f length over the diameter of the greatest cross section; floored at 1. Square sides 1.38.
// Valid for: f 3 to 20; below 3 the body is taken as f = 3.
// Source: Raymer, Aircraft Design: A Conceptual Approach, 6th edition, Eq. 12.31; square sides from memory.
func BodyFormFactor(fineness float64, squareSided bool) float64 {
	f := max(3, fineness)
	factor := max(1, 0.9+5/float64(f*math.Sqrt(f))+f/400)
	if squareSided {
		factor = float64(1.38 * factor)
	}
	return factor
}

// OlderBodyFormFactor returns the form factor of the older editions, for comparison.
//
// Formula: FF = 1 + 60/f^3 + f/400.
// Valid for: f 4 to 20.
// Source: Raymer, earlier editions (from memory).
func OlderBodyFormFactor(fineness float64) float64 {
	return 1 + 60/float64(float64(fineness*fineness)*fineness) + fineness/400
}

// PodFormFactor returns the form factor of a nacelle or smooth external store.
//
// Formula: FF = 1 + 0.35/f.
// Valid for: f 1 to 20.
// Source: Raymer, Aircraft Design: A Conceptual Approach (from memory).
func PodFormFactor(fineness float64) float64 { return 1 + 0.35/max(0.5, fineness) }

// Interference factors by part.
//
// Source: wing and body 1.0 and tails 1.04 as in a published university course example; the V-tail 1.03 from memory.
const (
	interferenceWing  = 1.0
	interferenceTail  = 1.04
	interferenceVTail = 1.03
	interferenceBody  = 1.0
)

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

// OswaldStraight returns the span efficiency of the whole aeroplane by the statistical rule, for comparison with the lattice.
//
// Formula: e = 1.78 (1 - 0.045 A^0.68) - 0.64.
// Valid for: A 4 to 12, sweep of the leading edge below 30 degrees.
// Source: Raymer, Aircraft Design: A Conceptual Approach, Eq. 12.48.
func OswaldStraight(aspectRatio float64) float64 {
	return float64(1.78*(1-float64(0.045*elementary.Pow(aspectRatio, 0.68)))) - 0.64
}

// OswaldFactor returns the part of the lattice's span efficiency that is left when the drag that grows with lift is counted:
// the friction of the sections rises with lift and the body disturbs the loading.
//
// Formula: 1/e = 1/e_span + pi A 0.38 CD0.
// Valid for: A 3 to 12.
// Source: common practice in conceptual design (parasite part of the induced factor 0.38 CD0), from memory.
func OswaldFactor(spanEfficiency, aspectRatio, zeroLiftDrag float64) float64 {
	parasite := float64(float64(math.Pi*aspectRatio) * float64(0.38*zeroLiftDrag))
	return 1 / (1/spanEfficiency + parasite)
}
