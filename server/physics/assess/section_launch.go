package assess

import (
	"math"

	"pitgate/server/physics/field"
	"pitgate/server/physics/motion"
)

const (
	// rotationRatio is the planned rotation over the least lift-off ratio.
	rotationRatio = 1.05
	// launchTolerance of the integrator: within a hundredth of a millimetre for places of a launch, a few millimetres for what is looked for along it.
	launchTolerance = 1e-6
	// followed is how far the path is computed for obstacles, m; beyond it the climb is drawn on.
	followed = 600.0
	// launchSamples is the number of points of the drawn path.
	launchSamples = 48
)

// launchSection is the launch as flown.
type launchSection struct {
	missing      []string
	placeMissing []string // what its place and heading lack
	placeRead    []string // inputs behind them
	known        bool     // the plan names a method
	method       motion.Method
	heading      float64 // rad
	origin       field.Point
	ground       float64 // height of the ground at the origin above the datum, m
	length       float64 // of the strip, m
	head         float64 // head wind at the measured height, m/s
	cross        float64 // from the right, m/s

	thrustTime float64 // on the thrust curve when the model is let go, s
	setting    float64 // share of full thrust
	standing   float64 // incidence of the x axis with all wheels down, rad
	held       float64 // incidence of the x axis in the ramp's cradle, rad
	friction   float64 // rolling friction

	how    motion.Launch
	model  motion.Aircraft
	air    motion.Conditions
	flown  bool
	result motion.Result

	tail     motion.TailGap // room between tail and rails after a ramp
	tailSeen bool           // it was computed
}

var launchMethods = pairings[LaunchMethod, motion.Method]{
	{LaunchMethodWheels, motion.Wheels}, {LaunchMethodRamp, motion.Ramp}, {LaunchMethodBungee, motion.Bungee},
	{LaunchMethodHand, motion.Hand}, {LaunchMethodCatapult, motion.Catapult},
}

// launchWords name the methods in a report.
var launchWords = pairings[motion.Method, string]{
	{motion.Wheels, "on wheels"}, {motion.Ramp, "from a ramp"}, {motion.Bungee, "by bungee"}, {motion.Hand, "by hand"}, {motion.Catapult, "by catapult"},
}

// launchPlan returns the plan, empty when there is none.
func (p *pass) launchPlan() *LaunchPlan {
	if p.in.LaunchPlan == nil {
		return &LaunchPlan{}
	}
	return p.in.LaunchPlan
}

// readLaunch gathers what the launch needs and flies it.
func (p *pass) readLaunch() {
	n, mark := p.need(), p.mark()
	plan := p.launchPlan()
	method, known := launchMethods.find(plan.Method)
	p.launch.known, p.launch.method = known, method
	place := p.need()
	if !known {
		place.lack("launchPlan.method")
	}
	p.placeLaunch(plan, &place)
	p.launch.placeMissing, p.launch.placeRead = place.missing, p.since(mark)
	n.lack(place.missing...)
	n.lack(p.stall.missing...)
	n.lack(p.drag.missing...)
	n.lack(p.engine.missing...)
	n.lack(p.air.windMissing...)
	launch := motion.Launch{
		Method: method, ClimbLift: orElse(plan.ClimbLiftRatio, motion.DefaultClimbLift),
		ScreenHeight: orElse(plan.ScreenHeightMeters, motion.DefaultScreenHeight), Tolerance: launchTolerance, Samples: launchSamples,
	}
	aircraft := p.polar()
	p.describe(&launch, &aircraft, plan, &n)
	launch.ThrustTime = p.thrustTime(plan, &n)
	p.launch.thrustTime, p.launch.friction, p.launch.setting = launch.ThrustTime, launch.Friction, orElse(plan.ThrustSettingRatio, 1)
	p.launch.missing = n.missing
	if n.met() {
		p.fly(launch, aircraft)
		p.tellLaunch(p.since(mark))
	}
}

// placeLaunch finds where the launch starts and its heading.
func (p *pass) placeLaunch(plan *LaunchPlan, n *need) {
	if p.in.Field == nil {
		n.lack("field")
		return
	}
	if p.launch.method == motion.Wheels {
		p.placeOnStrip(plan, n)
	} else if p.launch.known {
		p.placeOnSpot(plan, n)
	}
	if plan.HeadingDegrees != nil {
		p.note("launchPlan.headingDegrees")
		p.launch.heading = radians(*plan.HeadingDegrees)
	}
	p.launch.head, p.launch.cross = p.windAlong(p.launch.heading)
}

func (p *pass) placeOnStrip(plan *LaunchPlan, n *need) {
	i, found := p.strip(plan.Strip)
	if !found {
		n.lack("launchPlan.strip")
		return
	}
	strip, name := &p.in.Field.Strips[i], at("field.strips", i)
	if strip.Start == nil || strip.End == nil {
		n.lack(name + ".start")
		return
	}
	from, to := strip.Start, strip.End
	if yes(plan.StripReversed) {
		from, to = to, from
	}
	p.launch.origin, p.launch.ground = flat(from), orElse(from.ZMeters, 0)
	p.note(name)
	p.launch.length = flat(from).Distance(flat(to))
	p.launch.heading = flat(from).Heading(flat(to))
}

// strip returns the index of the strip named, or of the only one.
func (p *pass) strip(name string) (int, bool) {
	strips := p.in.Field.Strips
	for i := range strips {
		if strips[i].Name == name {
			return i, true
		}
	}
	return 0, name == "" && len(strips) == 1
}

