package assess

import "slices"

// loadFigures lists the quantities of structure and of the speeds not to pass.
var loadFigures = slices.Concat(wingFigures, partFigures)

const tailRules = "14 CFR 23.421 to 23.425 before 2017"

// tailFrom is what the loads of the tail are computed from.
var tailFrom = []string{surfacesPath, "mass.takeoff", "speed.top", "stall.speed", "loads.asked", "loads.design_gust", "air.density", "balance.forward_x"}

var partFigures = []figureKind{
	{"loads.basis", "What the load factor that the wing stands rests on", "", "test before calculation before design", "14 CFR 25.307", []string{"loads.stands"}},
	{"loads.pull_up_speed", "Speed at which a pull-up as tight as the circuit's turn takes what the wing stands", "m/s", "V = sqrt(g R (n - 1))",
		"Megson, Aircraft Structures for Engineering Students, Eq. 13.16", []string{"loads.stands", "circuit.airspeed", "turn.load_factor"}},
	{"loads.full_pull_speed", "Speed up to which the wing stalls before a full pull overloads it", "m/s", "V = Vs sqrt(n)", "14 CFR 23.335(c) before 2017",
		[]string{"stall.speed", "loads.stands"}},
	{"loads.sandbag_mass", "Mass to lay on the wing, upside down on its seat, to test the load factor asked for", "kg", "n (m - m_w) - m_w", "statics",
		[]string{"loads.asked", "mass.takeoff"}},
	{"loads.schrenk_ratio", "Root bending by the lattice over that by Schrenk for the same lift", "1", "sum F_i y_i over that of the mean of chord and ellipse",
		"O. Schrenk, NACA TM 948", []string{surfacesPath, "mass.takeoff", "loads.asked", "stall.speed", "air.density"}},
	{"loads.seat_pull", "Pull on the wing's seat at the load factor asked for", "N", "P = 2 V + |2 T|/l", "statics", []string{surfacesPath, "mass.takeoff", "loads.asked", "speed.top", boltLeverPath}},
	{"loads.bolts_stand", "Load factor that the wing's seat stands", "1", "1.5 P/(N 0.71 pi D^2/4) = allowable", stressTexts, []string{"loads.seat_pull", boltCountPath, boltMaterialPath, partMethod, partGuess}},
	{"loads.root_twist", "Greatest twist at the wing's root", "N m", "T = sum (M_i + F_i (x_axis - x_i))", "statics of a cantilever", []string{surfacesPath, "mass.takeoff", "loads.asked", "speed.top", axisPath}},
	{"loads.skin_stands", "Twist that the wing's skin stands", "N m", "1.5 T/(2 A w) = allowable", "Bredt; " + stressTexts, []string{boxPath, partMethod, partGuess}},
	{"loads.boom_bending", "Greatest bending of each tail boom", "N m", "M = F l - n (m_t + m_b/2) g l", tailRules, tailFrom},
	{"loads.boom_stands", "Bending that each tail boom stands", "N m", "1.5 stress = allowable", stressTexts, []string{boomPath, partMethod, partGuess}},
	{"loads.canard_bending", "Greatest bending at the canard's root", "N m", "M = sum F_i y_i - n g sum m_i y_i", tailRules, tailFrom},
	{"loads.canard_stands", "Bending that the canard's spar stands", "N m", "1.5 stress = allowable", stressTexts, []string{canardPath, partMethod, partGuess}},
	{"loads.tailplane_bending", "Greatest bending at the tailplane's root", "N m", "M = sum F_i y_i - n g sum m_i y_i", tailRules, tailFrom},
	{"loads.tailplane_stands", "Bending that the tailplane's spar stands", "N m", "1.5 stress = allowable", stressTexts, []string{tailplanePath, partMethod, partGuess}},
	{"linkage.speed", "Speed at which the softest pushrod gives way at half throw", "m/s", "V = sqrt(2 H/(rho A h)), H = P r cos t", "Timoshenko and Gere, Theory of Elastic Stability, section 1.12",
		[]string{"air.density", hingeMethod, partMethod, partGuess}},
	{"linkage.load", "Push that the softest pushrod stands", "N", "least of pi^2 E I/L^2 and crushing", "Euler", []string{surfacesPath}},
	{"controls.free_play", "Most slack of a control over its chord", "1", "play/chord", "geometry", []string{surfacesPath, partMethod, partGuess}},
}
