// Package drag builds up the drag of a model without lift: skin friction by Reynolds number and finish, form factors, interference,
// landing gear, bases, ducts and small items. Areas in m2, speeds in m/s; coefficients on the reference area handed in.
package drag

import (
	"math"

	"pitgate/server/physics/elementary"
)

// LaminarFriction returns the mean friction coefficient of one side of a plate in laminar flow.
//
// Formula: Cf = 1.328/sqrt(Re); where Re on the length of the plate.
// Valid for: Re 1e4 to 5e5 (to 3e6 on a polished surface).
// Source: Blasius.
func LaminarFriction(reynolds float64) float64 { return 1.328 / math.Sqrt(reynolds) }

// TurbulentFriction returns the mean friction coefficient of one side of a plate, turbulent from the front edge.
//
// Formula: Cf = 0.455/(log10 Re)^2.58.
// Valid for: Re 5e4 to 1e9.
// Source: Prandtl and Schlichting 1932.
func TurbulentFriction(reynolds float64) float64 {
	return 0.455 / elementary.Pow(elementary.Log10(reynolds), 2.58)
}

// Friction returns the mean friction coefficient of a plate that turns turbulent at a fraction of its length.
//
// Formula: Cf = Ct(Re) - x [Ct(x Re) - Cl(x Re)]; where x place of transition over length. Never below laminar or above turbulent.
// Valid for: Re 5e4 to 1e9; below, Reynolds number is held at 1e3. Subtracting a constant over Re instead would go negative below 3e5.
// Source: Prandtl's composite rule, Schlichting, Boundary-Layer Theory, chapter 21.
func Friction(reynolds, transition float64) float64 {
	re := max(1e3, min(1e10, reynolds))
	x := max(0, min(1, transition))
	laminar, turbulent := LaminarFriction(re), TurbulentFriction(re)
	low, high := min(laminar, turbulent), max(laminar, turbulent)
	if x == 0 {
		return turbulent
	}
	if float64(x*re) < 1e3 {
		return high
	}
	mixed := turbulent - float64(x*(TurbulentFriction(float64(x*re))-LaminarFriction(float64(x*re))))
	return max(low, min(high, mixed))
}

// Finishes of the skin.
const (
	FinishPolished   = "polished"
	FinishSmooth     = "smooth"
	FinishOpenFrame  = "covered_open_structure"
	FinishTapedFoam  = "taped_foam"
	criticalReynolds = 5e5
)

// Transition returns where the boundary layer turns turbulent, as a fraction of the length, by finish.
//
// Valid for: models without vibration-free tunnels: polished 0.5, smooth 0.3, covered open structure 0.1, taped foam 0.05;
// not beyond a run of Re 5e5, where transition comes by itself. An unknown finish counts as covered open structure.
// Source: common practice, no source.
func Transition(finish string, reynolds float64) float64 {
	fraction := 0.1
	switch finish {
	case FinishPolished:
		fraction = 0.5
	case FinishSmooth:
		fraction = 0.3
	case FinishTapedFoam:
		fraction = 0.05
	}
	if reynolds > 0 {
		fraction = min(fraction, criticalReynolds/reynolds)
	}
	return fraction
}

// RoughnessFactor returns what steps, seams and a rough skin multiply turbulent friction by.
//
// Valid for: model Reynolds numbers: polished and smooth 1, covered open structure 1.1, taped foam 1.2, unknown 1.1.
// Source: judgement, no source.
func RoughnessFactor(finish string) float64 {
	switch finish {
	case FinishPolished, FinishSmooth:
		return 1
	case FinishTapedFoam:
		return 1.2
	}
	return 1.1
}

// Reynolds returns the Reynolds number of a length.
//
// Formula: Re = rho V l/mu.
// Valid for: positive viscosity; 0 otherwise.
// Source: definition.
func Reynolds(density, speed, length, viscosity float64) float64 {
	if !(viscosity > 0) {
		return 0
	}
	return float64(float64(density*speed)*length) / viscosity
}