func (p *pass) placeOnSpot(plan *LaunchPlan, n *need) {
	spots := p.in.Field.LaunchSpots
	for i := range spots {
		if spots[i].Name != plan.LaunchSpot && (plan.LaunchSpot != "" || len(spots) != 1) {
			continue
		}
		spot, name := &spots[i], at("field.launchSpots", i)
		if spot.Position == nil {
			n.lack(name + ".position")
			return
		}
		p.note(name)
		p.launch.origin, p.launch.ground = flat(spot.Position), orElse(spot.Position.ZMeters, 0)
		if plan.HeadingDegrees == nil {
			p.launch.heading = radians(n.number(name+".headingDegrees", spot.HeadingDegrees))
		}
		return
	}
	n.lack("launchPlan.launchSpot")
}

func flat(point *Point) field.Point {
	return field.Point{X: orElse(point.XMeters, 0), Y: orElse(point.YMeters, 0)}
}

// polar returns the model as the equations of motion see it, with take-off flaps and wheels down.
func (p *pass) polar() motion.Aircraft {
	return motion.Aircraft{
		Mass: p.mass.takeoff, Area: p.wing.area, Span: p.wing.span, CD0: p.drag.launch, InducedFactor: p.drag.induced,
		CLMax: p.wing.takeoff.Coefficient, WingHeight: p.wingHeight(),
		Thrust: func(speed, time float64) float64 { return p.thrust(speed, time) },
	}
}

// conditions returns the air along a heading (rad).
func (p *pass) conditions(heading float64) motion.Conditions {
	head, cross := p.windAlong(heading)
	return motion.Conditions{Density: p.air.state.Density, Headwind: head, Crosswind: cross, Profile: p.air.profile}
}

// wingHeight returns the height of the wing over the ground when the model stands on its wheels, m.
func (p *pass) wingHeight() float64 {
	lowest := p.whole.wing.HeightZ - 0.1
	if p.in.Model != nil && p.in.Model.Gear != nil {
		for _, wheel := range p.in.Model.Gear.Wheels {
			lowest = min(lowest, orElse(wheel.ZMeters, lowest)-float64(orElse(wheel.DiameterMeters, 0)/2))
		}
	}
	return p.whole.wing.HeightZ - lowest
}

// thrustTime returns the time on the thrust curve when the model is let go, or from when the release force is waited for, s.
func (p *pass) thrustTime(plan *LaunchPlan, n *need) float64 {
	if yes(plan.FullThrustBeforeRelease) {
		return p.engine.spool
	}
	n.lack(p.engine.spoolMissing...)
	return 0
}

// groundLift returns the lift coefficient at an angle of the model's x axis to the stream (rad), flaps set, within what the wing can give.
func (p *pass) groundLift(angle float64) float64 {
	slope, zero := p.wing.slope, p.wing.zero
	if ground := p.whole.ground; ground != nil && p.launch.method == motion.Wheels {
		slope, zero = slope*(ground.LiftSlope/p.whole.lattice.LiftSlope), ground.ZeroLiftIncidence
	}
	coefficient := float64(slope*(angle-zero)) + p.wing.gain
	return min(max(coefficient, -0.5), p.wing.takeoff.Coefficient)
}

// fly runs the launch as far as the farthest obstacle.
func (p *pass) fly(launch motion.Launch, aircraft motion.Aircraft) {
	launch.Distance = min(followed, p.farthestObstacle())
	if setting := p.launch.setting; setting < 1 {
		aircraft.Thrust = func(speed, time float64) float64 { return setting * p.thrust(speed, time) }
	}
	air := p.conditions(p.launch.heading)
	p.launch.how, p.launch.model, p.launch.air = launch, aircraft, air
	launch.Room = &p.memory().launch
	result, err := launch.Run(aircraft, air)
	p.launch.flown = err == nil
	p.launch.result = result
	p.launch.thrustTime += result.HoldTime
	p.followTail()
}

func (p *pass) tellLaunch(read []string) {
	if !p.launch.flown || !p.tells() {
		return
	}
	r := &p.launch.result
	p.tell("launch.heading", math.Mod(degrees(p.launch.heading)+360, 360), p.launch.placeRead...)
	p.tell("launch.headwind", p.launch.head)
	p.tell("launch.crosswind", p.launch.cross)
	p.tellText("launch.conditions", launchWords.of(p.launch.method), append(read, "launchPlan.method")...)
	p.tell("launch.peak_acceleration", r.PeakAcceleration)
	if p.launch.how.ReleaseForce > 0 && !r.NeverReleased {
		p.tell("launch.hold_time", r.HoldTime, "launchPlan.ramp.releaseForceNewtons")
	}
	if r.NeverLiftsOff {
		return
	}
	p.tell("launch.end_speed", r.Airspeed)
	p.tell("launch.time_to_liftoff", r.Time)
	p.tell("launch.ground_run", r.Run)
	if p.launch.method == motion.Wheels {
		p.tell("liftoff.speed", r.Airspeed)
	}
	if r.ReachesScreen {
		p.tell("launch.screen_distance", r.ScreenDistance)
		p.tell("launch.screen_speed", r.ScreenSpeed)
		p.tell("launch.screen_time", r.ScreenTime)
	}
	if r.TailUp.Reached {
		p.tell("launch.tail_up_distance", r.TailUp.Distance)
	}
	p.tell("launch.sink", r.Sink)
	p.tell("launch.lowest_height", r.LowestHeight)
}
