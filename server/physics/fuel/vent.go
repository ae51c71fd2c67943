package fuel

import (
	"pitgate/server/physics/air"
	"pitgate/server/physics/elementary"
)

const (
	// VentLimit is the suction in the tank from which a vent counts as tight, Pa (common practice; a tenth of it is usual).
	VentLimit = 500.0
	// ventLength is a usual length of vent tube, m.
	ventLength = 0.5
	// leastVent is the smallest bore that a drop of fuel does not close, m (common practice).
	leastVent = 0.002
)

// VentLoss returns the suction in the tank that draws air through the vent as fuel leaves (Pa).
//
// Formula: dp = (f L/d + 1.5) rho v2/2, v = 4 Q/(pi d2); where Q fuel flow that air replaces (m3/s), d bore, L length (m), rho of air.
// Valid for: air in the tube; liquid in the vent costs rho of fuel over rho of air as much.
// Source: Darcy, Weisbach; entry and exit of 0.5 and 1 velocity heads.
func VentLoss(flow, bore, length, density, viscosity float64) float64 {
	speed := Speed(flow, bore)
	friction := Friction(Reynolds(speed, bore, viscosity))
	return TubeLoss(friction, length, bore, density, speed) + float64(entryAndExit*density*speed*speed/2)
}

// LeastVent returns the bore at which VentLoss is a limit (m), never below 2 mm, which a drop of fuel would close.
//
// Formula: VentLoss(d) = limit, by bisection; VentLoss falls with d.
// Valid for: limits above 0.
// Source: VentLoss.
func LeastVent(flow, length, density, viscosity, limit float64) float64 {
	low, high := leastVent, 0.05
	if VentLoss(flow, low, length, density, viscosity) <= limit {
		return low
	}
	for range 60 {
		middle := float64((low + high) / 2)
		if VentLoss(flow, middle, length, density, viscosity) > limit {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}

// VentRam returns the pressure that the wind of flight adds in the tank (Pa, suction negative).
//
// Formula: p = cp rho v2/2; where cp pressure coefficient at the mouth: 1 facing forward, 0 flush on the side, down to -1 cut off aft.
// Valid for: the mouth in undisturbed flow.
// Source: Bernoulli.
func VentRam(coefficient, density, speed float64) float64 {
	return float64(coefficient * density * speed * speed / 2)
}

// airOf returns density and kinematic viscosity of dry air at a temperature and pressure.
func airOf(temperature, pressure float64) (density, viscosity float64) {
	density = pressure / (287.053 * temperature)
	return density, air.Viscosity(temperature) / density
}

// Swing returns the angle by which the surface of the fuel tilts (rad).
//
// Formula: a = atan2(nx, nz); where nx load along, nz load across the tank's floor (g).
// Valid for: steady load.
// Source: hydrostatics.
func Swing(load Load) float64 { return elementary.Atan2(load.Forward, load.Normal) }
