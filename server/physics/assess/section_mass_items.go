package assess

import "pitgate/server/physics/weighing"

// items returns the sum of the items.
func (p *pass) items(m *MassProperties) weighing.Listed {
	items := p.itemList(m)
	if len(items) == 0 {
		return weighing.Listed{}
	}
	sum, err := weighing.Add(items)
	if err != nil {
		p.refuse(err)
	}
	return sum
}

// listed returns the sum of the items. Beside a weighed mass only their sum matters, which then moves as one input by its own spread.
func (p *pass) listed(m *MassProperties, sum weighing.State) weighing.State {
	if !p.mass.itemsAside || !sum.Mass.Known {
		return sum
	}
	guessed := false
	for i := range m.Items {
		guessed = guessed || m.Items[i].MassKg != nil && m.Items[i].MassKg.estimated()
	}
	p.meet(uncertain{name: "model.mass.items", value: sum.Mass.Value, spread: p.itemSpread(m), estimated: guessed})
	sum.Mass.Value += p.shift("model.mass.items")
	return sum
}

// itemList returns the items as the weighing package takes them; one without mass weighs nothing, so that indices stay those of the document.
func (p *pass) itemList(m *MassProperties) []weighing.Item {
	p.aside = p.mass.itemsAside
	defer func() { p.aside = false }()
	var items []weighing.Item
	weigh := false
	for i := range m.Items {
		item, path := &m.Items[i], at("model.mass.items", i)+".massKg"
		p.scale = scaleOf(item)
		mass, ok := p.estimate(path, item.MassKg)
		p.scale = ""
		weigh = weigh || ok && mass.Value > 0
		items = append(items, weighing.Item{
			Name: item.Name, Mass: max(0, mass.Value), MassSpread: mass.Spread, X: item.XMeters, Y: item.YMeters, Z: item.ZMeters, Movable: yes(item.Movable),
		})
	}
	if !weigh {
		return nil
	}
	return items
}

func (p *pass) unplaced(indices []int) []string {
	var names []string
	for _, i := range indices {
		names = append(names, at("model.mass.items", i)+".xMeters")
	}
	return names
}

// tanks returns the fuel in all tanks as filled for the flight.
func (p *pass) tanks(m *MassProperties, fuel, place *need) []weighing.Tank {
	if len(m.Tanks) == 0 {
		return nil
	}
	system := p.in.Model.FuelSystem
	if system == nil {
		system = &FuelSystem{}
	}
	density := fuel.quantity("model.fuelSystem.densityKgPerCubicMeter", system.DensityKgPerCubicMeter)
	tanks := make([]weighing.Tank, 0, len(m.Tanks))
	for i := range m.Tanks {
		tank, name := &m.Tanks[i], at("model.mass.tanks", i)
		p.note(name + ".fillRatio")
		liters := fuel.quantity(name+".capacityLiters", tank.CapacityLiters) * orElse(tank.FillRatio, 1)
		place.number(name+".xMeters", tank.XMeters)
		p.note(name + ".xMeters")
		tanks = append(tanks, weighing.Tank{
			Name: tank.Name, Fuel: max(0, density*liters/1000), X: tank.XMeters, Y: tank.YMeters, Z: tank.ZMeters, Order: count(tank.BurnOrder, 0),
		})
	}
	return tanks
}
