package assess

// Quantities of the lifting surfaces, the drag and the balance.

const (
	latticeSource  = "Katz and Plotkin, Low-Speed Aerodynamics; Bertin and Smith, Aerodynamics for Engineers"
	criticalStrip  = "critical-section method, NACA Report 572 (from memory)"
	liftEquation   = "lift equation"
	buildUpSource  = "Raymer, Aircraft Design: A Conceptual Approach, chapter 12"
	surfacesPath   = "model.surfaces"
	meanChord      = "definition of the mean aerodynamic chord"
	marginIdentity = "definition of the static margin"
)

var liftFigures = []figureKind{
	{"wing.area", "Projected wing area", "m2", "S = 2 integral c dy", "plane geometry", []string{surfacesPath}},
	{"wing.span", "Wing span", "m", "b = 2 y_tip", "plane geometry", []string{surfacesPath}},
	{"wing.aspect_ratio", "Aspect ratio", "1", "A = b^2/S", "definition", []string{"wing.span", "wing.area"}},
	{"wing.mean_chord", "Mean aerodynamic chord", "m", "c = (2/S) integral c^2 dy", meanChord, []string{surfacesPath}},
	{"wing.mean_chord_leading_edge_x", "Leading edge of the mean chord", "m", "x = (2/S) integral x_LE c dy", meanChord, []string{surfacesPath}},
	{"wing.loading", "Mass over wing area", "kg/m2", "m/S", "definition", []string{"mass.takeoff", "wing.area"}},
	{"lift.slope", "Lift slope of the whole model", "1/rad",
		"CL_alpha = (2/S V) sum of the lattice's circulations per rad of incidence", latticeSource,
		[]string{surfacesPath, "wing.area", "method: lift slope of the lattice"}},
	{"lift.zero_incidence", "Incidence without lift", "rad",
		"alpha_0 = -CL(0)/CL_alpha", latticeSource, []string{surfacesPath, "lift.slope"}},
	{"lift.slope_ground", "Lift slope standing on the wheels", "1/rad", "CL_alpha of the lattice with its image in the ground", latticeSource,
		[]string{surfacesPath, "model.gear.wheels", "lift.slope"}},
	{"lift.part.*.centre_x", "Where the lift of one surface acts", "m", "x = -M(0)/L of its share", latticeSource, []string{surfacesPath}},
	{"lift.part.*", "Lift slope of one surface among the others, on the wing area", "1/rad", "2/(S V) sum of its circulations per rad of incidence", latticeSource,
		[]string{surfacesPath, "wing.area"}},
	{"lift.body_moment_slope", "Pitching moment that the bodies add", "1/rad",
		"Cm_alpha = pi/(2 S c) integral w^2 (1 + upwash) dx", "Multhopp, NACA TM 1036", []string{surfacesPath, "model.bodies", "wing.area", "wing.mean_chord"}},
	{"lift.neutral_point", "Neutral point", "m",
		"x_np = -c Cm_alpha(0)/CL_alpha, bodies included", "definition of the neutral point",
		[]string{surfacesPath, "lift.slope", "lift.body_moment_slope", "wing.mean_chord", "method: neutral point"}},
	{"lift.maximum_coefficient", "Greatest lift coefficient, clean, in balance", "1",
		"CL in balance where the first strip has cl = clmax(Re), or the control its full throw", criticalStrip,
		[]string{surfacesPath, "balance.forward_x", "model.finish", "day.frost", "lift.slope", "lift.zero_incidence", "lift.stall_reynolds", "method: greatest lift of the section"}},
	{"lift.maximum_coefficient_takeoff", "Greatest lift coefficient, flaps as for take-off, in balance", "1",
		"CL in balance where the first strip has cl = clmax(Re) + flap gain, or the control its full throw", criticalStrip,
		[]string{surfacesPath, "balance.forward_x", "model.finish", "day.frost", "lift.slope", "lift.zero_incidence", "method: greatest lift of the section"}},
	{"lift.maximum_coefficient_untrimmed", "Greatest lift coefficient, clean, controls neutral", "1",
		"CL at the least over the strips of (clmax(Re) - cl_basic)/cl_slope", criticalStrip, []string{surfacesPath, "lift.slope", "lift.zero_incidence", "lift.stall_reynolds", "model.finish", "day.frost"}},
	{"lift.stall_control", "Pitch control at the stall", "deg", "the angle that balances the moments there", "balance of lift and moment on the lattice",
		[]string{surfacesPath, "balance.forward_x", "lift.body_moment_slope", "lift.maximum_coefficient"}},
	{"lift.tip_margin", "Incidence left at the tips when the first strip stalls", "deg", "least over the outer 15 % of (clmax(Re) - cl)/cl_slope", criticalStrip,
		[]string{surfacesPath, "lift.maximum_coefficient"}},
	{"lift.stall_station", "Strip that stalls first", "", "the strip of least incidence left", criticalStrip, []string{surfacesPath}},
	{"lift.stall_span_ratio", "Where it stalls first, over the half span", "1", "2 y/b of that strip", criticalStrip, []string{surfacesPath}},
	{"lift.stall_reynolds", "Reynolds number of the strip that stalls first", "1",
		"Re = rho V c/mu at the stall speed, found in three rounds", "definition",
		[]string{surfacesPath, "air.density", "air.viscosity", "mass.takeoff", "wing.area"}},
	{"balance.window_forward_x", "Foremost place of the balance point", "m", "x = x_np - most c", marginIdentity, []string{"lift.neutral_point", "wing.mean_chord"}},
	{"balance.window_aft_x", "Aftmost place of the balance point", "m", "x = x_np - least c", marginIdentity, []string{"lift.neutral_point", "wing.mean_chord"}},
	{"balance.margin_full.room_forward", "Room to move the balance point forward, tanks full", "m",
		"(most - margin) c", marginIdentity, []string{"lift.neutral_point", "balance.full_x", "wing.mean_chord"}},
	{"balance.margin_full.room_aft", "Room to move the balance point aft, tanks full", "m",
		"(margin - least) c", marginIdentity, []string{"lift.neutral_point", "balance.full_x", "wing.mean_chord"}},
	{"balance.margin_empty.room_forward", "Room to move the balance point forward, tanks empty", "m",
		"(most - margin) c", marginIdentity, []string{"lift.neutral_point", "balance.empty_x", "wing.mean_chord"}},
	{"balance.margin_empty.room_aft", "Room to move the balance point aft, tanks empty", "m",
		"(margin - least) c", marginIdentity, []string{"lift.neutral_point", "balance.empty_x", "wing.mean_chord"}},
}

