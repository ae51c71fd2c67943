package assess

import "strings"

const fuelGroup = "Fuel"

var benchFuelRows = []benchRow{
	{id: "bench.fuel.trap", group: fuelGroup, title: "Air trap", input: "model.fuelSystem.airTrap", photo: true, applies: hasFuel,
		how: "Find it between the last tank and the pump, higher than neither; fill the system and turn the model about until it is full.",
		why: "One bubble at the pump stops a turbine.", findings: []string{"fuel.trap", "fuel.suction"}, wanted: state("there, filled to the top, no bubble")},
	{id: "bench.fuel.trap_volume", group: fuelGroup, title: "Volume of the air trap", input: "model.fuelSystem.airTrapVolumeLiters", unit: "l", applies: hasFuel,
		how: "Fill it from a syringe.", why: "It feeds the engine alone while the pick-up is dry.", findings: []string{"fuel.trap"}, wanted: wantedTrap},
	{id: "bench.fuel.capacity", group: fuelGroup, title: "Fuel the tank takes", each: benchTanks, input: ".capacityLiters", unit: "l", applies: hasFuel,
		how: "Fill it from a measuring jug through the system's own line.", why: "Endurance and balance go with it.",
		findings: []string{"fuel.endurance", "fuel.reserve", "balance.margin_full", "mass.class"},
		wanted:   within(func(v *benchView, s *benchSubject) *Quantity { return v.model.Mass.Tanks[s.index].CapacityLiters })},
	{id: "bench.fuel.unusable", group: fuelGroup, title: "Fuel that the pick-up leaves", input: "model.fuelSystem.unusableLiters", unit: "l", applies: hasFuel,
		how: "Pump the full tank empty, model level, until the first air comes; drain and measure the rest.", why: "What cannot be reached is no reserve.",
		findings: []string{"fuel.endurance", "fuel.reserve"}, wanted: notOver(ofFuel(func(f *FuelSystem) *Quantity { return f.UnusableLiters }))},
	{id: "bench.fuel.vent", group: fuelGroup, title: "Vent", input: "model.fuelSystem.ventBoreMeters", unit: "m", photo: true, applies: hasOpenTank,
		how: "Blow through it by mouth with the tank full and empty; look for a pinched hose and a taped opening. Measure its narrowest bore with a drill shank.",
		why: "A closed vent starves the engine at full flow.", findings: []string{"fuel.vent", "fuel.suction"},
		wanted: func(v *benchView, _ *benchSubject) benchWanted {
			return least(v.number("fuel.least_vent"), "narrowest bore; open, out of the jet, looped against siphoning")
		}},
	{id: "bench.fuel.filter", group: fuelGroup, title: "Filter", input: "model.fuelSystem.filterPressureLossPascals", unit: "Pa", applies: hasFuel,
		how: "Arrow towards the pump, clean, no air caught in it. Read the loss with a water column at the pump's full flow.",
		why: "A clogged filter adds suction until air comes out of the fuel.", findings: []string{"fuel.filter", "fuel.suction"},
		wanted: notOver(ofFuel(func(f *FuelSystem) *Quantity { return f.FilterPressureLossPascals }))},
	{id: "bench.fuel.lines", group: fuelGroup, title: "Line", each: benchLines, input: ".boreMeters", unit: "m", photo: true, applies: hasFuel,
		how: "Measure bore and length; no kink, no chafing, clips on every end, clear of everything hot.", why: "Suction grows with the fourth power of a bore that is too small.",
		findings: []string{"fuel.suction"}, wanted: wantedLine},
	{id: "bench.fuel.pump_height", group: fuelGroup, title: "Pump above the pick-up", input: "model.fuelSystem.pumpHeightMeters", unit: "m", applies: hasFuel,
		how: "Model level; measure from the lowest point of the pick-up to the pump's inlet.", why: "In a pull-up the column weighs as many times more as the load factor says.",
		findings: []string{"fuel.suction"}, wanted: notOver(ofFuel(func(f *FuelSystem) *Quantity { return f.PumpHeightMeters }))},
	{id: "bench.fuel.clunk", group: fuelGroup, title: "Pick-up follows the fuel", each: benchTanks, applies: hasOpenTank,
		how: "Hold the model nose up, nose down and on each side, tank a quarter full, and listen or look: the weight falls each time and does not catch forward.",
		why: "A pick-up that sticks draws air in the first dive.", findings: []string{"fuel.trap", "fuel.reserve"}, wanted: state("moves freely, reaches every corner, cannot fold forward")},
	{id: "bench.fuel.felt", group: fuelGroup, title: "Felt on the pick-up", input: "model.fuelSystem.feltPickup", applies: hasOpenTank,
		how: "Take the pick-up out: felt whole, clean, firmly tied.", why: "Wet felt keeps air out while it is dry around it.", findings: []string{"fuel.trap"},
		wanted: wantedFelt},
	{id: "bench.fuel.leaks", group: fuelGroup, title: "Leak test under suction", unit: "Pa", applies: hasFuel,
		how: "Close the vent, draw this suction at the pump's inlet with a syringe and a gauge, wait a minute.",
		why: "A joint that drips nothing may still draw air.", findings: []string{"fuel.suction", "fuel.trap"},
		wanted: func(v *benchView, _ *benchSubject) benchWanted {
			return least(v.number("fuel.suction"), "suction of the worst case of flight, held for a minute")
		}},
	{id: "bench.fuel.bubbles", group: fuelGroup, title: "Run with an eye on the lines", unit: "s", photo: true, applies: hasTurbine,
		how: "Full thrust, model held, a second person at the clear line before the pump; a lamp behind it.", why: "Air shows here before the engine stops in the air.",
		findings: []string{"fuel.suction", "fuel.trap"}, wanted: wantedBubbles},
	{id: "bench.fuel.mix", group: fuelGroup, title: "Fuel and oil", input: "model.fuelSystem.densityKgPerCubicMeter", unit: "kg/m3", applies: hasFuel,
		how: "Weigh a litre; read the oil on the can and write down when it was mixed.", why: "Mass, endurance and the bearings go with it.",
		findings: []string{"fuel.endurance", "mass.class"}, wanted: wantedMix},
	{id: "bench.fuel.shut_off", group: fuelGroup, title: "Shut-off", input: "model.fuelSystem.shutOffValve", applies: hasTurbine,
		how: "Work it by the transmitter and by hand, pump running into a jug.", why: "It is what ends a fire.", findings: []string{"radio.failsafe"},
		wanted: state("the flow stops at once, by either way")},
	{id: "bench.fuel.fire", group: fuelGroup, title: "Extinguisher at hand", applies: hasTurbine,
		how: "One that leaves no powder, charged, in date, within reach of the engine bay; one person named to use it, who has the pin's place in mind.",
		why: "A wet start burns for seconds; a model burns for a minute.", findings: []string{"heat.skin", "heat.ground"}, wanted: state("there, in date, somebody named")},
}

