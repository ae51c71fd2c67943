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
