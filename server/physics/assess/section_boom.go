package assess

import (
	"math"
	"slices"

	"pitgate/server/physics/loads"
	"pitgate/server/physics/planform"
	"pitgate/server/physics/structure"
)

// boom is what carries the tail, as the base pass read it.
type boom struct {
	known    bool
	missing  []string
	station  structure.Station
	count    float64
	length   float64 // m
	mass     float64 // of one boom, kg
	tailMass float64 // of all that it carries, kg
	lift     airLoads
	sizes    sizes
	read     []string

	stands []float64 // bending that one boom stands in each state, N m
	mode   []string
}

// boomed reports whether the tail is carried by booms of which something was said.
func (p *pass) boomed() bool {
	s := p.structure()
	return len(s.Boom) > 0 || s.BoomCount != nil || s.BoomLengthMeters != nil
}

// boom returns what carries the tail, read once.
func (p *pass) boom() *boom {
	b, d := &p.fittings().boom, p.structure()
	if b.known {
		return b
	}
	b.known = true
	p.aside = true
	defer func() { p.aside = false }()
	n, mark := p.need(), p.mark()
	if len(d.Boom) == 0 {
		n.lack(boomPath)
	}
	for i := range d.Boom {
		b.station.Parts = append(b.station.Parts, n.part(&b.sizes, at(boomPath, i), &d.Boom[i]))
	}
	b.length = n.size(&b.sizes, boomLengthPath, d.BoomLengthMeters)
	b.count = 1
	if d.BoomCount != nil {
		b.count = max(1, float64(*d.BoomCount))
	}
	p.note(boomCountPath)
	p.weighBoom(b, &n)
	b.missing, b.read = n.missing, p.since(mark)
	return b
}

// weighBoom finds the mass of a boom and of the tail at its end, and the lift of that tail.
func (p *pass) weighBoom(b *boom, n *need) {
	for _, part := range b.station.Parts {
		if perLength, err := part.MassPerLength(); err == nil {
			b.mass += float64(perLength * b.length)
		}
	}
	for i := range p.whole.surfaces {
		surface := &p.whole.surfaces[i]
		switch surface.Role {
		case planform.RoleTailplane, planform.RoleVTail, planform.RoleFin:
			mass := n.quantity(at(surfacesPath, i)+".massKg", p.in.Model.Surfaces[i].MassKg)
			b.tailMass += max(0, mass)
		}
		if surface.Role == planform.RoleTailplane || surface.Role == planform.RoleVTail {
			var o outer
			p.loadSurface(&o, surface.Name)
			b.lift.add(o.force, 2)
		}
	}
}

// load returns what the root of one boom carries in a state, the whole of it per unit of load factor.
func (b *boom) load(s flightState) loads.Load {
	share := s.load / b.count
	return structure.BoomLoad(loads.Line{PerLoad: b.lift.at(s) / b.count}, b.length, b.tailMass*share, b.mass*s.load)
}

// stand finds what one boom stands in every state.
func (b *boom) stand(states []flightState) bool {
	b.stands, b.mode = make([]float64, len(states)), make([]string, len(states))
	for i, state := range states {
		load := b.load(state)
		result, err := structure.AssessStation(b.station, load, false)
		if err != nil || result.ShearUncarried {
			return false
		}
		b.stands[i], b.mode[i] = result.Stands*math.Abs(load.Bending.PerLoad), string(result.Checks[result.Governs].Mode)
	}
	return true
}

// answerBoom answers for what carries the tail.
func (p *pass) answerBoom() {
	a, n := p.partAnswer("loads.boom")
	times := 0.0
	if n.met() && a.never == "" {
		p.needTrim(&n)
		b := p.boom()
		n.lack(b.missing...)
		if n.met() {
			times = p.boomTimes(&n, &a, b)
		}
	}
	p.finishPart(a, n, times)
}

// boomTimes returns how often one boom stands the greatest bending of its root.
func (p *pass) boomTimes(n *need, a *answer, b *boom) float64 {
	landing := flightState{words: p.inWords("a landing with a load factor of %.1f", hardLanding), load: hardLanding}
	states := slices.Concat(p.flightStates(), []flightState{landing})
	if b.stands == nil && !b.stand(states) {
		n.lack(boomPath)
		return 0
	}
	list := make([]carriedLoad, len(states))
	for i := range min(len(states), len(b.stands)) {
		list[i] = carriedLoad{b.stands[i], math.Abs(b.load(states[i]).Bending.PerLoad)}
	}
	i, times := worst(list)
	if i < 0 {
		return times
	}
	factor := p.partStrength(b.sizes)
	if p.base() {
		a.note = say("Bent most by %s: %.1f N m at the root of each boom; it stands %.1f N m: %s.", states[i].words, list[i].asked, list[i].stands*factor, b.mode[i])
		p.tell("loads.boom_bending", list[i].asked, b.read...)
		p.tell("loads.boom_stands", list[i].stands*factor, b.read...)
	}
	return times * factor
}
