package reach

import "pitgate/server/physics/field"

// Outlook is what is known of a point without the way that needs least height.
type Outlook struct {
	Reached bool // an area is, as From says it
	// Straight says that an area can be landed on straight on, from this height or a greater one, and At where that touches down.
	Straight bool
	At       field.Point
}

// Outlooks answers for points as Survey does, and stops at the first way that is enough.
func (m *Map) Outlooks(points []Point) []Outlook {
	out := make([]Outlook, len(points))
	var used room
	for i := range points {
		reached, straight := m.outlook(&points[i], &used)
		out[i].Reached = reached
		out[i].At, out[i].Straight = m.Touchdown(points[i], straight)
	}
	return out
}

// Touchdowns returns all places at which a way with a turn can touch down.
func (m *Map) Touchdowns() []field.Point {
	var places []field.Point
	for i := range m.lines {
		for aim := range m.lines[i].usable {
			places = append(places, m.touch(&track{line: i, aim: aim}))
		}
	}
	return places
}
