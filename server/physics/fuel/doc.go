// Package fuel follows the fuel from the tank to the pump of an engine: what a mix of fuel and oil weighs and how it flows when cold, what
// lines, fittings and a filter cost, how far the pump sucks under load factor and attitude, whether air comes out of the fuel, what an air
// trap and a vent must be, how long the fuel lasts with its reserve, and the smallest change that mends what is short.
//
// Lengths in m, bores (inner diameters) in m, volumes in m3, volume flow in m3/s, mass flow in kg/s, pressure in Pa, temperature in K, load
// factors in g, density in kg/m3, kinematic viscosity in m2/s, time in s. Suction is the pressure below that in the tank, positive down.
//
// Assess is the whole computation of a feed system; FlightBudget the timer and the reserve. Every formula below them can be called alone.
// Fuel flow against thrust is in package engine (Engine.FuelFlow); travel of the balance point while tanks empty in package weighing (Burn).
package fuel

import (
	"fmt"
	"math"
)

// gravity is the standard acceleration of free fall, m/s2.
const gravity = 9.80665

// celsius is 0 degrees Celsius, K.
const celsius = 273.15

// checkPositive returns an error that names the field unless the value is finite and above 0.
func checkPositive(field string, value float64) error {
	if !(value > 0) || math.IsInf(value, 0) {
		return fmt.Errorf("%s: %g is not a finite number above 0", field, value)
	}
	return nil
}

// checkNotNegative returns an error that names the field unless the value is finite and not below 0.
func checkNotNegative(field string, value float64) error {
	if !(value >= 0) || math.IsInf(value, 0) {
		return fmt.Errorf("%s: %g is not a finite number from 0", field, value)
	}
	return nil
}

// checkWithin returns an error that names the field unless the value lies between two bounds.
func checkWithin(field string, value, low, high float64) error {
	if !(value >= low && value <= high) {
		return fmt.Errorf("%s: %g is outside %g to %g", field, value, low, high)
	}
	return nil
}
