package reach

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// TurnBack is the least height for a turn back at a place of the launch.
type TurnBack struct {
	Distance float64 // from the start of the launch, m
	// Possible is false when no area can be landed on against the launch.
	Possible bool
	Height   float64 // from which the turn back just succeeds, m
	Bank     float64 // of the turn that needs it, rad
	First    float64 // first turn, rad, to the right positive
	Second   float64 // turn onto the landing line, rad, to the right positive
	Area     int
	Straight float64 // height from which landing straight on still succeeds at most, m; below zero where it never does
}

const (
	leastBank = 15 * math.Pi / 180
	bankSteps = 10
	// against is the cosine of the angle to the launch from which a landing counts as one against it: 150 degrees.
	against = -0.866
)

// TurnBack returns the least height for a turn back, at distances (m) along a launch from a place on a heading (rad) at an airspeed (m/s): to land against
// the launch on any landing line within 30 degrees of its reverse, with the bank from 15 degrees to the limit that needs least. Between Straight and
// Height there is no way to land on an area.
func (m *Map) TurnBack(origin field.Point, heading, airspeed float64, distances []float64) []TurnBack {
	out := make([]TurnBack, len(distances))
	for i, d := range distances {
		p := Point{At: origin.Plus(field.Point{X: elementary.Sin(heading), Y: elementary.Cos(heading)}.Times(d)), Heading: heading, Airspeed: airspeed}
		out[i] = TurnBack{Distance: d, Area: -1, Straight: -1}
		if p.Check() != nil {
			continue
		}
		out[i] = m.turnBack(&p, d)
	}
	return out
}

// turnBack looks through the banks.
func (m *Map) turnBack(p *Point, distance float64) TurnBack {
	out := TurnBack{Distance: distance, Area: -1, Straight: m.straight(p)}
	best := Result{Area: -1}
	low := min(leastBank, m.model.BankLimit)
	for i := range bankSteps + 1 {
		turn := m.model.turn(low + float64((m.model.BankLimit-low)*(float64(i)/bankSteps)))
		s := m.begin(p, &turn)
		found := best
		m.search(&s, &turn, &found, func(l *line) bool { return l.ahead.Dot(s.heading) <= against }, math.Inf(-1))
		if found.Area >= 0 && (best.Area < 0 || found.Needed < best.Needed) {
			best = found
			out.Possible, out.Area = true, found.Area
			out.Height, out.Bank, out.First = max(found.Needed, 0), turn.Bank, found.Turn
			out.Second = found.track.way.second * found.track.way.turn2
		}
	}
	return out
}

// straight returns the greatest height from which a landing straight on succeeds; below zero when it does not at any.
func (m *Map) straight(p *Point) float64 {
	s := m.begin(p, &m.turn)
	highest := -1.0
	for i := range m.areas {
		if w, found := m.window(p, &s, i); found && w.least <= w.most {
			highest = max(highest, w.most)
		}
	}
	return highest
}
