package assess

// landingKinds lists the findings of landing, launches given up and flights whose engine stops, in the order of the report.
var landingKinds = []kind{
	{
		id: "approach.margin", title: "Approach speed over stall speed in the lull of the gusts", unit: "1", sense: LimitSenseAtLeast,
		method:   "Approach speed less the gust's excess over the mean wind, over the stall speed with landing flaps; where no ratio is planned, 2 % above the least with that excess and its spread added.",
		source:   "Anderson, Introduction to Flight, chapter 6; gust as reported or least gust factor of the ground",
		validity: "Lulls as deep as the gusts are high, shorter than the model takes to speed up.",
		from:     []string{"landing.approach_speed", "wind.gust_excess", "stall.speed_landing"},
	},
	{
		id: "landing.distance", title: "Landing distance from the screen to rest", unit: "m", sense: LimitSenseAtMost,
		method:   "Straight approach over every obstacle with idle thrust, flare at a load factor, float in ground effect, roll or slide to rest, times the factor of the limits; what an obstacle moves the aim point is added.",
		source:   "Anderson, Introduction to Flight, section 6.16, followed by Dormand-Prince 5(4) in place of mean forces",
		validity: "One airspeed and one slope down to the flare, wind along the landing, take-off mass; firm, even ground.", neverNegative: true,
		from: []string{"landing.total_distance", "landing.aim_shift", "landing.available"},
	},
	{
		id: "landing.go_around", title: "Least height of a go-around", unit: "m", sense: LimitSenseNone,
		method:   "Throttle opened after the reaction time on the approach; the least height from which spool-up, pull-up and climb clear ground and obstacles.",
		source:   "Equations of motion in the vertical plane; integrated by Dormand-Prince 5(4)",
		validity: "Straight ahead, flaps and wheels as for the landing, the speed of the approach held; looked for to a centimetre.", neverNegative: true,
		from: []string{"landing.go_around_height"},
	},
	{
		id: "launch.abort", title: "Strip left when the launch is given up at lift-off", unit: "m", sense: LimitSenseAtLeast,
		method:   "Thrust lost at lift-off, brakes after the reaction time, rolled to rest; the strip's length less that distance.",
		source:   "Newton's second law; integrated by Dormand-Prince 5(4)",
		validity: "Straight roll with the nose down, constant friction, no thrust left.",
		from:     []string{"launch.accelerate_stop", "launch.conditions"},
	},
	{
		id: "launch.engine_failure", title: "People and keep-outs from where a launch without thrust comes down", unit: "m", sense: LimitSenseAtLeast,
		method:   "Thrust lost at times along the launch, each followed straight ahead to the ground and slid to rest; the least distance of that way to people lines, pits, parking and keep-outs.",
		source:   "Newton's second law; integrated by Dormand-Prince 5(4)",
		validity: "Straight ahead, drift not corrected; no bounce, no cartwheel; the place of contact to a centimetre.",
		from:     []string{"launch.conditions", "launch.failure_time"},
	},
	{
		id: "launch.dolly", title: "People, keep-outs and buildings from where the dolly comes down", unit: "m", sense: LimitSenseAtLeast,
		method:   "Fall of the dolly from the end of the rails through the wind to the ground; the least distance of its way over the ground to people lines, pits, parking, keep-outs, buildings and roads, negative by how far it goes on inside.",
		source:   "Newton's second law; integrated by Dormand-Prince 5(4)",
		validity: "A dolly that does not fly and is not caught; what it rolls on or bounces after coming down is left out.",
		from:     []string{"launch.dolly_distance", "launch.dolly_speed", "launch.dolly_energy"},
	},
	{
		id: "engine_out.reach", title: "Share of launch and circuit from which a landing area is reached without thrust", unit: "1", sense: LimitSenseAtLeast,
		method:   "From points a few metres apart: reaction time, gliding turn, glide at the speed that goes farthest in the wind, turn onto a line of a landing area or strip.",
		source:   "Rogers, The Possible Impossible Turn; steady gliding turn and glide over level ground",
		validity: "Steady wind by the profile, wheels down, ground level with the landing place; half of the speed above the approach speed turned into height.",
		from:     []string{"engine_out.reach_ratio"},
	},
	{
		id: "engine_out.footprint", title: "People and keep-outs from where a model without thrust comes down", unit: "m", sense: LimitSenseAtLeast,
		method:   "Where a landing area is reached, its touchdown; where none is, the ground straight on as far as the glide goes; least distance to people lines, pits, parking and keep-outs, negative by how deep they lie inside.",
		source:   "Rogers, The Possible Impossible Turn; plane geometry",
		validity: "As for the share reached; the pilot takes a landing area within reach, else holds the nose within 5 degrees.",
		from:     []string{"engine_out.reach_ratio", "engine_out.glide_ratio"},
	},
}
