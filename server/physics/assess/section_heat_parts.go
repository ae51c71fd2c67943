package assess

import (
	"slices"

	"pitgate/server/physics/air"
	"pitgate/server/physics/heat"
)

// keptPart is a part near the exhaust as the base pass computed it.
type keptPart struct {
	key    []float64
	answer heat.Answer
	bad    bool
}

// nearPart is a part that the document declares, or a surface that was found in the plume.
type nearPart struct {
	part heat.Part
	path string // of the document; empty for what was found
}

// key is the name under which the part is kept.
func (n *nearPart) key() string {
	if n.path == "" {
		return "found " + n.part.Name
	}
	return n.path
}

// declaredParts reads what the document says lies near the exhaust, and what of it is missing.
func (p *pass) declaredParts() (parts []nearPart, lacking []string) {
	if p.in.Model == nil {
		return nil, []string{partsPath}
	}
	n := p.need()
	for i := range p.in.Model.HeatedParts {
		given, path := &p.in.Model.HeatedParts[i], at(partsPath, i)
		part := heat.Part{
			Name: given.Name, Material: given.Material, Foil: yes(given.FoilShield),
			Behind: n.quantity(path+".behindNozzleMeters", given.BehindNozzleMeters), From: max(0, n.quantity(path+".fromAxisMeters", given.FromAxisMeters)),
		}
		if given.Material == "" {
			n.lack(path + ".material")
		}
		if celsius, ok := p.read(path+".measuredTemperatureCelsius", given.MeasuredTemperatureCelsius); ok {
			part.Measured, part.MeasuredAir = celsius+air.FreezingPoint, p.runAir()
		}
		parts = append(parts, nearPart{part, path})
	}
	return parts, n.missing
}

// runAir returns the temperature of the air of the static run, K; zero where nobody told it.
func (p *pass) runAir() float64 {
	for _, i := range p.turbines() {
		e := &p.in.Model.Engines[i]
		if _, ran := loudest(e); ran && e.TestTemperatureCelsius != nil && i < len(p.engine.engines) {
			return p.engine.engines[i].Rated.Temperature
		}
	}
	return 0
}

// heated returns how hot a part becomes, computed anew only in the passes that move one of its numbers.
func (p *pass) heated(i int, part *heat.Part) (*heat.Answer, bool) {
	run := &p.feed.hot.run
	key := []float64{
		run.Exhaust.Diameter, run.Exhaust.Temperature, run.Exhaust.Speed, run.Air.Temperature, run.Air.Pressure, run.Pipe,
		part.Behind, part.From, part.Measured, part.MeasuredAir,
	}
	if i < len(p.drawing.parts) && slices.Equal(p.drawing.parts[i].key, key) {
		return &p.drawing.parts[i].answer, !p.drawing.parts[i].bad
	}
	out, err := heat.Assess(*run, []heat.Part{*part})
	kept := keptPart{key: key, bad: err != nil}
	if err == nil {
		kept.answer = out[0]
	}
	if p.base() {
		p.drawing.parts = append(p.drawing.parts, kept)
	}
	return &kept.answer, !kept.bad
}

// conservativeAt is how many standard deviations the conservative answer lies off the best one: at the end of the band.
const conservativeAt = bandFactor

// room returns how far a part stays under what its material stands, K, with the method moved by so many standard deviations.
func room(a *heat.Answer, moved float64) float64 {
	return a.Material.Service - a.Best - float64(moved*(a.Worst-a.Best)/conservativeAt)
}

// behind returns the parts behind the nozzle, or those beside it.
func behind(parts []nearPart, wanted bool) []nearPart {
	var found []nearPart
	for _, one := range parts {
		if (one.part.Behind > 0) == wanted {
			found = append(found, one)
		}
	}
	return found
}

// keptAt returns the place under which the base pass keeps a part, which it gives out in the order in which the parts are asked for.
func (p *pass) keptAt(name string) int {
	if i := slices.Index(p.drawing.partNames, name); i >= 0 {
		return i
	}
	if p.base() {
		p.drawing.partNames = append(p.drawing.partNames, name)
	}
	return len(p.drawing.partNames)
}

// tellPart tells both temperatures of a part.
func (p *pass) tellPart(a *heat.Answer, path string, out *answer) {
	if !p.base() {
		return
	}
	name, from := a.Part.Name, []string{surfacesPath}
	if path != "" {
		from = []string{path}
	}
	best, conservative := "heat.best."+name, "heat.conservative."+name
	if a.Cause == heat.ByMeasured {
		for _, id := range []string{best, conservative} {
			p.replaced = append(p.replaced, replacement{id: id, path: path + ".measuredTemperatureCelsius", method: staticRunMethod})
		}
	} else {
		p.tell("heat.warming."+name, a.Warming, from...)
	}
	p.tell(best, a.Best-air.FreezingPoint, from...)
	p.tell(conservative, a.Worst-air.FreezingPoint, from...)
	if a.Soak.Peak > 0 {
		p.tell("heat.soak."+name, a.Soak.Peak-air.FreezingPoint, from...)
	}
	out.from = append(out.from, best, conservative)
}
