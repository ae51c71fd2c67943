package assess

import "pitgate/server/physics/loads"

const (
	gearGroup     = "Gear"
	launcherGroup = "Launcher"
)

var benchGearRows = []benchRow{
	{id: "bench.gear.pull", group: gearGroup, title: "Pull test", input: "model.gear.rollingResistanceRatio", unit: "1", applies: onWheels,
		how: "Engine stopped, on the surface of the day: pull level by a spring scale until it keeps rolling slowly; force over weight.",
		why: "Grass decides the run, and a table of surfaces only guesses it.", findings: []string{"launch.distance", "landing.distance", "launch.abort"}, wanted: wantedPull},
	{id: "bench.gear.roll", group: gearGroup, title: "Rolling test", input: "model.gear.rollingTests", applies: onWheels,
		how: "Push it straight at a walking pace and let go: it rolls straight for ten metres, both ways of the strip. Time it past three marks for a figure.",
		why: "A gear that pulls to one side turns the model at half the lift-off speed.", findings: []string{"launch.distance", "launch.abort"}, wanted: state("rolls straight, no wheel binds")},
	{id: "bench.gear.attitude", group: gearGroup, title: "Attitude on the ground", input: "model.gear.groundAttitudeDegrees", unit: "deg", applies: onWheels,
		how: "Digital level on the datum line, ready for flight, tanks full.", why: "It sets the lift of the run and when the model comes off.",
		findings: []string{"launch.distance", "liftoff.margin"}, wanted: within(ofGear(func(g *LandingGear) *Quantity { return g.GroundAttitudeDegrees }))},
	{id: "bench.gear.tail_strike", group: gearGroup, title: "Angle at which the tail strikes", input: "model.gear.tailStrikeDegrees", unit: "deg", applies: onWheels,
		how: "Lower the tail to the ground and read the level.", why: "It caps the rotation.", findings: []string{"liftoff.margin", "launch.distance"},
		wanted: notUnder(ofGear(func(g *LandingGear) *Quantity { return g.TailStrikeDegrees }))},
	{id: "bench.gear.brakes", group: gearGroup, title: "Brakes", input: "model.gear.brakingRatio", unit: "1", applies: func(v *benchView, s *benchSubject) bool {
		return onWheels(v, s) && v.model.Gear.BrakingRatio != nil && orElse(v.model.Gear.BrakingRatio.Value, 0) > 0
	},
		how: "Brakes on, pull level by a spring scale until it slides: force over weight, less that without brakes. Both wheels let go at once.",
		why: "A launch given up ends where the brakes end it.", findings: []string{"launch.abort", "landing.distance"},
		wanted: notUnder(ofGear(func(g *LandingGear) *Quantity { return g.BrakingRatio }))},
	{id: "bench.gear.retracts", group: gearGroup, title: "Gear up and down", applies: func(v *benchView, s *benchSubject) bool { return onWheels(v, s) && yes(v.model.Gear.Retractable) },
		how: "Ten times on a stand, the last with the packs as low as after a flight; pull each leg when it is down.", why: "A leg that hangs is a landing on two.",
		findings: []string{"landing.distance", "packs.voltage"}, wanted: state("ten of ten, all legs locked")},
	{id: "bench.gear.belly", group: gearGroup, title: "Belly or skid", input: "model.gear.slidingFrictionRatio", unit: "1", applies: onBelly,
		how: "Pull it level over the landing ground by a spring scale: force over weight.", why: "It ends the landing.", findings: []string{"landing.distance"},
		wanted: within(ofGear(func(g *LandingGear) *Quantity { return g.SlidingFrictionRatio }))},
}

