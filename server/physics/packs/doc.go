// Package packs computes the packs that feed receivers, servos and engine control: what servos draw by class and number, what a pack holds at its
// temperature, rate and age, how its resistance grows in the cold, what leads, switch and plugs drop, when a regulator falls out under peaks, flights
// on one charge with a reserve, the check under load at the field, how a pack cools in the open, and the smallest single change that keeps the volts.
//
// Units: V, A, ohm, s, K, m, m2; charge in ampere hours, the unit packs are sold by (3600 C). Class figures stand in for what was not measured and are
// named in Result.Estimated: they are right within a factor of two for resistance, within 40 % for servo currents. A measured figure replaces them.
//
// A whole check: DemandOf the servos' groups (a class by the torque of each linkage with ClassByTorque, brought to the bus voltage with Class.At) where no
// currents were measured; Compute the supply with the cells' temperature, cooled with Soaked where it waited in the open; Wanted.Holds; Flights;
// Changes where it falls short; CheckUnderLoad with the reading at the field, whose AtRoom goes into Supply.Resistance. Of the contract: lead areas come in
// mm2 (1e-6 m2); a pack without a regulator's voltage is Direct; one whose regulator's kind is not told is Linear, which draws the most.
//
// Impossible input gives ErrInput with the field's name; results are finite always.
package packs

import (
	"errors"
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
)

// ErrInput marks input that no pack has; the text names the field.
var ErrInput = errors.New("impossible input")

// Temperatures, K.
const (
	Zero       = 273.15 // of the Celsius scale
	RoomCells  = Zero + 25
	RoomCopper = Zero + 20
	// ColdestCells and HottestCells bound the discharge of lithium cells. Source: data sheets of cells.
	ColdestCells = Zero - 20
	HottestCells = Zero + 60
)

const (
	leastKelvin, mostKelvin = 150.0, 500.0
	secondsPerHour          = 3600.0
	mostValue               = 1e6
)

// within refuses a value outside a closed range and one that is no number.
func within(field string, value, least, most float64) error {
	if !(value >= least && value <= most) {
		return fmt.Errorf("%w: %s must be from %g to %g, is %g", ErrInput, field, least, most, value)
	}
	return nil
}

// clamp keeps a value in a range; what is no number becomes the least.
func clamp(value, least, most float64) float64 {
	if !(value >= least) {
		return least
	}
	return math.Min(most, value)
}

// square returns x squared, rounded, so that no sum fuses it.
func square(x float64) float64 { return float64(x * x) }

// point is a value at a place of a table.
type point struct{ at, value float64 }

// interpolate returns the value of a table with rising places, linear between them and held outside.
func interpolate(table []point, at float64) float64 {
	if !(at > table[0].at) {
		return table[0].value
	}
	for i := 1; i < len(table); i++ {
		if at <= table[i].at {
			part := (at - table[i-1].at) / (table[i].at - table[i-1].at)
			return table[i-1].value + float64(part*(table[i].value-table[i-1].value))
		}
	}
	return table[len(table)-1].value
}

// arrhenius returns exp(E/R (1/T - 1/298.15 K)).
//
// where energy is E (J/mol), kelvin T. Valid for: one thermally activated step. Source: Arrhenius' law with R = 8.314462618 J/(mol K).
func arrhenius(energy, kelvin float64) float64 {
	const gasConstant = 8.314462618
	return elementary.Exp(energy / gasConstant * (1/kelvin - 1/RoomCells))
}
