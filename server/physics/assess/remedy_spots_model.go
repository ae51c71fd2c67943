package assess

import "slices"

func bankSpots(s *scene) []spot {
	return numberOf("launchPlan.circuit.bankDegrees", defaultBankDegrees, nil, func(in *Input) **float64 {
		if in.LaunchPlan == nil || in.LaunchPlan.Circuit == nil {
			return nil
		}
		return &in.LaunchPlan.Circuit.BankDegrees
	})(s)
}

// landingNumber is the spot of a number of the landing's plan, which need not be there yet.
func landingNumber(s *scene, path string, now float64, chain []string, write func(*LandingPlan, *float64)) []spot {
	if s.in.LaunchPlan == nil || !s.base.landing.flown {
		return nil
	}
	return []spot{{paths: []string{path}, chain: chain, now: now, set: func(in *Input, x float64) {
		landing := LandingPlan{}
		if in.LaunchPlan.Landing != nil {
			landing = *in.LaunchPlan.Landing
		}
		write(&landing, &x)
		in.LaunchPlan.Landing = &landing
	}}}
}

func approachSpots(s *scene) []spot {
	if !(s.base.landing.stall > 0) {
		return nil
	}
	now := s.base.landing.approach / s.base.landing.stall
	return landingNumber(s, "launchPlan.landing.approachRatio", now, nil, func(l *LandingPlan, x *float64) { l.ApproachRatio = x })
}

func aimSpots(s *scene) []spot {
	now := max(leastAim, float64(aimShare*s.base.landing.place.length))
	if plan := s.in.LaunchPlan; plan != nil && plan.Landing != nil && plan.Landing.AimPointMeters != nil {
		now = *plan.Landing.AimPointMeters
	}
	return landingNumber(s, "launchPlan.landing.aimPointMeters", now, []string{s.base.landing.place.path}, func(l *LandingPlan, x *float64) { l.AimPointMeters = x })
}

func settingSpots(s *scene) []spot {
	return numberOf("launchPlan.thrustSettingRatio", 1, []string{"launchPlan.method"}, func(in *Input) **float64 {
		if in.LaunchPlan == nil {
			return nil
		}
		return &in.LaunchPlan.ThrustSettingRatio
	})(s)
}

// countSpots is fewer circuits, one less at a time.
func countSpots(s *scene) []spot {
	if s.in.LaunchPlan == nil || s.in.LaunchPlan.Circuit == nil || s.in.LaunchPlan.Circuit.CircuitCount == nil {
		return nil
	}
	found := spot{paths: []string{"launchPlan.circuit.circuitCount"}}
	for count := *s.in.LaunchPlan.Circuit.CircuitCount - 1; count >= 1 && len(found.choices) < 8; count-- {
		found.choices = append(found.choices, choice{say("%d", count), func(in *Input) { in.LaunchPlan.Circuit.CircuitCount = &count }})
	}
	if len(found.choices) == 0 {
		return nil
	}
	return []spot{found}
}

// controlSpot is one quantity of a control.
func controlSpot(s *scene, field string, of func(*Control) **Quantity) []spot {
	if s.in.Model == nil {
		return nil
	}
	var list []spot
	for i := range s.in.Model.Surfaces {
		for k := range s.in.Model.Surfaces[i].Controls {
			path := at(at(surfacesPath, i)+".controls", k) + "." + field
			find := func(in *Input) **Quantity { return of(&in.Model.Surfaces[i].Controls[k]) }
			if find(s.in) == nil {
				continue
			}
			list = append(list, quantitySpot(s, path, s.in.Model.Surfaces[i].Name+", "+s.in.Model.Surfaces[i].Controls[k].Name, find)...)
		}
	}
	return list
}

// farthestThrow is how far a control is let go, degrees, unless it goes farther now.
const farthestThrow = 40.0

// throwSpots are the throws of every control: both ways in proportion. Where the chain names the surfaces as one, a throw is among them.
func throwSpots(s *scene) []spot {
	list := controlSpot(s, "throwDownDegrees", func(c *Control) **Quantity { return &c.ThrowDownDegrees })
	n := 0
	for i := range s.in.surfaces() {
		for k, control := range s.in.surfaces()[i].Controls {
			if control.ThrowDownDegrees == nil || control.ThrowDownDegrees.Value == nil {
				continue
			}
			list[n].throws = true
			list[n].most = max(list[n].now, min(2.5*list[n].now, farthestThrow))
			if up := control.ThrowUpDegrees; up != nil && up.Value != nil {
				list[n].withUp(i, k, *up.Value)
			}
			n++
		}
	}
	return list
}

// surfaces returns the surfaces of a document's model.
func (in *Input) surfaces() []LiftingSurface {
	if in.Model == nil {
		return nil
	}
	return in.Model.Surfaces
}

// withUp moves the throw up in proportion to that down.
func (s *spot) withUp(surface, control int, up float64) {
	set, now := s.set, s.now
	s.paths = append(s.paths, at(at(surfacesPath, surface)+".controls", control)+".throwUpDegrees")
	s.set = func(in *Input, x float64) {
		set(in, x)
		if now > 0 {
			c := &in.Model.Surfaces[surface].Controls[control]
			c.ThrowUpDegrees = withValue(c.ThrowUpDegrees, up*x/now)
		}
	}
}

func playSpots(s *scene) []spot {
	return controlSpot(s, "freePlayMeters", func(c *Control) **Quantity { return &c.FreePlayMeters })
}

