package assess

import (
	"pitgate/server/physics/elementary"
	"pitgate/server/physics/packs"
)

const (
	squareMillimeter = 1e-6
	// groundTime is how long receiver and engine control are switched on before the launch and after the landing together, s: judgement.
	groundTime = 300.0
	// indoors is what a pack is carried to the field at, K, with its spread.
	indoors, spreadIndoors = packs.Zero + 20, 3.0
	// usualAge of a pack where nobody says, years, with its spread.
	usualAge, spreadAge = 1.0, 0.7
	// powerLead is the area from which a lead is taken to end in power plugs and an electronic switch, mm2: judgement.
	powerLead = 1.0
	plugCount = 2
	// spreadCurrents and spreadResistance are how far class figures may be off, relative: 40 % and a factor of two at the ends of a band.
	spreadCurrents, spreadResistance = 0.25, 0.35
	// packDensity in kg/m3 and packShape of a block of 1 to 2 to 4, whose surface is 7 V^(2/3), are judgement.
	packDensity, packShape = 2000.0, 7.0

	currentsMethod   = "method: currents of servo classes"
	resistanceMethod = "method: resistance of pack classes"
	indoorsMethod    = "method: temperature of a pack that comes to the field"
)

var chemistries = pairings[PackChemistry, packs.Chemistry]{
	{PackChemistryLithiumPolymer, packs.LithiumPolymer}, {PackChemistryLithiumIon, packs.LithiumIon},
	{PackChemistryLithiumIronPhosphate, packs.LithiumIronPhosphate}, {PackChemistryNickelMetalHydride, packs.NickelMetalHydride},
}

var regulatorKinds = pairings[RegulatorKind, packs.Kind]{
	{RegulatorKindNone, packs.Direct}, {RegulatorKindLinear, packs.Linear}, {RegulatorKindSwitching, packs.Switching},
}

// guessed returns 1, or 1 moved by the spread of a class figure, which is an estimate.
func (p *pass) guessed(name string, spread float64) float64 {
	p.meet(uncertain{name: name, spread: spread, method: true, estimated: true})
	return 1 + p.shift(name)
}

// readPack reads one pack and computes what it does at the end of the flight.
func (p *pass) readPack(i int, s *packsSection) supplied {
	n, mark, pack := p.need(), p.mark(), &p.in.Model.Packs[i]
	one := supplied{name: pack.Name, path: at("model.packs", i), stem: numbered("packs.pack", i+1) + ".", use: pack.Use}
	if pack.Use == "" {
		n.lack(one.path + ".use")
	}
	one.supply = n.cells(&one, pack)
	one.supply.Regulator = n.regulator(&one, pack)
	one.supply.Lead = n.packLead(&one, pack)
	one.supply.LeastBus = s.least.value
	n.currents(&one, pack)
	n.packTime(&one, s)
	one.supply.Kelvin = n.temperature(&one, pack)
	if n.met() {
		p.checkPack(&one, pack)
		result, err := packs.Compute(one.supply)
		if err != nil {
			n.lack(one.path)
		}
		one.result = result
	}
	one.missing, one.read = n.missing, p.since(mark)
	return one
}

// cells reads chemistry, size, charge, age and resistance.
func (n *need) cells(one *supplied, pack *Pack) packs.Supply {
	chemistry, known := chemistries.find(pack.Chemistry)
	if !known {
		n.lack(one.path + ".chemistry")
	}
	if pack.SeriesCellCount == nil {
		n.lack(one.path + ".seriesCellCount")
	}
	supply := packs.Supply{
		Chemistry: chemistry, Series: int(valueOf(pack.SeriesCellCount)),
		Capacity: max(0, n.quantity(one.path+".capacityAmpereHours", pack.CapacityAmpereHours)),
		Charge:   min(1, max(0, n.quantity(one.path+".chargeRatio", pack.ChargeRatio))),
	}
	supply.Age.Years = max(0, n.pass.age(one.path+".ageYears", pack.AgeYears))
	if measured, ok := n.pass.read(one.path+".internalResistanceOhms", pack.InternalResistanceOhms); ok {
		supply.Resistance = max(0, measured)
	}
	if !(supply.Capacity > 0) {
		n.lack(one.path + ".capacityAmpereHours")
	}
	if n.met() && !(supply.Resistance > 0) {
		fresh := chemistry.ClassResistance(supply.Series, supply.Capacity) * packs.AgeRatio(chemistry.Loss(supply.Age))
		supply.Resistance = fresh
		if pack.LoadedVoltageVolts == nil || pack.LoadTestAmperes == nil {
			supply.Resistance *= max(0.1, n.pass.guessed(resistanceMethod, spreadResistance))
		}
	}
	return supply
}

