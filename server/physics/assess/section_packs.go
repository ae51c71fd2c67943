package assess

import (
	"math"

	"pitgate/server/physics/packs"
)

// packsSection is every pack of the model as it is used, and the flight that is planned.
type packsSection struct {
	supplies []supplied
	flight   flightTimes
	least    limit // volts at receivers and servos
	use      limit // share of a charge
}

// supplied is one pack with what it does.
type supplied struct {
	name, path string
	stem       string // of its quantities
	use        PackUse
	missing    []string
	supply     packs.Supply
	result     packs.Result
	waited     float64 // cells after the wait in the open, K
	test       packs.LoadTestResult
	tested     bool
	impossible string // why the reading under load cannot be
	estimated  bool   // currents by the servos' classes
	soak       []string
	check      []string // missing for the check under load
	read       []string
}

// packs returns the packs of the model.
func (p *pass) packs() []Pack {
	if p.in.Model == nil {
		return nil
	}
	return p.in.Model.Packs
}

// answerPacks answers for the packs that feed receivers, servos, engine control and motors.
func (p *pass) answerPacks() {
	s := p.readPacks()
	p.answerPackEnergy(&s)
	p.answerEngineControl(&s)
	p.answerBus(&s)
	p.answerPackCurrent(&s)
	p.answerPackCold(&s)
	p.answerPackCheck(&s)
	p.answerEndurance(&s)
	p.tellPacks(&s)
}

func (p *pass) readPacks() packsSection {
	s := packsSection{least: p.limit(busFigure), use: p.limit(packUseFigure)}
	s.flight = p.readFlightTimes()
	for i := range p.packs() {
		s.supplies = append(s.supplies, p.readPack(i, &s))
	}
	return s
}

// of returns the packs of a use.
func (s *packsSection) of(use PackUse) []*supplied {
	var list []*supplied
	for i := range s.supplies {
		if s.supplies[i].use == use {
			list = append(list, &s.supplies[i])
		}
	}
	return list
}

// lackPacks names what packs lack, or that there are none.
func (n *need) lackPacks(list []*supplied) {
	if len(list) == 0 {
		n.lack("model.packs")
	}
	for _, s := range list {
		n.lack(s.missing...)
	}
}

// used returns the share of its usable charge that the flight draws; a pack that holds none is drawn whole.
func (s *supplied) used() float64 {
	if !(s.result.Usable > 0) {
		return emptied
	}
	return min(emptied, s.result.Drawn/s.result.Usable)
}

// told returns the ids of quantities of the pack.
func (s *supplied) told(ends ...string) []string {
	ids := make([]string, 0, len(ends))
	for _, end := range ends {
		ids = append(ids, s.stem+end)
	}
	return ids
}

// emptied is the greatest use that is told: a pack drawn ten times over.
const emptied = 10.0

// hungriest returns the pack with the greatest share drawn.
func hungriest(list []*supplied) *supplied {
	most := list[0]
	for _, s := range list {
		if s.used() > most.used() {
			most = s
		}
	}
	return most
}

func (p *pass) answerPackEnergy(s *packsSection) {
	found := answer{id: "packs.energy", limit: s.use}
	p.drawsMost(s, s.of(PackUseReceiver), &found)
	p.conclude(found)
}

// answerEngineControl answers for the packs of engine controls; only turbines ask for one.
func (p *pass) answerEngineControl(s *packsSection) {
	found := answer{id: "packs.engine_control", limit: s.use}
	list := s.of(PackUseEngineControl)
	switch {
	case len(p.engines()) == 0:
		found.missing = []string{"model.engines"}
	case len(list) == 0 && !p.turbine():
		found.none, found.note = true, "No turbine, and no pack for an engine control."
	default:
		p.drawsMost(s, list, &found)
	}
	p.conclude(found)
}