var dragFigures = []figureKind{
	{"drag.induced_factor", "Drag due to lift of the lattice", "1", "K = CDi/CL^2 in the Trefftz plane", latticeSource, []string{surfacesPath, "lift.slope"}},
	{"drag.induced_ground_ratio", "Drag due to lift standing on the wheels over that in free air", "1", "K_ground/K of the lattice with its image in the ground", latticeSource,
		[]string{surfacesPath, "model.gear.wheels", "drag.induced_factor"}},
	{"drag.span_efficiency", "Span efficiency", "1", "e = 1/(pi A K)", "definition", []string{"drag.induced_factor", "wing.aspect_ratio"}},
	{"drag.part.*", "Drag of one part without lift, on the wing area", "1", "CD = Cf FF Q Swet/S, or CD_part A_part/S", buildUpSource,
		[]string{"wing.area", surfacesPath, "model.bodies", "air.density", "air.viscosity"}},
	{"drag.zero_lift_launch", "Drag coefficient without lift, wheels down", "1", "CD0 = sum over the parts", buildUpSource, []string{"method: zero-lift drag"}},
	{"drag.zero_lift", "Drag coefficient without lift at speed", "1",
		"CD0 = sum over the parts, wheels up where they retract", buildUpSource, []string{"drag.zero_lift_launch", "method: zero-lift drag"}},
	{"drag.lift_factor", "Drag due to lift with the friction that grows with it", "1",
		"k = 1/(pi A e0), 1/e0 = 1/e + 0.38 pi A CD0", "common practice in conceptual design (from memory)",
		[]string{"drag.span_efficiency", "wing.aspect_ratio", "drag.zero_lift", "method: induced drag"}},
}
