package assess

// spotAt is where a document keeps a quantity that a knob turns.
type spotAt uint8

const (
	elsewhere spotAt = iota
	atTemperature
	atVisibility
	atCircuitHeight
	atCircuitSpeed
	atCircuitLeg
	atRampAngle
	atRampCradle
	atRampLength
	atRampHeight
	atBungeeStretch
	atFailSafeDelay
	atBalance
	atMass
	atTrapVolume
	atVentBore
	atBolts
	atJoinerLength
	atJoinerDiameter
	atJoinerWall
	atPackCharge
	atPackWait
	atPackCapacity
	atThrust
	atSparDiameter
	atSparWall
	atSparCap
	atSparWeb
)

// which says which of several parts: a pack or an engine by its number, a part of a station of a spar.
type which struct{ spar, part, inner int }

// of returns where a document keeps the quantity; nil where the part that holds it is missing.
func (at spotAt) of(in *Input, w which) **Quantity {
	if at <= atVisibility {
		return at.ofDay(in.Day)
	}
	if at <= atBungeeStretch {
		return at.ofPlan(in.LaunchPlan)
	}
	if in.Model == nil {
		return nil
	}
	if at >= atBolts && at <= atJoinerWall {
		return at.ofStructure(in.Model.Structure)
	}
	if at >= atPackCharge {
		return at.ofSeveral(in.Model, w)
	}
	return at.ofModel(in.Model)
}

func (at spotAt) ofDay(d *DayConditions) **Quantity {
	switch {
	case d == nil:
		return nil
	case at == atTemperature:
		return &d.TemperatureCelsius
	default:
		return &d.VisibilityMeters
	}
}

func (at spotAt) ofPlan(plan *LaunchPlan) **Quantity {
	if plan == nil {
		return nil
	}
	circuit, ramp := plan.Circuit, plan.Ramp
	if at <= atCircuitLeg && circuit == nil || at >= atRampAngle && at <= atRampHeight && (ramp == nil || plan.Method != LaunchMethodRamp) {
		return nil
	}
	switch at {
	case atCircuitHeight:
		return &circuit.HeightMeters
	case atCircuitSpeed:
		return &circuit.AirspeedMetersPerSecond
	case atCircuitLeg:
		return &circuit.StraightLegMeters
	case atRampAngle:
		return &ramp.AngleDegrees
	case atRampCradle:
		return &ramp.CradleDegrees
	case atRampLength:
		return &ramp.LengthMeters
	case atRampHeight:
		return &ramp.EndHeightMeters
	default:
		if plan.Bungee == nil || plan.Method != LaunchMethodBungee {
			return nil
		}
		return &plan.Bungee.StretchMeters
	}
}

func (at spotAt) ofModel(m *ModelDescription) **Quantity {
	switch {
	case at == atFailSafeDelay && m.Radio != nil:
		return &m.Radio.FailSafeDelaySeconds
	case at == atBalance && m.Mass != nil:
		return &m.Mass.EmptyBalanceXMeters
	case at == atMass && m.Mass != nil:
		return &m.Mass.EmptyMassKg
	case at == atTrapVolume && m.FuelSystem != nil:
		return &m.FuelSystem.AirTrapVolumeLiters
	case at == atVentBore && m.FuelSystem != nil:
		return &m.FuelSystem.VentBoreMeters
	}
	return nil
}

func (at spotAt) ofStructure(s *Structure) **Quantity {
	switch {
	case s == nil:
		return nil
	case at == atBolts:
		return &s.WingBoltDiameterMeters
	case s.Joiner == nil:
		return nil
	case at == atJoinerLength:
		return &s.Joiner.EngagedLengthMeters
	case s.Joiner.Part == nil:
		return nil
	case at == atJoinerDiameter:
		return &s.Joiner.Part.OuterDiameterMeters
	}
	return &s.Joiner.Part.WallThicknessMeters
}

func (at spotAt) ofSeveral(m *ModelDescription, w which) **Quantity {
	switch at {
	case atPackCharge:
		return &m.Packs[w.part].ChargeRatio
	case atPackWait:
		return &m.Packs[w.part].WaitInOpenMinutes
	case atPackCapacity:
		return &m.Packs[w.part].CapacityAmpereHours
	case atThrust:
		return &m.Engines[w.part].StaticThrustNewtons
	default:
		return at.ofSpar(m, w)
	}
}

func (at spotAt) ofSpar(m *ModelDescription, w which) **Quantity {
	part := &m.Structure.spars()[w.spar][w.part].Parts[w.inner]
	switch at {
	case atSparDiameter:
		return &part.OuterDiameterMeters
	case atSparWall:
		return &part.WallThicknessMeters
	case atSparCap:
		return &part.CapThicknessMeters
	default:
		return &part.WebThicknessMeters
	}
}

// sparNames and sparPaths name the spars of a structure in their order.
var (
	sparNames = [...]string{"wing", "canard", "tailplane"}
	sparPaths = [...]string{"model.structure.wingSpar", "model.structure.canardSpar", "model.structure.tailplaneSpar"}
)

func (s *Structure) spars() [3][]SparStation {
	return [3][]SparStation{s.WingSpar, s.CanardSpar, s.TailplaneSpar}
}

// write turns a spot's quantity.
func (s *spot) write(in *Input, x float64) {
	if s.set != nil {
		s.set(in, x)
		return
	}
	held := s.at.of(in, s.which)
	*held = withValue(*held, x)
}

// places are where a knob can be turned in a document.
func (k *knob) places(s *scene) []spot {
	m := s.in.Model
	switch {
	case k.spots != nil:
		return k.spots(s)
	case k.at < atPackCharge:
		return k.place(nil, s, which{}, k.path, "")
	case m == nil:
		return nil
	}
	var list []spot
	switch {
	case k.at == atThrust:
		for i := range m.Engines {
			list = k.place(list, s, which{part: i}, at("model.engines", i)+"."+k.path, m.Engines[i].Name)
		}
	case k.at < atThrust:
		for i := range m.Packs {
			list = k.place(list, s, which{part: i}, at("model.packs", i)+"."+k.path, m.Packs[i].Name)
		}
	case m.Structure != nil:
		return k.sparPlaces(s)
	}
	return list
}

// sparPlaces are where a knob can be turned that every part of a spar has.
func (k *knob) sparPlaces(s *scene) []spot {
	var list []spot
	for n, stations := range s.in.Model.Structure.spars() {
		for i := range stations {
			for part := range stations[i].Parts {
				path := at(at(sparPaths[n], i)+".parts", part) + "." + k.path
				title := say("%s at %.0f %% of the half span, part %d", sparNames[n], 100*orElse(stations[i].SpanRatio, 0), part+1)
				list = k.place(list, s, which{n, i, part}, path, title)
			}
		}
	}
	return list
}

// place adds the spot of one quantity, where the document gives it.
func (k *knob) place(list []spot, s *scene, w which, path, title string) []spot {
	held := k.at.of(s.in, w)
	if held == nil || *held == nil || (*held).Value == nil {
		return list
	}
	return append(list, spot{title: title, paths: []string{path}, now: *(*held).Value, at: k.at, which: w})
}