var benchLauncherRows = []benchRow{
	{id: "bench.launcher.length", group: launcherGroup, title: "Way on the rails", input: "launchPlan.ramp.lengthMeters", unit: "m", applies: hasRamp,
		how: "From the model's place at the pin to where the rails end.", why: "End speed grows with it.", findings: []string{"launch.end_speed", "launch.sink"},
		wanted: notUnder(ofRamp(func(r *Ramp) *Quantity { return r.LengthMeters }))},
	{id: "bench.launcher.angle", group: launcherGroup, title: "Slope of the rails", input: "launchPlan.ramp.angleDegrees", unit: "deg", applies: hasRamp,
		how: "Digital level on the rails, legs pegged down.", why: "It sets the path after the end.", findings: []string{"launch.end_speed", "launch.sink"},
		wanted: within(ofRamp(func(r *Ramp) *Quantity { return r.AngleDegrees }))},
	{id: "bench.launcher.cradle", group: launcherGroup, title: "Model on the dolly, nose up", input: "launchPlan.ramp.cradleDegrees", unit: "deg", applies: hasRamp,
		how: "Digital level on the datum line and on the rails; lift the model out by hand: nothing catches.", why: "A dolly that holds on brakes the model at the worst moment.",
		findings: []string{"launch.tail_gap", "launch.sink", "launch.dolly"}, wanted: within(ofRamp(func(r *Ramp) *Quantity { return r.CradleDegrees }))},
	{id: "bench.launcher.friction", group: launcherGroup, title: "Dolly on the rails", input: "launchPlan.ramp.frictionRatio", unit: "1", applies: hasRamp,
		how: "Dolly with a weight of the model's mass; pull by a spring scale along the rails: force over weight, slope taken off.", why: "End speed is paid for it.",
		findings: []string{"launch.end_speed"}, wanted: notOver(ofRamp(func(r *Ramp) *Quantity { return r.FrictionRatio }))},
	{id: "bench.launcher.pin", group: launcherGroup, title: "Pin", input: "launchPlan.ramp.releaseForceNewtons", unit: "N", applies: hasRamp,
		how: "Pull the dolly by a spring scale with the full thrust's force: it holds; pull the pin: it lets go at once.", why: "A pin that slips launches without anybody ready.",
		findings: []string{"launch.end_speed"}, wanted: func(v *benchView, _ *benchSubject) benchWanted {
			return least(v.number("thrust.static_day"), "the pull it must hold, the full thrust of the day")
		}},
	{id: "bench.launcher.bungee", group: launcherGroup, title: "Pull of the bungee", input: "launchPlan.bungee.pullTest",
		how: "Stretch it step by step to its mark, read the scale at each; look for cuts, knots and a worn ring.", why: "Old rubber gives back less.",
		findings: []string{"launch.end_speed", "launch.distance"}, applies: func(v *benchView, _ *benchSubject) bool { return v.plan.Method == LaunchMethodBungee },
		wanted: state("as the pull test of the document, anchor holds twice the pull")},
	{id: "bench.launcher.hand", group: launcherGroup, title: "Speed of the throw", input: "launchPlan.handSpeedMetersPerSecond", unit: "m/s",
		how: "Film a throw of a weight of the model's mass from the side beside a tape.", why: "A hand gives less than its owner believes.",
		findings: []string{"launch.end_speed"}, applies: func(v *benchView, _ *benchSubject) bool { return v.plan.Method == LaunchMethodHand },
		wanted: notUnder(func(v *benchView, _ *benchSubject) *Quantity { return v.plan.HandSpeedMetersPerSecond })},
}

func onWheels(v *benchView, _ *benchSubject) bool {
	return v.model.Gear != nil && (v.model.Gear.Kind == GearKindTricycle || v.model.Gear.Kind == GearKindTailwheel)
}

func onBelly(v *benchView, _ *benchSubject) bool {
	return v.model.Gear != nil && (v.model.Gear.Kind == GearKindBelly || v.model.Gear.Kind == GearKindSkid)
}

func hasRamp(v *benchView, _ *benchSubject) bool { return v.plan.Method == LaunchMethodRamp }

// ofGear reads a quantity of the gear; the row applies only where there is one.
func ofGear(of func(*LandingGear) *Quantity) benchQuantity {
	return func(v *benchView, _ *benchSubject) *Quantity { return of(v.model.Gear) }
}

// ofRamp reads a quantity of the ramp, nil where the plan has none.
func ofRamp(of func(*Ramp) *Quantity) benchQuantity {
	return func(v *benchView, _ *benchSubject) *Quantity {
		if v.plan.Ramp == nil {
			return nil
		}
		return of(v.plan.Ramp)
	}
}

// wantedPull is the rolling friction that the launch was computed with, and the pull that it is.
func wantedPull(v *benchView, _ *benchSubject) benchWanted {
	friction, mass := v.number("launch.rolling_friction"), v.number("mass.takeoff")
	if friction == nil || mass == nil {
		return benchWanted{text: noFigureYet}
	}
	return benchWanted{text: sayNumbers("force over weight, a pull of %.1f N at %.1f kg", *friction**mass*loads.StandardGravity, *mass), high: friction}
}
