// Package drag builds up the drag of a model without lift: skin friction by Reynolds number and finish, form factors, interference,
// landing gear, bases, ducts and small items; adds the drag that comes with lift and reads glides off the polar. Areas in m2, speeds in
// m/s; coefficients on the reference area handed in. Negative and infinite measures count as zero: Check names them first.
package drag

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Bounds of the Reynolds number of a plate. Below the first the friction is held.
const (
	lowestReynolds  = 1e3
	highestReynolds = 1e10
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

// Friction returns the mean friction coefficient of a smooth plate that turns turbulent at a fraction of its length.
//
// Formula: Cf = Ct(Re) - x [Ct(x Re) - Cl(x Re)]; where x place of transition over length. Never below laminar or above turbulent.
// Valid for: Re 5e4 to 1e9; below, Reynolds number is held at 1e3. Subtracting a constant over Re instead would go negative below 3e5.
// Source: Prandtl's composite rule, Schlichting, Boundary-Layer Theory, chapter 21.
func Friction(reynolds, transition float64) float64 {
	return roughFriction(reynolds, transition, highestReynolds)
}

// roughFriction returns Friction with the turbulent part held at the cut-off Reynolds number of a rough skin.
func roughFriction(reynolds, transition, cutoff float64) float64 {
	re := max(lowestReynolds, min(highestReynolds, reynolds))
	x := max(0, min(1, transition))
	hold := max(lowestReynolds, cutoff)
	laminar, turbulent := LaminarFriction(re), TurbulentFriction(min(re, hold))
	low, high := min(laminar, turbulent), max(laminar, turbulent)
	if x == 0 {
		return turbulent
	}
	front := float64(x * re)
	if front < lowestReynolds {
		return high
	}
	mixed := turbulent - float64(x*(TurbulentFriction(min(front, hold))-LaminarFriction(front)))
	return max(low, min(high, mixed))
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
