package packs

import (
	"fmt"
	"math"
)

// Lead is what joins a pack to its load.
type Lead struct {
	Length         float64 // one way, m
	Area           float64 // of each conductor, m2; needed when there is a length
	Contacts       int     // contacts in series, two a plug
	Contact        float64 // each, ohm; PinContact when 0
	SwitchContacts float64 // the switch altogether, ohm; 0 without one
	Kelvin         float64 // of the copper; RoomCopper when 0
}

// Resistance returns the resistance of the whole way there and back, ohm.
//
// Valid for: flexible copper leads. Source: LeadResistance; sum of resistances.
func (l Lead) Resistance() float64 {
	contact, kelvin := l.Contact, l.Kelvin
	if !(contact > 0) {
		contact = PinContact
	}
	if !(kelvin > 0) {
		kelvin = RoomCopper
	}
	wire := 0.0
	if l.Length > 0 {
		wire = LeadResistance(l.Length, l.Area, kelvin)
	}
	return wire + float64(float64(l.Contacts)*contact) + l.SwitchContacts
}

// Supply is a pack with its way to the load and what the load draws.
type Supply struct {
	Chemistry  Chemistry
	Series     int     // cells in series, 1 to 24
	Capacity   float64 // stated, Ah
	Resistance float64 // of the pack at 25 C as measured, ohm; 0: class figure, made worse by age
	Charge     float64 // at the start, share of full
	Age        Age
	Kelvin     float64 // of the cells in use
	Lead       Lead
	Regulator  Regulator
	LeastBus   float64 // least volts the servos and receiver need; DefaultLeastBus when 0
	Mean       float64 // current at the servos over the flight, A
	Peak       float64 // current at the servos, A
	Time       float64 // planned from the first switch-on to the last landing, s; volts are judged at its end
}

// DefaultLeastBus is what analogue servos need, V; receivers go on to about 3.8. Source: common practice.
const DefaultLeastBus = 4.8

// RegulatorReserve is how much the input should stay above the drop-out, V (judgement).
const RegulatorReserve = 0.3

// Result is a supply at the end of the planned time, its coldest and emptiest.
type Result struct {
	Temperature, Rate, Aged float64 // factors of capacity, 0 to 1
	Usable                  float64 // charge it can give from the start, Ah
	Drawn                   float64 // charge the plan draws, Ah
	Lasts                   float64 // endurance at the mean current, s
	ChargeAtEnd             float64 // share of what it can hold that is left, 0 to 1

	PackResistance  float64 // at temperature, age and charge, ohm
	ChainResistance float64 // leads, plugs, switch, ohm
	RestVolts       float64 // at the end of the plan, no load
	PackVolts       float64 // at the pack's terminals under the peak
	InputVolts      float64 // at the regulator or the servos under the peak
	BusVolts        float64 // that the servos see under the peak
	LeadDrop        float64 // V under the peak
	InputCurrent    float64 // that the pack gives under the peak, A
	PeakRate        float64 // that current over the capacity, 1/h
	Spare           float64 // V: input above set and drop-out, or bus above LeastBus without a regulator; negative: falls out
	DropsOut        bool    // the regulator cannot hold its voltage, or without one the bus falls below LeastBus
	CellTooLow      bool    // a cell goes below LeastLoadedVolts under the peak

	Estimated []string // class figures that stood in
	Outside   []string // what lies outside the validity of the figures
}

// check refuses a supply that cannot be.
func (s Supply) check() error {
	if !s.Chemistry.Known() {
		return fmt.Errorf("%w: chemistry must be one of those known", ErrInput)
	}
	for _, v := range []struct {
		field              string
		value, least, most float64
	}{
		{"series cells", float64(s.Series), 1, 24},
		{"capacity", s.Capacity, 1e-3, 1e3},
		{"resistance", s.Resistance, 0, 1e3},
		{"charge", s.Charge, 0, 1},
		{"age in years", s.Age.Years, 0, 100},
		{"cycles", s.Age.Cycles, 0, 1e5},
		{"store temperature", s.Age.StoreKelvin, 0, mostKelvin},
		{"store charge", s.Age.StoreCharge, 0, 1},
		{"temperature", s.Kelvin, leastKelvin, mostKelvin},
		{"lead length", s.Lead.Length, 0, 100},
		{"lead contacts", float64(s.Lead.Contacts), 0, 100},
		{"contact resistance", s.Lead.Contact, 0, 100},
		{"switch resistance", s.Lead.SwitchContacts, 0, 100},
		{"lead temperature", s.Lead.Kelvin, 0, mostKelvin},
		{"regulator voltage", s.Regulator.Set, 0, 200},
		{"regulator drop-out", s.Regulator.DropOut, 0, 50},
		{"least bus voltage", s.LeastBus, 0, 200},
		{"mean current", s.Mean, 0, 1e4},
		{"peak current", s.Peak, 0, 1e4},
		{"planned time", s.Time, 0, 1e6},
	} {
		if err := within(v.field, v.value, v.least, v.most); err != nil {
			return err
		}
	}
	return s.checkParts()
}

