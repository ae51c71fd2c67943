package report

import (
	"fmt"
	"math"

	"pitgate/server/physics/assess"
	"pitgate/server/physics/weighing"
)

// Readings returns a model's scale readings for the weighing package; an entry without a value has nothing shown and is refused there by name.
func Readings(mass *assess.MassProperties) []weighing.Reading {
	readings := make([]weighing.Reading, len(mass.ScaleReadings))
	for i := range mass.ScaleReadings {
		r := &mass.ScaleReadings[i]
		readings[i] = weighing.Reading{Name: r.Name, X: r.XMeters, Y: r.YMeters}
		if r.TareKg != nil {
			readings[i].Tare = *r.TareKg
		}
		if value := valueOf(r.ReadingKg); value != nil {
			readings[i].Shown, readings[i].Spread = []float64{*value}, r.ReadingKg.Deviation("readingKg")
			readings[i].Shown = append(readings[i].Shown, repeats(r.Repeats)...)
		}
	}
	return readings
}

func repeats(list []assess.RepeatReading) []float64 {
	var values []float64
	for _, r := range list {
		if r.ReadingKg != nil {
			values = append(values, *r.ReadingKg)
		}
	}
	return values
}

// valueOf returns the number of a quantity, or nil.
func valueOf(q *assess.Quantity) *float64 {
	if q == nil {
		return nil
	}
	return q.Value
}

// estimateOf returns a quantity with its spread.
func estimateOf(q *assess.Quantity, name string) weighing.Estimate {
	if valueOf(q) == nil {
		return weighing.Estimate{}
	}
	return weighing.Estimate{Value: *q.Value, Spread: q.Deviation(name), Known: true}
}

func statedState(m *assess.MassProperties) weighing.State {
	return weighing.State{
		Mass: estimateOf(m.EmptyMassKg, "emptyMassKg"), X: estimateOf(m.EmptyBalanceXMeters, "emptyBalanceXMeters"),
		Z: estimateOf(m.EmptyBalanceZMeters, "emptyBalanceZMeters"),
	}
}

// itemsOf returns the items that have a mass.
func itemsOf(m *assess.MassProperties) []weighing.Item {
	var items []weighing.Item
	for i := range m.Items {
		item := &m.Items[i]
		if mass := valueOf(item.MassKg); mass != nil {
			items = append(items, weighing.Item{
				Name: item.Name, Mass: *mass, MassSpread: item.MassKg.Deviation("massKg"),
				X: item.XMeters, Y: item.YMeters, Z: item.ZMeters, Movable: item.Movable != nil && *item.Movable,
			})
		}
	}
	return items
}

// tanks returns the fuel as filled for the flight. Capacity is usable volume: unusable fuel belongs to the empty mass.
func (b *bench) tanks() []weighing.Tank {
	if len(b.mass.Tanks) == 0 {
		return nil
	}
	var density *float64
	if b.model.FuelSystem != nil {
		density = valueOf(b.model.FuelSystem.DensityKgPerCubicMeter)
	}
	if density == nil {
		b.lack("model.fuelSystem.densityKgPerCubicMeter")
		return nil
	}
	tanks := make([]weighing.Tank, len(b.mass.Tanks))
	for i := range b.mass.Tanks {
		t := &b.mass.Tanks[i]
		tanks[i] = weighing.Tank{Name: t.Name, X: t.XMeters, Y: t.YMeters, Z: t.ZMeters}
		if liters := valueOf(t.CapacityLiters); liters != nil {
			tanks[i].Fuel = *density * *liters / 1000 * orElse(t.FillRatio, 1)
		} else {
			b.lack(fmt.Sprintf("model.mass.tanks[%d].capacityLiters", i))
		}
		if t.BurnOrder != nil {
			tanks[i].Order = int(*t.BurnOrder)
		}
	}
	return tanks
}

func orElse(value *float64, otherwise float64) float64 {
	if value == nil {
		return otherwise
	}
	return *value
}

// choose takes the empty state as stated, else from the scales, else from the items, each only where it balances too.
func (b *bench) choose() bool {
	for _, from := range []struct {
		name  string
		state weighing.State
	}{{"stated", b.stated}, {"scales", b.weighed.State}, {"items", b.listed.State}} {
		if from.state.Mass.Known && from.state.X.Known {
			b.Used, b.used = from.name, from.state
			return true
		}
	}
	return false
}

