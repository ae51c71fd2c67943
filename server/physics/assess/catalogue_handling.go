package assess

// handlingKinds lists the findings of balance, control and natural motions, in the order of the report.
var handlingKinds = []kind{
	{
		id: "balance.margin_full", title: "Static margin, tanks full", unit: "1", sense: LimitSenseWithin,
		method: "Neutral point of the lattice moved by the bodies, less the balance point, over the mean chord.",
		source: neutralPointSource, validity: controlsFixed,
		from: []string{"lift.neutral_point", "balance.full_x", "wing.mean_chord"},
	},
	{
		id: "balance.margin_empty", title: "Static margin, tanks empty", unit: "1", sense: LimitSenseWithin,
		method: "Neutral point of the lattice moved by the bodies, less the balance point, over the mean chord.",
		source: neutralPointSource, validity: controlsFixed,
		from: []string{"lift.neutral_point", "balance.empty_x", "wing.mean_chord"},
	},
	{
		id: "balance.margin_burn", title: "Static margin, worst while the tanks empty in their order", unit: "1", sense: LimitSenseWithin,
		method: "As for full and empty tanks, at the foremost and the aftmost balance point of the burn.",
		source: neutralPointSource, validity: controlsFixed,
		from: []string{"lift.neutral_point", "balance.forward_x", "balance.aft_x", "wing.mean_chord"},
	},
	{
		id: "balance.trim", title: "Pitch control left over in level flight", unit: "1", sense: LimitSenseAtLeast,
		method:   "Control angle that balances the pitching moment from 1.1 times the stall to the top speed, at both ends of the balance point's travel; the least share of throw left.",
		source:   "Nelson, Flight Stability and Automatic Control, Eq. 2.52",
		validity: "Level flight, power off, attached flow; control power of the lattice with a plain hinge.",
		from: []string{"trim.control_worst", "trim.speed_worst", "pitch.moment_zero", "pitch.moment_slope", "pitch.moment_control", "pitch.lift_control",
			"balance.forward_x", "balance.aft_x", "speed.top", "stall.speed"},
	},
	{
		id: "balance.launch_trim", title: "Pitch control left over as the model leaves ground or launcher", unit: "1", sense: LimitSenseAtLeast,
		method:   "Control angle against the moments of the thrust line and the air when ground, rails or hand let go, with the thrust of that moment and with full thrust; on wheels also that which lifts the nose wheel.",
		source:   "Nelson, Flight Stability and Automatic Control, chapter 2; balance of moments about the wheels",
		validity: "Attached flow; straight thrust line; the control may have to hold the nose up or down.",
		from: []string{"launch.control_needed", "launch.thrust_moment", "launch.thrust_arm", "launch.end_speed", "pitch.moment_zero", "pitch.moment_slope",
			"pitch.moment_control", "thrust.static_day", "thrust.spool_up"},
	},
	{
		id: "pitch.sensitivity", title: "Load factor for a degree of pitch control at top speed", unit: "1/deg", sense: LimitSenseAtMost,
		method: "Steady pull-up with the balance point aftmost.",
		source: "Etkin and Reid, Dynamics of Flight, Eq. 3.1,6", validity: "Attached flow, rigid model; the wing may stall first.",
		from: []string{"pitch.angle_per_load", "balance.manoeuvre_margin", "speed.top"},
	},
	{
		id: "pitch.damping", title: "Damping ratio of the short pitching motion in the circuit", unit: "1", sense: LimitSenseAtLeast,
		method: "Roots of the four equations of the pitching plane with the lattice's derivatives, balance point aftmost.",
		source: "Nelson, Flight Stability and Automatic Control, chapter 4; limit as in MIL-F-8785C, from memory", validity: "Small motions, controls held, rigid model.",
		from: []string{"motion.short_period_damping", "motion.short_period_frequency"},
	},
	{
		id: "fin.stiffness", title: "Yawing moment against sideslip", unit: "1/rad", sense: LimitSenseAtLeast,
		method: "Lattice of all surfaces in sideslip with the bodies' moment, in the circuit, balance point aftmost.",
		source: "Katz and Plotkin, Low-Speed Aerodynamics; bodies: Raymer, Aircraft Design: A Conceptual Approach, Eq. 16.49", validity: "Sideslip to some 10 degrees; bodies within 30 %.",
		from: []string{"fin.stiffness", "fin.part.fin", "fin.part.bodies", "fin.part.wing"},
	},
	{
		id: "roll.rate", title: "Helix angle of the roll at full throw", unit: "1", sense: LimitSenseAtLeast,
		method: "Rolling power of the ailerons over the damping in roll, both of the lattice: p b/(2 V).",
		source: "Nelson, Flight Stability and Automatic Control, Eq. 5.8", validity: "Rigid wing below the stall.",
		from: []string{"roll.power", "roll.damping", "roll.rate"},
	},
	{
		id: "roll.reversal", title: "Speed of aileron reversal over top speed", unit: "1", sense: LimitSenseAtLeast,
		method: "Strip theory of the wing that twists under its aileron with the measured stiffness.",
		source: "Fung, An Introduction to the Theory of Aeroelasticity, section 4.5", validity: "Little sweep, stiffness even along the span.",
		from: []string{"roll.reversal_speed", "speed.top"},
	},
	{
		id: "mass.reconciled", title: "Weighed mass against the list of items", unit: "1", sense: LimitSenseAtMost,
		method: "Difference over the weighed mass.", source: "Moments about the datum; JCGM 100:2008, 5.1.2",
		validity: "Weighing and list independent of each other, tanks empty.", neverNegative: true,
		from: []string{"mass.weighed", "mass.listed", "mass.difference"},
	},
}

const (
	neutralPointSource = "Katz and Plotkin, Low-Speed Aerodynamics; Multhopp, NACA TM 1036"
	controlsFixed      = "Controls fixed, power off."
)
