package assess

import "pitgate/server/physics/weighing"

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
