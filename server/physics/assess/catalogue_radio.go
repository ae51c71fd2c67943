package assess

// radioKinds lists the findings of the radio link, in the order of the report.
var radioKinds = []kind{
	{
		id: "radio.margin", title: "Margin of the radio link where it has least left", unit: "dB", sense: LimitSenseAtLeast,
		method: "Radiated power less free-space loss, the loss by the ground's reflection, what an installed receiver and the attitude of its antennas lose, over the " +
			"receiver's sensitivity; the least of the circuit's farthest corner and, low over the grass, the ends of launch and landing; one attitude in twenty is worse.",
		source:   "Recommendations ITU-R P.525 and P.2040; two-ray ground reflection and antenna patterns of textbooks; shading and installed loss are common practice",
		validity: "In sight over flat ground; bodies, fences, other transmitters and the noise of the model's own electrics are not in it; shading within 10 dB.",
		from:     []string{"radio.margin", "radio.tightest_place", "radio.clear_margin", "radio.worst_margin", "radio.deep_share"},
	},
	{
		id: "radio.range_check", title: "Range check: distance walked with reduced power", unit: "m", sense: LimitSenseAtLeast, neverNegative: true,
		method: "Distance walked against that at which the reduction of power would show the wanted margin at the circuit's farthest corner; " +
			"the link budget's own prediction for the check beside it.",
		source:   "Friis' equation; two-ray ground reflection of textbooks",
		validity: "In the open, the model as flown, control whole in its worst attitude; a check demonstrates its reduction at its own distance alone.",
		from:     []string{"radio.check_needed", "radio.check_demonstrated", "radio.check_carried", "radio.check_predicted", "model.radio.rangeCheckMeters"},
	},
	{
		id: "radio.failsafe", title: "Time from a lost link to the fail-safe's action", unit: "s", sense: LimitSenseAtMost, neverNegative: true,
		method:   "As timed with the engine running; an action that leaves the engine running, or a turbine idling, fails whatever its time.",
		source:   "Turbine rules of national associations: idle or, better, off within 2 s; kinematics",
		validity: "Timed by switching the transmitter off, the model held. A rule's time is not made milder by the spread of a measurement.",
		from:     []string{"model.radio.failSafeAction", "model.radio.failSafeDelaySeconds", "radio.failsafe_distance"},
	},
	{
		id: "radio.redundancy", title: "Receivers with a pack of their own", unit: "1", sense: LimitSenseAtLeast, still: true,
		method: "Receivers that a pack of their own feeds, and the parts whose single failure ends control.", source: "cut sets of order one of supply and link",
		validity: "Receivers that take over from one another by themselves; a switch to each pack.",
		from:     []string{"model.radio.receiverCount", "model.radio.separateReceiverPacks", "model.radio.antennas", "model.packs"},
	},
	{
		id: "radio.telemetry", title: "Warning when the way back is lost", unit: "1", sense: LimitSenseNone, still: true,
		method: "As told of the transmitter.", source: "the builder", validity: "Tried by taking the model's power away.", from: []string{"model.radio.telemetryLossWarned"},
	},
	{
		id: "radio.interference", title: "Interference noted without a known cause", unit: "1", sense: LimitSenseAtMost, still: true,
		method: "Observations noted of this link that name no cause.", source: "the builder's log", validity: "Everything seen was noted.",
		from: []string{"model.radio.interference", "model.radio"},
	},
}
