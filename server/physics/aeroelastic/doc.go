// Package aeroelastic finds the speeds that a model must not pass: at which a wing twists off, a thin fin may flutter, a servo can no longer hold its control.
//
//	Wing.Divergence    the speed at which lift twists a wing faster than it resists
//	PlateFin.Flutter   screening boundary of a thin plate fin
//	HingeSlopes        and Control.HingeMoment: what the air does about a hinge
//	Linkage.Limits     speeds at which servo or pushrod give in at full throw
//	Linkage.RodLimits  speeds at which the pushrod buckles or lets the control give
//	FreePlay           slack at the trailing edge as an angle: a bench item
//	NeverExceed        the least of all, with margins, and what governs it
//
// SI units, radians, true speeds for the density given. The speed of aileron reversal is stability.TwistingWing's; its term is added by the caller.
//
// Nothing here shows that a control surface does not flutter: mass balance, slack and stiffness of the linkage decide that at this size and belong on the bench.
//
// Errors wrap ErrInput and name the field. Outside a method's validity a result says so.
package aeroelastic

import (
	"errors"
	"fmt"
	"math"
)

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
		if math.IsNaN(v.value) || math.IsInf(v.value, 0) {
			return fmt.Errorf("%w: %s must be a number, is %g", ErrInput, v.field, v.value)
		}
	}
	return nil
}

// checkResult returns ErrOutOfRange when a result is not a finite number.
func checkResult(values ...float64) error {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return ErrOutOfRange
		}
	}
	return nil
}
