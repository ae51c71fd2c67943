package assess

import (
	"pitgate/server/physics/packs"
)

// answerBus answers for the voltage at receivers and servos under the peak, at the end of the flight.
func (p *pass) answerBus(s *packsSection) {
	n, list := p.need(), s.of(PackUseReceiver)
	n.lackPacks(list)
	found := answer{id: "packs.voltage", missing: n.missing, limit: s.least}
	if n.met() {
		least := list[0]
		for _, one := range list {
			if one.result.BusVolts < least.result.BusVolts {
				least = one
			}
		}
		found.value, found.outside = least.result.BusVolts, len(least.result.Outside) > 0
		if p.base() {
			found.note, found.from = busNote(least, s.least.value), least.told("bus_voltage", "input_voltage", "peak_current", "resistance", "chain_resistance")
		}
	}
	p.conclude(found)
}

// busNote says what the least voltage comes from.
func busNote(one *supplied, least float64) string {
	r := &one.result
	note := say("%s at %.0f C: %.1f A through %.0f mOhm of pack and %.0f mOhm of leads take %.2f V of %.2f V.", sentence(one.name), one.supply.Kelvin-packs.Zero,
		r.InputCurrent, 1000*r.PackResistance, 1000*r.ChainResistance, r.RestVolts-r.InputVolts, r.RestVolts)
	if one.supply.Regulator.Kind != packs.Direct && r.DropsOut {
		note += sayNumbers(" The regulator falls out: it needs %.2f V for %.1f V.", one.supply.Regulator.Set+one.supply.Regulator.DropOut, one.supply.Regulator.Set)
	}
	if r.BusVolts < least {
		note += packRemedy(one.supply, packs.Wanted{Spare: dropsTo(one, least)})
	}
	return note
}

// dropsTo returns the spare at which the servos see the least voltage, V: a linear regulator that has fallen out passes its input less its drop-out.
func dropsTo(one *supplied, least float64) float64 {
	if one.supply.Regulator.Kind == packs.Direct {
		return 0
	}
	return min(0, least-one.supply.Regulator.Set)
}

// answerPackCurrent answers for the volts that every pack has to spare under its peak: over the regulator's drop-out and over the least of its cells.
func (p *pass) answerPackCurrent(s *packsSection) {
	n := p.need()
	list := make([]*supplied, 0, len(s.supplies))
	for i := range s.supplies {
		list = append(list, &s.supplies[i])
	}
	n.lackPacks(list)
	found := answer{id: "packs.current", missing: n.missing, limit: limit{set: true, rule: coreDefault}}
	if n.met() {
		least := list[0]
		for _, one := range list {
			if one.spare() < least.spare() {
				least = one
			}
		}
		found.value, found.outside = least.spare(), len(least.result.Outside) > 0
		if p.base() {
			found.note, found.from = currentNote(least), least.told("cell_voltage", "input_voltage", "peak_current", "resistance", "chain_resistance")
		}
	}
	p.conclude(found)
}

// overCells returns the volts of the whole pack over the least that its cells may have under load.
func (s *supplied) overCells() float64 {
	least := float64(float64(s.supply.Series) * s.supply.Chemistry.LeastLoadedVolts())
	return s.result.PackVolts - least
}

// spare returns the volts to spare under the peak: of cells, and of the regulator where there is one.
func (s *supplied) spare() float64 {
	if s.supply.Regulator.Kind == packs.Direct {
		return s.overCells()
	}
	return min(s.overCells(), s.result.Spare)
}

// currentNote says what gives in first.
func currentNote(one *supplied) string {
	cell := one.result.PackVolts / float64(one.supply.Series)
	note := say("%s gives %.1f A at its peak, %.1f times its capacity an hour: %.2f V a cell, least %.2f V.", sentence(one.name), one.result.InputCurrent,
		one.result.PeakRate, cell, one.supply.Chemistry.LeastLoadedVolts())
	if one.supply.Regulator.Kind != packs.Direct {
		note += sayNumbers(" The regulator has %.2f V over its drop-out.", one.result.Spare)
	}
	if one.spare() < 0 {
		wanted := packs.Wanted{Spare: 0}
		if one.supply.Regulator.Kind == packs.Direct {
			wanted.Spare = -mostVolts
		}
		note += packRemedy(one.supply, wanted)
	}
	return note
}

// answerPackCheck answers for the reading under load: the resistance that it shows over that of a new pack of the size.
func (p *pass) answerPackCheck(s *packsSection) {
	n := p.need()
	found := answer{id: "packs.check", limit: limit{value: packs.WornRatio, set: true, rule: coreDefault}}
	n.lackReadings(s)
	found.missing = n.missing
	var worst *supplied
	for i := range s.supplies {
		one := &s.supplies[i]
		switch {
		case one.impossible != "":
			found.never = one.impossible
		case one.tested && (worst == nil || one.test.Ratio > worst.test.Ratio):
			worst = one
		}
	}
	if worst != nil {
		found.value = worst.test.Ratio
		found.note = checkNote(worst)
		p.tell("packs.tested_resistance", worst.test.AtRoom, worst.read...)
		p.tell("packs.expected_voltage", worst.test.Expected, worst.read...)
	}
	p.conclude(found)
}

// lackReadings names the packs of receivers and engine controls, and of motors where one was begun, that have no reading under load.
func (n *need) lackReadings(s *packsSection) {
	if len(s.supplies) == 0 {
		n.lack("model.packs")
	}
	for i := range s.supplies {
		one := &s.supplies[i]
		n.lack(one.missing...)
		if one.use != PackUsePropulsion || len(one.check) == 1 {
			n.lack(one.check...)
		}
	}
}

// checkNote says what the reading shows.
func checkNote(one *supplied) string {
	t := &one.test
	note := say("%s: %.0f mOhm brought to 25 C, %.1f times that of a new pack of its size; %.2f V were to be expected under that load.", sentence(one.name), 1000*t.AtRoom,
		t.Ratio, t.Expected)
	if t.Worn {
		note += " Retire it."
	}
	return note
}