// age returns the age of a pack, years, as told or as packs usually are.
func (p *pass) age(name string, q *Quantity) float64 {
	if years, ok := p.read(name, q); ok {
		return years
	}
	return p.assumed(name, usualAge, spreadAge)
}

// valueOf returns a count, zero when it is missing.
func valueOf(count *int32) int32 {
	if count == nil {
		return 0
	}
	return *count
}

// regulator reads what makes the bus voltage: a pack without a regulator's voltage feeds the servos as it is, a regulator of no kind is linear. What
// feeds an engine control or a motor has none unless one is told.
func (n *need) regulator(one *supplied, pack *Pack) packs.Regulator {
	kind, told := regulatorKinds.find(pack.RegulatorKind)
	switch {
	case !told && (pack.RegulatorVoltageVolts == nil || pack.RegulatorVoltageVolts.Value == nil):
		kind = packs.Direct
	case !told:
		kind = packs.Linear
	}
	if kind == packs.Direct {
		return packs.Regulator{Kind: kind}
	}
	return packs.Regulator{
		Kind: kind, Set: max(1, n.quantity(one.path+".regulatorVoltageVolts", pack.RegulatorVoltageVolts)),
		DropOut: max(0, n.quantity(one.path+".regulatorDropOutVolts", pack.RegulatorDropOutVolts)),
	}
}

// packLead reads the leads. Those of motors may be left out: they are short and thick.
func (n *need) packLead(one *supplied, pack *Pack) packs.Lead {
	if pack.Use == PackUsePropulsion && pack.LeadLengthMeters == nil {
		return packs.Lead{Contacts: plugCount, Contact: packs.PowerContact}
	}
	area := n.quantity(one.path+".leadAreaSquareMillimeters", pack.LeadAreaSquareMillimeters)
	lead := packs.Lead{
		Length: max(0, n.quantity(one.path+".leadLengthMeters", pack.LeadLengthMeters)), Area: max(1e-3, area) * squareMillimeter,
		Contacts: 2 * plugCount, Contact: packs.PowerContact,
	}
	if valueOr(pack.LeadAreaSquareMillimeters, powerLead) < powerLead {
		lead.Contact, lead.SwitchContacts = packs.PinContact, packs.SlideSwitch
	}
	return lead
}

// currents reads mean and peak, or reckons both from the servos' classes where a receiver's were not measured.
func (n *need) currents(one *supplied, pack *Pack) {
	measured := pack.MeanCurrentAmperes != nil || pack.PeakCurrentAmperes != nil
	if pack.Use == PackUseReceiver && !measured {
		n.servoCurrents(one)
		return
	}
	one.supply.Mean = max(0, n.quantity(one.path+".meanCurrentAmperes", pack.MeanCurrentAmperes))
	one.supply.Peak = max(0, n.quantity(one.path+".peakCurrentAmperes", pack.PeakCurrentAmperes))
}

// servoCurrents reckons what all servos draw; where every receiver has a pack of its own each carries its part, else each must carry all.
func (n *need) servoCurrents(one *supplied) {
	volts := one.supply.Regulator.Set
	if one.supply.Regulator.Kind == packs.Direct && one.supply.Chemistry.Known() {
		volts = float64(one.supply.Series) * one.supply.Chemistry.RestVolts(0.5)
	}
	groups := n.pass.servoGroups(volts)
	if len(groups) == 0 {
		n.lack(one.path+".meanCurrentAmperes", one.path+".peakCurrentAmperes")
		return
	}
	receivers := max(1, float64(valueOf(n.pass.radio().ReceiverCount)))
	demand, err := packs.DemandOf(groups, packs.Duty, packs.Electronics*receivers)
	if err != nil {
		n.lack(one.path+".meanCurrentAmperes", one.path+".peakCurrentAmperes")
		return
	}
	part := 1.0
	if count := n.pass.countPacks(PackUseReceiver); count > 1 && yes(n.pass.radio().SeparateReceiverPacks) {
		part = 1 / float64(count)
	}
	factor := max(0.1, n.pass.guessed(currentsMethod, spreadCurrents))
	one.supply.Mean, one.supply.Peak, one.estimated = demand.Mean*part*factor, demand.Peak*part*factor, true
}

