package assess

// Quantities of the flight: stall, turns, speeds, launch, climb and circuit.

const (
	andersonFlight = "Anderson, Introduction to Flight, chapter 6"
	motionSource   = "Newton's second law; integrated by Dormand-Prince 5(4)"
	motionLaw      = "m dV/dt = T - D - R - m g sin(slope), followed from release"
	triangle       = "plane trigonometry"
)

var flightFigures = []figureKind{
	{"stall.speed", "Stall speed, clean", "m/s", "Vs = sqrt(2 m g/(rho S CLmax))", liftEquation,
		[]string{"mass.takeoff", "air.density", "wing.area", "lift.maximum_coefficient"}},
	{"stall.speed_takeoff", "Stall speed, flaps as for take-off", "m/s", "Vs = sqrt(2 m g/(rho S CLmax))", liftEquation,
		[]string{"mass.takeoff", "air.density", "wing.area", "lift.maximum_coefficient_takeoff"}},
	{"stall.speed_turn", "Stall speed in the circuit's turns", "m/s", "Vs_turn = Vs sqrt(n)", liftEquation, []string{"stall.speed", "turn.load_factor"}},
	{"circuit.airspeed", "Airspeed in the circuit", "m/s", "as planned, or 1.5 Vs", "common practice, no source", []string{"stall.speed"}},
	{"turn.load_factor", "Load factor in the circuit's turns", "1", "n = 1/cos(bank)", andersonFlight, []string{"launchPlan.circuit.bankDegrees"}},
	{"turn.radius", "Radius of the circuit's turns", "m", "R = V^2/(g tan(bank))", andersonFlight,
		[]string{"circuit.airspeed", "launchPlan.circuit.bankDegrees"}},
	{"thrust.static_day", "Static thrust, installed, in the day's air", "N",
		"F = F_test corrected for pressure and temperature, less installation loss",
		"corrected parameters of gas turbines; momentum theory for fans and propellers", []string{"engine.1.static_thrust", "air.station_pressure", "air.density"}},
	{"thrust.spool_up", "Time from idle to full thrust", "s", "as measured or by its maker", "the engine's data", nil},
	{"thrust.top_speed", "Net thrust at top speed", "N", "T = gross thrust with ram recovery less ram drag",
		"net = gross - ram drag (Cumpsty, Jet Propulsion); momentum theory", []string{"thrust.static_day", "air.density", "air.station_pressure"}},
	{"speed.top", "Top speed in level flight", "m/s", "T(V) = rho V^2 S (CD0 + k CL^2)/2", andersonFlight,
		[]string{"thrust.top_speed", "drag.zero_lift", "drag.lift_factor", "mass.takeoff", "air.density", "wing.area"}},
	{"circuit.radius", "Radius of the circuit's turns as laid out", "m", "R = V^2/(g tan(bank))", andersonFlight, []string{"turn.radius"}},
	{"circuit.leg", "Length of the circuit's legs", "m", "as planned, else the strip's length", "the plan", []string{"field.strips", "launchPlan.circuit.straightLegMeters"}},
	{"circuit.turn_time", "Time of a half turn", "s", "t = pi V/(g tan(bank))", andersonFlight, []string{"circuit.airspeed", "launchPlan.circuit.bankDegrees"}},
	{"climb.clearance.*", "Height of the path over an obstacle", "m",
		"least over the obstacle of path height less top; the climb is drawn on beyond the path", motionSource,
		[]string{"launch.conditions", "circuit.airspeed"}},
}

const dollyLaw = "m dv/dt = -rho CdA |v| v/2 - m g from the end of the rails"

var dollySources = []string{"launch.end_speed", "launch.conditions", "air.density", "launchPlan.ramp.dollyMassKg"}

// launchSources are what the equations of motion of a launch are fed with.
var launchSources = []string{"launch.conditions"}

var launchFigures = []figureKind{
	{"launch.conditions", "What the launch is computed from", "", "the plan, the place and the model, gathered", "the document",
		[]string{"mass.takeoff", "wing.area", "wing.span", "drag.zero_lift_launch", "drag.lift_factor", "lift.maximum_coefficient_takeoff", "lift.slope", "lift.slope_ground",
			"lift.zero_incidence", "thrust.static_day", "thrust.spool_up", "air.density", "launch.headwind", "launch.crosswind", "stall.speed_takeoff", "launch.rotation_speed",
			"launch.tail_up_speed", "launch.rolling_friction"}},
	{"launch.heading", "Heading of the launch", "deg", "as planned, else of the strip or spot", triangle, []string{"launchPlan.method"}},
	{"launch.headwind", "Head wind along the launch", "m/s", "w cos(from - heading)", triangle, []string{"wind.mean", "day.windDirectionDegrees", "launch.heading"}},
	{"launch.crosswind", "Cross wind from the right", "m/s", "w sin(from - heading)", triangle, []string{"wind.mean", "day.windDirectionDegrees", "launch.heading"}},
	{"launch.peak_acceleration", "Greatest acceleration", "m/s2", "greatest dV/dt of " + motionLaw, motionSource, launchSources},
	{"launch.end_speed", "Airspeed when the model leaves ground or launcher", "m/s", motionLaw, motionSource, launchSources},
	{"launch.time_to_liftoff", "Time until then", "s", motionLaw, motionSource, launchSources},
	{"launch.ground_run", "Distance on ground or launcher", "m", motionLaw, motionSource, launchSources},
	{"liftoff.speed", "Lift-off speed", "m/s", motionLaw, motionSource, launchSources},
	{"launch.screen_distance", "Distance to the screen", "m", motionLaw, motionSource, launchSources},
	{"launch.screen_speed", "Airspeed at the screen", "m/s", motionLaw, motionSource, launchSources},
	{"launch.screen_time", "Time to the screen", "s", motionLaw, motionSource, launchSources},
	{"launch.sink", "Sink after the launcher", "m", "height where it leaves less the lowest height after", motionSource, launchSources},
	{"launch.hold_time", "Time held until the release force", "s", "thrust in the standing wind = release force", motionSource, launchSources},
	{"launch.tail_up_distance", "Distance at which the tail comes up", "m", motionLaw, motionSource, launchSources},
	{"launch.tail_gap", "Least room between tail and rails", "m", "gap = h + z - a sin(d), d = change of path angle + change of CL over lift slope", "plane geometry",
		[]string{"launch.conditions", "mass.takeoff", "lift.slope", "launchPlan.ramp.tailXMeters", "launchPlan.ramp.tailHeightMeters"}},
	{"launch.dolly_distance", "Where the dolly comes down", "m", dollyLaw, motionSource, dollySources},
	{"launch.dolly_speed", "Speed of the dolly there", "m/s", dollyLaw, motionSource, dollySources},
	{"launch.dolly_energy", "Energy of the dolly there", "J", "E = m V^2/2", motionSource, dollySources},
	{"launch.lowest_height", "Lowest height after leaving", "m", motionLaw, motionSource, launchSources},
}
