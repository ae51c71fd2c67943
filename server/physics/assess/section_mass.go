package assess

import (
	"slices"
	"strings"

	"pitgate/server/physics/weighing"
)

// massSection is the mass as flown and where it balances along the burn.
type massSection struct {
	missing []string
	takeoff float64 // kg
	empty   float64 // kg, tanks empty

	emptyRead, fuelRead []string // inputs behind the empty state and the fuel

	balanceMissing []string
	emptyBalance   float64 // x of the balance point, tanks empty, m
	emptyHeight    bool    // its height is known

	fullMissing []string
	fullBalance float64         // x with the tanks filled for the flight, m
	travel      weighing.Travel // of the balance point along the burn

	itemsAside      bool           // a weighed mass stands before the items
	weighed, listed weighing.State // as weighed whole or by scales, and as the items add up; unknown mass where neither is given
}

func (p *pass) massProperties() *MassProperties {
	if p.in.Model == nil || p.in.Model.Mass == nil {
		return &MassProperties{}
	}
	return p.in.Model.Mass
}

func (p *pass) readMass() {
	mass, mark := p.massProperties(), p.mark()
	empty, balance := p.need(), p.need()
	state := p.emptyState(mass, &empty, &balance)
	p.mass.empty, p.mass.emptyBalance, p.mass.emptyHeight = state.Mass.Value, state.X.Value, state.Z.Known
	p.mass.emptyRead, mark = p.since(mark), p.mark()
	fuel, place := p.need(), p.need()
	tanks := p.tanks(mass, &fuel, &place)
	p.mass.fuelRead = p.since(mark)

	p.mass.takeoff = p.mass.empty + fuelMass(tanks)
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
		p.burn(state, tanks)
	}
	p.tellMass(fuelMass(tanks))
}

// burn follows the balance point along the burn.
func (p *pass) burn(empty weighing.State, tanks []weighing.Tank) {
	travel, err := weighing.Burn(empty, tanks)
	if err != nil {
		p.refuse(err)
		p.mass.fullMissing = []string{"model.mass.tanks"}
		return
	}
	p.mass.travel, p.mass.fullBalance = travel, travel.Full.X
}

func fuelMass(tanks []weighing.Tank) float64 {
	sum := 0.0
	for i := range tanks {
		sum += tanks[i].Fuel
	}
	return sum
}

func (p *pass) tellMass(fuel float64) {
	if len(p.mass.missing) == 0 {
		p.tell("mass.empty", p.mass.empty, p.massPaths()...)
		p.tell("mass.fuel", fuel, p.fuelPaths()...)
		p.tell("mass.takeoff", p.mass.takeoff)
	}
	if len(p.mass.balanceMissing) == 0 {
		p.tell("balance.empty_x", p.mass.emptyBalance, p.balancePaths()...)
	}
	if len(p.mass.fullMissing) == 0 {
		p.tell("balance.full_x", p.mass.fullBalance, p.mass.fuelRead...)
		p.tell("balance.forward_x", p.mass.travel.Forward.X, p.mass.fuelRead...)
		p.tell("balance.aft_x", p.mass.travel.Aft.X, p.mass.fuelRead...)
	}
	if len(p.mass.fullMissing) == 0 && p.mass.travel.ZKnown {
		p.tell("balance.full_z", p.mass.travel.Full.Z, p.mass.fuelRead...)
	}
}

const (
	wholeMassPath    = "model.mass.emptyMassKg"
	wholeBalancePath = "model.mass.emptyBalanceXMeters"
)

// fuelPaths names what the mass of the fuel was taken from.
func (p *pass) fuelPaths() []string {
	return slices.DeleteFunc(slices.Clone(p.mass.fuelRead), func(path string) bool { return strings.HasSuffix(path, ".xMeters") })
}

// massPaths names what the empty mass was taken from: the whole model's, or its parts'.
func (p *pass) massPaths() []string {
	if p.massProperties().EmptyMassKg != nil {
		return []string{wholeMassPath}
	}
	return p.partPaths()
}

// balancePaths names what the empty balance point was taken from.
func (p *pass) balancePaths() []string {
	if p.massProperties().EmptyBalanceXMeters != nil {
		return []string{wholeBalancePath}
	}
	return p.partPaths()
}

// partPaths names the scales, or the items where there are none.
func (p *pass) partPaths() []string {
	if len(p.massProperties().ScaleReadings) > 0 {
		return []string{scalesPath}
	}
	return []string{"model.mass.items"}
}

