package assess

import "slices"

// Quantities of control and natural motions.

const (
	nelson        = "Nelson, Flight Stability and Automatic Control"
	handlingRoots = "roots of the four equations of motion"
	inertiaPitch  = "model.inertia.pitchKgSquareMeters"
	inertiaRoll   = "model.inertia.rollKgSquareMeters"
	inertiaYaw    = "model.inertia.yawKgSquareMeters"
)

var (
	pitchSources = []string{surfacesPath, "lift.slope", "lift.neutral_point", "balance.full_x", "wing.mean_chord"}
	pitchMotion  = []string{"lift.slope", "lift.neutral_point", "balance.aft_x", "pitch.damping_derivative", "tail.downwash", "mass.takeoff", "air.density", "wing.area", "wing.mean_chord",
		"circuit.airspeed", "drag.zero_lift", "drag.lift_factor", inertiaPitch}
	yawSources = []string{surfacesPath, "circuit.airspeed", "mass.takeoff", "air.density", "wing.area", "wing.span", "balance.aft_x"}
	yawMotion  = []string{"fin.stiffness", "yaw.side_force_sideslip", "yaw.roll_sideslip", "yaw.damping", "roll.damping", "mass.takeoff", "air.density", "wing.area", "wing.span",
		"circuit.airspeed", inertiaRoll, inertiaYaw}
)

