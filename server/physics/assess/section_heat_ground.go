package assess

import (
	"slices"

	"pitgate/server/physics/air"
	"pitgate/server/physics/elementary"
	"pitgate/server/physics/heat"
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
