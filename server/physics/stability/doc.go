// Package stability judges how a model flies by itself and answers its controls: natural motions, static margin, pitch, yaw and roll control.
//
// Every function is pure and works on small structs. Lengths, masses and forces may be in any consistent set of units; angles are in radians.
// Axes of places: x aft, z up. Axes of motions: x forward, y to starboard, z down; nose up, starboard wing down and nose to starboard are positive.
// Rates are made dimensionless by c/(2V) in pitch and b/(2V) in roll and yaw. A control angle is positive with its trailing edge down.
package stability

import (
	"errors"
	"fmt"
	"math"
)

// ErrInput marks input that cannot exist; the error that wraps it names the field.
var ErrInput = errors.New("impossible input")

// ErrOutOfRange marks results that are too large to be numbers, from input that is far outside any aeroplane.
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
