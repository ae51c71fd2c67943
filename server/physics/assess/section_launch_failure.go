package assess

import (
	"math"

	"pitgate/server/physics/field"
	"pitgate/server/physics/motion"
)

const (
	// failureCount is how many times along the launch lose the thrust.
	failureCount = 9
	// failureTolerance of each step keeps the place of contact within a centimetre, relative and in m and m/s.
	failureTolerance = 1e-4
	// bellyFriction is the friction of a model that slides where it is not given (judgement, no source).
	bellyFriction = 0.45
	// unlimitedGround stands for ground without end where only the stopping place is asked for, m.
	unlimitedGround = 5000.0
)

// answerLaunchFailure answers for a launch that is given up and for one whose thrust is lost.
func (p *pass) answerLaunchFailure() {
	if !p.launch.known {
		return
	}
	if p.launch.method == motion.Wheels {
		p.conclude(p.abort())
	}
	p.conclude(p.engineFailure())
	p.answerDolly()
}

// abort holds the place where a launch given up at lift-off comes to rest against the end of the strip.
func (p *pass) abort() answer {
	out := answer{id: "launch.abort", missing: p.launch.missing, limit: limit{value: 0, set: true, rule: coreDefault}}
	if len(p.launch.missing) > 0 {
		return out
	}
	stop := motion.Stop{
		Available: unlimitedGround, Reaction: p.reaction(), Brakes: max(0, p.braking()-p.launch.friction),
	}
	found := p.remember("launch.abort", append(p.launchKey(), stop.Brakes), func() answer { return p.stopAt(stop) })
	found.limit = out.limit
	return found
}

// stopAt asks for the stopping place from lift-off; the base pass also for the last place from which the strip is long enough.
func (p *pass) stopAt(stop motion.Stop) answer {
	out := answer{id: "launch.abort"}
	if p.launch.result.NeverLiftsOff || !p.launch.flown {
		out.never = p.neverWords()
		return out
	}
	launch, aircraft, air := p.launch.how, p.launch.model, p.launch.air
	rest, err := launch.AbortPointOf(&p.launch.result, aircraft, air, stop)
	if err != nil || !finite(rest.AccelerateStop) {
		out.never = "Given up at lift-off, the model does not come to rest."
		return out
	}
	out.value = p.launch.length - rest.AccelerateStop
	if !p.tells() {
		return out
	}
	out.note = p.inWords("Given up at lift-off, %.1f m/s after %.0f m, it rests %.0f m from the start of the strip's %.0f m.",
		rest.Airspeed, rest.Distance, rest.AccelerateStop, p.launch.length)
	p.tell("launch.accelerate_stop", rest.AccelerateStop)
	if out.value < 0 {
		p.lastAbort(stop, &out)
	}
	return out
}

// lastAbort tells from where the launch can still be given up on a strip that is too short.
func (p *pass) lastAbort(stop motion.Stop, out *answer) {
	stop.Available = p.launch.length
	last, err := p.launch.how.AbortPointOf(&p.launch.result, p.launch.model, p.launch.air, stop)
	if err != nil || !last.Possible {
		return
	}
	p.tell("launch.abort_distance", last.Distance)
	p.tell("launch.abort_speed", last.Airspeed)
	out.note += p.inWords(" It can be given up as late as %.0f m along, at %.1f m/s.", last.Distance, last.Airspeed)
}

// launchKey lists the numbers that decide the launch.
func (p *pass) launchKey() []float64 {
	l := &p.launch
	speed := l.result.Airspeed
	return append(aircraftKey(&l.model), l.air.Density, l.air.Headwind, l.air.Crosswind, l.how.Friction, l.how.Slope, l.how.LiftoffSpeed, l.how.RotationSpeed,
		l.how.TailUpSpeed, l.how.CLTailDown,
		l.how.ThrustTime, l.length, p.engine.spool, p.thrust(0, 0), p.thrust(0, p.engine.spool/2), p.thrust(speed, l.how.ThrustTime),
		p.thrust(speed, l.how.ThrustTime+p.engine.spool))
}

// engineFailure loses the thrust along the launch and holds the ways on against people and keep-outs.
func (p *pass) engineFailure() answer {
	n := p.need()
	n.lack(p.launch.missing...)
	guarded := p.guarded()
	out := answer{id: "launch.engine_failure", missing: n.missing, limit: p.limit(comeDownFigure)}
	if !n.met() {
		return out
	}
	found := p.remember("launch.engine_failure", p.bracket(failureMovers), func() answer { return p.worstFailure(guarded) })
	found.limit = out.limit
	return found
}

