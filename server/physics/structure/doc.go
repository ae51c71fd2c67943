// Package structure finds what spars, booms, joiners, bolts and skins stand.
//
//	FindMaterial     a builder's word -> strength and stiffness at their low end, with source and what is knocked off
//	Measure          stacked parts -> stiffness, neutral axis, areas
//	Assess           spar stations and the loads there -> what each part stands, the load factor it governs, margins
//	Joiner.Assess    what joins the panels: its own stress, its grip in the socket
//	Bolts.Stands     wing seat bolts or dowels
//	TorsionShear     and Twist: the closed box that carries the twist
//	Raise            which wall or cap would have to be how thick for a wanted load factor
//	Decide           calculation, designer's figure and sandbag test -> the load factor to fly with
//
// SI units. z is up from the spar's middle. Bending is positive tip up: the upper side is pressed, the lower pulled. Loads come as loads.Line over the load
// factor, so that every limit turns into a load factor without a search. Load factors that are told are limit load factors: stresses are multiplied by the
// safety factor before they are compared with what breaks.
//
// Errors wrap ErrInput and name the field. What is not known (a material that is not in the table, a part without web) is a mark in the result, no error.
package structure

import (
	"errors"
	"fmt"
	"math"
)

// SafetyFactor is what a limit load is multiplied by before it may break anything.
//
// Source: 14 CFR 25.303; CS-VLA 303 (from memory).
const SafetyFactor = 1.5

// ErrInput marks input that cannot exist; the error that wraps it names the field.
var ErrInput = errors.New("impossible input")

// ErrOutOfRange marks results that are too large to be numbers.
var ErrOutOfRange = errors.New("out of range of any structure")

// named is a value with the field it came from.
type named struct {
	field string
	value float64
}

// checkPositive returns an error that names the first value that is not a positive, finite number.
func checkPositive(values ...named) error {
	for _, v := range values {
		if !(v.value > 0) || math.IsInf(v.value, 0) {
			return fmt.Errorf("%w: %s must be positive, is %g", ErrInput, v.field, v.value)
		}
	}
	return nil
}

// checkNotNegative returns an error that names the first value that is negative or not finite.
func checkNotNegative(values ...named) error {
	for _, v := range values {
		if !(v.value >= 0) || math.IsInf(v.value, 0) {
			return fmt.Errorf("%w: %s must not be negative, is %g", ErrInput, v.field, v.value)
		}
	}
	return nil
}

// checkFinite returns an error that names the first value that is not a finite number.
func checkFinite(values ...named) error {
	for _, v := range values {
		if !finite(v.value) {
			return fmt.Errorf("%w: %s must be a number, is %g", ErrInput, v.field, v.value)
		}
	}
	return nil
}

// checkResult returns ErrOutOfRange when a result is not a finite number.
func checkResult(values ...float64) error {
	for _, v := range values {
		if !finite(v) {
			return ErrOutOfRange
		}
	}
	return nil
}

func finite(value float64) bool { return !math.IsNaN(value) && !math.IsInf(value, 0) }
