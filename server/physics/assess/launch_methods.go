package assess

import (
	"pitgate/server/physics/elementary"
	"pitgate/server/physics/motion"
)

// describe fills in what the method of the launch needs.
func (p *pass) describe(launch *motion.Launch, aircraft *motion.Aircraft, plan *LaunchPlan, n *need) {
	switch launch.Method {
	case motion.Wheels:
		p.describeWheels(launch, aircraft, plan, n)
	case motion.Ramp:
		p.describeRamp(launch, aircraft, plan.Ramp, n)
	case motion.Bungee:
		p.describeBungee(launch, aircraft, plan.Bungee, n)
	case motion.Hand:
		launch.HandSpeed = n.quantity("launchPlan.handSpeedMetersPerSecond", plan.HandSpeedMetersPerSecond)
		launch.HandHeight = n.quantity("launchPlan.handHeightMeters", plan.HandHeightMeters)
	case motion.Catapult:
		p.describeCatapult(launch, plan, n)
	}
	if launch.Method != motion.Wheels {
		launch.Ground = p.groundProfile()
	}
}

func (p *pass) describeWheels(launch *motion.Launch, aircraft *motion.Aircraft, plan *LaunchPlan, n *need) {
	if p.in.Model == nil || p.in.Model.Gear == nil {
		n.lack("model.gear")
		return
	}
	i, found := 0, false
	if p.in.Field != nil {
		i, found = p.strip(plan.Strip)
	}
	if !found {
		return
	}
	strip := &p.in.Field.Strips[i]
	launch.Friction = p.friction("launch.rolling_friction", strip.Surface, at("field.strips", i)+".surface", n)
	launch.Slope = p.stripSlope(strip, yes(plan.StripReversed))
	launch.Ground = p.stripProfile(strip, yes(plan.StripReversed))
	launch.RailProfile = rolledAlong(launch.Ground)
	p.launch.standing = p.groundAttitude()
	aircraft.CLGround = p.groundLift(p.launch.standing)
	launch.LiftoffSpeed = p.rotationSpeed(aircraft.CLGround, launch.ClimbLift)
	p.launch.friction = launch.Friction
	launch.RotationSpeed, _ = p.controlSpeed(launch.LiftoffSpeed)
	p.raiseTail(launch, aircraft)
}

// stripSlope returns the slope of a strip from one threshold to the other, rad, uphill positive.
func (p *pass) stripSlope(strip *Strip, reversed bool) float64 {
	if strip.Start == nil || strip.End == nil || !(p.launch.length > 0) {
		return 0
	}
	rise := orElse(strip.End.ZMeters, 0) - orElse(strip.Start.ZMeters, 0)
	if reversed {
		rise = -rise
	}
	return elementary.Atan2(rise, p.launch.length)
}

// groundAttitude returns the angle of the x axis to the ground, rad; level within a degree where it is not given.
func (p *pass) groundAttitude() float64 {
	const name = "model.gear.groundAttitudeDegrees"
	if angle, ok := p.read(name, p.in.Model.Gear.GroundAttitudeDegrees); ok {
		return radians(angle)
	}
	return radians(p.assumed(name, 0, 1))
}

// rotationSpeed returns the airspeed at which the model is rotated, m/s: 5 % above the least lift-off ratio, later when the tail
// strikes before the wing can carry the weight, earlier when the standing attitude already carries it.
func (p *pass) rotationSpeed(standing, climbLift float64) float64 {
	limit := p.limit(liftoffFigure)
	planned := rotationRatio * limit.value * p.stall.takeoff
	rotated := climbLift * p.wing.takeoff.Coefficient
	if strike, ok := p.read("model.gear.tailStrikeDegrees", p.in.Model.Gear.TailStrikeDegrees); ok {
		rotated = min(rotated, p.groundLift(radians(strike)))
	}
	planned = max(planned, p.carrying(rotated))
	if floating := p.carrying(standing); floating > 0 {
		return min(planned, floating)
	}
	return planned
}

// carrying returns the airspeed at which a lift coefficient carries the weight, m/s; zero when it never does.
func (p *pass) carrying(coefficient float64) float64 {
	return stallSpeed(p.mass.takeoff, p.air.state.Density, p.wing.area, coefficient)
}

