package assess

import (
	"pitgate/server/physics/field"
	"pitgate/server/physics/motion"
)

const (
	defaultReactionSeconds = 1.0
	// offStripLeg is the leg of the circuit where the launch uses no strip and the plan names none, m.
	offStripLeg = 150.0
)

// answerCircuit answers for the circuit's distance to the edge of the flying area.
func (p *pass) answerCircuit() {
	n := p.need()
	plan := p.launchPlan()
	if plan.Circuit == nil {
		n.lack("launchPlan.circuit")
	} else if plan.Circuit.Hand == "" {
		n.lack("launchPlan.circuit.hand")
	}
	if p.in.Field == nil || p.in.Field.FlyingArea == nil || len(p.in.Field.FlyingArea.Corners) < 3 {
		n.lack("field.flyingArea")
	}
	n.lack(p.launch.placeMissing...)
	n.lack(p.stall.missing...)
	n.lack(p.air.windMissing...)
	inside := answer{id: "circuit.inside", missing: n.missing, limit: limit{value: 0, set: true, rule: coreDefault}}
	if n.met() {
		p.layCircuit(plan.Circuit, &inside)
	}
	p.conclude(inside)
}

func (p *pass) layCircuit(plan *CircuitPlan, inside *answer) {
	mark := p.mark()
	circuit := p.circuit(plan)
	read := p.since(mark)
	if circuit.Check() != nil {
		inside.never = "The circuit as planned cannot be flown: its speed or bank is out of range."
		return
	}
	area := make(field.Polygon, 0, len(p.in.Field.FlyingArea.Corners))
	for i := range p.in.Field.FlyingArea.Corners {
		area = append(area, flat(&p.in.Field.FlyingArea.Corners[i]))
	}
	fit := circuit.Fit(area, 0)
	inside.value = fit.Distance
	radius := circuit.Radius()
	inside.note = p.inWords("Turns of %.0f m radius at %.1f m/s and %.0f degrees, legs of %.0f m; nearest to the edge at x %.0f m, y %.0f m.",
		radius, circuit.Airspeed, degrees(circuit.Bank), circuit.Leg, fit.At.X, fit.At.Y)
	if !fit.Fits && fit.LargestSpeed > 0 {
		inside.note += p.inWords(" It fits at %.1f m/s.", fit.LargestSpeed)
	}
	p.tell("circuit.radius", radius)
	p.tell("circuit.leg", circuit.Leg, read...)
	p.tell("circuit.turn_time", circuit.TurnTime())
	p.drawCircuit(circuit, plan)
}

// circuit returns the circuit as planned, in the wind at its height.
func (p *pass) circuit(plan *CircuitPlan) motion.Circuit {
	height := p.optional("launchPlan.circuit.heightMeters", plan.HeightMeters, 50)
	factor := p.air.profile.Factor(height)
	middle, leg := p.launch.origin, offStripLeg
	if p.launch.method == motion.Wheels {
		middle, leg = p.along(p.launch.length/2, 0), p.launch.length
	}
	return motion.Circuit{
		Middle: middle, Heading: p.launch.heading, LeftHand: plan.Hand == CircuitHandLeft,
		Leg:      max(0, p.optional("launchPlan.circuit.straightLegMeters", plan.StraightLegMeters, leg)),
		Airspeed: p.stall.circuitSpeed, Bank: p.stall.bank, Reaction: orElse(plan.ReactionSeconds, defaultReactionSeconds),
		Headwind: p.launch.head * factor, Crosswind: p.launch.cross * factor,
	}
}

func (p *pass) drawCircuit(circuit motion.Circuit, plan *CircuitPlan) {
	if !p.tells() {
		return
	}
	path := ReportPath{ID: "circuit.plan"}
	for _, point := range circuit.Path() {
		path.Points = append(path.Points, PathPoint{
			XMeters: point.X, YMeters: point.Y, ZMeters: valueOr(plan.HeightMeters, 0), AirspeedMetersPerSecond: circuit.Airspeed,
		})
	}
	p.lines = append(p.lines, path)
}
