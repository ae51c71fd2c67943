// Package weighing finds what a model weighs and where it balances, how well that is known, whether the list of its items agrees, how the
// balance point travels as fuel burns, and what ballast or which moved item would bring it into its window.
//
//	Weigh          scale readings -> mass and balance point with spread
//	BalanceHeight  a level and a tilted weighing -> height of the balance point
//	Add            items -> mass, balance point, moments of inertia
//	Reconcile      weighed against listed: difference in spreads and what would explain it
//	Burn           empty state and tanks -> travel of the balance point and its extremes
//	Correct        travel and window -> least ballast at each place, least move of each movable item
//
// Everything is in SI units: kilograms and metres, x aft of the datum, y to the right, z up. A coordinate that was not given is a nil pointer:
// absent is not zero. A spread is one standard deviation. Impossible input is an error of type *FieldError that names the field.
package weighing

import (
	"fmt"
	"math"
)

// largest is the largest mass in kilograms or length in metres that is taken for one of a model.
const largest = 1e6

// leastMass is the mass below which there is nothing to weigh, kg.
const leastMass = 1e-6

// Estimate is a number and how far it may be off.
type Estimate struct {
	// Value in the unit of what it stands for.
	Value float64
	// Spread is one standard deviation, in the same unit.
	Spread float64
	// Known is false when the input does not determine the value; Value and Spread are then zero.
	Known bool
}

// known returns an estimate that was determined.
func known(value, variance float64) Estimate {
	return Estimate{Value: value, Spread: math.Sqrt(math.Max(0, variance)), Known: true}
}

// State is a mass and where it balances.
type State struct {
	// Mass in kg.
	Mass Estimate
	// X, Y and Z of the balance point in m.
	X, Y, Z Estimate
	// MassX is the covariance of Mass and X, kg m: both come from the same readings.
	MassX float64
}

// FieldError is an input that cannot be, named by its place.
type FieldError struct {
	// List is the path of the list in the document, e.g. "model.mass.scaleReadings".
	List string
	// Index into the list; negative when the list as a whole is at fault.
	Index int
	// Field of the entry as the document names it; empty for the entry as a whole.
	Field string
	// Says what is wrong with it.
	Says string
}

// Path returns the place in the document, e.g. "model.mass.scaleReadings[1].tareKg".
func (e *FieldError) Path() string {
	path := e.List
	if e.Index >= 0 {
		path = fmt.Sprintf("%s[%d]", path, e.Index)
	}
	if e.Field != "" {
		path += "." + e.Field
	}
	return path
}

// Error returns path and cause.
func (e *FieldError) Error() string { return e.Path() + ": " + e.Says }

// within reports whether a number is one that a mass or length of a model may have.
func within(value float64) bool { return math.Abs(value) <= largest }

// coordinate checks a place that may be absent.
func coordinate(list string, index int, field string, value *float64) error {
	if value != nil && !within(*value) {
		return &FieldError{list, index, field, fmt.Sprintf("is no place on a model, got %g", *value)}
	}
	return nil
}

// amount checks a mass or a spread: a number, not negative.
func amount(list string, index int, field string, value float64) error {
	if !within(value) || value < 0 {
		return &FieldError{list, index, field, fmt.Sprintf("must be a number that is not negative, got %g", value)}
	}
	return nil
}

// first returns the first error.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// square returns the square of a number, rounded before it is added to anything.
func square(value float64) float64 { return float64(value * value) }
