package reach

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// Place is a place of a path.
type Place struct {
	At     field.Point
	Height float64 // m over the landing areas
}

// turnPieces is the number of straight pieces a turn of a full circle is drawn with.
const turnPieces = 24

// Path returns the way of a result from its point to touchdown over the ground, at the heights flown without losing what is left over; nil where there
// is none. A path straight on ends at the edge of the area.
func (m *Map) Path(p Point, r Result) []Place {
	if r.Area < 0 || p.Check() != nil {
		return nil
	}
	s := m.begin(&p, &m.turn)
	if r.Ahead {
		end := p.At.Plus(s.heading.Times(r.track.way.length))
		return []Place{{p.At, p.Height}, {end, p.Height - r.Needed + r.Obstacle}}
	}
	return m.draw(nil, &s, &r.track, &m.turn, p.Height, math.Inf(1))
}

// Touchdown returns where a result's way from its point ends; false where there is none.
func (m *Map) Touchdown(p Point, r Result) (field.Point, bool) {
	if r.Area < 0 || p.Check() != nil {
		return field.Point{}, false
	}
	if r.Ahead {
		heading := field.Point{X: elementary.Sin(p.Heading), Y: elementary.Cos(p.Heading)}
		return p.At.Plus(heading.Times(r.track.way.length)), true
	}
	return m.touch(&r.track), true
}

// touch returns where a track touches down.
func (m *Map) touch(t *track) field.Point {
	l := &m.lines[t.line]
	return l.gates[t.aim].at.Plus(l.ahead.Times(l.pace * m.model.LineUp))
}

// pen draws a path: air position and time become a place over the ground. A turn that stays over a height is drawn by its end alone.
type pen struct {
	from   field.Point
	wind   field.Point
	over   float64
	places []Place
}

// mark adds the place of a position through the air at a time and height.
func (d *pen) mark(at field.Point, time, height float64) {
	d.places = append(d.places, Place{d.from.Plus(at).Plus(d.wind.Times(time)), height})
}

// draw appends the way of a track from a height to places; turns that stay over another height, by their ends.
func (m *Map) draw(places []Place, s *start, t *track, turn *Turn, height, over float64) []Place {
	d := pen{from: s.from, wind: t.wind, over: over, places: places}
	d.mark(field.Point{}, 0, height)
	time, height := s.time, height-s.loss
	d.mark(s.gate.at, time, height)
	from := d.turn(&s.gate, turn, t.way.first, t.way.turn1, &time, &height)
	straight := t.way.length / t.pace
	time += straight
	height -= float64(straight * t.sink)
	from.at = from.at.Plus(t.way.ahead.Times(t.way.length))
	from.ahead = t.way.ahead
	d.mark(from.at, time, height)
	d.turn(&from, turn, t.way.second, t.way.turn2, &time, &height)
	d.places = append(d.places, Place{m.touch(t), height - m.lines[t.line].height})
	return d.places
}

// turn draws a turn and returns the gate at its end.
func (d *pen) turn(from *gate, turn *Turn, side, angle float64, time, height *float64) gate {
	pieces := int(math.Ceil(angle / (2 * math.Pi) * turnPieces))
	end, first := *from, 1
	if *height-float64(angle*turn.Loss) >= d.over {
		first = pieces
	}
	for i := max(first, 1); i <= pieces; i++ {
		done := angle * (float64(i) / float64(pieces))
		end.at, end.ahead = arc(from, turn.Radius, side, done)
		d.mark(end.at, *time+done/turn.Rate, *height-float64(done*turn.Loss))
	}
	*time += angle / turn.Rate
	*height -= float64(angle * turn.Loss)
	return end
}

// lacking returns by how much a path is too low over the obstacles, m, zero when it clears them all.
func (m *Map) lacking(path []Place) float64 {
	lacking := 0.0
	for i := 1; i < len(path); i++ {
		for j := range m.obstacles {
			lacking = max(lacking, m.lackingOver(&m.obstacles[j], path[i-1], path[i]))
		}
	}
	return lacking
}

// lackingAlong is lacking for a straight path from a place to a distance ahead at which a height has been used up; straight paths into the area's
// inside cross nothing.
func (m *Map) lackingAlong(from, ahead field.Point, distance, need float64) float64 {
	if !(distance > 0) {
		return 0
	}
	return m.lacking([]Place{{from, need}, {from.Plus(ahead.Times(distance)), 0}})
}

// lackingOver returns by how much a piece of path is too low over an obstacle.
func (m *Map) lackingOver(o *field.Obstacle, from, to Place) float64 {
	top := o.Height + m.model.Clearance
	if top <= min(from.Height, to.Height) || len(o.Points) == 0 {
		return 0
	}
	lacking := 0.0
	leg := field.Segment{A: from.At, B: to.At}
	last := len(o.Points) - 1
	if o.Closed && last > 0 {
		last++
	}
	for i := range max(last, 1) {
		side := field.Segment{A: o.Points[i], B: o.Points[min(i+1, len(o.Points))%len(o.Points)]}
		if len(o.Points) == 1 {
			side.B = side.A
		}
		if apart(leg, side, m.model.HalfWidth) || leg.SegmentDistance(side) > m.model.HalfWidth {
			continue
		}
		lacking = max(lacking, top-heightBeside(from, to, leg, side))
	}
	return lacking
}

// heightBeside returns the height of a leg where it passes a side: at their crossing, else at the place of the leg nearest to its ends, the lower of them.
func heightBeside(from, to Place, leg, side field.Segment) float64 {
	at := func(p field.Point) float64 {
		share := 0.0
		if length := leg.Length(); length > 0 {
			share = leg.Nearest(p).Distance(leg.A) / length
		}
		return from.Height + float64((to.Height-from.Height)*share)
	}
	if p, crosses := leg.Crosses(side); crosses {
		return at(p)
	}
	return min(at(side.A), at(side.B))
}

// apart reports whether two segments are farther apart than a distance by the boxes around them.
func apart(a, b field.Segment, distance float64) bool {
	return max(a.A.X, a.B.X)+distance < min(b.A.X, b.B.X) || max(b.A.X, b.B.X)+distance < min(a.A.X, a.B.X) ||
		max(a.A.Y, a.B.Y)+distance < min(b.A.Y, b.B.Y) || max(b.A.Y, b.B.Y)+distance < min(a.A.Y, a.B.Y)
}

// Headings is the number of headings of a fan and of Zones.
const Headings = 72

// compass holds the directions of the headings.
var compass = func() (out [Headings]field.Point) {
	for i := range out {
		a := 2 * math.Pi * float64(i) / Headings
		out[i] = field.Point{X: elementary.Sin(a), Y: elementary.Cos(a)}
	}
	return out
}()
