package assess

import (
	"pitgate/server/physics/air"
	"pitgate/server/physics/heat"
)

const (
	partsPath   = "model.heatedParts"
	plumeMethod = "method: temperature in the plume"
	skinMethod  = "method: temperature beside the pipe"
)

// heatSection is the exhaust of the first turbine in the sizing case: standing at full power in the day's air.
type heatSection struct {
	missing []string
	run     heat.Run
	height  float64 // of the nozzle over the datum, m
}

// answerHeat answers for what the exhaust of a turbine heats.
func (p *pass) answerHeat() {
	if len(p.turbines()) == 0 && len(p.feed.flowMissing) == 0 {
		return
	}
	p.readHeat()
	parts, lacking := p.declaredParts()
	p.answerPlume(parts, lacking)
	p.answerBeside(parts, lacking)
	p.answerGround()
}

// readHeat reads the exhaust.
func (p *pass) readHeat() {
	h, n := &p.feed.hot, p.need()
	n.lack(p.air.missing...)
	n.lack(p.engine.missing...)
	list := p.turbines()
	if len(list) == 0 {
		n.lack("model.engines")
		h.missing = n.missing
		return
	}
	e, name := &p.in.Model.Engines[list[0]], at("model.engines", list[0])
	diameter := n.number(name+".nozzleDiameterMeters", e.NozzleDiameterMeters)
	if yes(e.Tailpipe) {
		diameter = orElse(e.TailpipeDiameterMeters, diameter)
	}
	told := exhaustFigureOf(e, name)
	gas := n.quantity(told.path, told.value) + air.FreezingPoint
	if h.missing = n.missing; !n.met() {
		return
	}
	rated := &p.engine.engines[list[0]]
	h.run = heat.Run{
		Exhaust: heat.Exhaust{Diameter: diameter, Temperature: gas, Total: true, Speed: heat.JetSpeed(rated.StaticThrust, max(1e-6, rated.MassFlow))},
		Air:     heat.Air{Temperature: p.air.state.Temperature, Pressure: p.air.state.Pressure},
	}
	if wall, ok := p.read(name+".tailpipeWallCelsius", e.TailpipeWallCelsius); ok {
		h.run.Pipe = wall + air.FreezingPoint
	}
	h.height = orElse(e.ZMeters, 0)
	p.tell("heat.jet_speed", h.run.Exhaust.Speed)
}

// answerPlume answers for everything behind the nozzle: parts as declared, and surfaces found in the plume that nobody declared.
func (p *pass) answerPlume(declared []nearPart, lacking []string) {
	n := p.need()
	n.lack(p.feed.hot.missing...)
	n.lack(lacking...)
	p.needNozzle(&n)
	out := answer{id: "heat.plume", missing: n.missing, limit: limit{value: 0, set: true, rule: coreDefault}}
	if n.met() {
		p.hottest(&out, append(behind(declared, true), p.found(declared)...), plumeMethod,
			p.inWords("Nothing behind the nozzle lies in gas of %.0f C or more.", heat.Unknown.Service-air.FreezingPoint))
		p.tellPlume()
	}
	p.conclude(out)
}

// answerBeside answers for what lies beside the engine or its tailpipe, running and after shut-down.
func (p *pass) answerBeside(declared []nearPart, lacking []string) {
	n := p.need()
	n.lack(p.feed.hot.missing...)
	n.lack(lacking...)
	beside := behind(declared, false)
	if len(beside) == 0 && p.hasTailpipe() {
		n.lack(partsPath)
	}
	out := answer{id: "heat.skin", missing: n.missing, limit: limit{value: 0, set: true, rule: coreDefault}}
	if n.met() {
		p.hottest(&out, beside, skinMethod, "There is no tailpipe, and no part is declared beside the engine.")
	}
	p.conclude(out)
}

func (p *pass) hasTailpipe() bool {
	list := p.turbines()
	return len(list) > 0 && yes(p.in.Model.Engines[list[0]].Tailpipe)
}

// hottest answers for the part with the least room; none says what holds where there is no part.
func (p *pass) hottest(out *answer, parts []nearPart, method, none string) {
	if len(parts) == 0 {
		out.none, out.note, out.from = true, none, []string{surfacesPath}
		return
	}
	moved := p.factor(method, 1) - 1
	var worst *heat.Answer
	for i := range parts {
		a, ok := p.heated(p.keptAt(parts[i].key()), &parts[i].part)
		if !ok {
			out.never = "The exhaust or a part near it is out of range."
			return
		}
		if left := room(a, moved); worst == nil || left < out.value {
			worst, out.value = a, left
		}
		p.tellPart(a, parts[i].path, out)
	}
	if p.base() {
		out.note = partNote(worst) + p.undeclaredNote(parts)
	}
}

// tellPlume tells how far behind the nozzle the gas is hot and the jet blows, by the conservative plume.
func (p *pass) tellPlume() {
	if !p.base() {
		return
	}
	plume, err := heat.NewPlume(p.feed.hot.run.Exhaust, p.feed.hot.run.Air, heat.Conservative)
	if err != nil {
		return
	}
	p.tell("heat.reach", plume.ReachOf(hotToSkin))
	p.tell("heat.blast_reach", plume.SpeedReach(blastSpeed))
}

const (
	// hotToSkin is the temperature from which a touch burns, K (common practice, 60 C within seconds).
	hotToSkin = 60 + heat.Celsius
	// blastSpeed is the wind that throws grit and hats, m/s (common practice).
	blastSpeed = 10.0
)