func hasFuel(v *benchView, _ *benchSubject) bool {
	return v.turbine() || v.model.FuelSystem != nil
}

func hasTurbine(v *benchView, _ *benchSubject) bool { return v.turbine() }

// hasOpenTank leaves out bladders, which need neither vent nor weight.
func hasOpenTank(v *benchView, s *benchSubject) bool {
	return hasFuel(v, s) && (v.model.FuelSystem == nil || !yes(v.model.FuelSystem.BladderTank))
}

// ofFuel reads a quantity of the fuel system, nil where there is none.
func ofFuel(of func(*FuelSystem) *Quantity) benchQuantity {
	return func(v *benchView, _ *benchSubject) *Quantity {
		if v.model.FuelSystem == nil {
			return nil
		}
		return of(v.model.FuelSystem)
	}
}

func benchTanks(v *benchView) []benchSubject {
	var out []benchSubject
	if v.model.Mass == nil {
		return nil
	}
	for i := range v.model.Mass.Tanks {
		out = append(out, benchSubject{name: v.model.Mass.Tanks[i].Name, path: at("model.mass.tanks", i), index: i})
	}
	return out
}

// benchLines lists the lines on the suction side of the pump.
func benchLines(v *benchView) []benchSubject {
	var out []benchSubject
	if v.model.FuelSystem == nil {
		return nil
	}
	for i := range v.model.FuelSystem.Lines {
		if line := &v.model.FuelSystem.Lines[i]; yes(line.SuctionSide) {
			out = append(out, benchSubject{name: line.Name, path: at("model.fuelSystem.lines", i), index: i})
		}
	}
	return out
}

func wantedTrap(v *benchView, _ *benchSubject) benchWanted {
	cubic := v.number("fuel.least_trap")
	if cubic == nil {
		return least(nil, "least that will do at full flow")
	}
	liters := 1000 * *cubic
	return benchWanted{text: "least that will do at full flow", low: &liters}
}

func wantedLine(v *benchView, s *benchSubject) benchWanted {
	line := &v.model.FuelSystem.Lines[s.index]
	if line.LengthMeters == nil {
		return least(line.BoreMeters, "bore, its length still to be entered")
	}
	return least(line.BoreMeters, sayNumbers("bore, and no longer than %.2f m", *line.LengthMeters))
}

func wantedFelt(v *benchView, _ *benchSubject) benchWanted {
	if v.model.FuelSystem != nil && yes(v.model.FuelSystem.FeltPickup) {
		return benchWanted{text: "there, whole and clean"}
	}
	return benchWanted{text: "the report takes none: say which it is"}
}

// leastBubbleRun is the shortest run that tells something of the lines, s.
const leastBubbleRun = 60.0

// wantedBubbles is a run in which the trap's fuel is drawn through twice, a minute at least.
func wantedBubbles(v *benchView, _ *benchSubject) benchWanted {
	run := max(leastBubbleRun, 2*v.value["fuel.trap_seconds"])
	text := "at full thrust, no bubble"
	if suction, known := v.value["fuel.suction"]; known {
		text += sayNumbers("; flight asks for up to %.0f Pa of suction, standing still for less", suction)
	}
	return benchWanted{text: text, low: &run}
}

func wantedMix(v *benchView, s *benchSubject) benchWanted {
	if v.model.FuelSystem == nil {
		return benchWanted{text: noFigureYet}
	}
	wanted := bandOf(v.model.FuelSystem.DensityKgPerCubicMeter, s.input)
	parts := []string{v.model.FuelSystem.Fuel}
	if oil := v.model.FuelSystem.OilRatio; oil != nil {
		parts = append(parts, sayNumbers("%.1f %% oil", 100**oil))
	}
	if named := strings.TrimPrefix(strings.Join(parts, ", "), ", "); named != "" {
		wanted.text = named
	}
	return wanted
}