func (p *pass) describeRamp(launch *motion.Launch, aircraft *motion.Aircraft, ramp *Ramp, n *need) {
	if ramp == nil {
		n.lack("launchPlan.ramp")
		return
	}
	launch.Length = n.quantity("launchPlan.ramp.lengthMeters", ramp.LengthMeters)
	launch.Slope = radians(n.quantity("launchPlan.ramp.angleDegrees", ramp.AngleDegrees))
	launch.EndHeight = n.quantity("launchPlan.ramp.endHeightMeters", ramp.EndHeightMeters)
	launch.DollyMass = p.optional("launchPlan.ramp.dollyMassKg", ramp.DollyMassKg, 0)
	if !yes(p.launchPlan().FullThrustBeforeRelease) {
		launch.ReleaseForce = max(0, p.optional("launchPlan.ramp.releaseForceNewtons", ramp.ReleaseForceNewtons, 0))
	}
	launch.Friction = max(0, n.quantity("launchPlan.ramp.frictionRatio", ramp.FrictionRatio))
	for _, point := range ramp.RailProfile {
		launch.RailProfile = append(launch.RailProfile, profilePoint(point))
	}
	p.launch.held = radians(n.quantity("launchPlan.ramp.cradleDegrees", ramp.CradleDegrees))
	aircraft.CLGround = p.groundLift(p.launch.held)
}

func (p *pass) describeBungee(launch *motion.Launch, aircraft *motion.Aircraft, bungee *Bungee, n *need) {
	if bungee == nil {
		n.lack("launchPlan.bungee")
		return
	}
	launch.Stretch = n.quantity("launchPlan.bungee.stretchMeters", bungee.StretchMeters)
	launch.HookForce = max(0, p.optional("launchPlan.bungee.hookReleaseNewtons", bungee.HookReleaseNewtons, 0))
	p.describeCord(launch, bungee, n)
	launch.Efficiency = min(1, p.optional("launchPlan.bungee.efficiencyRatio", bungee.EfficiencyRatio, 1))
	launch.CordMass = p.optional("launchPlan.bungee.cordMassKg", bungee.CordMassKg, 0)
	launch.Friction = max(0, n.quantity("launchPlan.bungee.frictionRatio", bungee.FrictionRatio))
	launch.Slope = radians(p.optional("launchPlan.bungee.angleDegrees", bungee.AngleDegrees, 0))
	aircraft.CLGround = p.groundLift(0)
}

// describeCord takes the force of the cord from its pull test, or from its stiffness. A pass that moves the stretch beyond the test stays at its end.
func (p *pass) describeCord(launch *motion.Launch, bungee *Bungee, n *need) {
	if len(bungee.PullTest) == 0 {
		launch.Stiffness = n.quantity("launchPlan.bungee.stiffnessNewtonsPerMeter", bungee.StiffnessNewtonsPerMeter)
		return
	}
	p.note("launchPlan.bungee.pullTest")
	for i := range bungee.PullTest {
		point, name := &bungee.PullTest[i], at("launchPlan.bungee.pullTest", i)
		launch.PullTest = append(launch.PullTest, motion.ForcePoint{
			Travel: n.number(name+".stretchMeters", point.StretchMeters), Force: n.number(name+".forceNewtons", point.ForceNewtons),
		})
	}
	if p.moved != "" {
		launch.Stretch = min(launch.Stretch, launch.PullTest[len(launch.PullTest)-1].Travel)
	}
}

func (p *pass) describeCatapult(launch *motion.Launch, plan *LaunchPlan, n *need) {
	if len(plan.Catapult) < 2 {
		n.lack("launchPlan.catapult")
		return
	}
	for i, point := range plan.Catapult {
		name := at("launchPlan.catapult", i)
		launch.Forces = append(launch.Forces, motion.ForcePoint{
			Travel: n.number(name+".travelMeters", point.TravelMeters), Force: n.number(name+".forceNewtons", point.ForceNewtons),
		})
	}
}

// groundProfile returns the ground along the launch from the spot.
func (p *pass) groundProfile() []motion.ProfilePoint {
	if p.in.Field == nil {
		return nil
	}
	for i := range p.in.Field.LaunchSpots {
		spot := &p.in.Field.LaunchSpots[i]
		if spot.Name == p.launchPlan().LaunchSpot || len(p.in.Field.LaunchSpots) == 1 {
			var points []motion.ProfilePoint
			for _, point := range spot.GroundProfile {
				points = append(points, profilePoint(point))
			}
			return points
		}
	}
	return nil
}

func profilePoint(point ProfilePoint) motion.ProfilePoint {
	return motion.ProfilePoint{Distance: orElse(point.DistanceMeters, 0), Height: orElse(point.HeightMeters, 0)}
}
