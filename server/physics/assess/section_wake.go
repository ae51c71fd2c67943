package assess

import (
	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
	"pitgate/server/physics/weather"
)

// windbreaks are the kinds of obstacle that slow the wind behind them, with the share of their face that is open.
var windbreaks = pairings[ObstacleKind, float64]{
	{ObstacleKindHedge, weather.HedgePorosity}, {ObstacleKindWall, weather.WallPorosity}, {ObstacleKindTree, weather.TreePorosity},
	{ObstacleKindBuilding, weather.WallPorosity}, {ObstacleKindBank, weather.WallPorosity}, {ObstacleKindFence, weather.HedgePorosity},
}

// barriers returns the windbreaks of the field with more than one point.
func (p *pass) barriers() (list []weather.Barrier, indices []int) {
	if p.in.Field == nil {
		return nil, nil
	}
	for i := range p.in.Field.Obstacles {
		o := &p.in.Field.Obstacles[i]
		open, slows := windbreaks.find(o.Kind)
		height := valueOr(o.HeightMeters, 0)
		if !slows || !(height > 0) || len(o.Points) < 2 {
			continue
		}
		barrier := weather.Barrier{Windbreak: weather.Windbreak{Height: height, Porosity: orElse(o.PorosityRatio, open)}, Closed: yes(o.Closed)}
		barrier.Line = shape(o).Points
		list, indices = append(list, barrier), append(indices, i)
	}
	return list, indices
}

// lee is what windbreaks leave along one path of the flight.
type lee struct {
	finding, words string // the finding it bears on, and the path in words
	path           []field.Place
}

// lees returns the launch as flown and the last of the approach.
func (p *pass) lees() []lee {
	list := []lee{{"climb.clearance", "launch", p.flownPlaces()}}
	if p.landing.flown {
		list = append(list, lee{"landing.distance", "approach", p.approachPlaces()})
	}
	return list
}

// approachPlaces returns the slope of the approach from 200 m before the threshold, heights over it.
func (p *pass) approachPlaces() []field.Place {
	const step, reach = 2.0, 200.0
	l := &p.landing
	ahead := field.Ahead(l.place.heading)
	gradient := elementary.Tan(l.result.Angle)
	var places []field.Place
	for before := reach; before >= 0; before -= step {
		places = append(places, field.Place{Point: l.place.threshold.Minus(ahead.Times(before)), Height: float64((before + l.plan.AimPoint) * gradient)})
	}
	return places
}

// answerWake answers for the wind that hedges, banks and woods leave along launch and approach.
func (p *pass) answerWake() {
	n := p.need()
	n.lack(p.launch.missing...)
	n.lack(p.air.windMissing...)
	wake := answer{id: "weather.wake", missing: n.missing}
	if n.met() {
		p.wake(&wake)
	}
	p.conclude(wake)
}

// openWind is the share of the wind above which nothing is said of a wake.
const openWind = 0.95

// wake finds the least share of the wind left along the paths and marks the findings they bear on.
func (p *pass) wake(wake *answer) {
	wake.none = true
	wake.note = "No hedge, bank, wall or wood lies upwind of launch and approach near enough to slow the wind there."
	barriers, indices := p.barriers()
	if !(p.air.wind > 0) {
		return
	}
	for _, l := range p.lees() {
		worst := weather.AlongPath(l.path, barriers, p.air.from, roughness(p.in).Length())
		left := worst.Slowest.WindFactor
		if worst.Barrier < 0 || left > openWind {
			continue
		}
		name := p.slowedBy(l.path[worst.SlowestAt], barriers, indices)
		p.addNote(l.finding, say(" The path crosses the lee of %s, where the wind is less.", name))
		if !wake.none && left >= wake.value {
			continue
		}
		wake.none, wake.value = false, left
		wake.note = say("Behind %s the %s keeps %.0f %% of the wind, %.1f m up; launch and landing are computed in the open wind.%s",
			name, l.words, 100*left, l.path[worst.SlowestAt].Height, roughWords(worst.Roughest))
	}
}

// roughWords says how rough the air is where it is worth a word.
func roughWords(s weather.Shelter) string {
	if s.Zone != weather.RoughAir && s.Zone != weather.FadingAir {
		return ""
	}
	return sayNumbers(" The air is up to %.1f times as rough.", s.TurbulenceFactor)
}

// slowedBy returns the name of the windbreak that takes most of the wind at a place.
func (p *pass) slowedBy(place field.Place, barriers []weather.Barrier, indices []int) string {
	least, name := 1.0, ""
	for i := range barriers {
		left := barriers[i].At(place.Point, place.Height, p.air.from, roughness(p.in).Length()).WindFactor
		if left < least {
			least, name = left, p.in.Field.Obstacles[indices[i]].Name
		}
	}
	return name
}

// addNote adds a sentence to a finding that was answered before.
func (p *pass) addNote(id, sentence string) {
	for i := range p.results {
		if p.results[i].ID == id && p.results[i].Verdict != VerdictUnknown {
			p.results[i].Note += sentence
		}
	}
}
