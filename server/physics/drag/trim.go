package drag

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Tail is the surface that trims, with what it carries.
type Tail struct {
	Area        float64 // m2
	AspectRatio float64
	Efficiency  float64 // span efficiency; 0 counts as 1
	Lift        float64 // lift coefficient on its own area; negative for a down load
	Downwash    float64 // angle of the stream at it, down positive, rad
}

// TrimInduced returns the induced drag of a tail at its trim load as a coefficient on a reference area.
//
// Formula: (St/S) [CLt^2/(pi At et) + CLt sin(downwash)]; where the second term is the tail's lift tilted by the stream.
// Valid for: a tail in the wing's wake, and where the induced factor in use is that of the wing alone. A lattice solved with the controls
// set holds this already: do not add it there. Negative for a down load in upwash or an up load in upwash.
// Source: lifting line for the tail; trim drag as in Perkins and Hage, Airplane Performance, Stability and Control, from memory.
func TrimInduced(t Tail, referenceArea float64) float64 {
	if !(referenceArea > 0) || !(t.AspectRatio > 0) {
		return 0
	}
	square := float64(t.Lift * t.Lift)
	own := float64(InducedFactor(t.AspectRatio, orOne(t.Efficiency)) * square)
	tilt := float64(t.Lift * elementary.Sin(t.Downwash))
	return float64(usable(t.Area) / referenceArea * (own + tilt))
}

// ControlProfile returns the profile drag of a deflected plain control as a coefficient on the reference area.
//
// Formula: 1.7 (cf/c)^1.38 (Sf/S) sin^2(deflection); where cf/c chord ratio, Sf area along the control's span, S reference area.
// Valid for: plain flaps and controls to 60 degrees; slotted ones about half.
// Source: Young, The Aerodynamic Characteristics of Flaps, ARC R&M 2622, as fitted in later textbooks (from memory).
func ControlProfile(chordRatio, areaRatio, deflection float64) float64 {
	ratio := usable(min(1, chordRatio))
	if ratio == 0 {
		return 0
	}
	sine := elementary.Sin(deflection)
	return float64(float64(1.7*elementary.Pow(ratio, 1.38)) * float64(usable(areaRatio)*float64(sine*sine)))
}

// TrimDrag returns what trimming adds to a polar whose induced factor is without it.
//
// Formula: (trimmed induced - untrimmed induced at the same total lift) + profile drag of the deflected control, never below 0 in its second
// part.
// Valid for: both induced drags from one lattice, controls set and not set. With a trimmed induced factor in Polar.Induced pass the same
// value twice: only the control's profile drag is left.
// Source: definition.
func TrimDrag(trimmedInduced, untrimmedInduced, controlProfile float64) float64 {
	return trimmedInduced - untrimmedInduced + max(0, controlProfile)
}

// LoadOnTail returns the lift coefficient of a tail, on its own area, that balances a moment about the balance point.
//
// Formula: CLt = moment/(q St l); where moment nose up positive, N m, q dynamic pressure, Pa, l arm from the balance point aft, m.
// Valid for: non-zero arm and dynamic pressure; 0 otherwise. A nose-up moment asks for an up load behind the balance point.
// Source: equilibrium of moments.
func LoadOnTail(moment, dynamicPressure, area, arm float64) float64 {
	lever := float64(float64(dynamicPressure*area) * arm)
	if lever == 0 || math.IsNaN(lever) || math.IsInf(lever, 0) {
		return 0
	}
	return moment / lever
}
