package packs

import "math"

// Kind is how a regulator works.
type Kind int

// Kinds of supply to the servos.
const (
	Direct    Kind = iota + 1 // no regulator: the pack feeds the servos
	Linear                    // burns what is too much
	Switching                 // turns volts into amperes
)

// Regulator is what stands between pack and servos.
type Regulator struct {
	Kind       Kind
	Set        float64 // V; without meaning for Direct
	DropOut    float64 // V between input and output below which it cannot hold Set, at the peak
	Efficiency float64 // of Switching, 0.5 to 1; 0.9 when 0
}

// efficiency returns the share of power that reaches the servos.
func (r Regulator) efficiency() float64 {
	if r.Efficiency > 0 {
		return clamp(r.Efficiency, 0.5, 1)
	}
	return 0.9
}

// Drop-outs of linear regulators, V, upper ends. Source: textbook of electronics, recalled.
const (
	ClassicDropOut = 2.5
	LowDropOut     = 1.3
)

// DropOutOfSwitch returns the drop-out of a switched regulator that has come to its greatest duty, V: its least input less the output.
//
//	Vin = (V + I Rdc + (1-D) I Rl)/D + I Rh
//
// where volts is the output V, current I (A), duty D (above 0 to 1), high Rh, low Rl and coil Rdc the resistances of both switches and the coil (ohm).
// Valid for: step-down regulators with two switches. Source: balance of the coil's volts over a cycle, recalled.
func DropOutOfSwitch(volts, current, duty, high, low, coil float64) float64 {
	d := clamp(duty, 0.05, 1)
	input := (volts+float64(current*coil)+float64((1-d)*current*low))/d + float64(current*high)
	return input - volts
}

// LinearHeat returns what a linear regulator burns, W: (Vin - Vout) I.
//
// Valid for: any linear regulator. Source: power.
func LinearHeat(input, output, current float64) float64 { return math.Max(0, input-output) * current }

// SwitchedInput returns the current a switched regulator takes, A: V I/(n Vin).
//
// where volts is the output V, current I (A), efficiency n, input Vin (V). Valid for: in regulation. Source: power.
func SwitchedInput(volts, current, efficiency, input float64) float64 {
	return volts * current / (efficiency * input)
}

// inputUnder returns volts at the regulator's input and the current taken there when a load draws a current at the output.
//
//	direct and linear: Vin = E - R I. Switching: Vin = (E + sqrt(E^2 - 4 R P))/2, P = V I/n; with no root the supply collapses to E/2
//
// where rest is E (V), resistance R of pack and chain (ohm). Below its drop-out a switched regulator passes the current on.
// Valid for: steady current. Source: Ohm's law, power.
func (r Regulator) inputUnder(rest, resistance, current float64) (volts, drawn float64) {
	straight := math.Max(0, rest-float64(resistance*current))
	if r.Kind != Switching {
		return straight, current
	}
	power := r.Set * current / r.efficiency()
	inside := square(rest) - float64(4*resistance*power)
	if inside <= 0 {
		return straight, current
	}
	volts = (rest + math.Sqrt(inside)) / 2
	if volts < r.Set+r.DropOut {
		return math.Min(volts, straight), current
	}
	return volts, math.Min(SwitchedInput(r.Set, current, r.efficiency(), volts), rest/math.Max(resistance, 1e-9))
}

// output returns what reaches the servos from an input, V: the set voltage, or the input less what the regulator cannot avoid.
func (r Regulator) output(input float64) float64 {
	if r.Kind == Direct {
		return input
	}
	return math.Max(0, math.Min(r.Set, input-r.DropOut))
}
