package assess

import (
	"math"

	"pitgate/server/physics/footprint"
)

const (
	gramsPerMinute = 1e-3 / 60 // kg/s
	// idleFlowShare is the fuel at idle over that at full thrust where it was not measured.
	idleFlowShare = 0.25
)

// powered fills in what a model needs that keeps its engine running after the loss.
func (p *pass) powered(loss lossSection, m *footprint.Model, n *need) {
	speed := p.stall.circuitSpeed
	m.IdleThrust = max(0, p.thrust(speed, 0))
	m.FullThrust = max(0, p.thrust(0, p.engine.spool))
	m.ThrustSlope = max(0, (m.FullThrust-p.thrust(speed, p.engine.spool))/speed)
	full, idle := p.endurances(n)
	state := p.stateAt(speed)
	needed := float64(state.Pressure() * state.Area * state.Drag)
	share := min(1, max(0, needed/max(1e-9, p.thrust(speed, p.engine.spool))))
	m.FullEndurance, m.IdleEndurance = full, idle
	// Flow, and current, grow about straight from idle to full thrust.
	m.HoldEndurance = held(full, idle, share)
	if loss.action != footprint.FlyAway || !n.met() {
		return
	}
	p.tell("link_loss.endurance", full, p.endurancePaths()...)
	p.tellFlyAway(full)
}

// longestEndurance is as long as a fall is followed, s.
const longestEndurance = 7200.0

// held returns the endurance at a share of full thrust, s.
func held(full, idle, share float64) float64 {
	if !(full > 0) || !(idle > 0) {
		return 0
	}
	return min(longestEndurance, 1/(share/full+(1-share)/idle))
}

// endurances returns the time at full and at idle power, s: of the fuel, or of the packs that drive electric motors.
func (p *pass) endurances(n *need) (full, idle float64) {
	if p.in.Model.Engines[0].Kind != EngineKindTurbine {
		full = p.packTime(n)
		return full, longestEndurance
	}
	fuel := p.mass.takeoff - p.mass.empty
	flow, still := 0.0, 0.0
	for i := range p.in.Model.Engines {
		e, path := &p.in.Model.Engines[i], at("model.engines", i)
		told := fullFlowOf(e, path)
		one := n.plain(told.path, told.value)
		flow += one
		still += valueOr(idleFlowOf(e, path).value, idleFlowShare*one)
	}
	full, _ = footprint.Endurance(fuel, gramsPerMinute*max(1e-6, flow))
	idle, _ = footprint.Endurance(fuel, gramsPerMinute*max(1e-6, still))
	return min(longestEndurance, full), min(longestEndurance, idle)
}

// packTime returns the time in which the propulsion packs are empty at their mean current, s.
func (p *pass) packTime(n *need) float64 {
	shortest, found := longestEndurance, false
	for i := range p.in.Model.Packs {
		pack, path := &p.in.Model.Packs[i], at("model.packs", i)
		if pack.Use != PackUsePropulsion {
			continue
		}
		found = true
		charge := n.plain(path+".capacityAmpereHours", pack.CapacityAmpereHours)
		current := n.plain(path+".meanCurrentAmperes", pack.MeanCurrentAmperes)
		if current > 0 {
			shortest = min(shortest, secondsPerHour*charge/current)
		}
	}
	if !found {
		n.lack("model.packs")
	}
	return shortest
}

// endurancePaths names what the endurance was taken from.
func (p *pass) endurancePaths() []string {
	if p.in.Model.Engines[0].Kind != EngineKindTurbine {
		return []string{"model.packs"}
	}
	return []string{"mass.fuel", "model.engines"}
}

// tellFlyAway tells how far a powered fly-away leads from where it begins: gliding at the best ratio, 1/(2 sqrt(CD0 k)), in the end.
func (p *pass) tellFlyAway(endurance float64) {
	height := p.day.height
	ratio := 1 / (2 * math.Sqrt(float64(p.drag.top*p.drag.induced)))
	wind := footprint.Wind{Speed: p.air.wind, From: p.air.from, Profile: p.air.profile}
	speed := max(p.top, p.stall.circuitSpeed)
	reach, err := footprint.FlyAwayReach(footprint.Release{Height: height, Speed: speed}, speed, endurance, ratio, wind)
	if err == nil {
		p.tell("link_loss.fly_away_radius", reach.Farthest(reach.Centre.Times(0)))
	}
}
