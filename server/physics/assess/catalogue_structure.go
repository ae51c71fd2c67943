package assess

import "slices"

// loadKinds lists the findings of structure and of the speeds not to pass.
var loadKinds = slices.Concat(wingKinds, partKinds)

const tailLoads = "Spar by the transformed section with a factor of 1.5 against the surface's own lift from the lattice less its inertia, in the worst of: the pitch control put at once to what pulls the load factor asked for, " +
	"the pull-up held, and the design gust at top speed. "

// partKinds lists the findings of seat, skin, boom, tail surfaces, pushrods and controls.
var partKinds = []kind{
	{
		id: "loads.bolts", title: "Load factor the wing's seat stands over the one asked for", unit: "1", sense: LimitSenseAtLeast, neverNegative: true,
		method: "Lift less the wing's weight, and the wing's twist over the distance of its fastenings, on the threads' area with a factor of 1.5; the worst bolt takes half as much again as its share. " +
			"A held sandbag test stands in place of the computation.",
		source:   "Statics; ISO 898-1 and ISO 724 for bolts and threads, from memory; " + stressTexts,
		validity: "Bolts of one size; what they are screwed into is not seen, and neither is a dowel of other size.",
		from:     []string{"loads.bolts_stand", "loads.asked"},
	},
	{
		id: "loads.skin", title: "Twist the wing's skin stands over the one asked for", unit: "1", sense: LimitSenseAtLeast, neverNegative: true,
		method:   "Shear in the wall of the closed box at the root by Bredt with a factor of 1.5, in the worst of level flight, pull-up and inverted flight at the speeds asked. A sandbag test does not twist a wing and replaces nothing here.",
		source:   "Bredt; Megson, Aircraft Structures for Engineering Students, chapter 18",
		validity: "A box without cut-outs, ailerons in the middle; a skin that wrinkles is softer, not yet broken.",
		from:     []string{"loads.skin_stands", "loads.root_twist"},
	},
	{
		id: "loads.boom", title: "Bending the tail boom stands over the one asked for", unit: "1", sense: LimitSenseAtLeast, neverNegative: true,
		method: "Lift of the tail less its inertia and the boom's on a cantilever, its section by the transformed section with a factor of 1.5, in the worst of: the pitch control put at once to what pulls the load factor asked for, " +
			"the pull-up held, the design gust at top speed, a hard landing.",
		source:   "14 CFR 23.421 to 23.425 and 23.473 before 2017; " + stressTexts,
		validity: "Booms that share evenly; the fin's side load, twist and what holds the boom are not seen.",
		from:     []string{"loads.boom_stands", "loads.boom_bending"},
	},
	{
		id: "loads.canard", title: "Bending the canard's spar stands over the one asked for", unit: "1", sense: LimitSenseAtLeast, neverNegative: true,
		method: tailLoads, source: "14 CFR 23.421 to 23.425 before 2017; " + stressTexts,
		validity: "Loads alike on both sides; the pivot and twist of an all-moving surface are not seen; a canard that stalls carries less.",
		from:     []string{"loads.canard_stands", "loads.canard_bending"},
	},
	{
		id: "loads.tailplane", title: "Bending the tailplane's spar stands over the one asked for", unit: "1", sense: LimitSenseAtLeast, neverNegative: true,
		method: tailLoads, source: "14 CFR 23.421 to 23.425 before 2017; " + stressTexts,
		validity: "Loads alike on both sides, held in the middle; one held at its tips bends as much the other way. A V-tail by the lift of its panels.",
		from:     []string{"loads.tailplane_stands", "loads.tailplane_bending"},
	},
	{
		id: "linkage.stiffness", title: "Speed at which the softest pushrod gives way over top speed", unit: "1", sense: LimitSenseAtLeast, neverNegative: true,
		method: "Thin-aerofoil hinge moment at half throw on the pushrod as a strut bent by a 200th of its length: Euler's load and crushing with a factor of 1.5, or a push that lets the control give a tenth of its angle.",
		source: "Glauert, ARC R&M 1095; Timoshenko and Gere, Theory of Elastic Stability, section 1.12; Euler",
		validity: "Straight unguided rods hinged at both ends; servo, tray and horn count as stiff, so check them by hand. " +
			"Controls without a declared linkage are left out.",
		from: []string{"linkage.speed", "speed.top"},
	},
	{
		id: "controls.free_play", title: "Most slack of a control over its chord", unit: "1", sense: LimitSenseAtMost, neverNegative: true,
		method: "Slack at the trailing edge as measured at the bench, over the chord of the hinged part in its middle.",
		source: "Geometry; the limit is the core's own judgement unless a club gives its own", validity: "Screening: less slack clears nothing. Measure with the servo powered, by hand at the trailing edge.",
		from: []string{"controls.free_play"},
	},
	{
		id: "controls.balance", title: "Top speed of controls without mass balance", unit: "m/s", sense: LimitSenseAtMost,
		method: "Controls not balanced about their hinge against the speed up to which that is common.",
		source: "The core's own judgement; CS-VLA 629, from memory, asks for balance or proof", validity: "Screening by speed alone: a balanced control may flutter, one without balance on a stiff linkage need not. A bench item.",
		from: []string{"speed.top"},
	},
}
