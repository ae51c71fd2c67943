package assess

const twoRays = "Two-ray ground reflection, textbooks of mobile radio; ground after Recommendation ITU-R P.2040"

// radioFigures lists the quantities of the radio link.
var radioFigures = []figureKind{
	{"radio.farthest_range", "Slant range of the circuit's farthest corner from the pilot", "m", "sqrt(x^2 + (h - h_t)^2)", "Plane geometry",
		[]string{"circuit.leg", "circuit.airspeed", "wind.mean", "field.pilotPosition", "launchPlan.circuit.heightMeters"}},
	{"radio.tightest_place", "Place where the link has least left", "", "least margin of the circuit's farthest corner and the ends of launch and landing", "Search",
		[]string{"radio.farthest_range", "field.pilotPosition"}},
	{"radio.slant_range", "Slant range of that place", "m", "sqrt(x^2 + (h - h_t)^2)", "Plane geometry", []string{"radio.tightest_place", "field.pilotPosition"}},
	{"radio.free_space_loss", "Loss by distance alone", "dB", "L = 20 log10(4 pi d f/c)", "Recommendation ITU-R P.525",
		[]string{"radio.slant_range", "model.radio.frequencyMegahertz"}},
	{"radio.ground_loss", "Loss by the ground's reflection", "dB", "-20 log10 |1 + G (d1/d2) exp(-i k (d2 - d1))|, nearer than the last peak the depth of a null", twoRays,
		[]string{"radio.slant_range", "model.radio.frequencyMegahertz", "model.radio.transmitterHeightMeters", "model.radio.transmitterAntennaElevationDegrees",
			lowAntennaMethod}},
	{"radio.attitude_loss", "Loss that one attitude in twenty exceeds", "dB", "least over the antennas of -20 log10(F(t) |e . a|) + shading, over all attitudes",
		"Half-wave dipole and Malus' law, textbooks of antennas; shading by common practice", []string{"model.radio.antennas"}},
	{"radio.deep_share", "Share of attitudes that lose more than 10 dB", "1", "share of attitudes over the golden spiral of directions", "Half-wave dipole and Malus' law, textbooks of antennas",
		[]string{"model.radio.antennas"}},
	{"radio.clear_margin", "Margin there with the antennas best turned", "dB", "M = P + 2.15 - L - L_ground - L_installed - S", "Friis' equation",
		[]string{"radio.free_space_loss", "radio.ground_loss", "model.radio.radiatedPowerMilliwatts", "model.radio.receiverSensitivityDbm", "model.radio.antennas", installedMethod}},
	{"radio.margin", "Margin there that 19 attitudes in 20 keep", "dB", "M + L_shade - L_attitude", "Friis' equation", []string{"radio.clear_margin", "radio.attitude_loss", radioMethod}},
	{"radio.worst_margin", "Margin there in the worst attitude", "dB", "M + L_shade - greatest loss", "Friis' equation", []string{"radio.clear_margin", "model.radio.antennas"}},
	{"radio.check_needed", "Distance at which the range check would show the wanted margin", "m", "d = D 10^((M - X)/20)", "Friis' equation",
		[]string{"radio.farthest_range", "model.radio.rangeCheckReductionDecibels", "limits.minimumRadioMarginDecibels"}},
	{"radio.check_demonstrated", "Margin that the range check demonstrates at its own distance", "dB", "X", "Definition", []string{"model.radio.rangeCheckReductionDecibels"}},
	{"radio.check_carried", "Margin carried from the range check to the farthest corner", "dB", "least of X - 20 log10(D/d) and X + L(two rays at d) - L(D)", "Friis' equation; " + twoRays,
		[]string{"radio.check_demonstrated", "radio.farthest_range", "model.radio.rangeCheckMeters", "model.radio.rangeCheckHeightMeters"}},
	{"radio.check_predicted", "Margin that the link budget predicts for the range check", "dB", "M(d) - X", "Friis' equation; " + twoRays,
		[]string{"model.radio.rangeCheckMeters", "model.radio.rangeCheckHeightMeters", "model.radio.rangeCheckReductionDecibels"}},
	{"radio.failsafe_distance", "Way flown from the loss of the link until thrust is gone", "m", "V (t + t_run_down)", "Kinematics",
		[]string{"circuit.airspeed", "model.radio.failSafeDelaySeconds", "model.engines"}},
}
