package assess

const engineGroup = "Engine"

var benchEngineRows = []benchRow{
	{id: "bench.engine.static_run", group: engineGroup, title: "Thrust standing still", each: benchEngines, input: ".staticThrustNewtons", unit: "N", photo: true,
		how:      "By the card of the static run: model held by a spring scale, full power for five seconds; note temperature and pressure of the air.",
		why:      "Installed thrust is less than the maker's, by how much only a scale tells.",
		findings: []string{"thrust.ratio", "launch.distance", "launch.end_speed", "climb.clearance", "speed.top"},
		wanted:   notUnder(ofEngine(func(e *Engine) *Quantity { return e.StaticThrustNewtons }))},
	{id: "bench.engine.idle", group: engineGroup, title: "Thrust at idle", each: benchEngines, input: ".idleThrustNewtons", unit: "N", applies: isTurbine,
		how: "The same scale, engine at idle for half a minute.", why: "Idle thrust flattens the approach and drags a standing model along.",
		findings: []string{"landing.distance", "approach.margin"}, wanted: notOver(ofEngine(func(e *Engine) *Quantity { return e.IdleThrustNewtons }))},
	{id: "bench.engine.fuel_flow", group: engineGroup, title: "Fuel at full power", each: benchEngines, input: ".fullFuelFlowGramsPerMinute", unit: "g/min", applies: isTurbine,
		how: "Weigh the model before and after a minute at full power.", why: "Endurance and suction go with it.",
		findings: []string{"fuel.endurance", "fuel.reserve", "fuel.suction", "engine.consistency"},
		wanted:   within(ofEngine(func(e *Engine) *Quantity { return e.FullFuelFlowGramsPerMinute }))},
	{id: "bench.engine.idle_flow", group: engineGroup, title: "Fuel at idle", each: benchEngines, input: ".idleFuelFlowGramsPerMinute", unit: "g/min", applies: isTurbine,
		how: "Weigh before and after two minutes at idle.", why: "Half of a short flight's fuel goes at little power.", findings: []string{"fuel.endurance", "fuel.reserve"},
		wanted: notOver(ofEngine(func(e *Engine) *Quantity { return e.IdleFuelFlowGramsPerMinute }))},
	{id: "bench.engine.exhaust", group: engineGroup, title: "Exhaust temperature at full power", each: benchEngines, input: ".exhaustTemperatureCelsius", unit: "C", applies: isTurbine,
		how: "Read the engine's own probe once it stands still.", why: "Too hot: air is missing or the pipe chokes; too cold: the probe is not in the jet.",
		findings: []string{"engine.exhaust_temperature", "engine.consistency", "heat.plume", "heat.skin"}, wanted: wantedExhaust},
	{id: "bench.engine.spool_up", group: engineGroup, title: "Idle to full thrust", each: benchEngines, input: ".spoolUpSeconds", unit: "s",
		how: "Stick forward at once; watch in hand, the scale decides.", why: "A go-around begins with this wait.",
		findings: []string{"landing.go_around", "launch.distance"}, wanted: notOver(ofEngine(func(e *Engine) *Quantity { return e.SpoolUpSeconds }))},
	{id: "bench.engine.run_down", group: engineGroup, title: "Fuel cut to no thrust", each: benchEngines, input: ".runDownSeconds", unit: "s", applies: isTurbine,
		how: "Cut at full thrust; watch in hand, the scale decides.", why: "A model whose link is lost flies on for so long.",
		findings: []string{"radio.failsafe", "link_loss.footprint", "launch.abort"}, wanted: notOver(ofEngine(func(e *Engine) *Quantity { return e.RunDownSeconds }))},
	{id: "bench.engine.speed", group: engineGroup, title: "Engine speed at full power", each: benchEngines, unit: "1/min", applies: hasMaximumSpeed,
		how: "Read the engine's own display.", why: "The maker's limit.", findings: []string{"engine.consistency"},
		wanted: func(v *benchView, s *benchSubject) benchWanted {
			return most(v.model.Engines[s.index].MaximumRpm, "turns a minute, the maker's limit")
		}},
	{id: "bench.engine.current", group: engineGroup, title: "Current at full power", each: benchDrivePacks, input: ".peakCurrentAmperes", unit: "A",
		how: "Clamp meter round one lead, full power for five seconds.", why: "Pack, controller and leads are chosen for it.",
		findings: []string{"packs.current", "packs.endurance"}, wanted: notOver(ofPack(func(p *Pack) *Quantity { return p.PeakCurrentAmperes }))},
	{id: "bench.engine.mount", group: engineGroup, title: "Mount, intake, pipe", each: benchEngines, photo: true,
		how: "Pull the engine by hand in all directions; wipe the duct and look for anything loose ahead of the intake; pipe and nozzle on one line.",
		why: "What the engine sucks in it does not give back.", findings: []string{"thrust.ratio", "heat.skin"}, wanted: state("firm, clean, on one line")},
}

// ofEngine reads a quantity of the engine at hand.
func ofEngine(of func(*Engine) *Quantity) benchQuantity {
	return func(v *benchView, s *benchSubject) *Quantity { return of(&v.model.Engines[s.index]) }
}

func benchEngines(v *benchView) []benchSubject {
	out := make([]benchSubject, len(v.model.Engines))
	for i := range v.model.Engines {
		out[i] = benchSubject{name: v.model.Engines[i].Name, path: at("model.engines", i), index: i}
	}
	return out
}

func isTurbine(v *benchView, s *benchSubject) bool {
	return v.model.Engines[s.index].Kind == EngineKindTurbine
}

func hasMaximumSpeed(v *benchView, s *benchSubject) bool {
	return v.model.Engines[s.index].MaximumRpm != nil
}

// wantedExhaust is the band of the exhaust temperature, capped by what the maker allows.
func wantedExhaust(v *benchView, s *benchSubject) benchWanted {
	e := &v.model.Engines[s.index]
	wanted := bandOf(e.ExhaustTemperatureCelsius, s.input)
	if limit := e.MaximumExhaustCelsius; limit != nil && (wanted.high == nil || *limit < *wanted.high) {
		wanted.high, wanted.text = limit, "up to the maker's limit"
	}
	return wanted
}
