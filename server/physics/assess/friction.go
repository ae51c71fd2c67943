package assess

import "math"

// byState is a number for each state of a surface.
type byState = pairings[SurfaceState, float64]

// rollingFriction is rolling resistance over normal force of full-size tyres by surface and its state.
//
// Source: Raymer, Aircraft Design: A Conceptual Approach, Table 17.1 (paved, hard turf, firm dirt, soft turf, wet grass); short and
// long grass and soft ground from memory of McCormick's table; what is soft or under snow by judgement, no source.
var rollingFriction = pairings[Surface, byState]{
	{SurfacePaved, byState{{SurfaceStateDry, 0.04}, {SurfaceStateWet, 0.05}, {SurfaceStateSoft, 0.05}, {SurfaceStateFrozen, 0.02}, {SurfaceStateSnow, 0.10}}},
	{SurfaceHardTurf, byState{{SurfaceStateDry, 0.05}, {SurfaceStateWet, 0.07}, {SurfaceStateSoft, 0.10}, {SurfaceStateFrozen, 0.05}, {SurfaceStateSnow, 0.15}}},
	{SurfaceShortGrass, byState{{SurfaceStateDry, 0.05}, {SurfaceStateWet, 0.08}, {SurfaceStateSoft, 0.12}, {SurfaceStateFrozen, 0.05}, {SurfaceStateSnow, 0.15}}},
	{SurfaceLongGrass, byState{{SurfaceStateDry, 0.10}, {SurfaceStateWet, 0.12}, {SurfaceStateSoft, 0.15}, {SurfaceStateFrozen, 0.10}, {SurfaceStateSnow, 0.20}}},
	{SurfaceFirmDirt, byState{{SurfaceStateDry, 0.04}, {SurfaceStateWet, 0.06}, {SurfaceStateSoft, 0.10}, {SurfaceStateFrozen, 0.04}, {SurfaceStateSnow, 0.15}}},
	{SurfaceSoftGround, byState{{SurfaceStateDry, 0.20}, {SurfaceStateWet, 0.25}, {SurfaceStateSoft, 0.30}, {SurfaceStateFrozen, 0.10}, {SurfaceStateSnow, 0.25}}},
}

// fullSizeWheel is the diameter from which the table holds without a factor, m.
const fullSizeWheel = 0.6

// smallWheelFactor returns what a small wheel multiplies the table's rolling friction by on anything but a paved surface.
//
//	k = sqrt(0.6/d), kept within 1 and 3
//
// where d is the wheel's diameter (m). It gives 2.2 to 2.9 for wheels of 120 to 70 mm.
// Valid for: grass and earth. Source: judgement (2 to 3 for wheels of 70 to 120 mm), no source; a towing test replaces it.
func smallWheelFactor(diameter float64) float64 {
	if !(diameter > 0) {
		return 3
	}
	return min(3, max(1, math.Sqrt(fullSizeWheel/diameter)))
}

// friction finds rolling resistance over normal force and tells it under an id.
func (p *pass) friction(id string, surface Surface, surfaceName string, n *need) float64 {
	mark := p.mark()
	found := p.rollingFriction(id, surface, surfaceName, n)
	if n.met() {
		p.tell(id, found, append(p.since(mark), surfaceName, "day.surfaceState", "model.gear.wheels")...)
	}
	return found
}

// rollingFriction returns rolling resistance over normal force: as entered, else as the rolling tests give it, else from the table for the wheels of the
// model.
func (p *pass) rollingFriction(id string, surface Surface, surfaceName string, n *need) float64 {
	const direct = "model.gear.rollingResistanceRatio"
	gear := p.in.Model.Gear
	if measured, ok := p.read(direct, gear.RollingResistanceRatio); ok {
		if p.base() {
			p.replaced = append(p.replaced, replacement{id: id, path: direct})
		}
		return max(0, measured)
	}
	if measured, ok := p.rollingTests(id, n); ok {
		return measured
	}
	state := SurfaceState("")
	if p.in.Day != nil {
		state = p.in.Day.SurfaceState
	}
	if surface == "" {
		n.lack(surfaceName)
	}
	if state == "" {
		n.lack("day.surfaceState")
	}
	table := rollingFriction.of(surface).of(state) * p.factor("method: rolling friction", spreadFriction)
	if surface == SurfacePaved {
		return table
	}
	return table * smallWheelFactor(smallestWheel(gear))
}

// smallestWheel returns the least diameter of the wheels, m; zero without wheels.
func smallestWheel(gear *LandingGear) float64 {
	least := 0.0
	for _, wheel := range gear.Wheels {
		diameter := orElse(wheel.DiameterMeters, 0)
		if diameter > 0 && (least == 0 || diameter < least) {
			least = diameter
		}
	}
	return least
}
