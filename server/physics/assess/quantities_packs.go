package assess

import "slices"

var supplySources = []string{"model.packs", "launchPlan.circuit.circuitCount"}

// packFigures lists the quantities of the packs.
var packFigures = []figureKind{
	{"packs.planned_time", "Time of the flight as planned", "s", "20 s + n s/V + 45 s", "The plan; launch and landing by judgement",
		[]string{"launchPlan.circuit.circuitCount", "circuit.leg", "circuit.radius", "circuit.airspeed"}},
	{"packs.energy_flights", "Flights on this charge", "1", "floor((1 - r) Q/q)", "Division", supplySources},
	{"packs.engine_control_flights", "Flights on this charge of the engine control", "1", "floor((1 - r) Q/q)", "Division", supplySources},
	{"packs.*.temperature", "Temperature of the cells", "C", "T = Ta + (T0 - Ta) exp(-t h A/(m c)), as the air where the wait is not told", "Lumped heat capacity of textbooks",
		[]string{"day.temperatureCelsius", "model.packs", indoorsMethod}},
	{"packs.*.mean_current", "Mean current", "A", "as measured, or the sum of the servos' classes", "Sum of currents; classes are common practice", []string{"model.packs", currentsMethod}},
	{"packs.*.peak_current", "Peak current", "A", "as measured, or the greater of 2.5 times all working and the two largest blocked", "Judgement", []string{"model.packs", currentsMethod}},
	{"packs.*.usable", "Usable charge", "Ah", "Q f(T) (I/Q)^(1-k) (1 - loss) - Q (1 - s)", "Peukert's law; data sheets of cells", supplySources},
	{"packs.*.drawn", "Charge that the flight draws", "Ah", "I t", "Definition of the ampere hour", []string{"packs.planned_time", "model.packs"}},
	{"packs.*.resistance", "Resistance of the pack at the end of the flight", "ohm", "R(25 C) f(T) f(s)", "Arrhenius' law with published energies", slices.Concat([]string{resistanceMethod}, supplySources)},
	{"packs.*.chain_resistance", "Resistance of leads, plugs and switch", "ohm", "2 f rho L/A + contacts", "International Annealed Copper Standard; data sheets of contacts", []string{"model.packs"}},
	{"packs.*.input_voltage", "Voltage at regulator or servos under the peak", "V", "U(s) - I (R + R_leads)", "Ohm's law", supplySources},
	{"packs.*.bus_voltage", "Voltage that the loads see under the peak", "V", "as set, or the input less the drop-out", "Drop-out of textbooks", supplySources},
	{"packs.*.cell_voltage", "Voltage of a cell under the peak", "V", "(U(s) - I R)/n", "Ohm's law", supplySources},
	{"packs.cold_limit", "Coldest at which the pack does what is wanted", "C", "charge, bus and cells just hold", "Bisection", slices.Concat([]string{resistanceMethod}, supplySources)},
	{"packs.tested_resistance", "Resistance by the reading under load, at 25 C", "ohm", "(U0 - U)/I / (f(T) f(s))", "Ohm's law; Arrhenius' law with published energies",
		[]string{"model.packs", "day.temperatureCelsius"}},
	{"packs.expected_voltage", "Voltage to be expected of a new pack under that load", "V", "U0 - R I", "Ohm's law", []string{"model.packs", "day.temperatureCelsius"}},
	{"packs.endurance", "Time from the launch until the flight pack is empty", "s", "t_launch + (Q - I_peak t_launch)/I", "Definition of the ampere hour", supplySources},
	{"packs.landing_call", "Time from the launch to the landing call", "s", "t_launch + (Q - launch - landing - reserve)/I", "Definition of the reserve: one go-around and one extra circuit",
		slices.Concat([]string{"packs.go_around_charge"}, supplySources)},
	{"packs.go_around_charge", "Charge of one go-around and one more circuit", "Ah", "I_peak t + I t_circuit", "Definition of the ampere hour", supplySources},
}
