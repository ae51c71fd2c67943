package assess

// Quantities of structure and of the speeds not to pass.

const (
	gustRules   = "14 CFR 23.341(c) before 2017"
	sparPath    = "model.structure.wingSpar"
	joinerPath  = "model.structure.joiner"
	proofPath   = "model.structure.proofLoadFactor"
	designPath  = "model.structure.designLoadFactor"
	finPath     = "model.structure.finPlate"
	axisPath    = "model.structure.torsionBox.elasticAxisRatio"
	sparMethod  = "method: strength of the spar"
	joinMethod  = "method: strength of the joiner"
	hingeMethod = "method: hinge moments"
	plateMethod = "method: thin-fin flutter"
	twistMethod = "method: divergence"
)

var wingFigures = []figureKind{
	{"loads.design_gust", "Gust that the load factors are asked for with", "m/s", "as limited, or 5 m/s", "the club's own figure", []string{"limits.designGustMetersPerSecond", "method: design gust"}},
	{"loads.manoeuvre", "Load factor of the pull-up at top speed", "1", "n as designed for, no more than (V/Vs)^2", "14 CFR 23.337 before 2017",
		[]string{designPath, "method: usual pull-up", "speed.top", "stall.speed"}},
	{"loads.circuit", "Load factor in the circuit's turn with the gust", "1", "1/cos bank + rho V a K U/(2 W/S), no more than (V/Vs)^2", gustRules,
		[]string{"turn.load_factor", "circuit.airspeed", "loads.design_gust", "lift.slope", "wing.loading", "air.density", "stall.speed"}},
	{"loads.gust_factor", "Load factor of the gust at top speed", "1", "1 + rho V a K U/(2 W/S), no more than (V/Vs)^2", gustRules,
		[]string{"speed.top", "loads.design_gust", "lift.slope", "wing.loading", "air.density", "stall.speed"}},
	{"loads.asked", "Load factor asked of the structure", "1", "greater of pull-up and circuit", "definition of the limit load", []string{"loads.manoeuvre", "loads.circuit"}},
	{"loads.root_bending", "Bending at the wing's root at the load factor asked for", "N m", "M = sum F_i (y_i - y)", "statics of a cantilever",
		[]string{surfacesPath, "mass.takeoff", "loads.asked", "speed.top"}},
	{"loads.root_shear", "Shear at the wing's root at the load factor asked for", "N", "V = sum F_i", "statics of a cantilever",
		[]string{surfacesPath, "mass.takeoff", "loads.asked", "speed.top"}},
	{"loads.stands", "Load factor that the wing stands", "1", "1.5 stress(n) = allowable", stressTexts, []string{surfacesPath, "mass.takeoff", "speed.top", "air.density", sparMethod}},
	{"loads.joiner_stands", "Load factor that the wing joiner stands", "1", "1.5 stress(n) = allowable, 6 M/L^2 + 4 V/L = pressure of the socket", stressTexts,
		[]string{surfacesPath, "mass.takeoff", "speed.top", "air.density", joinMethod}},
	{"loads.pull_up_radius", "Least radius of a pull-up at top speed", "m", "R = V^2/(g (n - 1))", "Megson, Aircraft Structures for Engineering Students, Eq. 13.16",
		[]string{"loads.stands", "speed.top", "stall.speed"}},
	{"loads.manoeuvring_speed", "Speed below which the wing stalls before the load factor asked for", "m/s", "V = Vs sqrt(n)", "14 CFR 23.335(c) before 2017",
		[]string{"stall.speed", "loads.asked"}},
	{"servo.speed", "Speed at which the weakest servo gives in at half throw", "m/s", "q = N T/(k A h), V = sqrt(2 q/rho)", "Glauert, ARC R&M 1095", []string{"air.density", hingeMethod}},
	{"speed.divergence", "Speed at which lift twists the wing off", "m/s", "theta = q K[theta]", "Bisplinghoff, Ashley and Halfman, Aeroelasticity, chapter 8",
		[]string{"roll.twist_stiffness", surfacesPath, "lift.slope", "air.density", axisPath, "method: elastic axis", twistMethod}},
	{"speed.fin_flutter", "Speed at which a thin plate fin may flutter", "m/s", "V = a sqrt(G/((39.3/14.696) P A^3 (t + 1)/(2 (A + 2) (h/c)^3)))", "D. J. Martin, NACA TN 4197, from memory",
		[]string{surfacesPath, finPath, "air.station_pressure", "air.sound_speed", plateMethod}},
	{"speed.never_exceed", "Speed never to exceed", "m/s", "least of share times speed", "CS-VLA 335 and 629, from memory",
		[]string{"speed.divergence", "roll.reversal_speed", "speed.fin_flutter", "servo.speed", "limits.maximumSpeedMetersPerSecond"}},
	{"speed.never_exceed_term", "What governs the speed never to exceed", "", "the least term", "CS-VLA 335 and 629, from memory", []string{"speed.never_exceed"}},
	{"speed.dive_reserve", "Speed never to exceed over top speed", "1", "V_ne/V_top", "14 CFR 23.335(b) before 2017", []string{"speed.never_exceed", "speed.top"}},
}
