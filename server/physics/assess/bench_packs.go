package assess

import "strings"

const packGroup = "Packs"

var benchPackRows = []benchRow{
	{id: "bench.packs.charge", group: packGroup, title: "Charge", each: benchPacks, input: ".chargeRatio", unit: "1",
		how: "At the field, an hour at most before the flight: read the charger's sum or the voltage at rest, each cell.",
		why: "The flights that it gives were counted from this charge.", findings: []string{"packs.energy", "packs.engine_control", "packs.endurance"},
		wanted: notUnder(ofPack(func(p *Pack) *Quantity { return p.ChargeRatio }))},
	{id: "bench.packs.load", group: packGroup, title: "Voltage under load", each: benchPacks, input: ".loadedVoltageVolts", unit: "V",
		how: "Load it as the document says for ten seconds, at the temperature of the day; read at rest first.", why: "It shows age and cold, which a voltage at rest hides.",
		findings: []string{"packs.check", "packs.voltage", "packs.current"}, wanted: wantedLoaded},
	{id: "bench.packs.capacity", group: packGroup, title: "Capacity", each: benchPacks, input: ".capacityAmpereHours", unit: "Ah",
		how: "Discharge it once on the charger, after winter or a year.", why: "A label is no measurement.", findings: []string{"packs.energy", "packs.endurance"},
		wanted: notUnder(ofPack(func(p *Pack) *Quantity { return p.CapacityAmpereHours }))},
	{id: "bench.packs.age", group: packGroup, title: "Age and state", each: benchPacks, input: ".ageYears", unit: "a", photo: true,
		how: "Read the date on it; no dent, no swelling, no cell that stands apart.", why: "Resistance grows with the years.", findings: []string{"packs.check", "packs.voltage"},
		wanted: notOver(ofPack(func(p *Pack) *Quantity { return p.AgeYears }))},
	{id: "bench.packs.leads", group: packGroup, title: "Leads, plugs, switch", each: benchPacks, input: ".leadAreaSquareMillimeters", unit: "mm2",
		how: "Read the size on the lead, pull at each plug, work the switch ten times under load.", why: "What is lost in the leads the servos do not get.",
		findings: []string{"packs.voltage"}, wanted: notUnder(ofPack(func(p *Pack) *Quantity { return p.LeadAreaSquareMillimeters }))},
	{id: "bench.packs.current", group: packGroup, title: "Mean current", each: benchPacks, input: ".meanCurrentAmperes", unit: "A",
		how: "Meter between pack and switch, all controls moved as in flight for a minute; a flight pack at the power of the circuit.",
		why: "Flights on one charge are counted by it.", findings: []string{"packs.energy", "packs.engine_control", "packs.endurance"},
		wanted: notOver(ofPack(func(p *Pack) *Quantity { return p.MeanCurrentAmperes }))},
	{id: "bench.packs.regulator", group: packGroup, title: "Regulator", each: benchPacks, input: ".regulatorVoltageVolts", unit: "V",
		how: "Meter at a servo plug, all servos moving at once.", why: "Below its least voltage a receiver starts anew.", findings: []string{"packs.voltage", "packs.current"},
		applies: hasRegulator, wanted: wantedRegulator},
	{id: "bench.packs.cold", group: packGroup, title: "Packs before the flight", unit: "C",
		how: "Keep them in a pocket or a warm box until the model stands at the start; put a thermometer between the cells.", why: "Cold doubles the resistance.",
		findings: []string{"packs.cold"}, applies: func(v *benchView, _ *benchSubject) bool { return len(v.model.Packs) > 0 },
		wanted: func(v *benchView, _ *benchSubject) benchWanted {
			return least(v.number("packs.cold_limit"), "coldest at which they still give what is asked")
		}},
}

// ofPack reads a quantity of the pack at hand.
func ofPack(of func(*Pack) *Quantity) benchQuantity {
	return func(v *benchView, s *benchSubject) *Quantity { return of(&v.model.Packs[s.index]) }
}

func benchPacks(v *benchView) []benchSubject {
	out := make([]benchSubject, len(v.model.Packs))
	for i := range v.model.Packs {
		out[i] = benchSubject{name: v.model.Packs[i].Name, path: at("model.packs", i), index: i}
	}
	return out
}

// benchDrivePacks lists the packs that drive the model.
func benchDrivePacks(v *benchView) []benchSubject {
	var out []benchSubject
	for _, s := range benchPacks(v) {
		if v.model.Packs[s.index].Use == PackUsePropulsion {
			out = append(out, s)
		}
	}
	return out
}

func hasRegulator(v *benchView, s *benchSubject) bool {
	kind := v.model.Packs[s.index].RegulatorKind
	return kind == RegulatorKindLinear || kind == RegulatorKindSwitching
}

// wantedLoaded is the least voltage under load of a pack whose resistance is not past its limit: V = V_rest - (V_rest - V_now) limit/ratio for the pack
// that the report found worst, else the band of the reading.
//
// Where: V_rest voltage at rest and V_now under load as the document gives them (V), ratio resistance over that of a new pack, limit the most it may be.
// Valid for: the current of the document's load test.
// Source: Ohm's law.
func wantedLoaded(v *benchView, s *benchSubject) benchWanted {
	pack, check := &v.model.Packs[s.index], v.found["packs.check"]
	wanted := bandOf(pack.LoadedVoltageVolts, s.input)
	wanted.high = nil
	current := ""
	if pack.LoadTestAmperes != nil && pack.LoadTestAmperes.Value != nil {
		current = sayNumbers("at %.1f A: ", *pack.LoadTestAmperes.Value)
	}
	rest := pack.RestVoltageVolts
	if check == nil || check.Value == nil || check.Limit == nil || !strings.HasPrefix(strings.ToLower(check.Note), strings.ToLower(pack.Name)+":") ||
		rest == nil || rest.Value == nil || wanted.low == nil {
		wanted.text = current + wanted.text
		return wanted
	}
	low := *rest.Value - float64((*rest.Value-*pack.LoadedVoltageVolts.Value)**check.Limit / *check.Value)
	return benchWanted{text: current + "below it the pack is worn or cold", low: &low}
}

// wantedRegulator is the band of the regulator's voltage, no less than the bus asks for.
func wantedRegulator(v *benchView, s *benchSubject) benchWanted {
	wanted := bandOf(v.model.Packs[s.index].RegulatorVoltageVolts, s.input)
	if limit := v.limitOf("packs.voltage"); limit != nil && (wanted.low == nil || *wanted.low < *limit) {
		wanted.low = limit
	}
	return wanted
}