// travel burns the fuel.
func (b *bench) travel() error {
	if !b.choose() {
		b.lack("model.mass.emptyMassKg")
		b.lack("model.mass.emptyBalanceXMeters")
		return nil
	}
	tanks := b.tanks()
	burn, err := weighing.Burn(b.used, tanks)
	if err != nil {
		return err
	}
	b.burn = burn
	b.Travel = &TravelTable{ForwardXMeters: burn.Forward.X, AftXMeters: burn.Aft.X, Note: burn.Note}
	for _, p := range burn.Points {
		b.Travel.Points = append(b.Travel.Points, TravelPoint{FuelKg: p.Left, MassKg: p.Mass, XMeters: p.X})
	}
	return nil
}

// correct holds the travel against the window and looks for ballast.
func (b *bench) correct() error {
	window, ok := b.window()
	if !ok || b.Travel == nil {
		return nil
	}
	for i := range b.Travel.Points {
		margin := window.Margin(b.Travel.Points[i].XMeters)
		b.Travel.Points[i].MarginRatio = &margin
	}
	search := weighing.Search{Window: window, Travel: b.burn, Items: b.items, Reserve: bandFactor * b.used.X.Spread}
	for i := range b.mass.BallastPlaces {
		p := &b.mass.BallastPlaces[i]
		search.Places = append(search.Places, weighing.Place{Name: p.Name, X: p.XMeters, Z: p.ZMeters, Maximum: p.MaximumMassKg})
	}
	if b.limits != nil {
		search.MaximumMass = b.limits.MaximumMassKg
	}
	search.Foremost, search.Aftmost = reach(b.model.Bodies)
	found, err := weighing.Correct(search)
	if err != nil {
		return err
	}
	b.needed, b.Correction = found.Needed, found.Note
	b.Window = &BalanceWindow{
		ForwardXMeters: found.Forward, AftXMeters: found.Aft, NeutralXMeters: window.Neutral, ChordMeters: window.Chord,
		LeastRatio: window.Least, MostRatio: window.Most,
	}
	b.Ballast, b.Moves = ways(found.Ballast), ways(found.Moves)
	return nil
}

func ways(options []weighing.Option) []Way {
	var list []Way
	for i := range options {
		o := options[i]
		way := Way{Name: o.Name, Possible: o.Possible, XMeters: o.X, Note: o.Note}
		if o.Possible {
			way.MassKg, way.ToXMeters, way.MarginFullRatio, way.MarginEmptyRatio = &o.Mass, &o.To, &o.MarginFull, &o.MarginEmpty
		}
		list = append(list, way)
	}
	return list
}

// window takes neutral point, chord and margins from the report.
func (b *bench) window() (weighing.Window, bool) {
	w := weighing.Window{Forward: b.mass.ForwardBalanceLimitXMeters, Aft: b.mass.AftBalanceLimitXMeters}
	neutral, chord := b.quantity("lift.neutral_point"), b.quantity("wing.mean_chord")
	least, most := b.marginLimits()
	if neutral == nil || chord == nil || least == nil || most == nil {
		b.lack("model.surfaces")
		return w, false
	}
	w.Neutral, w.Chord, w.Least, w.Most = *neutral, *chord, *least, *most
	return w, true
}

func (b *bench) quantity(id string) *float64 {
	for i := range b.report.Quantities {
		if b.report.Quantities[i].ID == id {
			return b.report.Quantities[i].Value
		}
	}
	return nil
}

// marginLimits returns the window of the static margin that the report used.
func (b *bench) marginLimits() (least, most *float64) {
	for i := range b.report.Findings {
		if f := &b.report.Findings[i]; f.ID == "balance.margin_full" {
			return f.Limit, f.UpperLimit
		}
	}
	return nil, nil
}

// reach returns the ends of the bodies, where an item may be put; nil without bodies.
func reach(bodies []assess.Body) (foremost, aftmost *float64) {
	low, high := math.Inf(1), math.Inf(-1)
	for i := range bodies {
		for k := range bodies[i].Stations {
			if x := bodies[i].Stations[k].XMeters; x != nil {
				low, high = math.Min(low, *x), math.Max(high, *x)
			}
		}
	}
	if low > high {
		return nil, nil
	}
	return &low, &high
}
