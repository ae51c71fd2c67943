package assess

import "pitgate/server/physics/fuel"

// answerSuction answers for the suction at the pump in the worst case of flight.
func (p *pass) answerSuction() {
	n, given := p.needFeed(), p.fuelSystem()
	n.number(feedPath+"pumpHeightMeters", given.PumpHeightMeters.number())
	n.number(feedPath+"pumpXMeters", given.PumpXMeters.number())
	n.present(feedPath+"filter", given.Filter)
	p.needLines(&n, given)
	p.needTank(&n)
	out := answer{id: "fuel.suction", missing: n.missing, limit: limit{value: fuel.AirReleaseSuction, set: true, rule: coreDefault}}
	if n.met() {
		p.suction(&out)
	}
	p.conclude(out)
}

// number returns the plain number of a quantity.
func (q *Quantity) number() *float64 {
	if q == nil {
		return nil
	}
	return q.Value
}

// needLines wants one line at least on the suction side, and length and bore of each.
func (p *pass) needLines(n *need, given *FuelSystem) {
	found := false
	for i := range given.Lines {
		line, name := &given.Lines[i], at(feedPath+"lines", i)
		if !yes(line.SuctionSide) {
			continue
		}
		found = true
		n.number(name+".lengthMeters", line.LengthMeters)
		n.number(name+".boreMeters", line.BoreMeters)
	}
	if !found {
		n.lack(feedPath + "lines")
	}
}

// needTank wants the place of the tank that the pump sucks from.
func (p *pass) needTank(n *need) {
	tanks := p.massProperties().Tanks
	if len(tanks) == 0 {
		n.lack("model.mass.tanks")
	}
	for i := range tanks {
		n.number(at("model.mass.tanks", i)+".xMeters", tanks[i].XMeters)
	}
}

func (p *pass) suction(out *answer) {
	result, ok := p.fed()
	if !ok || !result.HasCases {
		out.never = impossibleFeed
		return
	}
	out.value = result.WorstSuction() * p.factor(releaseMethod, spreadRelease)
	out.outside = !result.Mix.InRange
	if p.base() {
		out.note = p.suctionNote(result)
		p.tellSuction(result)
	}
}

func (p *pass) suctionNote(r *fuel.Result) string {
	worst := &r.Cases[r.Worst]
	note := say("Worst in the %s at %.1f g along and %.1f g across: %.0f Pa of lines, %.0f Pa of filter, %.0f Pa of vent, %.0f Pa of the column of fuel.",
		worst.Load.Name, worst.Load.Forward, worst.Load.Normal, r.LineLoss, r.Filter, r.Vent.Suction, worst.Head)
	if worst.Suction > fuel.PlannedSuction {
		note += p.inWords(" Plan for no more than %.0f Pa.", fuel.PlannedSuction) + changeWords(&p.feed.system, r.Fixes, fuel.AirReleased, fuel.ThinMargin)
	}
	for i := range r.Lines {
		if p.feed.system.Lines[i].Suction && r.Lines[i].Speed > fuel.SlowSuctionLine {
			note += say(" Fuel runs at %.1f m/s through %s; %.1f m/s is usual.", r.Lines[i].Speed, lineName(&p.feed.system, i), fuel.SlowSuctionLine)
		}
	}
	if r.Transient {
		note += " A line is close to turning turbulent, where its loss jumps by two thirds."
	}
	return note
}

func (p *pass) tellSuction(r *fuel.Result) {
	worst := &r.Cases[r.Worst]
	p.tell("fuel.mix_density", r.Mix.Density)
	p.tell("fuel.mix_viscosity", r.Mix.Viscosity)
	p.tell("fuel.line_loss", r.LineLoss)
	p.tell("fuel.filter_loss", r.Filter)
	p.tell("fuel.vent_suction", r.Vent.Suction)
	p.tell("fuel.column", worst.Head, p.loadPaths()...)
	p.tell("fuel.suction", worst.Suction)
	p.tellText("fuel.suction_case", worst.Load.Name)
	p.tell("fuel.released_air", worst.Air)
}

// loadPaths names where the load factor of the pull-up comes from where the structure was not asked.
func (p *pass) loadPaths() []string {
	if p.loads.asked > 0 {
		return []string{"loads.asked"}
	}
	return []string{p.givenOr(designPath, "method: usual pull-up", p.structure().DesignLoadFactor != nil)}
}

