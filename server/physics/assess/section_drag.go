package assess

import (
	"math"

	"pitgate/server/physics/air"
	"pitgate/server/physics/drag"
)

// Speeds over the stall speed at which the drag is built up.
const (
	launchDragRatio = 1.3
	topDragRatio    = 2.5
	gapsAndLeakage  = 0.05
)

// dragSection is the polar on the wing area.
type dragSection struct {
	missing []string
	launch  float64 // zero-lift drag coefficient, wheels down
	top     float64 // wheels up where they retract
	induced float64 // drag coefficient over lift coefficient squared
	parts   []drag.Component
	speed   float64 // at which top was built up, m/s
}

var finishes = pairings[Finish, string]{
	{FinishPolished, drag.FinishPolished}, {FinishSmooth, drag.FinishSmooth},
	{FinishCoveredOpenStructure, drag.FinishOpenFrame}, {FinishTapedFoam, drag.FinishTapedFoam},
}

func (p *pass) readDrag() {
	n := p.need()
	n.lack(p.wing.missing...)
	if p.in.Model == nil || p.whole.lattice == nil {
		p.drag.missing = n.missing
		return
	}
	if len(p.in.Model.Bodies) == 0 {
		n.lack("model.bodies")
	}
	speed, mark := p.dragSpeed(), p.mark()
	aircraft := p.aircraft()
	read := p.since(mark)
	built, parts := p.buildUp(aircraft, launchDragRatio*speed)
	factor := p.factor("method: zero-lift drag", partsSpread(parts, built))
	for _, part := range parts {
		p.tell("drag.part."+part.Name, part.Coefficient, read...)
	}
	p.drag.launch = built * factor
	if aircraft.Gear != nil && yes(p.in.Model.Gear.Retractable) {
		aircraft.Gear.Retracted = true
	}
	built, p.drag.parts = p.buildUp(aircraft, topDragRatio*speed)
	p.drag.top = built * factor
	p.drag.speed = topDragRatio * speed
	p.useMeasuredDrag()
	p.drag.induced = p.inducedFactor()
	p.drag.missing = n.missing
	p.tell("drag.zero_lift_launch", p.drag.launch, p.toldUnder("drag.part.")...)
	p.tell("drag.zero_lift", p.drag.top)
	p.tell("drag.lift_factor", p.drag.induced)
}

// partsSpread returns one standard deviation of the build-up over its sum: that of the friction method and of each part's own figure.
func partsSpread(parts []drag.Component, sum float64) float64 {
	if !(sum > 0) {
		return spreadZeroLiftDrag
	}
	return drag.TotalSpread(parts) / sum
}

// useMeasuredDrag lets a measured zero-lift drag replace the built-up one; the wheels' share stays.
func (p *pass) useMeasuredDrag() {
	if measured, ok := p.measured("drag.zero_lift"); ok {
		p.drag.launch += measured - p.drag.top
		p.drag.top = measured
	}
}

// inducedFactor returns the factor of the lattice with the friction that grows with lift.
func (p *pass) inducedFactor() float64 {
	s := p.whole.lattice
	aspect := p.wing.span * p.wing.span / p.wing.area
	efficiency := drag.OswaldFactor(s.SpanEfficiency, aspect, p.drag.top)
	return p.factor("method: induced drag", spreadInduced) / (math.Pi * aspect * efficiency)
}

// dragSpeed is the stall speed where it is known.
func (p *pass) dragSpeed() float64 {
	density, _ := p.nominalAir()
	speed := stallSpeed(p.mass.takeoff, density, p.wing.area, p.wing.clean.Coefficient)
	if len(p.mass.missing) > 0 || !(speed > 0) {
		return nominalSpeed
	}
	return speed
}

func (p *pass) buildUp(aircraft drag.Aircraft, speed float64) (float64, []drag.Component) {
	state := p.air.state
	if len(p.air.missing) > 0 {
		state = air.Standard(0)
	}
	return drag.BuildUp(aircraft, drag.Conditions{Speed: speed, Air: state, ReferenceArea: p.wing.area})
}

