package assess

import (
	"pitgate/server/physics/field"
	"pitgate/server/physics/weather"
)

// windbreaks are the kinds of obstacle that slow the wind behind them, with the share of their face that is open.
var windbreaks = map[ObstacleKind]float64{
	ObstacleKindHedge: weather.HedgePorosity, ObstacleKindWall: weather.WallPorosity, ObstacleKindTree: weather.TreePorosity,
	ObstacleKindBuilding: weather.WallPorosity, ObstacleKindBank: weather.WallPorosity, ObstacleKindFence: weather.HedgePorosity,
}

// barriers returns the windbreaks of the field with more than one point.
func (p *pass) barriers() (list []weather.Barrier, indices []int) {
	if p.in.Field == nil {
		return nil, nil
	}
	for i := range p.in.Field.Obstacles {
		o := &p.in.Field.Obstacles[i]
		open, slows := windbreaks[o.Kind]
		height, known := p.read(at("field.obstacles", i)+".heightMeters", o.HeightMeters)
		if !slows || !known || len(o.Points) < 2 {
			continue
		}
		barrier := weather.Barrier{Windbreak: weather.Windbreak{Height: height, Porosity: orElse(o.PorosityRatio, open)}, Closed: yes(o.Closed)}
		barrier.Line = shape(o).Points
		list, indices = append(list, barrier), append(indices, i)
	}
	return list, indices
}

// answerWake answers for the wind that hedges, banks and woods leave along the launch.
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

func (p *pass) wake(wake *answer) {
	barriers, indices := p.barriers()
	path := p.flownPlaces()
	worst := weather.AlongPath(path, barriers, p.air.from, roughness(p.in).Length())
	if len(barriers) == 0 || !(p.air.wind > 0) || worst.Barrier < 0 || worst.Slowest.WindFactor > openWind {
		wake.none = true
		wake.note = "No hedge, bank, wall or wood lies upwind of the launch path near enough to slow its wind."
		return
	}
	wake.value = worst.Slowest.WindFactor
	name := p.slowedBy(path[worst.SlowestAt], barriers, indices)
	distance := path[worst.SlowestAt].Distance(p.launch.origin)
	wake.note = say("Behind %s: %.0f %% of the wind are left %.0f m from the start, %.0f m up; the climb is computed in the open wind.",
		name, 100*worst.Slowest.WindFactor, distance, path[worst.SlowestAt].Height)
	p.addNote("climb.clearance", say(" The path crosses the lee of %s, where the wind is less.", name))
	if worst.Roughest.Zone == weather.RoughAir || worst.Roughest.Zone == weather.FadingAir {
		wake.note += say(" The air is up to %.1f times as rough.", worst.Roughest.TurbulenceFactor)
	}
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
