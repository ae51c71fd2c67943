package assess

import "slices"

// Quantities of link loss, separation, sun and wake.

const (
	pointMass   = "Anderson, Aircraft Performance and Design, chapter 4"
	sora        = "JARUS SORA Annex F, edition 2.5"
	meeus       = "Meeus, Astronomical Algorithms (1998)"
	latitude    = "field.datumLatitudeDegrees"
	longitude   = "field.datumLongitudeDegrees"
	lossSamples = "impacts of the sampled losses"
)

var (
	sunSources  = []string{"day.time", latitude, longitude}
	lossSources = []string{"link_loss.action", "circuit.airspeed", "mass.takeoff", "air.density", "wing.area", "drag.zero_lift", "drag.lift_factor",
		"lift.maximum_coefficient", "wind.mean", "launchPlan.circuit.heightMeters"}
	laterSources = []string{"day.time", "day.windChanges", "wind.mean", "wind.gust_excess", "day.windDirectionDegrees"}
	cloudSources = []string{"link_loss.outline_area"}
)

var dayFigures = []figureKind{
	{"link_loss.action", "What the model does when its link is lost", "", "as declared; undeclared is a powered fly-away", "the fail-safe's setting",
		[]string{"model.radio.failSafeAction"}},
	{"link_loss.delay", "Time from the loss to the fail-safe's action", "s", "as timed", "the fail-safe's setting", []string{"model.radio.failSafeDelaySeconds"}},
	{"link_loss.level_time", "Time in which a bank left alone falls to 1/e", "s", "-1/(root of the spiral); none is taken as at once, which goes farthest", handlingRoots,
		[]string{"motion.spiral_rate", "model.inertia"}},
	{"link_loss.endurance", "Time until fuel or pack end", "s", "t = fuel/flow, or capacity/current", "definition of the flow", nil},
	{"link_loss.fly_away_radius", "Farthest a powered fly-away leads from a place in the circuit", "m", "R = V t + E h + w t", pointMass,
		[]string{"link_loss.endurance", "speed.top", "wind.mean", "drag.zero_lift", "drag.lift_factor", "launchPlan.circuit.heightMeters"}},
	{"link_loss.outline_area", "Ground within the outline of 95 % of the impacts", "m2", "convex outline of the deepest 95 % of the impacts",
		"Tukey, Mathematics and the picturing of data, 1975", lossSources},
	{"link_loss.step_error", "Mean distance of losses flown in long steps from the same in fine ones", "m", "mean over sixteen losses flown in both", pointMass, cloudSources},
	{"link_loss.losses", "Losses flown", "1", "768, or 4,096 where the margin of those lies within four standard errors of its limit", "Wald, Sequential Analysis, 1947", cloudSources},
	{"link_loss.chance", "Standard error of the distance of people, by the number of losses", "m", "half the difference between the outlines with k - sqrt(k) and k + sqrt(k) impacts beyond each side",
		"David & Nagaraja, Order Statistics, 2003, section 7.1", cloudSources},
	{"link_loss.time", "Time to the ground, not exceeded by 95 % of the losses", "s", lossSamples, pointMass, cloudSources},
	{"link_loss.speed", "Speed at the ground, not exceeded by 95 % of the losses", "m/s", lossSamples, pointMass, cloudSources},
	{"link_loss.energy", "Kinetic energy at the ground, not exceeded by 95 % of the losses", "J", "m v^2/2 of the impacts", pointMass, cloudSources},
	{"link_loss.critical_area", "Ground on which a person would be struck, not exceeded by 95 % of the losses", "m2",
		"glide below a person's height and slide to 290 J", sora, cloudSources},
	{"link_loss.farthest", "Farthest impact from the pilot", "m", lossSamples, pointMass, slices.Concat([]string{"field.pilotPosition"}, cloudSources)},
	{"link_loss.margin", "Distance of the nearest people from the outline", "m", "least distance, negative by how deep the outline reaches", "plane geometry", cloudSources},
	{"link_loss.share.*.name", "Place that some of the losses meet", "", "the document", "the document", []string{"link_loss.outline_area"}},
	{"link_loss.share.*", "Share of the losses that meet a place", "1", "impacts whose way on and near the ground meets it, over all", sora, cloudSources},
	{"visual.attitude_range", "Distance at which the attitude of the span can still be told", "m", "490 b + 30 m",
		"European acceptable means of compliance published with SORA 2.5", []string{"wing.span"}},
	{"crosswind.limit", "Wind across that full rudder holds at lift-off", "m/s", "w = V tan(d Cn_d/Cn_b)", "Etkin and Reid, Dynamics of Flight, section 3.8",
		[]string{"fin.stiffness", "yaw.rudder_power", "launch.end_speed"}},
	{"yaw.rudder_power", "Yawing moment with the rudder", "1/rad", "Cn_delta of the lattice", latticeSource, slices.Concat([]string{"method: control power"}, yawSources)},
	{"sun.elevation", "Height of the sun as seen through the air", "deg", "sin(h) = sin(f) sin(d) + cos(f) cos(d) cos(H), refraction added", meeus + ", chapters 13 and 16", sunSources},
	{"sun.elevation_true", "Height of the sun's centre without the air", "deg", "sin(h) = sin(f) sin(d) + cos(f) cos(d) cos(H)", meeus + ", chapter 13", sunSources},
	{"sun.azimuth", "Direction of the sun from true north", "deg", "tan(A) = -cos(d) sin(H)/(sin(d) cos(f) - cos(d) cos(H) sin(f))", meeus + ", chapter 13", sunSources},
	{"sun.time_to_sunset", "Time until sunset, negative after it", "min", "time at which the true height is -0.83 degrees, less the time of the day", "Astronomical Almanac", sunSources},
	{"weather.later_time", "Time until a limit of the wind is no longer held", "min", "first time at which the wind across or the gust exceeds its limit", "bisection", laterSources},
	{"weather.later_worst_time", "Time until the wind to come is worst", "min", "time of the greatest excess over the limits", "sampling", laterSources},
	{"weather.later_gust", "Gust when the first limit is no longer held, else when the margin is least", "m/s", "straight line between the changes listed", "linear interpolation", laterSources},
	{"weather.later_crosswind", "Gust across the launch at that time", "m/s", "w = G sin(from - heading)", "plane trigonometry",
		slices.Concat([]string{"launch.heading"}, laterSources)},
}
