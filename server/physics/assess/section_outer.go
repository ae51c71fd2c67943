package assess

import (
	"math"

	"pitgate/server/physics/lift"
	"pitgate/server/physics/loads"
	"pitgate/server/physics/structure"
)

// airLoads is what one surface carries for one unit of dynamic pressure: by itself, per rad of the model's incidence and per rad of the pitch control.
type airLoads struct{ basic, incidence, control float64 }

// at returns the load in a state.
func (a airLoads) at(s flightState) float64 {
	return float64(s.pressure * (a.basic + float64(a.incidence*s.incidence) + float64(a.control*s.control)))
}

// outer is a canard or tailplane with its spar, as the base pass read it; loads depend on the geometry alone.
type outer struct {
	missing  []string
	stations []structure.Station
	sizes    sizes
	read     []string

	strips  []*lift.Strip
	forces  []airLoads // of the strips of one side, m2
	force   airLoads   // of one side, m2
	bending airLoads   // at the root, m3
	items   []loads.Item
	weight  float64   // of one side about the root, kg m
	stands  []float64 // bending at the root that the spar stands in each state, N m; 0 where nothing bends it
	mode    []string
	lacking string // part that carries no shear
}

// outer returns a surface with its spar, read once.
func (p *pass) outer(path string, index int, spar []SparStation) *outer {
	all := p.fittings().tail
	if o := all[path]; o != nil {
		return o
	}
	o := &outer{}
	all[path] = o
	p.aside = true
	defer func() { p.aside = false }()
	n, mark := p.need(), p.mark()
	stations := p.whole.surfaces[index].Stations
	o.stations = n.sparStations(&o.sizes, path, spar, stations[len(stations)-1].Y)
	surface := at(surfacesPath, index)
	mass, _ := p.read(surface+".massKg", p.in.Model.Surfaces[index].MassKg)
	o.items = p.spreadMass(index, mass)
	for _, item := range o.items {
		o.weight += float64(item.Mass * item.Y)
	}
	o.missing, o.read = n.missing, p.since(mark)
	p.loadSurface(o, p.whole.surfaces[index].Name)
	return o
}

// sparStations reads the stations of a spar over a half span and names what they lack.
func (n *need) sparStations(s *sizes, path string, list []SparStation, half float64) []structure.Station {
	if len(list) == 0 {
		n.lack(path)
	}
	var out []structure.Station
	for i := range list {
		place := at(path, i)
		station := structure.Station{Y: n.number(place+".spanRatio", list[i].SpanRatio) * half}
		if len(list[i].Parts) == 0 {
			n.lack(place + ".parts")
		}
		for k := range list[i].Parts {
			station.Parts = append(station.Parts, n.part(s, at(place+".parts", k), &list[i].Parts[k]))
		}
		out = append(out, station)
	}
	return out
}

// loadSurface finds the unit loads of a surface.
func (p *pass) loadSurface(o *outer, name string) {
	const step = 0.1
	whole := p.whole.lattice
	var held []lift.Setting
	for _, index := range p.pitch.indices {
		held = append(held, lift.Setting{Index: index, Angle: step})
	}
	level, moved := whole.StripLoads(0, nil), whole.StripLoads(0, held)
	for i := range whole.Strips {
		strip := &whole.Strips[i]
		if strip.Surface != name {
			continue
		}
		area := float64(strip.Chord * strip.Width)
		unit := airLoads{area * strip.BasicLift, area * strip.LiftSlope, area * (moved[i] - level[i]) / step}
		o.strips, o.forces = append(o.strips, strip), append(o.forces, unit)
		o.force.add(unit, 1)
		o.bending.add(unit, strip.Y)
	}
}

// add adds unit loads at an arm.
func (a *airLoads) add(unit airLoads, arm float64) {
	a.basic += float64(unit.basic * arm)
	a.incidence += float64(unit.incidence * arm)
	a.control += float64(unit.control * arm)
}

// rootBending returns the bending at the root of one side in a state, air load less inertia, N m, tip up.
func (o *outer) rootBending(s flightState) float64 {
	return o.bending.at(s) - float64(loads.StandardGravity*float64(o.weight*s.load))
}

// stand finds what the spar stands in every state, as bending at the root.
func (o *outer) stand(states []flightState) error {
	o.stands, o.mode = make([]float64, len(states)), make([]string, len(states))
	for i, state := range states {
		bending := math.Abs(o.rootBending(state))
		if !(bending > 0) {
			continue
		}
		carries, err := o.integrate(state)
		if err != nil {
			return err
		}
		result, err := structure.Assess(o.stations, carries, false)
		if err != nil {
			return err
		}
		for k := range result.Stations {
			if result.Stations[k].ShearUncarried {
				o.lacking = at("", k) + ".parts[].webThicknessMeters"
			}
		}
		o.stands[i], o.mode[i] = result.Stands*bending, string(result.Governing().Mode)
	}
	return nil
}

// integrate returns what the stations carry in a state, as a load of the whole state per unit of load factor.
func (o *outer) integrate(state flightState) ([]loads.Load, error) {
	strips := make([]loads.Strip, len(o.strips))
	for i, s := range o.strips {
		strips[i] = loads.Strip{Y: s.Y, Width: s.Width, X: s.QuarterX, Force: loads.Line{PerLoad: o.forces[i].at(state)}}
	}
	items := make([]loads.Item, len(o.items))
	for i, item := range o.items {
		item.Mass *= state.load
		items[i] = item
	}
	places := make([]float64, len(o.stations))
	for i := 1; i < len(places); i++ {
		places[i] = o.stations[i].Y
	}
	return loads.Integrate(strips, items, loads.Axis{}, places)
}

// liftWords writes a lift as newtons up or down.
func liftWords(force float64) string {
	if force < 0 {
		return sayNumbers("%.0f N down", -force)
	}
	return sayNumbers("%.0f N up", force)
}

// answerOuter answers for the spar of a canard or tailplane under its own load.
func (p *pass) answerOuter(id, path string, index int, spar []SparStation) {
	a, n := p.partAnswer(id)
	times := 0.0
	if n.met() && a.never == "" {
		p.needTrim(&n)
		o := p.outer(path, index, spar)
		n.lack(o.missing...)
		if n.met() {
			times = p.outerTimes(&n, &a, o, path)
		}
	}
	p.finishPart(a, n, times)
}

// outerTimes returns how often the spar stands the greatest bending of its root.
func (p *pass) outerTimes(n *need, a *answer, o *outer, path string) float64 {
	states := p.flightStates()
	if o.stands == nil && (o.stand(states) != nil || o.lacking != "") {
		n.lack(path + o.lacking)
		return 0
	}
	list := make([]carriedLoad, len(states))
	for i := range min(len(states), len(o.stands)) {
		list[i] = carriedLoad{o.stands[i], math.Abs(o.rootBending(states[i]))}
	}
	i, times := worst(list)
	if i < 0 {
		return times
	}
	factor := p.partStrength(o.sizes)
	if p.base() {
		a.note = say("Bent most by %s: %.1f N m at the root of each side, %s on both; it stands %.1f N m: %s.",
			states[i].words, list[i].asked, liftWords(2*o.force.at(states[i])), list[i].stands*factor, o.mode[i])
		p.tell(a.id+"_bending", list[i].asked)
		p.tell(a.id+"_stands", list[i].stands*factor, o.read...)
	}
	return times * factor
}