// servoGroups returns the servos of all linkages by their classes.
func (p *pass) servoGroups(volts float64) []packs.Group {
	var groups []packs.Group
	if p.in.Model == nil || !(volts > 0) {
		return nil
	}
	for i := range p.in.Model.Surfaces {
		controls := p.in.Model.Surfaces[i].Controls
		for k := range controls {
			d := controls[k].Linkage
			if d == nil || d.ServoTorqueNewtonMeters == nil || d.ServoTorqueNewtonMeters.Value == nil {
				continue
			}
			if p.base() {
				p.note(at(at(surfacesPath, i)+".controls", k) + ".linkage")
			}
			class := packs.ClassByTorque(*d.ServoTorqueNewtonMeters.Value).At(volts)
			groups = append(groups, packs.Group{Class: class, Count: int(max(1, valueOf(d.ServoCount)))})
		}
	}
	return groups
}

// packTime sets how long the pack gives its mean current.
func (n *need) packTime(one *supplied, s *packsSection) {
	n.lack(s.flight.missing...)
	one.supply.Time = s.flight.planned()
	if one.use != PackUsePropulsion {
		one.supply.Time += groundTime
	}
}

// temperature returns that of the cells, K: what came warm to the field cools in the open for as long as it waits. Where the wait or the mass is not
// told it is taken as cold as the air.
func (n *need) temperature(one *supplied, pack *Pack) float64 {
	air := n.quantity("day.temperatureCelsius", n.pass.today().TemperatureCelsius) + packs.Zero
	wait, waits := n.pass.read(one.path+".waitInOpenMinutes", pack.WaitInOpenMinutes)
	mass, weighed := n.pass.read(one.path+".massKg", pack.MassKg)
	if !waits {
		one.soak = append(one.soak, one.path+".waitInOpenMinutes")
	}
	if !weighed || !(mass > 0) {
		one.soak = append(one.soak, one.path+".massKg")
	}
	one.waited = air
	if len(one.soak) == 0 && n.met() {
		start := indoors + n.pass.factor(indoorsMethod, spreadIndoors) - 1
		one.waited = packs.Soaked(start, air, secondsPerMinute*max(0, wait), soakTime(mass, one.supply.Chemistry))
	}
	return one.waited
}

// soakTime returns the time constant of a pack of a mass (kg) in still air, s.
func soakTime(mass float64, chemistry packs.Chemistry) float64 {
	heat := packs.LithiumHeat
	if chemistry == packs.NickelMetalHydride {
		heat = packs.NickelHeat
	}
	volume := mass / packDensity
	return packs.SoakTime(mass, heat, packs.StillAir, packShape*elementary.Pow(volume, 2.0/3))
}

// checkPack takes the resistance from a reading under load where there is one.
func (p *pass) checkPack(one *supplied, pack *Pack) {
	loaded, read := p.read(one.path+".loadedVoltageVolts", pack.LoadedVoltageVolts)
	current, known := p.read(one.path+".loadTestAmperes", pack.LoadTestAmperes)
	if !read {
		one.check = append(one.check, one.path+".loadedVoltageVolts")
	}
	if !known {
		one.check = append(one.check, one.path+".loadTestAmperes")
	}
	if !read || !known {
		return
	}
	rest := p.optional(one.path+".restVoltageVolts", pack.RestVoltageVolts, float64(one.supply.Series)*one.supply.Chemistry.RestVolts(one.supply.Charge))
	test, err := packs.CheckUnderLoad(one.supply, packs.LoadTest{Rest: rest, Loaded: loaded, Current: current, Kelvin: one.supply.Kelvin})
	switch {
	case loaded > rest:
		one.impossible = say("%s: it has %.2f V without load, so %.2f V under %.1f A cannot be. Charge or reading is wrong.",
			sentence(one.name), rest, loaded, current)
		return
	case err != nil:
		one.check = append(one.check, one.path+".loadTestAmperes")
		return
	}
	one.test, one.tested = test, true
	one.supply.Resistance = max(1e-6, test.AtRoom)
}
