package assess

import (
	"cmp"
	"slices"
	"strconv"

	"pitgate/server/physics/engine"
	"pitgate/server/physics/order"
)

// idleShare is the thrust of a static run, over its greatest, up to which its lowest point counts as idle.
const idleShare = 0.15

// staticRunMethod is what a figure says that a static run gave.
const staticRunMethod = "static run of this engine"

// loudest returns the place of the point of a static run with the greatest thrust, and false where no point has a thrust.
func loudest(e *Engine) (int, bool) {
	found, most := -1, 0.0
	for i := range e.StaticRun {
		if thrust := valueOr(e.StaticRun[i].ThrustNewtons, 0); thrust > most {
			found, most = i, thrust
		}
	}
	return found, found >= 0
}

// quietest returns the place of the point of a static run that counts as idle.
func quietest(e *Engine) (int, bool) {
	top, ran := loudest(e)
	if !ran {
		return 0, false
	}
	most, found := valueOr(e.StaticRun[top].ThrustNewtons, 0), top
	for i := range e.StaticRun {
		thrust := e.StaticRun[i].ThrustNewtons
		if thrust != nil && thrust.Value != nil && *thrust.Value < valueOr(e.StaticRun[found].ThrustNewtons, 0) {
			found = i
		}
	}
	return found, valueOr(e.StaticRun[found].ThrustNewtons, most) <= float64(idleShare*most)
}

// figureOf is where one figure of an engine stands: in its static run, else as the maker tells it.
type figureOf struct {
	path     string
	value    *Quantity
	measured bool
}

// instead returns a figure of a point of the static run where it is there, else the maker's.
func instead(ran bool, path string, measured *Quantity, makers string, other *Quantity) figureOf {
	if ran && measured != nil && measured.Value != nil {
		return figureOf{path, measured, true}
	}
	return figureOf{makers, other, false}
}

// thrustFigureOf returns where the full thrust of an engine stands.
func thrustFigureOf(e *Engine, name string) figureOf {
	i, ran := loudest(e)
	if !ran {
		return figureOf{path: name + ".staticThrustNewtons", value: e.StaticThrustNewtons}
	}
	return figureOf{at(name+".staticRun", i) + ".thrustNewtons", e.StaticRun[i].ThrustNewtons, true}
}

func idleFigureOf(e *Engine, name string) figureOf {
	i, ran := quietest(e)
	if !ran {
		return figureOf{path: name + ".idleThrustNewtons", value: e.IdleThrustNewtons}
	}
	return figureOf{at(name+".staticRun", i) + ".thrustNewtons", e.StaticRun[i].ThrustNewtons, true}
}

func exhaustFigureOf(e *Engine, name string) figureOf {
	i, ran := loudest(e)
	var measured *Quantity
	if ran {
		measured = e.StaticRun[i].ExhaustTemperatureCelsius
	}
	return instead(ran, at(name+".staticRun", i)+".exhaustTemperatureCelsius", measured, name+".exhaustTemperatureCelsius", e.ExhaustTemperatureCelsius)
}

// flowOf returns the fuel flow at a point of a static run in g/min with its spread: by weight over time where that is there.
func flowOf(point *StaticRunPoint, path string) figureOf {
	used, time := point.FuelUsedKg, orElse(point.DurationSeconds, 0)
	if used != nil && used.Value != nil && time > 0 {
		scale := secondsPerMinute * gramsPerKg / time
		flow, spread := *used.Value*scale, used.Deviation(path+".fuelUsedKg")*scale
		return figureOf{path + ".fuelUsedKg", &Quantity{Value: &flow, Basis: used.Basis, Spread: &spread}, true}
	}
	return figureOf{path + ".fuelFlowGramsPerMinute", point.FuelFlowGramsPerMinute, true}
}

const gramsPerKg = 1000.0

func fullFlowOf(e *Engine, name string) figureOf {
	return runFlow(e, name, loudest, ".fullFuelFlowGramsPerMinute", e.FullFuelFlowGramsPerMinute)
}

func idleFlowOf(e *Engine, name string) figureOf {
	return runFlow(e, name, quietest, ".idleFuelFlowGramsPerMinute", e.IdleFuelFlowGramsPerMinute)
}

func runFlow(e *Engine, name string, which func(*Engine) (int, bool), makers string, other *Quantity) figureOf {
	if i, ran := which(e); ran {
		if flow := flowOf(&e.StaticRun[i], at(name+".staticRun", i)); flow.value != nil && flow.value.Value != nil {
			return flow
		}
	}
	return figureOf{path: name + makers, value: other}
}

// figure reads a figure of an engine that the answer cannot do without and tells it under an id.
func (n *need) figure(id string, f figureOf) float64 {
	value := n.quantity(f.path, f.value)
	n.pass.tellFigure(id, value, f)
	return value
}

// tellFigure tells a figure of an engine, and that it was measured where it comes from a static run.
func (p *pass) tellFigure(id string, value float64, f figureOf) {
	if !p.base() || f.value == nil || f.value.Value == nil {
		return
	}
	if f.measured {
		p.replaced = append(p.replaced, replacement{id: id, path: f.path, method: staticRunMethod})
	}
	p.tell(id, value, f.path)
}

// engineFigure names a figure of the engine at a place.
func engineFigure(i int, what string) string { return "engine." + strconv.Itoa(i+1) + "." + what }

// fuelRun returns the readings of fuel flow of a static run, sorted by thrust, where there are two or more.
func (p *pass) fuelRun(e *Engine, name string) []engine.FuelPoint {
	var points []engine.FuelPoint
	for i := range e.StaticRun {
		path := at(name+".staticRun", i)
		flow := flowOf(&e.StaticRun[i], path)
		thrust := valueOr(e.StaticRun[i].ThrustNewtons, 0)
		if value, ok := p.read(flow.path, flow.value); ok && thrust > 0 {
			points = append(points, engine.FuelPoint{Thrust: thrust, FuelFlow: max(0, value) * gramsPerMinute})
		}
	}
	order.Stable(points, func(a, b engine.FuelPoint) int { return cmp.Compare(a.Thrust, b.Thrust) })
	points = slices.CompactFunc(points, func(a, b engine.FuelPoint) bool { return a.Thrust == b.Thrust })
	if len(points) < 2 {
		return nil
	}
	return points
}
