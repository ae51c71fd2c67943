package assess

const (
	spanLoads   = "Span load of the lattice with relief by the wing's own mass; stacked parts by the transformed section; 1.5 times the stress is held against the table's low end less its knock-downs. "
	stressTexts = "14 CFR 25.303 and 25.307; Megson, Aircraft Structures for Engineering Students, chapters 16 to 18"
)

// wingKinds lists the findings of the wing, of servos and of the speed never to exceed.
var wingKinds = []kind{
	{
		id: "loads.wing", title: "Load factor the wing stands over the one asked for", unit: "1", sense: LimitSenseAtLeast, neverNegative: true,
		method:   spanLoads + "Asked for is the greater of the pull-up it was designed for and a turn of the circuit in the design gust, no more than the wing can lift. A held sandbag test stands in place of the computation.",
		source:   stressTexts,
		validity: "Slender spar, little sweep, controls in the middle; glue, holes and hidden damage are not seen. A warning, no proof of strength.",
		from:     []string{"loads.stands", "loads.asked"},
	},
	{
		id: "loads.joiner", title: "Load factor the wing joiner stands over the one asked for", unit: "1", sense: LimitSenseAtLeast, neverNegative: true,
		method:   "Bending at the root through one joiner: its own stress, and the pressure on its socket over the engaged length, with a factor of 1.5. A held sandbag test stands in place of the computation.",
		source:   "Statics of an embedded bar; " + stressTexts,
		validity: "One joiner carries all bending; a stiff bar in an even socket of hard wood, ply or glass.",
		from:     []string{"loads.joiner_stands", "loads.asked"},
	},
	{
		id: "loads.gust", title: "Load factor the wing stands over that of a gust at top speed", unit: "1", sense: LimitSenseAtLeast, neverNegative: true,
		method:   "Up-gust in level flight at top speed with the gust's alleviation, no more than the wing can lift.",
		source:   "14 CFR 23.341(c) before 2017; K. G. Pratt, NACA TN 2964",
		validity: "Gusts that build up over some 12 chords; a sharper one loads more.",
		from:     []string{"loads.stands", "loads.gust_factor"},
	},
	{
		id: "servo.torque", title: "Speed at which the weakest servo gives in over top speed", unit: "1", sense: LimitSenseAtLeast, neverNegative: true,
		method:   "Thin-aerofoil hinge moment at half throw against the servo's stalling torque through arm and horn.",
		source:   "Glauert, ARC R&M 1095; statics of the linkage",
		validity: "Plain sealed hinges; beyond 20 degrees the moment grows less. Flaps, all-moving surfaces and controls without a declared linkage are left out.",
		from:     []string{"servo.speed", "speed.top"},
	},
	{
		id: "speed.never_exceed", title: "Speed never to exceed over top speed", unit: "1", sense: LimitSenseAtLeast, neverNegative: true,
		method:   "Least of the speeds of wing divergence, aileron reversal, thin-fin flutter, servo and pushrod at a fifth of the throw, and the rules, each with its margin.",
		source:   "CS-VLA 335 and 629, from memory; Bisplinghoff, Ashley and Halfman, Aeroelasticity, chapter 8; D. J. Martin, NACA TN 4197, from memory",
		validity: "Screening: it can warn and clears nothing. Control surfaces may flutter below any computed speed; balance, slack and stiffness belong on the bench.",
		from:     []string{"speed.never_exceed", "speed.top"},
	},
}
