package assess

import (
	"slices"
	"strings"

	"pitgate/server/physics/air"
	"pitgate/server/physics/elementary"
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

// partNote says how hot the worst part becomes, by what, and what would mend it.
func partNote(a *heat.Answer) string {
	celsius := func(kelvin float64) float64 { return kelvin - air.FreezingPoint }
	note := say("%s (%s) stands %.0f C and becomes %.0f C by the %s, %.0f C by the conservative answer.", partName(a.Part.Name), a.Material.Name,
		celsius(a.Material.Service), celsius(a.Best), a.Cause, celsius(a.Worst))
	if a.Cause == heat.ByMeasured {
		return say("%s (%s) stands %.0f C; %.0f C were measured in a static run, told for the day's air.", partName(a.Part.Name), a.Material.Name,
			celsius(a.Material.Service), celsius(a.Best))
	}
	if !a.Known {
		note += " Its material is not one of the table: the weakest is taken."
	}
	if a.Cause == heat.BySoakBack {
		note += sayNumbers(" The peak comes %.0f s after shut-down.", a.Soak.After)
	}
	if a.Verdict == heat.Uncertain {
		return note + " Only a temperature measured in a static run settles it."
	}
	return note + heatFixes(a)
}

// partName begins a sentence with the name of a part.
func partName(name string) string {
	if name == "" {
		return "A part without a name"
	}
	return capital(name)
}

// heatFixes says the smallest changes that keep the part under its limit.
func heatFixes(a *heat.Answer) string {
	var words []string
	for _, fix := range a.Fixes {
		switch fix.Change {
		case heat.AddFoil:
			words = append(words, "foil on the face towards the pipe")
		case heat.FoilMove:
			words = append(words, sayNumbers("foil and %.0f mm instead of %.0f mm to the pipe", 1000*fix.To, 1000*fix.From))
		case heat.MoveBack:
			words = append(words, sayNumbers("%.0f mm behind the nozzle instead of %.0f mm", 1000*fix.To, 1000*fix.From))
		default:
			words = append(words, sayNumbers("%.0f mm away instead of %.0f mm", 1000*fix.To, 1000*fix.From))
		}
	}
	if len(words) == 0 {
		return ""
	}
	return " What would mend it: " + strings.Join(words, "; or ") + "."
}

// undeclaredNote names what was found in the plume and is not declared.
func (p *pass) undeclaredNote(parts []nearPart) string {
	var names []string
	for i := range parts {
		if parts[i].path == "" {
			names = append(names, say("%s (%.0f mm behind the nozzle, %.0f mm off its axis)", parts[i].part.Name, 1000*parts[i].part.Behind, 1000*parts[i].part.From))
		}
	}
	if len(names) == 0 {
		return ""
	}
	return " In the plume and not declared as heated: " + strings.Join(names, ", ") + "."
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

// answerGround answers for a start over grass that may be dry.
func (p *pass) answerGround() {
	n := p.need()
	n.lack(p.feed.hot.missing...)
	surface, known := p.groundUnder()
	if !known {
		n.lack("launchPlan.method")
	}
	if p.in.Day == nil || p.in.Day.SurfaceState == "" {
		n.lack("day.surfaceState")
	}
	height := 0.0
	if n.met() {
		height = p.nozzleHeight(&n)
	}
	out := answer{id: "heat.ground", missing: n.missing, limit: limit{value: 0, set: true, rule: coreDefault}}
	switch {
	case !n.met():
	case p.in.Day.SurfaceState != SurfaceStateDry:
		out.none, out.note, out.from = true, "The ground is not dry.", []string{"day.surfaceState"}
	case surface == SurfacePaved:
		out.none, out.note, out.from = true, "Nothing on a paved surface burns.", []string{"field.strips"}
	default:
		p.ground(&out, height)
	}
	p.conclude(out)
}

// groundUnder returns what the model stands on at the start; off a strip it is taken for grass.
func (p *pass) groundUnder() (Surface, bool) {
	if p.in.Field != nil {
		if i, found := p.strip(p.launchPlan().Strip); found && p.launchPlan().Method == LaunchMethodWheels && i < len(p.in.Field.Strips) {
			return p.in.Field.Strips[i].Surface, true
		}
	}
	return "", p.launch.known
}

// nozzleHeight returns the height of the nozzle over the ground at the start, m.
func (p *pass) nozzleHeight(n *need) float64 {
	above := p.feed.hot.height - p.lowestPoint()
	switch plan := p.launchPlan(); plan.Method {
	case LaunchMethodRamp:
		ramp := plan.Ramp
		if ramp == nil {
			n.lack("launchPlan.ramp")
			return above
		}
		end, length := n.plain("launchPlan.ramp.endHeightMeters", ramp.EndHeightMeters), n.plain("launchPlan.ramp.lengthMeters", ramp.LengthMeters)
		slope := radians(n.plain("launchPlan.ramp.angleDegrees", ramp.AngleDegrees))
		return max(0, end-float64(length*elementary.Sin(slope))) + above
	case LaunchMethodHand:
		return valueOr(plan.HandHeightMeters, above)
	default:
		return above
	}
}

// lowestPoint returns the height of the lowest wheel or belly over the datum, m.
func (p *pass) lowestPoint() float64 {
	lowest := p.feed.hot.height
	if gear := p.in.Model.Gear; gear != nil {
		for i := range gear.Wheels {
			if z := gear.Wheels[i].ZMeters; z != nil {
				lowest = min(lowest, *z-float64(orElse(gear.Wheels[i].DiameterMeters, 0)/2))
			}
		}
	}
	for i := range p.in.Model.Bodies {
		for k := range p.in.Model.Bodies[i].Stations {
			s := &p.in.Model.Bodies[i].Stations[k]
			lowest = min(lowest, orElse(s.CenterZMeters, 0)-float64(orElse(s.HeightMeters, 0)/2))
		}
	}
	return lowest
}

// ground computes how hot the gas is at the ground.
func (p *pass) ground(out *answer, height float64) {
	run := &p.feed.hot.run
	key := []float64{run.Exhaust.Diameter, run.Exhaust.Temperature, run.Exhaust.Speed, run.Air.Temperature, height}
	if p.drawing.ground == nil || !slices.Equal(p.drawing.ground.key, key) {
		g := groundOf(run, height)
		g.key = key
		if p.base() {
			p.drawing.ground = &g
		}
		p.groundAnswer(out, &g, height)
		return
	}
	p.groundAnswer(out, p.drawing.ground, height)
}

// keptGround is what both plumes do to the ground.
type keptGround struct {
	key         []float64
	best, worst heat.Ground
	bad         bool
}

func groundOf(run *heat.Run, height float64) keptGround {
	best, wrong := heat.NewPlume(run.Exhaust, run.Air, heat.Best)
	worst, alsoWrong := heat.NewPlume(run.Exhaust, run.Air, heat.Conservative)
	if wrong != nil || alsoWrong != nil {
		return keptGround{bad: true}
	}
	g := keptGround{}
	g.best, wrong = heat.OnGround(best, height)
	g.worst, alsoWrong = heat.OnGround(worst, height)
	g.bad = wrong != nil || alsoWrong != nil
	return g
}

func (p *pass) groundAnswer(out *answer, g *keptGround, height float64) {
	if g.bad {
		out.never = "The exhaust or its height over the ground is out of range."
		return
	}
	moved := p.factor(plumeMethod, 1) - 1
	out.value = heat.GrassIgnition - g.best.Hottest - float64(moved*(g.worst.Hottest-g.best.Hottest)/conservativeAt)
	if !p.base() {
		return
	}
	out.note = p.inWords("The nozzle stands %.2f m over the ground; the gas there reaches %.0f C, %.0f C by the conservative answer %.1f m behind it.", height,
		g.best.Hottest-air.FreezingPoint, g.worst.Hottest-air.FreezingPoint, g.worst.Where)
	if g.worst.Ignition > 0 {
		out.note += p.inWords(" Dry grass may catch fire to %.1f m behind the nozzle by the conservative answer: start on bare ground or a sheet.", g.worst.Ignition)
	} else if g.worst.Caution > 0 {
		out.note += p.inWords(" Dry grass may be scorched to %.1f m behind the nozzle by the conservative answer.", g.worst.Caution)
	}
	p.tell("heat.ground", g.best.Hottest-air.FreezingPoint, p.groundPaths()...)
	p.tell("heat.ground_conservative", g.worst.Hottest-air.FreezingPoint, p.groundPaths()...)
}

// groundPaths names what the height of the nozzle was taken from.
func (p *pass) groundPaths() []string {
	switch p.launchPlan().Method {
	case LaunchMethodRamp:
		return []string{"launchPlan.ramp", "model.bodies"}
	case LaunchMethodHand:
		return []string{"launchPlan.handHeightMeters"}
	default:
		return []string{"model.gear", "model.bodies"}
	}
}