// drawsMost answers with the pack that the flight draws most of.
func (p *pass) drawsMost(s *packsSection, list []*supplied, found *answer) {
	n := p.need()
	n.lackPacks(list)
	found.missing = n.missing
	if !n.met() {
		return
	}
	most := hungriest(list)
	found.value, found.outside = most.used(), len(most.result.Outside) > 0
	if !p.base() {
		return
	}
	found.from = most.told("usable", "drawn", "temperature")
	flights := packs.Flights(most.result.Usable, most.result.Drawn, 1-s.use.value)
	p.tell(found.id+"_flights", float64(flights), most.read...)
	found.note = say("%s: %.2f Ah drawn in %.0f min switched on, of %.2f Ah usable at %.0f C; %s on this charge.",
		sentence(most.name), most.result.Drawn, most.supply.Time/60, most.result.Usable, most.supply.Kelvin-packs.Zero, counted(flights, "flight"))
	if most.estimated {
		found.note += " Currents by the class of each servo."
	}
	if found.value > s.use.value {
		found.note += packRemedy(most.supply, packs.Wanted{Spare: -mostVolts, Reserve: 1 - s.use.value})
	}
}

// mostVolts is beyond every voltage of a pack, so that a search for charge looks at nothing else.
const mostVolts = 1000.0

// packWords say what turning a knob of a pack means: the new figure and the old one.
var packWords = pairings[packs.Knob, string]{
	{packs.KnobCharge, "%.0f %% charge in place of %.0f %%"},
	{packs.KnobWarmth, "the pack at %.0f C in place of %.0f C"},
	{packs.KnobCapacity, "%.2f Ah in place of %.2f Ah"},
	{packs.KnobLead, "leads of %.2f mm2 in place of %.2f mm2"},
	{packs.KnobPeak, "a peak of %.1f A in place of %.1f A"},
	{packs.KnobCells, "%.0f cells in series in place of %.0f"},
}

// packOrder lists the knobs by what they ask of a builder, least first.
var packOrder = []packs.Knob{packs.KnobCharge, packs.KnobWarmth, packs.KnobLead, packs.KnobCapacity, packs.KnobCells, packs.KnobPeak}

// packRemedy names the change that asks least of the builder.
func packRemedy(supply packs.Supply, wanted packs.Wanted) string {
	changes, err := packs.Changes(supply, wanted)
	if err != nil {
		return ""
	}
	for _, knob := range packOrder {
		for _, c := range changes {
			if c.Knob == knob && c.Holds {
				return " It holds with " + packChange(c) + "."
			}
		}
	}
	return " No single change of charge, warmth, leads or size is enough."
}

// packChange writes a change of a pack, charges in percent up to the next whole one, areas in square millimetres.
func packChange(c packs.Change) string {
	from, to := c.From, c.To
	switch c.Knob {
	case packs.KnobCharge:
		from, to = 100*from, math.Ceil(100*to)
	case packs.KnobWarmth:
		from, to = from-packs.Zero, math.Ceil(to-packs.Zero)
	case packs.KnobLead:
		from, to = from/squareMillimeter, to/squareMillimeter
	case packs.KnobCapacity, packs.KnobPeak, packs.KnobCells:
	}
	return say(packWords.of(c.Knob), to, from)
}

// tellPacks tells what each pack does.
func (p *pass) tellPacks(s *packsSection) {
	if !p.base() {
		return
	}
	if len(s.flight.missing) == 0 && len(s.supplies) > 0 {
		p.tell("packs.planned_time", s.flight.planned(), s.flight.read...)
	}
	for i := range s.supplies {
		one := &s.supplies[i]
		if len(one.missing) > 0 {
			continue
		}
		stem, r := one.stem, &one.result
		p.tell(stem+"temperature", one.supply.Kelvin-packs.Zero, one.read...)
		p.tell(stem+"mean_current", one.supply.Mean, one.read...)
		p.tell(stem+"peak_current", one.supply.Peak, one.read...)
		p.tell(stem+"usable", r.Usable, one.read...)
		p.tell(stem+"drawn", r.Drawn, one.read...)
		p.tell(stem+"resistance", r.PackResistance, one.read...)
		p.tell(stem+"chain_resistance", r.ChainResistance, one.read...)
		p.tell(stem+"input_voltage", r.InputVolts, one.read...)
		p.tell(stem+"bus_voltage", r.BusVolts, one.read...)
		p.tell(stem+"cell_voltage", r.PackVolts/float64(one.supply.Series), one.read...)
	}
}
