package assess

import (
	"math"
	"slices"

	"pitgate/server/physics/field"
	"pitgate/server/physics/motion"
)

// daySection is the flight as planned over the field.
type daySection struct {
	missing []string // what the circuit lacks
	circuit field.Line
	height  float64 // of the circuit over the ground, m
	launch  field.Line
}

// site is something on the field that a flight is kept away from.
type site struct {
	name, path string
	line       field.Line    // a line, or
	area       field.Polygon // an area
}

// distance returns the least level distance of a path to the place, m: zero when it leads into it.
func (o *site) distance(path field.Line) float64 {
	if len(o.area) > 0 {
		return o.area.PathDistance(path)
	}
	return field.LineClearance(path, o.line)
}

// answerSeparation answers for what lies under and beside the flight: people, buildings, height, mass and sight.
func (p *pass) answerSeparation() {
	p.readFlight()
	p.answerPeople()
	p.answerStructures()
	p.answerHeight()
	p.answerMassClass()
	p.answerSight()
}

// readFlight lays the circuit and the launch over the field.
func (p *pass) readFlight() {
	n := p.need()
	plan := p.launchPlan()
	if plan.Circuit == nil {
		n.lack("launchPlan.circuit")
	} else if plan.Circuit.Hand == "" {
		n.lack("launchPlan.circuit.hand")
	}
	n.lack(p.launch.placeMissing...)
	n.lack(p.stall.missing...)
	n.lack(p.air.windMissing...)
	if n.met() {
		circuit := p.circuit(plan.Circuit)
		p.day.height = n.quantity("launchPlan.circuit.heightMeters", plan.Circuit.HeightMeters)
		if circuit.Check() != nil {
			n.lack("launchPlan.circuit.bankDegrees")
		} else {
			p.day.circuit = circuit.Path()
		}
	}
	p.day.missing = n.missing
	if p.launch.flown {
		for _, point := range p.launch.result.Path {
			p.day.launch = append(p.day.launch, p.along(point.Distance, point.Drift))
		}
	}
}

// people are the places of the field where people stand: lines, pits, parking and what is kept for them.
func (p *pass) people() []site {
	if p.in.Field == nil {
		return nil
	}
	places := linesOf(p.in.Field.PeopleLines, "field.peopleLines")
	places = append(places, areasOf(p.in.Field.Pits, "field.pits")...)
	places = append(places, areasOf(p.in.Field.Parking, "field.parking")...)
	return append(places, p.keepOuts(KeepOutReasonPeople)...)
}

// structures are the buildings and roads of the field.
func (p *pass) structures() []site {
	if p.in.Field == nil {
		return nil
	}
	places := linesOf(p.in.Field.Roads, "field.roads")
	for i := range p.in.Field.Obstacles {
		o := &p.in.Field.Obstacles[i]
		if o.Kind != ObstacleKindBuilding {
			continue
		}
		points := shape(o).Points
		building := site{name: o.Name, path: at("field.obstacles", i), line: points}
		if yes(o.Closed) && len(points) > 2 {
			building.line, building.area = nil, points
		}
		if len(points) > 0 {
			places = append(places, building)
		}
	}
	return append(places, p.keepOuts(KeepOutReasonBuildings, KeepOutReasonRoad)...)
}

// keepOuts returns the areas kept free for one of the reasons.
func (p *pass) keepOuts(reasons ...KeepOutReason) []site {
	var places []site
	for i := range p.in.Field.KeepOuts {
		k := &p.in.Field.KeepOuts[i]
		if outline := outlineOf(k.Area); len(outline) > 0 && slices.Contains(reasons, k.Reason) {
			places = append(places, site{name: k.Name, path: at("field.keepOuts", i), area: outline})
		}
	}
	return places
}

func linesOf(lines []NamedLine, path string) []site {
	var places []site
	for i := range lines {
		if len(lines[i].Points) > 0 {
			places = append(places, site{name: lines[i].Name, path: at(path, i), line: pointsOf(lines[i].Points)})
		}
	}
	return places
}

func areasOf(areas []NamedArea, path string) []site {
	var places []site
	for i := range areas {
		if outline := outlineOf(areas[i].Area); len(outline) > 0 {
			places = append(places, site{name: areas[i].Name, path: at(path, i), area: outline})
		}
	}
	return places
}

// outlineOf returns the corners of an outline of at least three.
func outlineOf(area *Polygon) field.Polygon {
	if area == nil || len(area.Corners) < 3 {
		return nil
	}
	return field.Polygon(pointsOf(area.Corners))
}

func pointsOf(points []Point) field.Line {
	line := make(field.Line, 0, len(points))
	for i := range points {
		line = append(line, flat(&points[i]))
	}
	return line
}

func (p *pass) answerPeople() {
	n := p.need()
	n.lack(p.day.missing...)
	people := p.people()
	if len(people) == 0 {
		n.lack("field.peopleLines")
	}
	apart := answer{id: "separation.people", missing: n.missing, limit: p.optionalLimit(peopleFigure)}
	if n.met() {
		p.nearest(people, &apart)
	}
	p.conclude(apart)
}

