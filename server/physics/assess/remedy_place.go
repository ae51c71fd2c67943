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
	atHeatDistance
	atThrow
	atPlay
	atServo
	atRod
	atSparDiameter
	atSparWall
	atSparCap
	atSparWeb
)

// which says which of several parts: a pack, an engine or a heated part by its number, a control of a surface, a part of a station of a spar.
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
	switch {
	case at >= atSparDiameter:
		return at.ofSpar(m, w)
	case at >= atThrow:
		return at.ofControl(&m.Surfaces[w.part].Controls[w.inner])
	case at == atHeatDistance:
		return &m.HeatedParts[w.part].FromAxisMeters
	case at == atThrust:
		return &m.Engines[w.part].StaticThrustNewtons
	case at == atPackCharge:
		return &m.Packs[w.part].ChargeRatio
	case at == atPackWait:
		return &m.Packs[w.part].WaitInOpenMinutes
	}
	return &m.Packs[w.part].CapacityAmpereHours
}

func (at spotAt) ofControl(c *Control) **Quantity {
	switch {
	case at == atThrow:
		return &c.ThrowDownDegrees
	case at == atPlay:
		return &c.FreePlayMeters
	case c.Linkage == nil:
		return nil
	case at == atServo:
		return &c.Linkage.ServoTorqueNewtonMeters
	}
	return &c.Linkage.RodDiameterMeters
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
	if s.at == atThrow && s.now > 0 {
		if up := &in.Model.Surfaces[s.which.part].Controls[s.which.inner].ThrowUpDegrees; given(*up) {
			*up = withValue(*up, *(*up).Value*x/s.now)
		}
	}
}

// given reports whether a quantity has a value.
func given(q *Quantity) bool { return q != nil && q.Value != nil }

// places finds where a knob can be turned in a document.
func (k *knob) places(s *scene) {
	m := s.in.Model
	switch {
	case k.spots != nil:
		k.spots(s)
	case k.at < atPackCharge:
		k.place(s, which{}, k.path, "")
	case m == nil:
	case k.at < atThrust:
		for i := range m.Packs {
			k.place(s, which{part: i}, at("model.packs", i)+"."+k.path, m.Packs[i].Name)
		}
	case k.at == atThrust:
		for i := range m.Engines {
			k.place(s, which{part: i}, at("model.engines", i)+"."+k.path, m.Engines[i].Name)
		}
	case k.at == atHeatDistance:
		for i := range m.HeatedParts {
			if m.HeatedParts[i].MeasuredTemperatureCelsius == nil { // one whose temperature was measured rests on that
				k.place(s, which{part: i}, at("model.heatedParts", i)+"."+k.path, m.HeatedParts[i].Name)
			}
		}
	case k.at <= atRod:
		k.controlPlaces(s)
	case m.Structure != nil:
		k.sparPlaces(s)
	}
}

// farthestThrow is how far a control is let go, degrees, unless it goes farther now.
const farthestThrow = 40.0

// controlPlaces are where a knob can be turned that every control has. Throws go both ways in proportion; where a chain names the surfaces as one, a throw
// is among them.
func (k *knob) controlPlaces(s *scene) {
	for i := range s.in.Model.Surfaces {
		surface := &s.in.Model.Surfaces[i]
		for c := range surface.Controls {
			path := at(at(surfacesPath, i)+".controls", c)
			one := k.place(s, which{part: i, inner: c}, path+"."+k.path, surface.Name+", "+surface.Controls[c].Name)
			if one == nil || k.at != atThrow {
				continue
			}
			one.throws, one.most = true, max(one.now, min(2.5*one.now, farthestThrow))
			if given(surface.Controls[c].ThrowUpDegrees) {
				one.paths = append(one.paths, path+".throwUpDegrees")
			}
		}
	}
}

// sparPlaces are where a knob can be turned that every part of a spar has.
func (k *knob) sparPlaces(s *scene) {
	for n, stations := range s.in.Model.Structure.spars() {
		for i := range stations {
			for part := range stations[i].Parts {
				path := at(at(sparPaths[n], i)+".parts", part) + "." + k.path
				title := say("%s at %.0f %% of the half span, part %d", sparNames[n], 100*orElse(stations[i].SpanRatio, 0), part+1)
				k.place(s, which{n, i, part}, path, title)
			}
		}
	}
}

// place adds the spot of one quantity, where the document gives it; nil where it does not.
func (k *knob) place(s *scene, w which, path, title string) *spot {
	held := k.at.of(s.in, w)
	if held == nil || !given(*held) {
		return nil
	}
	return s.add(spot{title: title, paths: []string{path}, now: *(*held).Value, at: k.at, which: w})
}
