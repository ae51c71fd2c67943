package assess

import (
	"pitgate/server/physics/landing"
	"pitgate/server/physics/lift"
	"pitgate/server/physics/motion"
)

// landingSection is the landing as flown.
type landingSection struct {
	missing  []string
	place    landingPlace
	lift     lift.Maximum // with the flaps as set for landing
	gain     float64      // lift coefficient that they add at one incidence
	stall    float64      // m/s
	approach float64      // airspeed, m/s
	model    motion.Aircraft
	air      motion.Conditions
	plan     landing.Plan
	key      []float64 // the numbers that it is computed from
	flown    bool
	result   landing.Landing
}

const (
	// approachSpare is what an approach that is not planned keeps over the least ratio.
	approachSpare = 1.02
	// aimShare and leastAim place the aim point beyond the threshold where the plan does not, over the length and m.
	aimShare, leastAim = 0.1, 10.0
	// overGround is the height a go-around keeps over the ground, m (judgement, no source).
	overGround = 1.0
)

// answerLanding answers for approach, landing distance and go-around.
func (p *pass) answerLanding() {
	p.readLanding()
	p.conclude(p.approachMargin())
	p.conclude(p.landingDistance())
	p.conclude(p.goAround())
	p.drawLanding()
}

func (p *pass) landingPlan() *LandingPlan {
	if plan := p.launchPlan().Landing; plan != nil {
		return plan
	}
	return &LandingPlan{}
}

// readLanding gathers what the landing needs and flies it.
func (p *pass) readLanding() {
	n, mark := p.need(), p.mark()
	n.lack(p.stall.missing...)
	n.lack(p.drag.missing...)
	n.lack(p.engine.missing...)
	n.lack(p.air.windMissing...)
	ready := n.met()
	if ready {
		p.landingLift()
		p.chooseApproach()
	}
	p.landing.place = p.placeLanding()
	n.lack(p.landing.place.missing...)
	p.describeLanding(&n)
	p.landing.missing = n.missing
	if n.met() {
		p.land()
	}
	if ready {
		p.tellApproach()
	}
	if n.met() {
		p.tellLanding(p.since(mark))
	}
}

// landingLift finds the greatest lift with the flaps as set for landing and the stall speed that follows.
func (p *pass) landingLift() {
	l := &p.landing
	settings := p.landingFlaps()
	l.lift = p.wing.clean
	if len(settings) > 0 {
		l.lift = p.maximum(settings)
	}
	for _, s := range settings {
		l.gain += float64(p.whole.lattice.Controls[s.Index].LiftSlope * s.Angle)
	}
	l.stall = stallSpeed(p.mass.takeoff, p.air.state.Density, p.wing.area, l.lift.Coefficient)
}

// chooseApproach takes the speed planned, or one that keeps the least ratio when the wind lulls as much as it gusts.
func (p *pass) chooseApproach() {
	l := &p.landing
	if ratio := p.landingPlan().ApproachRatio; ratio != nil {
		l.approach = *ratio * l.stall
		return
	}
	if p.base() {
		p.drawing.lull = p.air.gustExcess + float64(bandFactor*p.gustDeviation())
	}
	l.approach = float64(approachSpare*p.limit(approachFigure).value*l.stall) + p.drawing.lull
}

// gustDeviation returns one standard deviation of the gust's excess over the mean wind, m/s.
func (p *pass) gustDeviation() float64 {
	day := p.in.Day
	wind := day.WindSpeedMetersPerSecond.Deviation("day.windSpeedMetersPerSecond")
	if day.GustSpeedMetersPerSecond == nil || day.GustSpeedMetersPerSecond.Value == nil {
		return root(wind, spreadGust*p.air.gustExcess)
	}
	return root(wind, day.GustSpeedMetersPerSecond.Deviation("day.gustSpeedMetersPerSecond"))
}

func (p *pass) approachMargin() answer {
	n := p.need()
	n.lack(p.stall.missing...)
	n.lack(p.drag.missing...)
	n.lack(p.engine.missing...)
	n.lack(p.air.windMissing...)
	out := answer{id: "approach.margin", missing: n.missing, limit: p.limit(approachFigure)}
	if n.met() {
		l := &p.landing
		out.value = (l.approach - p.air.gustExcess) / l.stall
		out.note = p.inWords("Approach at %.1f m/s; a lull of %.1f m/s leaves %.1f m/s, the stall with landing flaps is at %.1f m/s.",
			l.approach, p.air.gustExcess, l.approach-p.air.gustExcess, l.stall)
		out.outside = !l.lift.Inside
	}
	return out
}

