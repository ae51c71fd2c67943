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
