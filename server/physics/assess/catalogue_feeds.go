package assess

// feedKinds lists the findings of fuel, of what the exhaust heats, and of the engine's own figures.
var feedKinds = []kind{
	{
		id: "fuel.endurance", title: "Time from launch until the tanks are empty", unit: "s", sense: LimitSenseAtLeast, neverNegative: true,
		method:   "Fuel on board less start, check, taxi, launch and what no pump reaches, over the flow that holds the circuit's speed in its turns.",
		source:   "Balance of the fuel; flow against thrust of small turbines on a line from idle to full, or through the points of a static run",
		validity: "Flows as rated, within a tenth; aerobatics at full thrust are not planned for.",
		from:     []string{"fuel.endurance", "fuel.circuit_flow", "fuel.circuit_time"},
	},
	{
		id: "fuel.reserve", title: "Fuel left at the landing over the load", unit: "1", sense: LimitSenseAtLeast,
		method:   "What the pump still reaches after the planned circuits and the landing; asked for are one go-around and one more circuit, or the share of the limits where that is more.",
		source:   "Definition of the reserve: one go-around and one extra circuit",
		validity: "As for the endurance.",
		from:     []string{"fuel.left", "fuel.reserve", "mass.fuel", "fuel.landing_call"},
	},
	{
		id: "fuel.suction", title: "Suction at the pump in the worst case of flight", unit: "Pa", sense: LimitSenseAtMost,
		method:   "Loss of lines, fittings, filter and vent at full flow and the column of fuel between pick-up and pump, in level flight, steep climb, pull-up, push and launch.",
		source:   "Hagen and Poiseuille; Blasius 1913; hydrostatics; suction at which air comes out as told by filter makers for diesel plant",
		validity: "Smooth lines that do not collapse, a tank at outside pressure; the limit is known within a third, which the band carries.",
		from:     []string{"fuel.suction", "fuel.suction_case", releaseMethod},
	},
	{
		id: "fuel.trap", title: "Time that the air trap feeds the engine alone", unit: "s", sense: LimitSenseAtLeast, neverNegative: true,
		method:   "Volume of the trap, and of a header tank ahead of it, over the full flow.",
		source:   "Continuity; three times the longest time a pick-up sucks air, common practice",
		validity: "A trap full of fuel at the start; required for turbines that manoeuvre.",
		from:     []string{"fuel.trap_seconds", "fuel.least_trap"},
	},
	{
		id: "fuel.vent", title: "Bore of the tank's vent over the least that will do", unit: "1", sense: LimitSenseAtLeast, neverNegative: true,
		method:   "Bore at which the air that replaces the fuel loses 500 Pa, never less than 2 mm, which a drop would close.",
		source:   "Darcy and Weisbach; entry and exit of 0.5 and 1 velocity heads",
		validity: "Air in the vent, its mouth out of the wind and of suction.",
		from:     []string{"fuel.least_vent", feedPath + "ventBoreMeters"},
	},
	{
		id: "fuel.filter", title: "Filter ahead of the pump", unit: "Pa", sense: LimitSenseNone, still: true,
		method:   "As declared; its loss counts in the suction at the pump.",
		source:   "Common practice, no source",
		validity: "A clean filter; its loss grows as it fills.",
		from:     []string{feedPath + "filter"},
	},
	{
		id: "heat.plume", title: "Room to what the hottest part behind the nozzle stands", unit: "K", sense: LimitSenseAtLeast,
		method:   "Round turbulent jet of hot gas at full power in still air; every declared part, and every surface and body found in gas of 45 C or more.",
		source:   "Thring and Newby 1953; Long 1963; Kaye, Khan and Testik 2018",
		validity: "Standing, which is hotter than flight. The lower end of the band is at least the conservative answer.",
		from:     []string{plumeMethod},
	},
	{
		id: "heat.skin", title: "Room to what the hottest part beside engine or pipe stands", unit: "K", sense: LimitSenseAtLeast,
		method:   "Radiation of the wall against the air drawn along the skin, and what soaks through after shut-down; conservative in a tunnel without any draught.",
		source:   "Textbooks of heat transfer: exchange of grey surfaces, balance of heat",
		validity: "Thin skins; a wall as hot as the gas unless it was measured. The lower end of the band is at least the conservative answer.",
		from:     []string{skinMethod},
	},
	{
		id: "heat.ground", title: "Room to what lights dry grass behind the nozzle", unit: "K", sense: LimitSenseAtLeast,
		method:   "Temperature of the plume of a level axis at the height of the nozzle, with its image where it runs along the ground; 250 C may light dry grass.",
		source:   "Thring and Newby 1953; Babrauskas 2001 for the ignition of wood at its least flux",
		validity: "A normal run at full power; a wet start that throws burning fuel lights grass at once.",
		from:     []string{"heat.ground", "heat.ground_conservative", "day.surfaceState", plumeMethod},
	},
	{
		id: "engine.consistency", title: "Exhaust temperature as told against that of fuel and air", unit: "K", sense: LimitSenseAtMost, still: true,
		method:   "Energy of the fuel in the air that the engine is said to take; the jet's speed from thrust over mass flow.",
		source:   "Energy balance of a gas turbine; isentropic flow of a convergent nozzle",
		validity: "Within some 50 K where the figures are right; the worst engine counts.",
		from:     []string{"engine.balance_temperature"},
	},
	{
		id: "engine.exhaust_temperature", title: "Exhaust temperature in the day's air", unit: "C", sense: LimitSenseAtMost,
		method:   "Exhaust temperature as measured or told, in proportion to the temperature of the air.",
		source:   "Corrected parameters of gas turbines",
		validity: "Full power, steady; a start may be hotter.",
		from:     []string{"day.temperatureCelsius"},
	},
}
