package assess

import "slices"

func bankSpots(s *scene) {
	s.number("", "launchPlan.circuit.bankDegrees", defaultBankDegrees, nil, func(in *Input) **float64 {
		if in.LaunchPlan == nil || in.LaunchPlan.Circuit == nil {
			return nil
		}
		return &in.LaunchPlan.Circuit.BankDegrees
	})
}

// landingNumber adds the spot of a number of the landing's plan, which need not be there yet.
func (s *scene) landingNumber(path string, now float64, chain []string, write func(*LandingPlan, *float64)) {
	if s.in.LaunchPlan == nil || !s.base.landing.flown {
		return
	}
	s.add(spot{paths: []string{path}, chain: chain, now: now, set: func(in *Input, x float64) { write(in.LaunchPlan.ownLanding(), &x) }})
}

// ownLanding returns a landing's plan that may be written to; it is made where there is none. The plan is a copy of a document's.
func (plan *LaunchPlan) ownLanding() *LandingPlan {
	if plan.Landing == nil {
		plan.Landing = &LandingPlan{}
	}
	return plan.Landing
}

func approachSpots(s *scene) {
	if s.base.landing.stall > 0 {
		s.landingNumber("launchPlan.landing.approachRatio", s.base.landing.approach/s.base.landing.stall, nil, func(l *LandingPlan, x *float64) { l.ApproachRatio = x })
	}
}

func aimSpots(s *scene) {
	now := max(leastAim, float64(aimShare*s.base.landing.place.length))
	if plan := s.in.LaunchPlan; plan != nil && plan.Landing != nil && plan.Landing.AimPointMeters != nil {
		now = *plan.Landing.AimPointMeters
	}
	s.landingNumber("launchPlan.landing.aimPointMeters", now, []string{s.base.landing.place.path}, func(l *LandingPlan, x *float64) { l.AimPointMeters = x })
}

func settingSpots(s *scene) {
	s.number("", "launchPlan.thrustSettingRatio", 1, []string{"launchPlan.method"}, func(in *Input) **float64 {
		if in.LaunchPlan == nil {
			return nil
		}
		return &in.LaunchPlan.ThrustSettingRatio
	})
}

// countSpots is fewer circuits, one less at a time.
func countSpots(s *scene) {
	if s.in.LaunchPlan == nil || s.in.LaunchPlan.Circuit == nil || s.in.LaunchPlan.Circuit.CircuitCount == nil {
		return
	}
	found := spot{paths: []string{"launchPlan.circuit.circuitCount"}}
	for count := *s.in.LaunchPlan.Circuit.CircuitCount - 1; count >= 1 && len(found.choices) < 8; count-- {
		found.choices = append(found.choices, choice{say("%d", count), func(in *Input) { in.LaunchPlan.Circuit.CircuitCount = &count }})
	}
	if len(found.choices) > 0 {
		s.add(found)
	}
}

// mass returns the masses of a document's model; nothing in them where there are none.
func (s *scene) mass() *MassProperties {
	if s.in.Model == nil || s.in.Model.Mass == nil {
		return &MassProperties{}
	}
	return s.in.Model.Mass
}

// fillSpots are the fillings of the tanks for the flight.
func fillSpots(s *scene) {
	for i := range s.mass().Tanks {
		s.number(s.mass().Tanks[i].Name, at("model.mass.tanks", i)+".fillRatio", 1, nil, func(in *Input) **float64 { return &in.Model.Mass.Tanks[i].FillRatio })
	}
}

// tankSpots are the places of the tanks along the model.
func tankSpots(s *scene) {
	for i := range s.mass().Tanks {
		if tank := &s.mass().Tanks[i]; tank.XMeters != nil {
			s.number(tank.Name, at("model.mass.tanks", i)+".xMeters", 0, nil, func(in *Input) **float64 { return &in.Model.Mass.Tanks[i].XMeters })
		}
	}
}

// ballastSpots are the model's places for ballast, up to what each holds. Mass and balance as weighed take it up:
//
//	m' = m + b, x' = (m x + b xb)/m'
func ballastSpots(s *scene) {
	m := s.mass()
	if !given(m.EmptyMassKg) || !given(m.EmptyBalanceXMeters) {
		return
	}
	for i := range m.BallastPlaces {
		if held := &m.BallastPlaces[i]; held.XMeters != nil {
			s.add(spot{
				title: held.Name, paths: []string{wholeMassPath, wholeBalancePath}, most: orElse(held.MaximumMassKg, 2),
				set: func(in *Input, x float64) { addBallast(in.Model.Mass, x, *held.XMeters) },
			})
		}
	}
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
func lineSpots(s *scene) {
	if s.in.Model == nil || s.in.Model.FuelSystem == nil {
		return
	}
	found := spot{set: widenLines}
	for i := range s.in.Model.FuelSystem.Lines {
		line := &s.in.Model.FuelSystem.Lines[i]
		if line.BoreMeters == nil || !yes(line.SuctionSide) {
			continue
		}
		if found.now == 0 || *line.BoreMeters < found.now {
			found.now, found.title = *line.BoreMeters, line.Name
		}
		found.paths = append(found.paths, at("model.fuelSystem.lines", i)+".boreMeters")
	}
	if found.now > 0 {
		s.add(found)
	}
}

// widenLines gives every line on the suction side that is narrower a bore.
func widenLines(in *Input, x float64) {
	lines := in.Model.FuelSystem.Lines
	for i := range lines {
		if lines[i].BoreMeters != nil && yes(lines[i].SuctionSide) && *lines[i].BoreMeters < x {
			lines[i].BoreMeters = &x
		}
	}
}

// foilSpots are heated parts without foil.
func foilSpots(s *scene) {
	if s.in.Model == nil {
		return
	}
	for i := range s.in.Model.HeatedParts {
		if part := &s.in.Model.HeatedParts[i]; !yes(part.FoilShield) && part.MeasuredTemperatureCelsius == nil {
			s.choose(part.Name, at("model.heatedParts", i)+".foilShield", "shielded", func(in *Input) { in.Model.HeatedParts[i].FoilShield = choiceOf(true) })
		}
	}
}

// choiceOf returns a yes or no that is said.
func choiceOf(yes bool) *bool { return &yes }
