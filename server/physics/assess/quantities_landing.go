package assess

import "slices"

// Quantities of landing, launches given up and flights whose engine stops.

const (
	landingLaw     = "straight slope, flare arc, float and roll followed to rest"
	failureSource  = "Newton's second law without thrust; integrated by Dormand-Prince 5(4)"
	rogers         = "Rogers, The Possible Impossible Turn"
	reactionMethod = "method: pilot's reaction"
)

var (
	landingSources  = []string{"landing.conditions"}
	keepClear       = []string{"field.peopleLines", "field.pits", "field.parking", "field.keepOuts"}
	engineOutModel  = []string{"mass.takeoff", "wing.area", "wing.span", "drag.zero_lift_launch", "drag.lift_factor", "lift.maximum_coefficient", "air.density"}
	engineOutGround = slices.Concat([]string{"landing.roll", "wind.mean", "day.windDirectionDegrees", "field.landingAreas", "field.strips", "field.obstacles",
		"launch.conditions", "circuit.radius", "launchPlan.circuit.heightMeters", "launchPlan.circuit.reactionSeconds", reactionMethod}, engineOutModel)
)

var landingFigures = []figureKind{
	{"lift.maximum_coefficient_landing", "Greatest lift coefficient, flaps as for landing", "1", "critical strip of the lattice with the flaps set", latticeSource,
		[]string{surfacesPath, "method: greatest lift of the section"}},
	{"stall.speed_landing", "Stall speed, flaps as for landing", "m/s", "Vs = sqrt(2 m g/(rho S CLmax))", liftEquation,
		[]string{"mass.takeoff", "air.density", "wing.area", "lift.maximum_coefficient_landing"}},
	{"drag.zero_lift_landing", "Drag coefficient without lift, wheels down and flaps as for landing", "1", "CD0 + 1.7 (cf/c)^1.38 (Sf/S) sin^2(angle)",
		"Young, ARC R&M 2622, as fitted in later textbooks", []string{"drag.zero_lift_launch", surfacesPath}},
	{"landing.available", "Length available to land on", "m", "length of the strip, or longest free run of the landing area", triangle, nil},
	{"landing.heading", "Heading of the landing", "deg", "as planned, else of the place with the better head wind", triangle, nil},
	{"landing.headwind", "Head wind along the landing", "m/s", "w cos(from - heading)", triangle, []string{"wind.mean", "day.windDirectionDegrees", "landing.heading"}},
	{"landing.approach_speed", "Airspeed of the approach", "m/s", "planned ratio times Vs, else 1.02 times the least ratio, the gust's excess and its spread", "common practice, no source",
		[]string{"stall.speed_landing", "wind.gust_excess", "launchPlan.landing.approachRatio"}},
	{"landing.conditions", "What the landing is computed from", "", "the plan, the place and the model, gathered", "the document",
		[]string{"landing.approach_speed", "landing.headwind", "landing.available", "stall.speed_landing", "drag.zero_lift_landing", "drag.lift_factor", "mass.takeoff",
			"wing.area", "wing.span", "air.density", "thrust.static_day", "landing.rolling_friction"}},
	{"landing.approach_angle", "Slope of the approach over the ground", "deg", "sin g = (D - T)/W at the approach speed, no steeper than planned", "steady glide with thrust", landingSources},
	{"landing.air_distance", "From the screen to touchdown", "m", landingLaw, motionSource, landingSources},
	{"landing.touchdown_speed", "Airspeed at touchdown", "m/s", "1.1 Vs, or where the flare ends", motionSource, landingSources},
	{"landing.roll", "Roll or slide to rest", "m", "m dV/dt = T - D - R - m g sin(slope), followed to rest", motionSource, landingSources},
	{"landing.total_distance", "From the screen to rest", "m", landingLaw, motionSource, landingSources},
	{"landing.aim_shift", "What obstacles move the aim point", "m", "lacking clearance over the slope's tangent", triangle,
		[]string{"landing.approach_angle", "field.obstacles", "limits.minimumClearanceMeters"}},
	{"landing.go_around_height", "Least height of a go-around", "m", "least height whose path clears ground and obstacles", motionSource,
		[]string{"landing.conditions", "landing.approach_angle", "thrust.spool_up", "field.obstacles", "launchPlan.circuit.reactionSeconds"}},
	{"launch.tail_up_speed", "Airspeed at which the controls lift the tail", "m/s", "q = fixed/-(base + perControl d_down), V = sqrt(2 q/rho)",
		"balance of moments about the main wheels' contact",
		[]string{"pitch.moment_control", "pitch.moment_zero", "pitch.moment_slope", "balance.full_x", "mass.takeoff", "wing.area", "wing.mean_chord", "air.density", "thrust.static_day"}},
	{"launch.rotation_speed", "Airspeed at which the controls lift the nose wheel", "m/s", "q = -fixed/(base + perControl d_up), V = sqrt(2 q/rho)", "balance of moments about the main wheels' contact",
		[]string{"pitch.moment_control", "pitch.moment_zero", "pitch.moment_slope", "balance.full_x", "mass.takeoff", "wing.area", "wing.mean_chord", "air.density", "thrust.static_day"}},
	{"launch.accelerate_stop", "To rest when the thrust is lost at lift-off", "m", motionLaw, failureSource,
		[]string{"launch.conditions", "model.gear.brakingRatio", "launchPlan.circuit.reactionSeconds"}},
	{"launch.abort_distance", "Last place from which the launch can be given up on the strip", "m", "stopping place = length available, by bisection", failureSource,
		[]string{"launch.accelerate_stop"}},
	{"launch.abort_speed", "Airspeed there", "m/s", "stopping place = length available, by bisection", failureSource, []string{"launch.accelerate_stop"}},
	{"launch.failure_time", "Time of the worst loss of thrust", "s", "least distance to people and keep-outs among the times looked at", failureSource,
		slices.Concat([]string{"launch.conditions", "launchPlan.circuit.reactionSeconds", "model.gear.slidingFrictionRatio"}, keepClear)},
	{"launch.failure_energy", "Greatest energy with which a launch without thrust meets the ground", "J", "m v^2/2", failureSource, []string{"launch.conditions"}},
	{"launch.failure_sink", "Deepest fall after a loss of thrust", "m", "highest place after the loss less the end", failureSource, []string{"launch.conditions"}},
	{"engine_out.glide_ratio", "Distance over height of the glide that goes farthest in still air", "1", "greatest (V cos g)/(V sin g)", "steady glide", engineOutModel},
	{"engine_out.glide_speed", "Airspeed of that glide", "m/s", "greatest (V cos g)/(V sin g)", "steady glide", engineOutModel},
	{"engine_out.turn_loss", "Height lost in a gliding half turn", "m", "pi (CD/CL^2) 4 W/(S rho g sin 2 bank)", rogers, engineOutModel},
	{"engine_out.reach_ratio", "Share of the points from which a landing area is reached", "1", "points with height enough over points", rogers, engineOutGround},
	{"engine_out.least_margin", "Least height to spare over what the way to a landing area needs", "m", "height less height needed, least of the points", rogers, engineOutGround},
	{"engine_out.turn_back_height", "Least height of a turn back to the launch's landing area", "m", "reaction, turn, glide and second turn, least over bank and distance", rogers, engineOutGround},
}