// answerTrap answers for the air trap of a turbine, which goes out when a bubble reaches it.
func (p *pass) answerTrap() {
	if len(p.feed.flowMissing) == 0 && !p.feed.turbine {
		return
	}
	n, given := p.needFeed(), p.fuelSystem()
	if !yes(given.BladderTank) {
		n.present(feedPath+"airTrap", given.AirTrap)
	}
	if yes(given.AirTrap) {
		n.number(feedPath+"airTrapVolumeLiters", given.AirTrapVolumeLiters.number())
	}
	felt := yes(given.FeltPickup)
	out := answer{id: "fuel.trap", missing: n.missing, limit: p.limit(trapFigure.with(fuel.LeastTrapSeconds(felt)))}
	if n.met() {
		p.trap(&out, given)
	}
	p.conclude(out)
}

func (p *pass) trap(out *answer, given *FuelSystem) {
	result, ok := p.fed()
	switch {
	case !ok:
		out.never = impossibleFeed
	case yes(given.AirTrap):
		out.value = result.Trap.Seconds
		least := out.limit.value * result.Flow
		out.note = p.inWords("Trap and header hold %.0f ml, at full thrust %.1f ml flow each second; %.0f ml would be enough.",
			p.feed.system.TrapVolume*1e6, result.Flow*1e6, least*1e6)
		p.tell("fuel.trap_seconds", result.Trap.Seconds)
		p.tell("fuel.least_trap", least, out.limit.paths()...)
	case yes(given.BladderTank):
		out.none = true
		out.note = "A bladder without air needs no trap; some authorities do not allow one as the main tank."
		out.from = []string{feedPath + "bladderTank"}
	default:
		out.never = p.inWords("No air trap between tank and pump: %.1f s of air put the flame out. One of %.0f ml would do.", fuel.FlameGap, out.limit.value*result.Flow*1e6)
		out.from = []string{feedPath + "airTrap"}
	}
}

// answerVent answers for the vent of the tank.
func (p *pass) answerVent() {
	n, given := p.needFeed(), p.fuelSystem()
	if !yes(given.BladderTank) {
		n.present(feedPath+"vent", given.Vent)
	}
	if yes(given.Vent) {
		n.number(feedPath+"ventBoreMeters", given.VentBoreMeters.number())
	}
	out := answer{id: "fuel.vent", missing: n.missing, limit: askedOnce}
	if n.met() {
		p.vent(&out, given)
	}
	p.conclude(out)
}

func (p *pass) vent(out *answer, given *FuelSystem) {
	result, ok := p.fed()
	switch {
	case !ok:
		out.never = impossibleFeed
	case yes(given.BladderTank):
		out.none = true
		out.note = "A bladder collapses as it empties and needs no vent."
		out.from = []string{feedPath + "bladderTank"}
	case !yes(given.Vent):
		out.never = p.inWords("No vent: the tank empties against a growing suction until the engine stops. A bore of %.1f mm would do.", 1000*result.Vent.LeastBore)
		out.from = []string{feedPath + "vent"}
	default:
		out.value = p.feed.system.VentBore / result.Vent.LeastBore
		out.note = say("A bore of %.1f mm draws %.0f Pa at full flow; %.1f mm would do.%s", 1000*p.feed.system.VentBore, result.Vent.Suction,
			1000*result.Vent.LeastBore, siphonNote(given))
		p.tell("fuel.least_vent", result.Vent.LeastBore)
	}
}

// siphonNote warns of a vent of which nobody said that it lets no fuel out.
func siphonNote(given *FuelSystem) string {
	if yes(given.VentAgainstSiphoning) {
		return ""
	}
	return " Nobody said that it does not siphon fuel out."
}

// answerFilter answers for the filter ahead of the pump.
func (p *pass) answerFilter() {
	n, given := p.need(), p.fuelSystem()
	n.lack(p.feed.flowMissing...)
	n.present(feedPath+"filter", given.Filter)
	out := answer{id: "fuel.filter", missing: n.missing, none: true}
	switch {
	case !n.met():
	case !yes(given.Filter):
		out.never = "No filter ahead of the pump: one grain of dirt stops it."
	case given.FilterPressureLossPascals == nil:
		out.note = p.inWords("Its loss was not measured; %.0f Pa are taken.", fuel.UsualFilterLoss)
	default:
		out.note = p.inWords("Clean it takes %.0f Pa at full flow.", p.feed.system.FilterLoss)
	}
	p.conclude(out)
}
