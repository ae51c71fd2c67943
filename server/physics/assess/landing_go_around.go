package assess

import (
	"math"

	"pitgate/server/physics/landing"
)

// goAround finds the least height from which the landing can be broken off.
func (p *pass) goAround() answer {
	n, l := p.need(), &p.landing
	n.lack(l.missing...)
	n.lack(p.engine.spoolMissing...)
	out := answer{id: "landing.go_around", missing: n.missing}
	if !n.met() {
		return out
	}
	return p.remember(out.id, p.bracket(goAroundMovers), p.leastGoAround)
}

// leastGoAround looks for the height in the base pass; a moved pass takes one step from there, since a metre more of height is a metre more
// of clearance.
func (p *pass) leastGoAround() answer {
	l := &p.landing
	out := answer{id: "landing.go_around"}
	if out.never = l.broken(); out.never != "" {
		return out
	}
	how := p.brokenOff()
	if !p.base() {
		from := p.drawing.goAround
		climb, err := landing.BreakOff(l.model, l.air, l.plan, how, from)
		out.value = from - climb.Clearance
		if err != nil || !climb.Climbs {
			out.never = neverClimbsAway
		}
		return out
	}
	climb, found := p.lowestClimb(how)
	if !found {
		out.never = neverClimbsAway
		return out
	}
	out.value = climb.Start.Height
	p.drawing.goAround = out.value
	side := "before"
	if climb.Start.Distance > 0 {
		side = "beyond"
	}
	out.note = say("Decided at %.1f m, %.0f m %s the threshold, the throttle opens after %.1f s and the model sinks to %.1f m; full thrust takes %.1f s.",
		climb.Start.Height, math.Abs(climb.Start.Distance), side, how.Reaction, climb.Lowest.Height, p.engine.spool)
	p.tell("landing.go_around_height", out.value)
	return out
}

const neverClimbsAway = "From no height of the approach does the model climb away over ground and obstacles."

// brokenOff says how a go-around is flown: obstacles as high as the clearance over them asks for.
func (p *pass) brokenOff() landing.GoAround {
	l, n := &p.landing, p.need()
	how := landing.GoAround{Reaction: p.reaction(), Margin: overGround, Tolerance: goAroundTolerance, Room: &p.memory().brief}
	raised := max(0, p.limit(clearanceFigure).value-overGround)
	for _, o := range p.landingObstacles(l.place.heading, 1, &n) {
		o.Top += raised
		how.Obstacles = append(how.Obstacles, o)
	}
	for _, o := range l.plan.Obstacles {
		o.Top += raised
		how.Obstacles = append(how.Obstacles, o)
	}
	return how
}

// goAroundTolerance keeps the climb within half a centimetre; its height is looked for to a centimetre.
const goAroundTolerance = 1e-4

// lowestClimb looks from the screen height down for a height that leaves no more clearance, or lacks no more, than a tenth of a metre, by the secant, and returns
// the climb from there, moved down by what there is to give away. So little height changes what a metre more of it is worth by so little that this is within a
// centimetre. Where the secant does not settle, all heights are looked through.
func (p *pass) lowestClimb(how landing.GoAround) (landing.Climbout, bool) {
	const steps, near = 8, 0.1
	l := &p.landing
	height, slope := l.plan.ScreenHeight, 1.0
	before, had := 0.0, 0.0
	for i := range steps {
		climb, err := landing.BreakOff(l.model, l.air, l.plan, how, height)
		if err != nil || !climb.Climbs {
			break
		}
		if i > 0 && height != before {
			slope = min(max((climb.Clearance-had)/(height-before), 0.5), 2)
		}
		least := max(0, height-climb.Clearance/slope)
		if math.Abs(climb.Clearance) <= near {
			return lowered(climb, height-least), true
		}
		before, had, height = height, climb.Clearance, least
	}
	climb, found, err := landing.LeastGoAround(l.model, l.air, l.plan, how)
	return climb, found && err == nil
}

// lowered returns a climb that is decided lower by a height on the same slope, m.
func lowered(climb landing.Climbout, by float64) landing.Climbout {
	if start := &climb.Start; start.Sink > 0 {
		start.Distance += float64(by / start.Sink * start.GroundSpeed)
	}
	climb.Start.Height -= by
	climb.Lowest.Height -= by
	return climb
}
