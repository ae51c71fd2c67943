package assess

import "math"

// aimShift returns how far obstacles move the aim point down the strip, m, and which decides: the clearance lacking over the tangent of the slope.
func (p *pass) aimShift() (shift float64, worst int, least float64) {
	l := &p.landing
	worst, least = -1, math.Inf(1)
	wanted := p.limit(clearanceFigure).value
	for i, c := range l.result.Clearances {
		if c.Height < least {
			worst, least = i, c.Height
		}
	}
	if worst < 0 || least >= wanted {
		return 0, worst, least
	}
	return (wanted - least) / tangent(l.result.Angle), worst, least
}

// landingDistance holds the distance from the screen, what obstacles move the aim point included, against the share of the length.
func (p *pass) landingDistance() answer {
	l := &p.landing
	out := answer{id: "landing.distance", missing: l.missing, limit: p.limit(landingUseFigure)}
	share := out.limit.value
	out.limit.value = share * l.place.length
	if len(l.missing) > 0 {
		return out
	}
	factor := p.limit(landingFactorFigure)
	if factor.path != "" {
		out.from = append(out.from, factor.path)
	}
	r := &l.result
	if out.never = l.broken(); out.never != "" {
		return out
	}
	shift, worst, least := p.aimShift()
	out.value = float64(factor.value*max(r.Total, r.Stop.Distance)) + shift
	out.note = p.landingNote(factor.value, shift, worst, least)
	out.outside = !l.lift.Inside
	p.tell("landing.total_distance", r.Total)
	p.tell("landing.aim_shift", shift)
	return out
}

// broken says why a landing does not come to rest; empty when it does.
func (l *landingSection) broken() string {
	r := &l.result
	switch {
	case !l.flown:
		return sayNumbers("The approach at %.1f m/s against a head wind of %.1f m/s cannot be flown.", l.approach, l.air.Headwind)
	case !r.Descends:
		return sayNumbers("Idle thrust of %.1f N is as much as the drag at %.1f m/s: the model does not come down.", r.Idle, l.approach)
	case !r.Settles:
		return "Idle thrust holds the model off the ground: it does not touch down."
	case !r.Stops:
		return "Idle thrust or the slope of the ground keeps the model rolling: it does not come to rest."
	}
	return ""
}

// landingNote tells the parts of the landing and the worst obstacle.
func (p *pass) landingNote(factor, shift float64, worst int, least float64) string {
	if !p.tells() {
		return ""
	}
	l, r := &p.landing, &p.landing.result
	way := "roll"
	if l.plan.Belly {
		way = "slide"
	}
	note := say("Approach at %.1f m/s down %.1f degrees, %.0f m from the screen to the flare, %.0f m flare and float, %.0f m %s, on %.0f m of %s, head wind %.1f m/s.",
		l.approach, degrees(r.Angle), r.Approach, r.Flare+r.Float, r.Run, way, l.place.length, l.place.name, l.air.Headwind)
	if !r.Levels {
		note += p.inWords(" The flare stalls before it levels: it meets the ground at %.1f m/s.", r.TouchdownSink)
	}
	if factor != 1 {
		note += p.inWords(" The limits ask for %.2f times the distance.", factor)
	}
	if worst >= 0 {
		name := p.in.Field.Obstacles[p.drawing.under[worst]].Name
		note += say(" Over %s it passes with %.1f m", name, least)
		if shift > 0 {
			note += p.inWords(", which moves the aim point %.0f m on", shift)
		}
		note += "."
	}
	return note
}
