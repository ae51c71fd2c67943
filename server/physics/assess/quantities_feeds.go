package assess

// Quantities of fuel, of what the exhaust heats and of the engine's own figures.

const (
	thringNewby = "Thring and Newby 1953"
	feedTrade   = "common practice, no source"
	pipeFlow    = "Hagen and Poiseuille; Blasius 1913"
	greyHeat    = "textbooks of heat transfer"
)

var (
	mixPaths  = []string{feedPath + "fuel", feedPath + "densityKgPerCubicMeter", feedPath + "oilRatio", "day.temperatureCelsius"}
	flowPaths = []string{"fuel.circuit_share", "fuel.full_flow", flowMethod}
	hotPaths  = []string{"engine.1.exhaust_temperature", "heat.jet_speed", "model.engines[0].nozzleDiameterMeters", "day.temperatureCelsius"}
)

var feedFigures = []figureKind{
	{"engine.*.static_thrust", "Static thrust as rated", "N", "as its maker tells it", "the engine's data", nil},
	{"engine.*.exhaust_temperature", "Exhaust temperature at full thrust", "C", "as its maker tells it", "the engine's data", nil},
	{"engine.*.fuel_flow", "Fuel flow at full thrust", "g/min", "as its maker tells it", "the engine's data", nil},
	{"engine.balance_temperature", "Exhaust temperature of the energy balance less the one told", "K", "T = (f b H + cpa Ta)/(cpg (1 + f)), f = w/m",
		"energy balance of a gas turbine", []string{"engine.1.fuel_flow", "engine.1.exhaust_temperature", "model.engines[0].airMassFlowKgPerSecond"}},
	{"fuel.full_flow", "Fuel flow at full thrust, all engines", "kg/s", "w = sum of the engines' flows", "conservation of mass", []string{"engine.1.fuel_flow"}},
	{"fuel.mix_density", "Density of the fuel", "kg/m3", "as weighed, or rho15 - s (T - 288.15)", "thermal expansion of petroleum products", mixPaths},
	{"fuel.mix_viscosity", "Kinematic viscosity of the fuel", "m2/s", "log10 log10 (v + 0.7) = A - B log10 T", "MacCoull; ASTM D341", mixPaths},
	{"fuel.line_loss", "Loss of the suction lines at full flow", "Pa", "dp = (f L/d + 1.5 + n K) rho v^2/2", pipeFlow,
		[]string{feedPath + "lines", "fuel.mix_density", "fuel.mix_viscosity", "fuel.full_flow"}},
	{"fuel.filter_loss", "Loss of the filter at full flow", "Pa", "as measured, or 2000 Pa", feedTrade, []string{feedPath + "filter", feedPath + "filterPressureLossPascals"}},
	{"fuel.vent_suction", "Suction in the tank at full flow", "Pa", "dp = (f L/d + 1.5) rho v^2/2", pipeFlow, []string{feedPath + "ventBoreMeters", "fuel.full_flow", "fuel.mix_density", "air.station_pressure"}},
	{"fuel.column", "Suction of the column of fuel in the worst case", "Pa", "p = rho g (nz h + nx a)", "hydrostatics",
		[]string{feedPath + "pumpHeightMeters", feedPath + "pumpXMeters", "model.mass.tanks", "fuel.mix_density", "launch.peak_acceleration"}},
	{"fuel.suction", "Suction at the pump in the worst case", "Pa", "p = lines + filter + vent + column", "hydrostatics", []string{"fuel.line_loss", "fuel.filter_loss", "fuel.vent_suction", "fuel.column"}},
	{"fuel.suction_case", "Case of flight in which the pump sucks most", "", "the greatest of all cases", "hydrostatics", []string{"fuel.suction"}},
	{"fuel.released_air", "Air that comes out over the fuel that passes, at most", "1", "a = s (p0/p - 1)", "Henry's law; share from memory", []string{"fuel.suction", "air.station_pressure"}},
	{"fuel.trap_seconds", "Time that the air trap feeds the engine alone", "s", "t = V/Q", "continuity",
		[]string{feedPath + "airTrapVolumeLiters", feedPath + "headerTankLiters", "fuel.full_flow", feedPath + "densityKgPerCubicMeter"}},
	{"fuel.least_trap", "Volume of the least air trap", "m3", "V = t Q", feedTrade, []string{"fuel.full_flow", feedPath + "densityKgPerCubicMeter", feedPath + "feltPickup"}},
	{"fuel.least_vent", "Least bore of the vent", "m", "dp(d) = 500 Pa, 2 mm at least", pipeFlow, []string{"fuel.full_flow", feedPath + "densityKgPerCubicMeter", "air.station_pressure", "day.temperatureCelsius"}},

	{"fuel.circuit_share", "Share of full thrust in the circuit's turns", "1", "F/Fmax = D/T", andersonFlight,
		[]string{"circuit.airspeed", "turn.load_factor", "drag.zero_lift", "drag.lift_factor", "mass.takeoff", "air.density", "wing.area", "thrust.static_day"}},
	{"fuel.circuit_flow", "Fuel flow in the circuit", "kg/s", "w(F): on a line from idle to full, or through the points of a static run", feedTrade, flowPaths},
	{"fuel.circuit_time", "Time of one circuit", "s", "t = L/Vg + L/Vg + 2 (pi V/(g tan(bank)) + reaction)", andersonFlight,
		[]string{"circuit.airspeed", "launchPlan.circuit.straightLegMeters", "launchPlan.circuit.bankDegrees", "launchPlan.circuit.reactionSeconds", "launch.headwind", "launch.crosswind"}},
	{"fuel.circuit", "Fuel of one circuit", "kg", "m = w t", "definition", []string{"fuel.circuit_flow", "fuel.circuit_time"}},
	{"fuel.before", "Fuel burnt before the launch", "kg", "60 s at idle, 10 s at full thrust, 60 s at idle for taxiing", feedTrade, []string{"fuel.full_flow", "launchPlan.method"}},
	{"fuel.launch", "Fuel from letting go to the circuit's height", "kg", "m = w (t + h/climb)", "definition",
		[]string{"fuel.full_flow", "launch.screen_time", "launchPlan.circuit.heightMeters", "thrust.static_day", "mass.takeoff", "drag.zero_lift", "circuit.airspeed"}},
	{"fuel.landing", "Fuel of the last approach", "kg", "half a circuit", feedTrade, []string{"fuel.circuit"}},
	{"fuel.unusable", "Fuel that no pump reaches", "kg", "as measured, or a twentieth", feedTrade, []string{"mass.fuel"}},
	{"fuel.reserve", "Fuel of one go-around and one more circuit", "kg", "m = w_full (spool-up + h/climb) + w t", "definition of the reserve",
		[]string{"fuel.circuit", "fuel.full_flow", "thrust.spool_up", "launchPlan.circuit.heightMeters"}},
	{"fuel.endurance", "Time from launch until the tanks are empty", "s", "t = launch + (on board - before - launch - unusable)/w", "definition",
		[]string{"mass.fuel", "fuel.before", "fuel.launch", "fuel.unusable", "fuel.circuit_flow"}},
	{"fuel.landing_call", "Time from launch to the landing call", "s", "t = launch + (on board - before - launch - landing - reserve - unusable)/w", "definition of the reserve",
		[]string{"mass.fuel", "fuel.before", "fuel.launch", "fuel.landing", "fuel.reserve", "fuel.unusable", "fuel.circuit_flow"}},
	{"fuel.circuits", "Whole circuits until the landing call", "1", "n = flying/circuit", "definition", []string{"fuel.landing_call", "fuel.circuit"}},
	{"fuel.left", "Fuel left after the planned circuits and the landing", "kg", "left = on board - before - launch - n circuit - landing - unusable", "definition",
		[]string{"mass.fuel", "fuel.before", "fuel.launch", "fuel.circuit", "fuel.landing", "fuel.unusable", "launchPlan.circuit.circuitCount"}},

	{"heat.jet_speed", "Speed of the jet, standing", "m/s", "v = F/m", "momentum", []string{"engine.1.static_thrust", "model.engines[0].airMassFlowKgPerSecond"}},
	{"heat.best.*", "Temperature of a part near the exhaust", "C", "Ta + (Tj - Ta) e(x, r), or balance of radiation and air", thringNewby + "; " + greyHeat, hotPaths},
	{"heat.conservative.*", "Temperature of a part near the exhaust, conservative", "C", "as the best, with the widest plume or without any draught", thringNewby + "; " + greyHeat, hotPaths},
	{"heat.soak.*", "Greatest temperature of a part after shut-down", "C", "Cs dT/dt = q - losses, stepped forward", greyHeat, hotPaths},
	{"heat.warming.*", "Least time until a thin skin reaches its limit", "s", "t = rho c d/h ln((Tg - T0)/(Tg - T))", greyHeat, hotPaths},
	{"heat.reach", "Distance behind the nozzle to gas of 60 C", "m", "x = 5 de (Tj - Ta)/(T - Ta)", thringNewby, hotPaths},
	{"heat.blast_reach", "Distance behind the nozzle to a wind of 10 m/s", "m", "x = 6 de Uj/U", thringNewby, hotPaths},
	{"heat.ground", "Temperature of the gas at the ground behind the nozzle", "C", "Ta + (Tj - Ta) e(x, h), greatest", thringNewby, hotPaths},
	{"heat.ground_conservative", "Temperature of the gas at the ground, conservative", "C", "as the other, with the widest plume", thringNewby, hotPaths},
}
