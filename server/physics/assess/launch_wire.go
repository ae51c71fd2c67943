package assess

import (
	"math"

	"pitgate/server/physics/field"
)

// beyondWire is how far beyond a wire its track is drawn, m.
const beyondWire = 10.0

// room returns the least height over an obstacle and where: over a wire that hangs by its own height under the path, else by its highest top.
func (p *pass) room(o over) (gap, where float64) {
	obstacle, name := &p.in.Field.Obstacles[o.index], at("field.obstacles", o.index)
	sag, hangs := p.read(name+".sagMeters", obstacle.SagMeters)
	if !hangs || !(sag > 0) || len(obstacle.Points) < 2 || yes(obstacle.Closed) {
		return p.gap(o)
	}
	wire := p.wire(obstacle, o, sag)
	if wire.Check() != nil || p.poleInside(wire.Points) {
		return p.gap(o)
	}
	gap = math.Inf(1)
	for _, side := range []float64{-1, 0, 1} {
		if passing := wire.Pass(p.climbTrack(o.far, side), 0); passing.Over && passing.Above < gap {
			gap, where = passing.Above, passing.OverAt.Minus(p.launch.origin).Dot(field.Ahead(p.launch.heading))
		}
	}
	if math.IsInf(gap, 1) {
		return p.gap(o)
	}
	return gap, where
}

// poleInside reports whether a pole of a wire stands in the corridor: its top is then what has to be cleared.
func (p *pass) poleInside(poles []field.Point) bool {
	corridor := p.corridor()
	for _, pole := range poles {
		if _, inside := corridor.Cross(field.Obstacle{Points: []field.Point{pole}}); inside {
			return true
		}
	}
	return false
}

// wire returns a wire where this pass has it, no deeper than its poles are high.
func (p *pass) wire(obstacle *Obstacle, o over, sag float64) field.Standing {
	wire := field.Standing{Height: o.top - base(obstacle) + p.launch.ground}
	wire.Sag = min(sag, wire.Height)
	shift := field.Ahead(p.launch.heading).Times(o.moved)
	for i := range obstacle.Points {
		wire.Points = append(wire.Points, flat(&obstacle.Points[i]).Plus(shift))
		wire.Ground = append(wire.Ground, orElse(obstacle.Points[i].ZMeters, 0))
	}
	return wire
}

// climbTrack returns the path of the launch over the field to beyond a distance (m), no higher than the circuit, along the middle of the corridor (side 0)
// or its left or right edge (-1, 1), between which a wire hangs lower than at one of them; drawn on with the drift of its last legs where it was not
// followed so far.
func (p *pass) climbTrack(distance, side float64) field.Track {
	path := p.launch.result.Path
	var track field.Track
	add := func(x, drift float64) {
		half := float64(p.wing.span/2) + corridorSpare + float64(corridorWidening*max(0, x))
		track = append(track, field.Place{Point: p.along(x, drift+float64(side*half)), Height: p.launch.ground + p.pathHeight(x)})
	}
	last, before := path[len(path)-1], path[0]
	for _, point := range path {
		if len(track) > 0 && point.Distance <= before.Distance {
			continue
		}
		add(point.Distance, point.Drift)
		before = point
	}
	if end := distance + beyondWire; end > last.Distance {
		slope := 0.0
		if last.Distance > path[0].Distance {
			slope = (last.Drift - path[len(path)/2].Drift) / max(1, last.Distance-path[len(path)/2].Distance)
		}
		add(end, last.Drift+float64(slope*(end-last.Distance)))
	}
	return track
}
