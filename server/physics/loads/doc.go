// Package loads finds what a model's flight asks of its structure: the load factors a manoeuvre and a gust can reach, and the shear, bending and twist along
// a wing, tail or boom that they cause.
//
//	Aircraft.Diagram   stall lines, limits and gust lines over speed, with their corners
//	CircuitLoad        the load factor the turns of a circuit use in a gust
//	PullUpRadius       and PullUpSpeed: what a load factor permits at the bottom of a dive
//	FromLattice        a solved lattice -> strips of one of its surfaces
//	Integrate          strips and masses -> shear, bending and twist at places of the half span, with inertia relief
//	EllipticStrips     and SchrenkStrips, ChordStrips: loadings in closed form, to check one from a lattice
//
// SI units, radians. y runs from the plane of symmetry to the tip, x aft, z up; a load factor of 1 is level flight. Everything along the span is kept as a
// Line over the load factor, because lift of twist and flaps does not grow with it: one integration answers for every load factor.
//
// Errors wrap ErrInput and name the field. No result is NaN or infinite: what is too large to be a number is ErrOutOfRange.
package loads

import (
	"errors"
	"fmt"
	"math"
)

// StandardGravity is the acceleration of free fall, m/s2.
//
// Source: ISO 80000-3.
const StandardGravity = 9.80665

// ErrInput marks input that cannot exist; the error that wraps it names the field.
var ErrInput = errors.New("impossible input")

// ErrOutOfRange marks results that are too large to be numbers.
var ErrOutOfRange = errors.New("out of range of any aeroplane")

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