func servoSpots(s *scene) []spot {
	return controlSpot(s, "linkage.servoTorqueNewtonMeters", func(c *Control) **Quantity {
		if c.Linkage == nil {
			return nil
		}
		return &c.Linkage.ServoTorqueNewtonMeters
	})
}

func rodSpots(s *scene) []spot {
	return controlSpot(s, "linkage.rodDiameterMeters", func(c *Control) **Quantity {
		if c.Linkage == nil {
			return nil
		}
		return &c.Linkage.RodDiameterMeters
	})
}

// fillSpots are the fillings of the tanks for the flight.
func fillSpots(s *scene) []spot {
	if s.in.Model == nil || s.in.Model.Mass == nil {
		return nil
	}
	var list []spot
	for i := range s.in.Model.Mass.Tanks {
		found := numberOf(at("model.mass.tanks", i)+".fillRatio", 1, nil, func(in *Input) **float64 { return &in.Model.Mass.Tanks[i].FillRatio })(s)
		found[0].title = s.in.Model.Mass.Tanks[i].Name
		list = append(list, found...)
	}
	return list
}

// tankSpots are the places of the tanks along the model.
func tankSpots(s *scene) []spot {
	if s.in.Model == nil || s.in.Model.Mass == nil {
		return nil
	}
	var list []spot
	for i := range s.in.Model.Mass.Tanks {
		if s.in.Model.Mass.Tanks[i].XMeters == nil {
			continue
		}
		found := numberOf(at("model.mass.tanks", i)+".xMeters", 0, nil, func(in *Input) **float64 { return &in.Model.Mass.Tanks[i].XMeters })(s)
		found[0].title = s.in.Model.Mass.Tanks[i].Name
		list = append(list, found...)
	}
	return list
}

// ballastSpots are the model's places for ballast, up to what each holds. Mass and balance as weighed take it up:
//
//	m' = m + b, x' = (m x + b xb)/m'
func ballastSpots(s *scene) []spot {
	if s.in.Model == nil || s.in.Model.Mass == nil {
		return nil
	}
	m := s.in.Model.Mass
	if m.EmptyMassKg == nil || m.EmptyMassKg.Value == nil || m.EmptyBalanceXMeters == nil || m.EmptyBalanceXMeters.Value == nil {
		return nil
	}
	var list []spot
	for _, held := range m.BallastPlaces {
		if held.XMeters == nil {
			continue
		}
		most := orElse(held.MaximumMassKg, 2)
		list = append(list, spot{
			title: held.Name, paths: []string{wholeMassPath, wholeBalancePath}, most: most,
			set: func(in *Input, x float64) { addBallast(in.Model.Mass, x, *held.XMeters) },
		})
	}
	return list
}

// addBallast adds a mass at a place to what was weighed and, where there is a list of items, to the list.
func addBallast(m *MassProperties, mass, x float64) {
	was, balance := *m.EmptyMassKg.Value, *m.EmptyBalanceXMeters.Value
	m.EmptyMassKg = withValue(m.EmptyMassKg, was+mass)
	m.EmptyBalanceXMeters = withValue(m.EmptyBalanceXMeters, (float64(was*balance)+float64(mass*x))/(was+mass))
	if len(m.Items) > 0 && mass > 0 {
		m.Items = append(slices.Clone(m.Items), MassItem{Name: "added ballast", MassKg: withValue(nil, mass), XMeters: &x})
	}
}

// lineSpots is the narrowest line on the suction side: lines narrower than the setting are changed to it.
func lineSpots(s *scene) []spot {
	if s.in.Model == nil || s.in.Model.FuelSystem == nil {
		return nil
	}
	found := spot{}
	for i, line := range s.in.Model.FuelSystem.Lines {
		if line.BoreMeters == nil || !yes(line.SuctionSide) {
			continue
		}
		if found.now == 0 || *line.BoreMeters < found.now {
			found.now, found.title = *line.BoreMeters, line.Name
		}
		found.paths = append(found.paths, at("model.fuelSystem.lines", i)+".boreMeters")
	}
	if !(found.now > 0) {
		return nil
	}
	found.set = func(in *Input, x float64) {
		lines := in.Model.FuelSystem.Lines
		for i := range lines {
			if lines[i].BoreMeters != nil && yes(lines[i].SuctionSide) && *lines[i].BoreMeters < x {
				lines[i].BoreMeters = &x
			}
		}
	}
	return []spot{found}
}

// foilSpots are heated parts without foil.
func foilSpots(s *scene) []spot {
	if s.in.Model == nil {
		return nil
	}
	var list []spot
	for i, part := range s.in.Model.HeatedParts {
		if !yes(part.FoilShield) && part.MeasuredTemperatureCelsius == nil {
			foil := true
			list = append(list, spot{
				title: part.Name, paths: []string{at("model.heatedParts", i) + ".foilShield"},
				choices: []choice{{"shielded", func(in *Input) { in.Model.HeatedParts[i].FoilShield = &foil }}},
			})
		}
	}
	return list
}

// distanceSpots are the distances of heated parts from the thrust line or the hot wall; one whose temperature was measured rests on that.
func distanceSpots(s *scene) []spot {
	if s.in.Model == nil {
		return nil
	}
	var list []spot
	for i, part := range s.in.Model.HeatedParts {
		if part.MeasuredTemperatureCelsius == nil {
			path := at("model.heatedParts", i) + ".fromAxisMeters"
			list = append(list, quantitySpot(s, path, part.Name, func(in *Input) **Quantity { return &in.Model.HeatedParts[i].FromAxisMeters })...)
		}
	}
	return list
}