// checkParts refuses a lead without area and a regulator without kind or voltage.
func (s Supply) checkParts() error {
	if s.Lead.Length > 0 {
		if err := within("lead area", s.Lead.Area, 1e-9, 1e-2); err != nil {
			return err
		}
	}
	switch s.Regulator.Kind {
	case Direct:
		return nil
	case Linear, Switching:
		return within("regulator voltage", s.Regulator.Set, 1, 200)
	}
	return fmt.Errorf("%w: regulator kind must be direct, linear or switching", ErrInput)
}

// Compute returns what a supply does at the end of its planned time.
//
// Charge follows capacity times the factors of temperature, rate and age; what cold and rate withhold is the last of the charge, so that a pack part
// charged loses it whole. Volts follow the rest voltage at the charge left less the peak through pack
// and chain. Valid for: packs of models, -20 to 60 C, peaks of seconds. Source: the functions of this package. Errors: ErrInput.
func Compute(s Supply) (Result, error) {
	if err := s.check(); err != nil {
		return Result{}, err
	}
	return s.compute(), nil
}

// compute is Compute of what was checked.
func (s Supply) compute() Result {
	out := Result{Temperature: s.Chemistry.TemperatureFactor(s.Kelvin), ChainResistance: s.Lead.Resistance()}
	loss := s.Chemistry.Loss(s.Age)
	out.Aged = 1 - loss
	s.charges(&out)
	out.PackResistance = s.packResistance(loss, out.ChargeAtEnd)
	s.volts(&out)
	s.notes(&out)
	return out
}

// charges fills what the pack holds and the plan draws.
func (s Supply) charges(out *Result) {
	mean := s.meanInput()
	out.Rate = s.Chemistry.RateFactor(mean, s.Capacity)
	full := float64(s.Capacity * out.Temperature * out.Rate * out.Aged)
	out.Usable = math.Max(0, full-float64(s.Capacity*(1-s.Charge)*out.Aged))
	out.Drawn = mean * s.Time / secondsPerHour
	out.Lasts = Endurance(out.Usable, mean)
	out.ChargeAtEnd = clamp(s.Charge-float64(out.Drawn/math.Max(s.Capacity*out.Aged, 1e-9)), 0, 1)
}

// meanInput returns the mean current the pack gives, A.
func (s Supply) meanInput() float64 {
	if s.Regulator.Kind != Switching {
		return s.Mean
	}
	nominal := float64(s.Series) * s.Chemistry.RestVolts(s.Charge/2)
	return math.Min(s.Mean, SwitchedInput(s.Regulator.Set, s.Mean, s.Regulator.efficiency(), math.Max(nominal, 0.1)))
}

// packResistance returns the pack's resistance in use, ohm.
func (s Supply) packResistance(loss, charge float64) float64 {
	base := s.Resistance
	if !(base > 0) {
		base = float64(s.Chemistry.ClassResistance(s.Series, s.Capacity) * AgeRatio(loss))
	}
	return base * s.Chemistry.ColdRatio(s.Kelvin) * LowChargeRatio(charge)
}

// volts fills the voltages under the peak.
func (s Supply) volts(out *Result) {
	out.RestVolts = float64(float64(s.Series) * s.Chemistry.RestVolts(out.ChargeAtEnd))
	out.InputVolts, out.InputCurrent = s.Regulator.inputUnder(out.RestVolts, out.PackResistance+out.ChainResistance, s.Peak)
	out.LeadDrop = float64(math.Min(out.InputCurrent*out.ChainResistance, out.RestVolts))
	out.PackVolts = math.Max(0, out.RestVolts-float64(out.InputCurrent*out.PackResistance))
	out.BusVolts = s.Regulator.output(out.InputVolts)
	out.PeakRate = out.InputCurrent / s.Capacity
	out.Spare = out.InputVolts - s.leastInput()
	out.DropsOut = out.Spare < 0
	out.CellTooLow = out.PackVolts/float64(s.Series) < s.Chemistry.LeastLoadedVolts()
}

// leastInput returns the input below which the servos lose their voltage, V.
func (s Supply) leastInput() float64 {
	if s.Regulator.Kind != Direct {
		return s.Regulator.Set + s.Regulator.DropOut
	}
	if s.LeastBus > 0 {
		return s.LeastBus
	}
	return DefaultLeastBus
}

// notes fills what was estimated and what lies outside.
func (s Supply) notes(out *Result) {
	if s.Resistance == 0 {
		out.Estimated = append(out.Estimated, "internal resistance by chemistry and capacity")
	}
	if s.Lead.Contacts > 0 && s.Lead.Contact == 0 {
		out.Estimated = append(out.Estimated, "resistance of contacts")
	}
	if s.Kelvin < ColdestCells || s.Kelvin > HottestCells {
		out.Outside = append(out.Outside, "temperature outside -20 to 60 C")
	}
	if out.PeakRate > 20 {
		out.Outside = append(out.Outside, "peak above 20 times the capacity an hour")
	}
	if s.Age.Years > 2 {
		out.Outside = append(out.Outside, "age beyond two years")
	}
}
