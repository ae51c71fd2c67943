package packs

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Heat figures of packs. Source: common practice, recalled.
const (
	LithiumHeat = 1000.0 // J/(kg K), 900 to 1100
	NickelHeat  = 900.0  // J/(kg K)
	StillAir    = 8.0    // W/(m2 K), convection and radiation in a closed bay
	MovingAir   = 25.0   // W/(m2 K), a cooled bay in flight
)

// SoakTime returns the time constant of a pack in air of another temperature, s: m c/(h A).
//
// where mass is m (kg), heat c (J/(kg K)), transfer h (W/(m2 K)), area A the surface (m2). Valid for: packs thinner than about 4 cm, whose inside follows
// their outside. Source: lumped heat capacity, textbooks of heat transfer.
func SoakTime(mass, heat, transfer, area float64) float64 { return mass * heat / (transfer * area) }

// Soaked returns the temperature after a time, K: Ta + (T0 - Ta) exp(-t/tau).
//
// where start is T0 and air Ta (K), seconds t, constant tau (s). Valid for: as SoakTime, no load. Source: lumped heat capacity.
func Soaked(start, air, seconds, constant float64) float64 {
	return air + float64((start-air)*elementary.Exp(-seconds/constant))
}

// SoakUntil returns the time until a temperature is reached, s: tau ln((T0-Ta)/(T-Ta)), and false when it never is.
//
// where start is T0, air Ta, limit T (K), constant tau (s). Valid for: as Soaked. Source: its inverse.
func SoakUntil(start, air, limit, constant float64) (float64, bool) {
	ratio := (start - air) / (limit - air)
	if !(ratio >= 1) || math.IsInf(ratio, 0) {
		return 0, false
	}
	return constant * elementary.Log(ratio), true
}

// SelfHeating returns how much warmer than the air a pack stays under a steady current, K: I^2 R/(h A).
//
// where current is I (A), resistance R (ohm), transfer h and area A as in SoakTime. Valid for: steady state. Source: heat balance.
func SelfHeating(current, resistance, transfer, area float64) float64 {
	return square(current) * resistance / (transfer * area)
}