func (p *pass) answerStructures() {
	n := p.need()
	n.lack(p.day.missing...)
	structures := p.structures()
	apart := answer{id: "separation.structures", missing: n.missing, limit: p.optionalLimit(structureFigure)}
	switch {
	case !n.met():
	case len(structures) == 0:
		apart.none = true
		apart.note = "The field describes no building and no road."
	default:
		p.nearest(structures, &apart)
	}
	p.conclude(apart)
}

// nearest finds the place nearest to launch and circuit and says whether the height at the circuit is no more than the distance.
func (p *pass) nearest(places []site, apart *answer) {
	apart.value = math.Inf(1)
	var decides *site
	words := ""
	for i := range places {
		o := &places[i]
		for _, flight := range []struct {
			name string
			line field.Line
		}{{"circuit", p.day.circuit}, {"launch", p.day.launch}} {
			if len(flight.line) == 0 {
				continue
			}
			if distance := o.distance(flight.line); distance < apart.value {
				apart.value, decides, words = distance, o, flight.name
			}
		}
	}
	if decides == nil || !p.tells() {
		return
	}
	apart.from = append(apart.from, decides.path)
	apart.note = say("Nearest is %s, %.0f m from the %s.", decides.name, apart.value, words)
	if !(apart.value > 0) {
		apart.note = say("The %s leads over %s.", words, decides.name)
	}
	if words == "circuit" {
		apart.note += p.oneToOne(apart.value)
	}
}

// oneToOne says how the distance compares with the height of the circuit.
func (p *pass) oneToOne(distance float64) string {
	if distance >= p.day.height {
		return p.inWords(" That is no less than the height of %.0f m there, as the rule of one to one asks.", p.day.height)
	}
	return p.inWords(" The rule of one to one asks for as much distance as height, %.0f m.", p.day.height)
}

// answerHeight holds the planned height against the lower of both limits.
func (p *pass) answerHeight() {
	n := p.need()
	height := answer{id: "height.limit", limit: p.optionalLimit(heightFigure)}
	height.value = n.quantity("launchPlan.circuit.heightMeters", p.circuitPlan().HeightMeters)
	height.missing = n.missing
	if p.in.Field != nil && p.in.Field.HeightLimitMeters != nil && p.in.Field.HeightLimitMeters.Value != nil {
		if most := *p.in.Field.HeightLimitMeters.Value; !height.limit.set || most < height.limit.value {
			height.limit = limit{value: most, set: true, rule: "height limit of the field", path: "field.heightLimitMeters"}
		}
	}
	height.note = p.inWords("Circuit at %.0f m over the ground.", height.value)
	p.conclude(height)
}

func (p *pass) answerMassClass() {
	mass := answer{id: "mass.class", missing: p.mass.missing, value: p.mass.takeoff, limit: p.optionalLimit(massClassFigure)}
	mass.note = p.inWords("%.2f kg, of it %.2f kg of fuel.", p.mass.takeoff, p.mass.takeoff-p.mass.empty)
	p.conclude(mass)
}

// answerSight answers for the farthest point of the circuit from the pilot.
func (p *pass) answerSight() {
	n := p.need()
	n.lack(p.day.missing...)
	n.lack(p.wing.missing...)
	if p.in.Field == nil || p.in.Field.PilotPosition == nil {
		n.lack("field.pilotPosition")
	}
	sight := answer{id: "visual.range", missing: n.missing}
	if n.met() {
		p.sight(&sight)
	}
	p.conclude(sight)
}

func (p *pass) sight(sight *answer) {
	pilot := flat(p.in.Field.PilotPosition)
	for _, point := range p.day.circuit {
		sight.value = max(sight.value, root(pilot.Distance(point), p.day.height))
	}
	attitude := motion.AttitudeRange(p.wing.span)
	sight.limit = limit{value: attitude, set: true, rule: coreDefault}
	sight.note = p.inWords("The attitude of a span of %.2f m can be told as far as %.0f m.", p.wing.span, attitude)
	if seen := p.today().VisibilityMeters; seen != nil && seen.Value != nil {
		found := motion.DetectionRange(*seen.Value)
		sight.from = []string{"day.visibilityMeters"}
		sight.note += p.inWords(" In a visibility of %.1f km it is found as far as %.0f m.", *seen.Value/1000, found)
		sight.limit.value = min(attitude, found)
	}
	p.tell("visual.attitude_range", attitude)
}

// flownPlaces returns the launch path as places no farther apart than a hedge is high, heights over the start.
func (p *pass) flownPlaces() []field.Place {
	const step = 2.0
	path := p.launch.result.Path
	var places []field.Place
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		pieces := max(1, int((b.Distance-a.Distance)/step))
		for k := range pieces {
			share := float64(k) / float64(pieces)
			places = append(places, field.Place{
				Point:  p.along(a.Distance+float64(share*(b.Distance-a.Distance)), a.Drift+float64(share*(b.Drift-a.Drift))),
				Height: a.Height + float64(share*(b.Height-a.Height)),
			})
		}
	}
	return places
}
