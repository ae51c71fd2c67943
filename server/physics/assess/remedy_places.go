package assess

// quantityAt finds where a document keeps a quantity; nil where the part that holds it is missing.
type quantityAt func(in *Input) **Quantity

// numberAt finds where a document keeps a plain number; nil where the part that holds it is missing.
type numberAt func(in *Input) **float64

// withValue returns a quantity with another value; how it is known and its own spread stay.
func withValue(q *Quantity, x float64) *Quantity {
	out := Quantity{Value: &x, Basis: BasisEstimated}
	if q != nil {
		out.Basis, out.Spread = q.Basis, q.Spread
	}
	return &out
}

// quantitySpot is the spot of a quantity that the document gives.
func quantitySpot(s *scene, path, title string, find quantityAt) []spot {
	held := find(s.in)
	if held == nil || *held == nil || (*held).Value == nil {
		return nil
	}
	return []spot{{title: title, paths: []string{path}, now: *(*held).Value, set: func(in *Input, x float64) {
		place := find(in)
		*place = withValue(*place, x)
	}}}
}

// quantityOf is the row of a knob that is one quantity.
func quantityOf(path string, find quantityAt) func(*scene) []spot {
	return func(s *scene) []spot { return quantitySpot(s, path, "", find) }
}

// numberOf is the row of a knob that is one plain number, which the core takes as usual where it is not given; chain names inputs that stand for it in
// the chain of a finding.
func numberOf(path string, usual float64, chain []string, find numberAt) func(*scene) []spot {
	return func(s *scene) []spot {
		held := find(s.in)
		if held == nil {
			return nil
		}
		return []spot{{paths: []string{path}, chain: chain, now: orElse(*held, usual), set: func(in *Input, x float64) { *find(in) = &x }}}
	}
}

// The parts of a document that hold knobs; a quantity of a part that is missing cannot be turned.

func inRamp(of func(*Ramp) **Quantity) quantityAt {
	return func(in *Input) **Quantity {
		if in.LaunchPlan == nil || in.LaunchPlan.Ramp == nil || in.LaunchPlan.Method != LaunchMethodRamp {
			return nil
		}
		return of(in.LaunchPlan.Ramp)
	}
}

func inBungee(of func(*Bungee) **Quantity) quantityAt {
	return func(in *Input) **Quantity {
		if in.LaunchPlan == nil || in.LaunchPlan.Bungee == nil || in.LaunchPlan.Method != LaunchMethodBungee {
			return nil
		}
		return of(in.LaunchPlan.Bungee)
	}
}

func inCircuit(of func(*CircuitPlan) **Quantity) quantityAt {
	return func(in *Input) **Quantity {
		if in.LaunchPlan == nil || in.LaunchPlan.Circuit == nil {
			return nil
		}
		return of(in.LaunchPlan.Circuit)
	}
}

func inDay(of func(*DayConditions) **Quantity) quantityAt {
	return func(in *Input) **Quantity {
		if in.Day == nil {
			return nil
		}
		return of(in.Day)
	}
}

func inMass(of func(*MassProperties) **Quantity) quantityAt {
	return func(in *Input) **Quantity {
		if in.Model == nil || in.Model.Mass == nil {
			return nil
		}
		return of(in.Model.Mass)
	}
}

func inFuel(of func(*FuelSystem) **Quantity) quantityAt {
	return func(in *Input) **Quantity {
		if in.Model == nil || in.Model.FuelSystem == nil {
			return nil
		}
		return of(in.Model.FuelSystem)
	}
}

func inRadio(of func(*RadioLink) **Quantity) quantityAt {
	return func(in *Input) **Quantity {
		if in.Model == nil || in.Model.Radio == nil {
			return nil
		}
		return of(in.Model.Radio)
	}
}

func inStructure(of func(*Structure) **Quantity) quantityAt {
	return func(in *Input) **Quantity {
		if in.Model == nil || in.Model.Structure == nil {
			return nil
		}
		return of(in.Model.Structure)
	}
}

func inJoiner(of func(*Joiner) **Quantity) quantityAt {
	return func(in *Input) **Quantity {
		if in.Model == nil || in.Model.Structure == nil || in.Model.Structure.Joiner == nil {
			return nil
		}
		return of(in.Model.Structure.Joiner)
	}
}

func inJoinerPart(of func(*SparPart) **Quantity) quantityAt {
	return func(in *Input) **Quantity {
		if in.Model == nil || in.Model.Structure == nil || in.Model.Structure.Joiner == nil || in.Model.Structure.Joiner.Part == nil {
			return nil
		}
		return of(in.Model.Structure.Joiner.Part)
	}
}

// inPacks is the row of a knob that every pack has.
func inPacks(field string, of func(*Pack) **Quantity) func(*scene) []spot {
	return func(s *scene) []spot {
		if s.in.Model == nil {
			return nil
		}
		var list []spot
		for i := range s.in.Model.Packs {
			path := at("model.packs", i) + "." + field
			list = append(list, quantitySpot(s, path, s.in.Model.Packs[i].Name, func(in *Input) **Quantity { return of(&in.Model.Packs[i]) })...)
		}
		return list
	}
}

// inEngines is the row of a knob that every engine has.
func inEngines(field string, of func(*Engine) **Quantity) func(*scene) []spot {
	return func(s *scene) []spot {
		if s.in.Model == nil {
			return nil
		}
		var list []spot
		for i := range s.in.Model.Engines {
			path := at("model.engines", i) + "." + field
			list = append(list, quantitySpot(s, path, s.in.Model.Engines[i].Name, func(in *Input) **Quantity { return of(&in.Model.Engines[i]) })...)
		}
		return list
	}
}

// inSpars is the row of a knob that every part of a spar of wing, canard and tailplane has.
func inSpars(field string, of func(*SparPart) **Quantity) func(*scene) []spot {
	spars := []struct {
		name, path string
		of         func(*Structure) []SparStation
	}{
		{"wing", "model.structure.wingSpar", func(s *Structure) []SparStation { return s.WingSpar }},
		{"canard", "model.structure.canardSpar", func(s *Structure) []SparStation { return s.CanardSpar }},
		{"tailplane", "model.structure.tailplaneSpar", func(s *Structure) []SparStation { return s.TailplaneSpar }},
	}
	return func(s *scene) []spot {
		if s.in.Model == nil || s.in.Model.Structure == nil {
			return nil
		}
		var list []spot
		for _, spar := range spars {
			for i, station := range spar.of(s.in.Model.Structure) {
				for k := range station.Parts {
					path := at(at(spar.path, i)+".parts", k) + "." + field
					title := say("%s at %.0f %% of the half span, part %d", spar.name, 100*orElse(station.SpanRatio, 0), k+1)
					list = append(list, quantitySpot(s, path, title, func(in *Input) **Quantity { return of(&spar.of(in.Model.Structure)[i].Parts[k]) })...)
				}
			}
		}
		return list
	}
}