// emptyState returns mass and balance with empty tanks: as weighed whole, else from scales under the model, else from its items.
func (p *pass) emptyState(m *MassProperties, mass, balance *need) weighing.State {
	p.aside = m.EmptyMassKg != nil && m.EmptyBalanceXMeters != nil
	scales, lacking := p.scales(m)
	p.aside = false
	p.mass.itemsAside = m.EmptyMassKg != nil || scales.Mass.Known
	items := p.items(m)
	sum := scales
	if !sum.Mass.Known {
		sum, lacking = items.State, p.unplaced(items.Unplaced)
	}
	state := p.wholeState(m, sum)
	p.mass.listed = p.listed(m, items.State)
	if m.EmptyMassKg != nil || scales.Mass.Known {
		p.mass.weighed = state
	}
	switch {
	case !(state.Mass.Value > 0):
		mass.lack(wholeMassPath)
	case !state.X.Known && len(lacking) > 0:
		balance.lack(lacking...)
	case !state.X.Known:
		balance.lack(wholeBalancePath)
	}
	return state
}

// wholeState returns a state in which what was measured on the whole model stands before the sum of its parts.
func (p *pass) wholeState(m *MassProperties, sum weighing.State) weighing.State {
	if mass, ok := p.estimate(wholeMassPath, m.EmptyMassKg); ok {
		sum.Mass, sum.MassX = mass, 0
	}
	if x, ok := p.estimate(wholeBalancePath, m.EmptyBalanceXMeters); ok {
		sum.X, sum.MassX = x, 0
	}
	if z, ok := p.estimate("model.mass.emptyBalanceZMeters", m.EmptyBalanceZMeters); ok {
		sum.Z = z
	}
	return sum
}

// estimate reads a quantity with its spread.
func (p *pass) estimate(name string, q *Quantity) (weighing.Estimate, bool) {
	value, ok := p.read(name, q)
	if !ok {
		return weighing.Estimate{}, false
	}
	return weighing.Estimate{Value: value, Spread: q.Deviation(name), Known: true}, true
}

// scales returns what the scales under the model say, and which places keep the balance point unknown.
func (p *pass) scales(m *MassProperties) (weighing.State, []string) {
	var readings []weighing.Reading
	var lacking []string
	for i := range m.ScaleReadings {
		reading, name := &m.ScaleReadings[i], at("model.mass.scaleReadings", i)
		shown, ok := p.shown(name, reading)
		if !ok {
			continue
		}
		if reading.XMeters == nil {
			lacking = append(lacking, name+".xMeters")
		}
		readings = append(readings, weighing.Reading{
			Name: reading.Name, X: reading.XMeters, Y: reading.YMeters, Shown: shown, Tare: orElse(reading.TareKg, 0),
			Spread: reading.ReadingKg.Deviation(name + ".readingKg"),
		})
	}
	if len(readings) == 0 {
		return weighing.State{}, nil
	}
	out, err := weighing.Weigh(readings)
	if err != nil {
		p.refuse(err)
		return weighing.State{}, nil
	}
	p.tellWeighing(&out.State, lacking)
	return out.State, lacking
}

// tellWeighing tells what the scales alone say.
func (p *pass) tellWeighing(state *weighing.State, lacking []string) {
	p.tell("weighing.mass", state.Mass.Value)
	p.tell("weighing.mass_spread", state.Mass.Spread)
	if state.X.Known && len(lacking) == 0 {
		p.tell("weighing.balance_x", state.X.Value)
		p.tell("weighing.balance_x_spread", state.X.Spread)
	}
	if state.Y.Known {
		p.tell("weighing.balance_y", state.Y.Value)
	}
}

// shown returns a scale's reading and its repeats as this pass sees them. Repeats that scatter widen the spread.
func (p *pass) shown(name string, r *ScaleReading) ([]float64, bool) {
	q := r.ReadingKg
	if q == nil || q.Value == nil {
		return nil, false
	}
	path := name + ".readingKg"
	values := []float64{*q.Value}
	for i := range r.Repeats {
		if r.Repeats[i].ReadingKg != nil {
			values = append(values, *r.Repeats[i].ReadingKg)
		}
	}
	spread := root(q.Deviation(path), weighing.RepeatSpread(values))
	p.scale = r.Scale
	p.meet(uncertain{name: path, value: *q.Value, spread: spread, estimated: q.estimated()})
	p.scale = ""
	for i := range values {
		values[i] += p.shift(path)
	}
	return values, true
}

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
