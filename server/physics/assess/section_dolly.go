package assess

import (
	"math"

	"pitgate/server/physics/field"
	"pitgate/server/physics/motion"
)

// dollyMassPath and dollyAreaPath are what the document says of the dolly.
const (
	dollyMassPath = "launchPlan.ramp.dollyMassKg"
	dollyAreaPath = "launchPlan.ramp.dollyDragAreaSquareMeters"
)

// usesDolly reports whether a dolly leaves the rails with the model, by the document alone.
func (p *pass) usesDolly() bool {
	ramp := p.launchPlan().Ramp
	if p.launch.method != motion.Ramp || ramp == nil || ramp.DollyMassKg == nil || ramp.DollyMassKg.Value == nil {
		return false
	}
	return *ramp.DollyMassKg.Value > 0
}

// answerDolly follows the dolly to the ground and answers for what lies there.
func (p *pass) answerDolly() {
	if !p.launch.known || !p.usesDolly() {
		return
	}
	out := answer{id: "launch.dolly", missing: p.launch.missing, limit: p.limit(comeDownFigure)}
	if len(p.launch.missing) == 0 {
		p.followDolly(&out)
	}
	p.conclude(out)
}

// followDolly follows the fall of the dolly, tells and draws it, and finds what is nearest to its way over the ground.
func (p *pass) followDolly(out *answer) {
	out.value = math.NaN()
	if !p.launch.flown || p.launch.result.NeverLiftsOff {
		return
	}
	mark := p.mark()
	area := max(0, p.optional(dollyAreaPath, p.launchPlan().Ramp.DollyDragAreaSquareMeters, 0))
	how := p.launch.how
	how.Room = &p.memory().brief
	fall, err := how.DollyFall(&p.launch.result, p.launch.air, motion.Dolly{DragArea: area})
	if err != nil || len(fall.Path) == 0 {
		return
	}
	p.tellDolly(&fall, p.since(mark))
	p.drawDolly(&fall)
	out.note = p.inWords("It comes down %.0f m from the start at %.1f m/s with %.0f J.", fall.Distance, fall.Speed, fall.Energy)
	p.nearDolly(&fall, out)
}

func (p *pass) tellDolly(fall *motion.Fall, read []string) {
	p.tell("launch.dolly_distance", fall.Distance, read...)
	p.tell("launch.dolly_speed", fall.Speed, read...)
	p.tell("launch.dolly_energy", fall.Energy, read...)
}

// nearDolly finds the least distance of people, keep-outs, buildings and roads to the way of the dolly over the ground.
func (p *pass) nearDolly(fall *motion.Fall, out *answer) {
	first := fall.Path[0]
	way := field.Segment{A: p.along(first.Distance, first.Drift), B: p.along(fall.Distance, fall.Drift)}
	places := append(p.guarded(), p.structures()...)
	if len(places) == 0 {
		out.none = true
		out.note += " The field describes no people, keep-outs, buildings or roads."
		return
	}
	least, whose := math.Inf(1), 0
	for i := range places {
		if d := places[i].clear(way); d < least {
			least, whose = d, i
		}
	}
	out.value = least
	out.note += say(" Nearest is %s, %.0f m away.", places[whose].name, max(0, least))
	if p.base() {
		out.from = append(out.from, places[whose].path)
	}
}

// drawDolly adds the fall to the profile and to the plan of the launch.
func (p *pass) drawDolly(fall *motion.Fall) {
	if !p.tells() {
		return
	}
	profile, plan := ReportPath{ID: "launch.dolly_fall"}, ReportPath{ID: "launch.dolly_plan"}
	for _, point := range fall.Path {
		drawn := PathPoint{
			XMeters: point.Distance, ZMeters: point.Height + p.launch.ground, AirspeedMetersPerSecond: point.Airspeed, TimeSeconds: point.Time,
		}
		profile.Points = append(profile.Points, drawn)
		place := p.along(point.Distance, point.Drift)
		drawn.XMeters, drawn.YMeters = place.X, place.Y
		plan.Points = append(plan.Points, drawn)
	}
	p.lines = append(p.lines, profile, plan)
}
