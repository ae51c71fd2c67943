package assess

// dayKinds lists the findings of link loss, separation, rules and weather, in the order of the report.
var dayKinds = []kind{
	{
		id: "link_loss.footprint", title: "Nearest people to where the model comes down when its link is lost", unit: "m", sense: LimitSenseAtLeast, still: true,
		method: "Falls and glides of a point mass after losses anywhere in the circuit, the declared fail-safe acting, with spread of state, wind and model: " +
			"768 losses at the points of a scrambled Sobol sequence, 4,096 where those leave the distance within four standard errors of its limit (not where a " +
			"command is held); distance of people from the outline that leaves out 5 % of the " +
			"impacts, less one standard error of that number, as seen from 72 sides, negative by how deep it reaches.",
		source:   "Anderson, Aircraft Performance and Design, chapter 4; Sobol (1967); half-space depth: Tukey (1975); critical area: JARUS SORA Annex F, edition 2.5",
		validity: "The distance scatters with the losses flown by the standard error told. Outlines are convex, on ground level with the field's datum, as those without thrust are with the landing place; steady wind, attached flow; a spiral with 60 degrees of bank and 0.6 of the greatest lift coefficient to either side; independent spreads.",
		from:     []string{"link_loss.action", "link_loss.outline_area", "link_loss.margin", "field.peopleLines", "field.pits", "field.parking", "field.keepOuts"},
	},
	{
		id: "separation.people", title: "Least distance of launch and circuit to people", unit: "m", sense: LimitSenseAtLeast,
		method: "Least level distance of the launch path and the circuit to people lines, pits, parking and areas kept for people.",
		source: "plane geometry", validity: "Flown as planned; the pilot's own place is left out.", neverNegative: true,
		from: []string{"circuit.airspeed", "wind.mean", "field.peopleLines", "field.pits", "field.parking", "field.keepOuts"},
	},
	{
		id: "separation.structures", title: "Least distance of launch and circuit to buildings and roads", unit: "m", sense: LimitSenseAtLeast,
		method: "Least level distance of the launch path and the circuit to buildings, areas kept for buildings or roads, and roads.",
		source: "plane geometry", validity: "Flown as planned.", neverNegative: true,
		from: []string{"circuit.airspeed", "wind.mean", "field.obstacles", "field.keepOuts", "field.roads"},
	},
	{
		id: "height.limit", title: "Planned height over the ground", unit: "m", sense: LimitSenseAtMost,
		method: "Planned height of the circuit against the lower of the limits' and the field's.", source: "definition", validity: "Flown as planned.",
		from: []string{"launchPlan.circuit.heightMeters", "field.heightLimitMeters"},
	},
	{
		id: "mass.class", title: "Take-off mass", unit: "kg", sense: LimitSenseAtMost,
		method: "Mass with the fuel of the flight.", source: "definition", validity: "Filled as given.", from: []string{"mass.takeoff"},
	},
	{
		id: "field.permission", title: "Days left of the field owner's permission", unit: "d", sense: LimitSenseAtLeast, still: true,
		method: "Last day of the permission less the day of the flight, both as dates at the field; not before the first day and not in the quiet hours.",
		source: "field owner's terms", validity: "Local time as day.time was written, by its offset; the last day counts in full.",
		from: []string{"day.time", "field.permission"},
	},
	{
		id: "visual.range", title: "Farthest the circuit leads from the pilot", unit: "m", sense: LimitSenseAtMost,
		method: "Greatest slant distance of the circuit from the pilot, against the lower of the distance at which the attitude of the span can still be told, " +
			"490 spans and 30 m, and three tenths of the visibility.",
		source:   "European acceptable means of compliance published with SORA 2.5 (attitude and detection line of sight)",
		validity: "Aeroplanes; plain background, normal eyesight.",
		from:     []string{"circuit.airspeed", "wind.mean", "wing.span", "field.pilotPosition", "visual.attitude_range"},
	},
	{
		id: "weather.crosswind", title: "Wind across the launch, gusts included", unit: "m/s", sense: LimitSenseAtMost,
		method: "Highest wind times the sine of its angle to the launch; without a limit of the document against what full rudder holds on the ground at lift-off.",
		source: "Etkin and Reid, Dynamics of Flight, section 3.8; plane trigonometry", validity: "Sideslip to 20 degrees; a steered wheel is given no credit.", neverNegative: true,
		from: []string{"wind.mean", "wind.gust_excess", "day.windDirectionDegrees", "launch.heading"},
	},
	{
		id: "weather.gust", title: "Highest gust", unit: "m/s", sense: LimitSenseAtMost,
		method: "As reported, or the mean wind times the least gust factor of the ground.", source: "Cook's form of the gust factor, from memory",
		validity: "Ten-minute mean, three-second gust, no thunderstorm.", neverNegative: true, from: []string{"wind.mean", "wind.gust_excess"},
	},
	{
		id: "weather.later", title: "Least margin of the wind to come to its limits", unit: "m/s", sense: LimitSenseAtLeast, still: true,
		method: "Winds between the changes listed along straight lines, the direction by the shorter way round; the lesser of what is left to the limits of the wind " +
			"across the launch and of the gust, and the first time at which one is no longer held, by bisection.",
		source: "Linear interpolation; plane trigonometry; bisection", validity: "From the time of the day to the last change listed, as forecast: its spread is left out; the rudder's limit as at the day's lift-off.",
		from: []string{"day.time", "day.windChanges", "wind.mean", "wind.gust_excess", "day.windDirectionDegrees", "launch.heading", "field.roughness",
			"weather.later_gust", "weather.later_crosswind", "weather.later_worst_time"},
	},
	{
		id: "weather.visibility", title: "Visibility", unit: "m", sense: LimitSenseAtLeast,
		method: "As reported.", source: "the report of the day", validity: "At the place of the report.", neverNegative: true, from: []string{"day.visibilityMeters"},
	},
	{
		id: "weather.temperature", title: "Air temperature", unit: "C", sense: LimitSenseWithin,
		method: "As measured.", source: "the report of the day", validity: "In the shade, at the time of the report.", from: []string{"day.temperatureCelsius"},
	},
	{
		id: "weather.frost", title: "Frost on the model", unit: "1", sense: LimitSenseNone, still: true,
		method: "As looked at on the day; frost as rough as sandpaper takes about 30 % of the lift and adds 40 % of drag.",
		source: "FAA Advisory Circular 135-17", validity: "Every upper surface was looked at.", from: []string{"day.frost"},
	},
	{
		id: "weather.age", title: "Time since the weather was reported", unit: "min", sense: LimitSenseAtMost, still: true,
		method: "Time of the day less the time in the report.", source: "WMO Manual on Codes (No. 306), FM 15", validity: "Report of the same half month.",
		from: []string{"day.time", "day.metar"},
	},
	{
		id: "weather.sun", title: "Offset of a low sun from the landing's line of sight", unit: "deg", sense: LimitSenseAtLeast, still: true,
		method: "Azimuth of the sun against the lines of sight back along the approach and forward along the strip, when it stands between the horizon and 25 degrees.",
		source: "Meeus, Astronomical Algorithms (1998), chapters 13, 16 and 25; limits are common practice, no source", validity: "A pilot beside the strip; level horizon.",
		from: []string{"sun.elevation", "sun.azimuth", "launch.heading", "launchPlan.landing.headingDegrees"},
	},
	{
		id: "weather.light", title: "Height of the sun over the horizon", unit: "deg", sense: LimitSenseAtLeast, still: true,
		method: "Elevation of the sun's centre without refraction at the time of the day; sunrise and sunset are at -0.83 degrees.",
		source: "Meeus, Astronomical Algorithms (1998), chapter 25; Astronomical Almanac", validity: "Level horizon, 1950 to 2050.",
		from: []string{"sun.elevation_true"},
	},
	{
		id: "weather.wake", title: "Least share of the wind left behind hedges, banks and woods along launch and approach", unit: "1", sense: LimitSenseNone, still: true,
		method:   "Loss of mean wind behind every windbreak at the points of the launch path and of the last 200 m of the approach, in the wind of the day.",
		source:   "Brandle and Finch, University of Nebraska Extension EC 91-1763 (1991); Perera, J. Wind Eng. Ind. Aerodyn. 8 (1981) 93, both from memory",
		validity: "Long windbreaks across the wind, neutral air; within 0.15 of the wind.",
		from:     []string{"launch.conditions", "wind.mean", "day.windDirectionDegrees", "field.obstacles", "field.roughness"},
	},
}