// describeLanding fills in the model, the air and the plan of the landing.
func (p *pass) describeLanding(n *need) {
	l, plan := &p.landing, p.landingPlan()
	if p.in.Model == nil || p.in.Model.Gear == nil {
		n.lack("model.gear")
		return
	}
	l.plan = landing.Plan{
		ApproachSpeed: l.approach, Angle: radians(orElse(plan.ApproachAngleDegrees, 0)), FlareLoad: orElse(plan.FlareLoad, 0),
		AimPoint:     orElse(plan.AimPointMeters, max(leastAim, float64(aimShare*l.place.length))),
		ScreenHeight: orElse(p.launchPlan().ScreenHeightMeters, motion.DefaultScreenHeight), Slope: l.place.slope,
		Idle: func(speed float64) float64 { return p.thrust(speed, 0) },
	}
	p.describeSurface(n)
	if len(l.place.missing) == 0 {
		l.plan.Obstacles = p.underApproach(n)
	}
	if !n.met() {
		return
	}
	l.model = p.polar()
	l.model.CLMax, l.model.CD0 = l.lift.Coefficient, p.drag.launch+p.flapDrag()
	l.model.CLGround = p.rollingLift()
	l.air = p.conditions(l.place.heading)
}

// describeSurface says what the model rolls or slides on.
func (p *pass) describeSurface(n *need) {
	l, gear := &p.landing, p.in.Model.Gear
	if gear.Kind == GearKindBelly || gear.Kind == GearKindSkid || len(gear.Wheels) == 0 {
		l.plan.Belly = true
		l.plan.Friction = max(0, n.quantity("model.gear.slidingFrictionRatio", gear.SlidingFrictionRatio))
		return
	}
	if len(l.place.missing) > 0 {
		return
	}
	l.plan.Friction = p.friction("landing.rolling_friction", l.place.surface, l.place.surfacePath, n)
	if braking := p.braking(); braking > l.plan.Friction {
		l.plan.BrakeFriction, l.plan.BrakeDelay = braking, p.reaction()
	}
}

// grip is what the state of the ground leaves of the braking coefficient (judgement, no source).
var grip = pairings[SurfaceState, float64]{
	{SurfaceStateWet, 0.6}, {SurfaceStateSoft, 0.6}, {SurfaceStateFrozen, 0.3}, {SurfaceStateSnow, 0.4},
}

// braking returns the braking coefficient on the day's ground; zero without brakes.
func (p *pass) braking() float64 {
	if p.in.Model == nil || p.in.Model.Gear == nil {
		return 0
	}
	braking := max(0, p.optional("model.gear.brakingRatio", p.in.Model.Gear.BrakingRatio, 0))
	if p.in.Day != nil {
		if share, ok := grip.find(p.in.Day.SurfaceState); ok {
			p.note("day.surfaceState")
			return braking * share
		}
	}
	return braking
}

// reaction returns the pilot's reaction time, s.
func (p *pass) reaction() float64 {
	p.note("launchPlan.circuit.reactionSeconds")
	return orElse(p.circuitPlan().ReactionSeconds, defaultReactionSeconds)
}

// rollingLift returns the lift coefficient on the ground with the flaps as set for landing.
func (p *pass) rollingLift() float64 {
	l := &p.landing
	slope, zero, angle := p.wing.slope, p.wing.zero, 0.0
	if !l.plan.Belly {
		angle = p.groundAttitude()
		if ground := p.whole.ground; ground != nil {
			slope, zero = slope*(ground.LiftSlope/p.whole.lattice.LiftSlope), ground.ZeroLiftIncidence
		}
	}
	coefficient := float64(slope*(angle-zero)) + l.gain
	return min(max(coefficient, -0.5), l.lift.Coefficient)
}

// land flies the landing, or takes that of the base pass where nothing it is computed from has moved.
func (p *pass) land() {
	l := &p.landing
	l.key = p.landingKey()
	if !p.base() && equal(l.key, p.drawing.landing.key) {
		l.flown, l.result = p.drawing.landing.flown, p.drawing.landing.result
		return
	}
	plan := l.plan
	plan.Room = &p.memory().landing
	result, err := landing.Fly(l.model, l.air, plan)
	l.flown, l.result = err == nil, result
	if p.base() {
		p.drawing.landing = *l
	}
}

// landingKey lists the numbers that decide the landing.
func (p *pass) landingKey() []float64 {
	l := &p.landing
	key := append(aircraftKey(&l.model), l.air.Density, l.air.Headwind, l.plan.ApproachSpeed, l.plan.Friction, l.plan.BrakeFriction, l.plan.Slope,
		p.thrust(0, 0), p.thrust(l.approach, 0))
	for _, o := range l.plan.Obstacles {
		key = append(key, o.Near, o.Far, o.Top)
	}
	return key
}

func aircraftKey(a *motion.Aircraft) []float64 {
	return []float64{a.Mass, a.Area, a.Span, a.CD0, a.InducedFactor, a.CLMax, a.CLGround, a.WingHeight}
}

func equal(a, b []float64) bool {
	for i := range a {
		if i >= len(b) || a[i] != b[i] {
			return false
		}
	}
	return len(a) == len(b)
}