var handlingFigures = []figureKind{
	{"pitch.moment_zero", "Pitching moment without lift", "1", "Cm_0 of the lattice, controls neutral", latticeSource, []string{surfacesPath}},
	{"pitch.moment_slope", "Pitching moment with incidence, tanks full", "1/rad", "Cm_alpha = -CL_alpha (x_np - x)/c",
		"Raymer, Aircraft Design: A Conceptual Approach, Eq. 16.10", pitchSources},
	{"pitch.moment_control", "Pitching moment with the pitch control, tanks full", "1/rad", "Cm_delta of the lattice about the balance point", latticeSource,
		[]string{surfacesPath, "balance.full_x", "wing.mean_chord", "method: control power"}},
	{"pitch.lift_control", "Lift with the pitch control", "1/rad", "CL_delta of the lattice", latticeSource, []string{surfacesPath, "method: control power"}},
	{"pitch.damping_derivative", "Damping of pitch rate, tanks full", "1/rad", "Cm_q with q c/(2 V) of the lattice turning about the balance point", latticeSource,
		[]string{surfacesPath, "balance.full_x", "wing.mean_chord", "method: pitch damping"}},
	{"pitch.angle_per_load", "Control angle for one more g at top speed", "deg",
		"d delta/dn = -CW (Cm_a (1 - k CL_q) + k CL_a Cm_q)/(CL_a Cm_d - CL_d Cm_a)", "Etkin and Reid, Dynamics of Flight, Eq. 3.1,6",
		[]string{"lift.slope", "lift.neutral_point", "balance.aft_x", "pitch.damping_derivative", "pitch.moment_control", "pitch.lift_control", "mass.takeoff", "air.density", "wing.area", "speed.top"}},
	{"balance.manoeuvre_margin", "Balance point ahead of the manoeuvre point, over the mean chord", "1", "margin - Cm_q k/(1 - k CL_q)", nelson + ", section 2.7",
		[]string{"lift.neutral_point", "balance.aft_x", "wing.mean_chord", "pitch.damping_derivative", "mass.takeoff", "air.density", "wing.area"}},
	{"trim.control_worst", "Control angle where the least throw is left", "deg", "CL_a a + CL_d d = CL, Cm_0 + Cm_a a + Cm_d d = 0", nelson + ", Eq. 2.52",
		[]string{"pitch.moment_zero", "pitch.moment_control", "pitch.lift_control", "lift.slope", "lift.neutral_point", "balance.forward_x", "balance.aft_x", "mass.takeoff", "air.density", "wing.area"}},
	{"trim.speed_worst", "Speed where the least throw is left", "m/s", "the worst of seven from 1.1 Vs to the top speed", "search", []string{"stall.speed", "speed.top"}},
	{"trim.control_circuit", "Control angle in the circuit, tanks full", "deg", "CL_a a + CL_d d = CL, Cm_0 + Cm_a a + Cm_d d = 0", nelson + ", Eq. 2.52",
		[]string{"pitch.moment_zero", "pitch.moment_slope", "pitch.moment_control", "pitch.lift_control", "circuit.airspeed", "mass.takeoff", "air.density", "wing.area"}},
	{"launch.thrust_arm", "Thrust line below the balance point", "m", "(z - z_t) cos a + (x - x_t) sin a", "moment of a force", []string{"balance.full_x", "balance.full_z", "model.engines"}},
	{"launch.thrust_moment", "Pitching moment of the thrust at the launch", "N m", "M = T arm", "moment of a force", []string{"launch.thrust_arm", "thrust.static_day", "launch.end_speed", "thrust.spool_up"}},
	{"launch.control_needed", "Control angle needed at the launch", "deg", "Cm_0 + Cm_a a + Cm_d d + T arm/(q S c) = 0", nelson + ", chapter 2",
		[]string{"launch.thrust_moment", "pitch.moment_zero", "pitch.moment_slope", "pitch.moment_control", "launch.end_speed", "air.density", "wing.area", "wing.mean_chord"}},
	{"tail.downwash", "Downwash at the tail with incidence", "1", "de/da = -w/(V alpha) of the lattice at the tail's quarter chord", latticeSource, []string{surfacesPath}},
	{"tail.volume_horizontal", "Volume of the horizontal tail", "1", "V_H = S_t l/(S c)", "definition", []string{surfacesPath, "wing.area", "wing.mean_chord", "balance.full_x"}},
	{"tail.volume_vertical", "Volume of the fins", "1", "V_V = S_v l/(S b)", "definition", []string{surfacesPath, "wing.area", "wing.span", "balance.aft_x"}},
	{"motion.short_period_frequency", "Frequency of the short pitching motion", "rad/s", handlingRoots, nelson + ", section 4.4", pitchMotion},
	{"motion.short_period_damping", "Damping ratio of the short pitching motion", "1", handlingRoots, nelson + ", section 4.4", pitchMotion},
	{"motion.phugoid_period", "Period of the slow pitching motion", "s", handlingRoots, nelson + ", section 4.4", pitchMotion},
	{"motion.phugoid_damping", "Damping ratio of the slow pitching motion", "1", handlingRoots, nelson + ", section 4.4", pitchMotion},
	{"motion.dutch_roll_frequency", "Frequency of the Dutch roll", "rad/s", handlingRoots, nelson + ", section 5.5", yawMotion},
	{"motion.dutch_roll_damping", "Damping ratio of the Dutch roll", "1", handlingRoots, nelson + ", section 5.5", yawMotion},
	{"motion.roll_time", "Time constant of the roll", "s", handlingRoots, nelson + ", section 5.5", yawMotion},
	{"motion.spiral_rate", "Growth of a small bank", "1/s", handlingRoots, nelson + ", section 5.5", yawMotion},
	{"motion.spiral_tendency", "What a small bank does by itself", "", "sign and size of that root; within a minute of doubling or halving", "judgement", []string{"motion.spiral_rate"}},
	{"fin.part.fin", "Yawing moment with sideslip of fins and surfaces", "1/rad", "Cn_beta of the lattice less the wing's", latticeSource,
		slices.Concat([]string{"method: fin in the stream"}, yawSources)},
	{"fin.part.bodies", "Yawing moment with sideslip of the bodies", "1/rad", "Cn_beta = -1.3 volume/(S b) (depth/width)", "Raymer, Aircraft Design: A Conceptual Approach, Eq. 16.49",
		[]string{"model.bodies", "wing.area", "wing.span", "method: bodies in yaw"}},
	{"fin.part.wing", "Yawing moment with sideslip of the wing", "1/rad", "Cn_beta = CL^2 (1/(4 pi A) and the part of the sweep)", "Raymer, Aircraft Design: A Conceptual Approach, Eq. 16.45", yawSources},
	{"fin.stiffness", "Yawing moment with sideslip", "1/rad", "Cn_beta = sum of the parts", "sum", []string{"fin.part.fin", "fin.part.bodies", "fin.part.wing"}},
	{"yaw.side_force_sideslip", "Side force with sideslip", "1/rad", "CY_beta of the lattice", latticeSource, yawSources},
	{"yaw.roll_sideslip", "Rolling moment with sideslip", "1/rad", "Cl_beta of the lattice", latticeSource, yawSources},
	{"yaw.damping", "Damping of yaw rate", "1/rad", "Cn_r of the lattice and the profile drag of the wing", latticeSource, slices.Concat([]string{"drag.zero_lift"}, yawSources)},
	{"roll.power", "Rolling moment with the ailerons", "1/rad", "Cl_delta of the lattice", latticeSource, slices.Concat([]string{"method: control power"}, yawSources)},
	{"roll.damping", "Damping of roll rate", "1/rad", "Cl_p with p b/(2 V) of the lattice", latticeSource, slices.Concat([]string{"method: roll damping"}, yawSources)},
	{"roll.rate", "Roll rate at full throw in the circuit", "deg/s", "p = (Cl_delta delta/-Cl_p) 2 V/b", nelson + ", Eq. 5.8", []string{"roll.power", "roll.damping", "circuit.airspeed", "wing.span"}},
	{"roll.time_to_bank", "Time to 45 degrees of bank at full throw", "s", "bank = p (t - tau (1 - e^(-t/tau)))", nelson + ", Eq. 5.15",
		[]string{"roll.rate", "roll.damping", "mass.takeoff", inertiaRoll}},
	{"roll.twist_stiffness", "Moment at the tip of a wing panel over the twist it causes", "N m/rad", "as measured, or K = (4 A^2 G t/s)/(b/2) of the closed box",
		"Bredt's second formula, in Megson, Aircraft Structures for Engineering Students, chapter 18", nil},
	{"roll.reversal_speed", "Speed at which the ailerons lose their power", "m/s", "q = G J c_ld I1/(-c_md a I2), V = sqrt(2 q/rho)", "Fung, An Introduction to the Theory of Aeroelasticity, section 4.5",
		[]string{"roll.twist_stiffness", surfacesPath, "air.density", "method: aileron reversal"}},
	{"roll.power_left", "Share of the ailerons' power left at top speed", "1", "1 - q/q_reversal", "Megson, Aircraft Structures for Engineering Students, Eq. 29.22", []string{"roll.reversal_speed", "speed.top"}},
}