// aircraft gathers all that stands in the stream.
func (p *pass) aircraft() drag.Aircraft {
	model := p.in.Model
	a := drag.Aircraft{
		Surfaces: p.whole.surfaces, Finish: finishes.of(model.Finish), Leakage: gapsAndLeakage, Gear: p.gear(model.Gear), Duct: p.duct(model.Duct),
	}
	for i := range model.Bodies {
		a.Bodies = append(a.Bodies, bodyOf(&model.Bodies[i]))
	}
	for i := range model.DragItems {
		item, name := &model.DragItems[i], at("model.dragItems", i)
		a.Items = append(a.Items, drag.Item{
			Name: item.Name, Coefficient: p.optional(name+".dragCoefficient", item.DragCoefficient, 1),
			FrontalArea: p.optional(name+".frontalAreaSquareMeters", item.FrontalAreaSquareMeters, 0), Count: count(item.Count, 1),
		})
	}
	return a
}

func bodyOf(b *Body) drag.Body {
	body := drag.Body{
		Name: b.Name, Mirrored: yes(b.Mirrored), SquareSided: yes(b.SquareSided), BaseArea: orElse(b.BaseAreaSquareMeters, 0),
	}
	for _, s := range b.Stations {
		if s.XMeters != nil && s.WidthMeters != nil {
			height := orElse(s.HeightMeters, *s.WidthMeters)
			body.Stations = append(body.Stations, drag.BodyStation{
				X: *s.XMeters, Width: *s.WidthMeters, Height: height, Z: orElse(s.CenterZMeters, 0),
			})
		}
	}
	return body
}

func (p *pass) gear(g *LandingGear) *drag.Gear {
	if g == nil {
		return nil
	}
	gear := &drag.Gear{
		StrutsFaired:     yes(g.StrutsFaired),
		StrutFrontalArea: max(0, p.optional("model.gear.strutFrontalAreaSquareMeters", g.StrutFrontalAreaSquareMeters, 0)),
	}
	for _, wheel := range g.Wheels {
		gear.Wheels = append(gear.Wheels, drag.Wheel{
			Name: wheel.Name, Diameter: orElse(wheel.DiameterMeters, 0), Width: orElse(wheel.WidthMeters, 0),
		})
	}
	return gear
}

func (p *pass) duct(d *Duct) *drag.Duct {
	if d == nil {
		return nil
	}
	return &drag.Duct{
		IntakeArea: p.optional("model.duct.intakeAreaSquareMeters", d.IntakeAreaSquareMeters, 0),
		Length:     p.optional("model.duct.lengthMeters", d.LengthMeters, 0),
		WettedArea: p.optional("model.duct.wettedAreaSquareMeters", d.WettedAreaSquareMeters, 0),
		ExitArea:   p.optional("model.duct.exitAreaSquareMeters", d.ExitAreaSquareMeters, 0),
	}
}

func count(value *int32, fallback int) int {
	if value == nil {
		return fallback
	}
	return int(*value)
}

// measured returns a measured result that replaces a computed quantity.
func (p *pass) measured(id string) (float64, bool) {
	if p.in.Model == nil {
		return 0, false
	}
	for i := range p.in.Model.MeasuredResults {
		result := &p.in.Model.MeasuredResults[i]
		if result.QuantityID == id {
			return p.measuredResult(at("model.measuredResults", i)+".value", result)
		}
	}
	return 0, false
}

// measuredResult reads a measured result and remembers that it replaces a computed quantity.
func (p *pass) measuredResult(path string, result *MeasuredResult) (float64, bool) {
	value, ok := p.read(path, result.Value)
	if ok && p.base() {
		p.replaced = append(p.replaced, replacement{id: result.QuantityID, path: path, method: result.Method})
	}
	return value, ok
}
