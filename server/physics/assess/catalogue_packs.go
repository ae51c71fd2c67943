package assess

// packKinds lists the findings of the packs, in the order of the report.
var packKinds = []kind{
	{
		id: "packs.energy", title: "Share of a receiver pack's usable charge that the flight draws", unit: "1", sense: LimitSenseAtMost, neverNegative: true,
		method: "Mean current over the flight and five minutes on the ground, over the charge usable at the pack's temperature, rate and age; " +
			"currents by the class of each servo where they were not measured.",
		source:   "Peukert's law; data sheets of cells; life model of the National Renewable Energy Laboratory (2018); servo currents are published measurements and common practice",
		validity: "-20 to 60 C; class currents within 40 %; where each receiver has its own pack each carries its part, else each must carry all.",
		from:     []string{"packs.energy_flights", "model.packs", "launchPlan.circuit.circuitCount"},
	},
	{
		id: "packs.engine_control", title: "Share of the engine control pack's usable charge that the flight draws", unit: "1", sense: LimitSenseAtMost, neverNegative: true,
		method:   "As of the receiver packs, with the current as measured.",
		source:   "Peukert's law; data sheets of cells; life model of the National Renewable Energy Laboratory (2018)",
		validity: "-20 to 60 C.", from: []string{"packs.engine_control_flights", "model.packs", "model.engines", "launchPlan.circuit.circuitCount"},
	},
	{
		id: "packs.voltage", title: "Least voltage at receivers and servos", unit: "V", sense: LimitSenseAtLeast, neverNegative: true,
		method: "Rest voltage at the end of the flight less the peak current through the pack at its temperature, age and charge, through leads, plugs and switch, " +
			"and what the regulator makes of it.",
		source:   "Ohm's law; International Annealed Copper Standard; Arrhenius' law with published energies; drop-out of textbooks",
		validity: "Peaks of seconds; pack resistance by class within a factor of two where no reading under load replaces it.",
		from:     []string{"model.packs", "model.radio.receiverCount", "launchPlan.circuit.circuitCount"},
	},
	{
		id: "packs.current", title: "Volts to spare under the peak current", unit: "V", sense: LimitSenseAtLeast,
		method:   "Least over all packs of the input over the regulator's voltage and drop-out, and of the pack over the least its cells may have under load.",
		source:   "Ohm's law; data sheets of cells and regulators",
		validity: "Peaks of seconds, at the end of the flight.",
		from:     []string{"model.packs", "launchPlan.circuit.circuitCount"},
	},
	{
		id: "packs.cold", title: "Temperature of the packs after the wait in the open", unit: "C", sense: LimitSenseAtLeast,
		method: "A block of its mass cooling from 20 C in still air; against the coldest at which charge, bus and cells still hold, by bisection, " +
			"else the coldest that its cells are made for.",
		source: "Lumped heat capacity of textbooks; data sheets of cells", validity: "Packs thinner than 4 cm, unwrapped, no load.",
		from: []string{"packs.cold_limit", "day.temperatureCelsius", "model.packs", indoorsMethod},
	},
	{
		id: "packs.check", title: "Resistance by the reading under load over that of a new pack", unit: "1", sense: LimitSenseAtMost, neverNegative: true,
		method:   "Voltage at rest, read or of the charge, less the reading under load, over the current, brought to 25 C; the figure replaces the class resistance everywhere.",
		source:   "Ohm's law; Arrhenius' law with published energies; the end of life is common practice",
		validity: "A load of some seconds; a new pack's resistance by class within a factor of two.",
		from:     []string{"packs.tested_resistance", "packs.expected_voltage", "model.packs"},
	},
	{
		id: "packs.endurance", title: "Time until the flight pack is empty", unit: "min", sense: LimitSenseAtLeast, neverNegative: true,
		method:   "Usable charge at temperature, rate and age less the launch at full power, over the circuit's current.",
		source:   "Definition of the ampere hour; Peukert's law; data sheets of cells",
		validity: "Electric models; mean current as measured in the circuit.",
		from:     []string{"packs.endurance", "packs.planned_time", "model.packs", "model.engines"},
	},
	{
		id: "packs.reserve", title: "Share of the flight pack's usable charge left after the landing", unit: "1", sense: LimitSenseAtLeast,
		method:   "Charge left after launch, planned circuits and landing; the landing call leaves one go-around and one more circuit.",
		source:   "Definition of the reserve: one go-around and one extra circuit",
		validity: "Electric models; flown as planned.",
		from:     []string{"packs.landing_call", "packs.go_around_charge", "packs.planned_time", "model.packs", "model.engines"},
	},
}
