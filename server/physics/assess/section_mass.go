package assess

// massSection is the mass as flown and where it balances.
type massSection struct {
	missing []string
	takeoff float64 // kg
	empty   float64 // kg, tanks empty

	emptyRead, fuelRead []string // inputs behind the empty state and the fuel

	balanceMissing []string
	emptyBalance   float64 // x of the balance point, tanks empty, m

	fullMissing []string
	fullBalance float64 // x with the tanks filled for the flight, m
}

// moments are a mass and its moment about the datum.
type moments struct{ mass, moment float64 }

func (m *moments) add(mass, x float64) {
	m.mass += mass
	m.moment += float64(mass * x)
}

func (p *pass) readMass() {
	mass := &MassProperties{}
	if p.in.Model != nil && p.in.Model.Mass != nil {
		mass = p.in.Model.Mass
	}
	empty, balance, mark := p.need(), p.need(), p.mark()
	p.mass.empty, p.mass.emptyBalance = p.emptyState(mass, &empty, &balance)
	p.mass.emptyRead, mark = p.since(mark), p.mark()
	fuel, place := p.need(), p.need()
	load := p.fuel(mass, &fuel, &place)
	p.mass.fuelRead = p.since(mark)

	p.mass.takeoff = p.mass.empty + load.mass
	takeoff := p.need()
	takeoff.lack(empty.missing...)
	takeoff.lack(fuel.missing...)
	p.mass.missing = takeoff.missing

	balance.lack(empty.missing...)
	p.mass.balanceMissing = balance.missing
	full := p.need()
	full.lack(balance.missing...)
	full.lack(fuel.missing...)
	full.lack(place.missing...)
	p.mass.fullMissing = full.missing
	if full.met() {
		p.mass.fullBalance = (float64(p.mass.empty*p.mass.emptyBalance) + load.moment) / p.mass.takeoff
	}
	p.tellMass(load.mass)
}

func (p *pass) tellMass(fuel float64) {
	if len(p.mass.missing) == 0 {
		p.tell("mass.empty", p.mass.empty, p.mass.emptyRead...)
		p.tell("mass.fuel", fuel, p.mass.fuelRead...)
		p.tell("mass.takeoff", p.mass.takeoff)
	}
	if len(p.mass.balanceMissing) == 0 {
		p.tell("balance.empty_x", p.mass.emptyBalance, p.mass.emptyRead...)
	}
	if len(p.mass.fullMissing) == 0 {
		p.tell("balance.full_x", p.mass.fullBalance, p.mass.fuelRead...)
	}
}

// emptyState returns mass and balance with empty tanks: as weighed whole, else from scales under the model, else from its items.
func (p *pass) emptyState(m *MassProperties, mass, balance *need) (float64, float64) {
	const massName, balanceName = "model.mass.emptyMassKg", "model.mass.emptyBalanceXMeters"
	sum := p.scales(m, balance)
	if sum.mass == 0 {
		sum = p.items(m, balance)
	}
	whole, ok := p.read(massName, m.EmptyMassKg)
	if !ok {
		whole = sum.mass
	}
	if !(whole > 0) {
		mass.lack(massName)
		return 0, 0
	}
	if x, ok := p.read(balanceName, m.EmptyBalanceXMeters); ok {
		balance.missing = nil
		return whole, x
	}
	if !(sum.mass > 0) {
		balance.lack(balanceName)
		return whole, 0
	}
	return whole, sum.moment / sum.mass
}

func (p *pass) scales(m *MassProperties, balance *need) moments {
	var sum moments
	for i := range m.ScaleReadings {
		reading, name := &m.ScaleReadings[i], at("model.mass.scaleReadings", i)
		if mass, ok := p.read(name+".readingKg", reading.ReadingKg); ok {
			sum.add(mass, balance.number(name+".xMeters", reading.XMeters))
		}
	}
	return sum
}

func (p *pass) items(m *MassProperties, balance *need) moments {
	var sum moments
	for i := range m.Items {
		item, name := &m.Items[i], at("model.mass.items", i)
		if mass, ok := p.read(name+".massKg", item.MassKg); ok {
			sum.add(mass, balance.number(name+".xMeters", item.XMeters))
		}
	}
	return sum
}

// fuel returns the fuel in all tanks as filled for the flight.
func (p *pass) fuel(m *MassProperties, fuel, place *need) moments {
	var sum moments
	if len(m.Tanks) == 0 {
		return sum
	}
	system := p.in.Model.FuelSystem
	if system == nil {
		system = &FuelSystem{}
	}
	density := fuel.quantity("model.fuelSystem.densityKgPerCubicMeter", system.DensityKgPerCubicMeter)
	for i := range m.Tanks {
		tank, name := &m.Tanks[i], at("model.mass.tanks", i)
		p.note(name + ".fillRatio")
		liters := fuel.quantity(name+".capacityLiters", tank.CapacityLiters) * orElse(tank.FillRatio, 1)
		sum.add(density*liters/1000, place.number(name+".xMeters", tank.XMeters))
	}
	return sum
}
