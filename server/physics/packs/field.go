package packs

import (
	"fmt"
	"math"
)

// LoadTest is a check at the field: the pack's volts at rest and under a known load some seconds later.
type LoadTest struct {
	Rest    float64 // V, no load
	Loaded  float64 // V, at the pack's plug
	Current float64 // A
	Kelvin  float64 // of the pack
}

// LoadTestResult is what a load test says.
type LoadTestResult struct {
	Resistance   float64 // of the pack at its temperature, ohm
	AtRoom       float64 // the same brought to 25 C, ohm: the figure for Supply.Resistance
	Expected     float64 // loaded volts the class figures and age predict, V
	Short        float64 // how far the reading lies below that, V
	Ratio        float64 // measured over expected resistance
	Worn         bool    // more than WornRatio times what was expected of a new pack: retire it
	Charge       float64 // share of full from the rest voltage
	ChargeWithin float64 // its uncertainty
	ChargeKnown  bool    // false where the rest voltage says nothing: count the charge instead
}

// WornRatio is how many times the resistance of a new pack marks the end of its life. Source: common practice, doubled.
const WornRatio = 2.0

// CheckUnderLoad returns what a load test says of a pack.
//
//	R = (rest - loaded)/I, at 25 C: R over ColdRatio and LowChargeRatio
//
// where s gives chemistry, cells and capacity; its Charge stands in when the rest voltage does not tell. Valid for: a load of some seconds that draws at
// least a tenth of the capacity an hour. Source: Ohm's law. Errors: ErrInput, also when the loaded volts are above those at rest.
func CheckUnderLoad(s Supply, test LoadTest) (LoadTestResult, error) {
	if err := s.check(); err != nil {
		return LoadTestResult{}, err
	}
	for _, v := range []struct {
		field              string
		value, least, most float64
	}{
		{"rest voltage", test.Rest, 0.1, 200},
		{"loaded voltage", test.Loaded, 0, test.Rest},
		{"test current", test.Current, 0.1 * s.Capacity, 1e4},
		{"test temperature", test.Kelvin, leastKelvin, mostKelvin},
	} {
		if err := within(v.field, v.value, v.least, v.most); err != nil {
			return LoadTestResult{}, fmt.Errorf("load test: %w", err)
		}
	}
	out := LoadTestResult{Resistance: (test.Rest - test.Loaded) / test.Current}
	out.Charge, out.ChargeWithin, out.ChargeKnown = s.Chemistry.ChargeFromRest(test.Rest / float64(s.Series))
	charge := s.Charge
	if out.ChargeKnown {
		charge = out.Charge
	}
	factor := s.Chemistry.ColdRatio(test.Kelvin) * LowChargeRatio(charge)
	fresh := s.Chemistry.ClassResistance(s.Series, s.Capacity)
	out.AtRoom = out.Resistance / factor
	out.Expected = math.Max(0, test.Rest-float64(fresh*AgeRatio(s.Chemistry.Loss(s.Age))*factor*test.Current))
	out.Short = out.Expected - test.Loaded
	out.Ratio = out.AtRoom / fresh
	out.Worn = out.Ratio > WornRatio
	return out, nil
}