// worstFailure sweeps the launch as far as the screen; beyond it answerEngineOut looks on.
func (p *pass) worstFailure(guarded []site) answer {
	out := answer{id: "launch.engine_failure"}
	if !p.launch.flown {
		out.value = math.NaN()
		return out
	}
	trouble := motion.Trouble{Reaction: p.reactionMoved(), Brakes: max(0, p.braking()-p.launch.friction), Count: failureCount, EndsOnly: !p.tells()}
	launch := p.launch.how
	launch.Tolerance, launch.Room = failureTolerance, &p.memory().brief
	sweep, err := launch.FailureSweepOf(&p.launch.result, p.launch.model, p.launch.air, trouble)
	if err != nil || len(sweep) == 0 {
		out.value = math.NaN()
		return out
	}
	least, worst, whose := math.Inf(1), 0, ""
	for i := range sweep {
		way := p.wayOn(&sweep[i])
		for k := range guarded {
			if d := guarded[k].clear(way); d < least {
				least, worst, whose = d, i, guarded[k].name
			}
		}
	}
	p.tellFailures(sweep, worst)
	if len(guarded) == 0 {
		out.none, out.note = true, "The field describes neither people nor keep-outs."
		return out
	}
	out.value = least
	out.note = p.failureNote(sweep, worst, whose, least)
	return out
}

// wayOn returns the way of a model without thrust from its contact with the ground to rest, on the field's plane.
func (p *pass) wayOn(f *motion.Failure) field.Segment {
	from := p.along(f.EndDistance, f.EndDrift)
	if f.Stays || f.Aloft {
		return field.Segment{A: from, B: from}
	}
	friction := p.launch.friction
	if p.launch.method != motion.Wheels {
		friction = valueOr(p.slidingFriction(), bellyFriction)
	}
	slide := float64(f.EndSpeed*f.EndSpeed) / float64(2*motion.Gravity*max(friction, 0.02))
	return field.Segment{A: from, B: p.along(f.EndDistance+slide, f.EndDrift)}
}

func (p *pass) slidingFriction() *Quantity {
	if p.in.Model == nil || p.in.Model.Gear == nil {
		return nil
	}
	p.note("model.gear.slidingFrictionRatio")
	return p.in.Model.Gear.SlidingFrictionRatio
}

func (p *pass) tellFailures(sweep []motion.Failure, worst int) {
	energy, sink := 0.0, 0.0
	for i := range sweep {
		energy, sink = max(energy, sweep[i].Energy), max(sink, sweep[i].Sink)
	}
	p.tell("launch.failure_time", sweep[worst].Time)
	p.tell("launch.failure_energy", energy)
	p.tell("launch.failure_sink", sink)
}

func (p *pass) failureNote(sweep []motion.Failure, worst int, whose string, least float64) string {
	if !p.tells() {
		return ""
	}
	f := &sweep[worst]
	hardest, _ := motion.WorstFailure(sweep, func(f motion.Failure) float64 { return f.Energy })
	note := say("Thrust lost %.1f s after the start, %.1f m up: it comes down %.0f m along and passes %s at %.0f m.",
		f.Time, f.Height, f.EndDistance, whose, max(0, least))
	if f.Stays {
		note = say("Thrust lost %.1f s after the start: it stops %.0f m along, %.0f m from %s.", f.Time, f.EndDistance, max(0, least), whose)
	}
	if hardest.Energy > 0 {
		note += p.inWords(" The hardest contact has %.0f J, sinking at %.1f m/s, after a loss at %.1f s.", hardest.Energy, hardest.Descent, hardest.Time)
	}
	return note
}

// guarded are the places of the field on which nothing may come down: where people are, and keep-outs of the ground.
func (p *pass) guarded() []site {
	if p.in.Field == nil {
		return nil
	}
	return append(p.people(), p.keepOuts(KeepOutReasonBuildings, KeepOutReasonRoad, KeepOutReasonLivestock, KeepOutReasonNeighbour)...)
}

// clear returns the distance of a way to the place, m; where they meet, the length of the way beyond, negative.
func (o *site) clear(way field.Segment) float64 {
	if d := o.distance(field.Line{way.A, way.B}); d > 0 {
		return d
	}
	if len(o.area) > 0 {
		return -beyond(way, o.area.Contains)
	}
	return -beyond(way, func(p field.Point) bool { d, _ := o.line.Distance(p); return d < lineHalfWidth })
}

// lineHalfWidth is how near to a line of people counts as on it, m.
const lineHalfWidth = 0.5

// beyond returns how much of a way is left from where it first meets something, m, and a centimetre at least.
func beyond(way field.Segment, meets func(field.Point) bool) float64 {
	const steps = 64
	for i := range steps + 1 {
		if share := float64(float64(i) / steps); meets(way.At(share)) {
			return max(0.01, float64((1-share)*way.Length()))
		}
	}
	return 0.01
}
