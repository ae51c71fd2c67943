package reach

import (
	"cmp"
	"math"
	"slices"

	"pitgate/server/physics/field"
)

// Fan is the ground reached from a point: one place for each of Headings, the i-th with the nose on 360 i/72 degrees after the turn.
type Fan [Headings]field.Point

// Fan returns the farthest places from a point: after reaction and the shorter turn to each heading, glided at the speed that goes farthest in the mean
// wind from the point's height to the ground. A model that runs out of height in the turn comes down there. A point that does not pass Check, or at no
// height, stays where it is.
func (m *Map) Fan(p Point) Fan {
	var fan Fan
	m.Rays(p, 0, fan[:])
	return fan
}

// Rays fills in places of the Fan of a point from a heading's number on, round past north.
func (m *Map) Rays(p Point, first int, rays []field.Point) {
	if p.Check() != nil || !(p.Height > 0) {
		for i := range rays {
			rays[i] = p.At
		}
		return
	}
	s := m.begin(&p, &m.turn)
	wind := m.wind.mean(0, p.Height)
	for i := range rays {
		k := ((first+i)%Headings + Headings) % Headings
		rays[i] = m.ray(&p, &s, compass[k], 2*math.Pi*float64(k)/Headings, wind)
	}
}

// ray returns where the model comes down with the nose on a heading.
func (m *Map) ray(p *Point, s *start, ahead field.Point, heading float64, wind field.Point) field.Point {
	left := p.Height - s.loss
	if !(left > 0) {
		share := min(max(p.Height/max(s.loss, 1e-9), 0), 1)
		return p.At.Plus(s.gate.at.Plus(wind.Times(s.time)).Times(share))
	}
	side, angle := 1.0, wrap(heading-s.gate.heading)
	if angle > math.Pi {
		side, angle = -1, 2*math.Pi-angle
	}
	loss := float64(angle * m.turn.Loss)
	if loss >= left {
		angle *= left / loss
		at, _ := arc(&s.gate, m.turn.Radius, side, angle)
		return p.At.Plus(at).Plus(wind.Times(s.time + angle/m.turn.Rate))
	}
	at := s.gate.at.Plus(rightOf(s.gate.ahead).Times(side * m.turn.Radius)).Minus(rightOf(ahead).Times(side * m.turn.Radius))
	pace, sink := m.glides.at(ahead.Dot(wind))
	time := (left - loss) / sink
	total := s.time + angle/m.turn.Rate + time
	return p.At.Plus(at).Plus(ahead.Times(pace * time)).Plus(wind.Times(total))
}

// Footprint returns the ground on which a model may come down from any of some points: the hull of their fans and themselves, corners counter-clockwise.
// It is nil for no points, and has less than three corners where all lie on a line.
func (m *Map) Footprint(points []Point) field.Polygon {
	ground := make([]field.Point, 0, len(points)*(Headings+1))
	for i := range points {
		if points[i].Check() != nil {
			continue
		}
		fan := m.Fan(points[i])
		ground = append(append(ground, fan[:]...), points[i].At)
	}
	return hull(ground)
}

// hull returns the convex hull of points, counter-clockwise. Source: Andrew's monotone chain (1979).
func hull(points []field.Point) field.Polygon {
	points = outer(points)
	slices.SortFunc(points, func(a, b field.Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	points = slices.Compact(points)
	if len(points) < 3 {
		return points
	}
	half := func(order func(i int) field.Point) []field.Point {
		var chain []field.Point
		for i := range points {
			p := order(i)
			for n := len(chain); n >= 2 && chain[n-1].Minus(chain[n-2]).Cross(p.Minus(chain[n-2])) <= 0; n = len(chain) {
				chain = chain[:n-1]
			}
			chain = append(chain, p)
		}
		return chain[:len(chain)-1]
	}
	lower := half(func(i int) field.Point { return points[i] })
	upper := half(func(i int) field.Point { return points[len(points)-1-i] })
	return append(lower, upper...)
}

// manyPoints is the number of points from which those well inside are left out before they are sorted.
const manyPoints = 64

// outer leaves out, in place, the points well inside of the farthest ones in 24 directions.
//
// Source: Akl and Toussaint, Information Processing Letters 7 (1978) 219-222.
func outer(points []field.Point) []field.Point {
	const every = Headings / 24
	if len(points) < manyPoints {
		return points
	}
	var corners field.Polygon
	size := 0.0
	for k := 0; k < Headings; k += every {
		far := points[0]
		for _, p := range points {
			if p.Dot(compass[k]) > far.Dot(compass[k]) {
				far = p
			}
		}
		size = max(size, far.Distance(points[0]))
		if len(corners) == 0 || corners[len(corners)-1] != far {
			corners = append(corners, far)
		}
	}
	hair := float64(1e-9 * size * size)
	return slices.DeleteFunc(points, func(p field.Point) bool {
		for i := range corners {
			if a := corners[i]; p.Minus(a).Cross(corners[(i+1)%len(corners)].Minus(a)) <= hair && corners[(i+1)%len(corners)] != a {
				return false
			}
		}
		return len(corners) > 2
	})
}

// Stretch is a run of points from which no area is reached.
type Stretch struct {
	First, Last int // indexes of points, both belonging to it
}

// Survey is the answer for a path.
type Survey struct {
	Results []Result // one a point
	// ReachRatio is the share of points from which an area is reached; 1 for no points.
	ReachRatio float64
	// Worst is the index of the point with the least margin, one without any area before all others; -1 for no points.
	Worst   int
	NoReach []Stretch
}

// Survey answers for the points of launch and circuit, in their order.
func (m *Map) Survey(points []Point) Survey {
	out := Survey{Results: make([]Result, len(points)), ReachRatio: 1, Worst: -1}
	reached := 0
	var used room
	for i := range points {
		r := m.from(&points[i], &used)
		if r.Area >= 0 && !r.Ahead {
			used.hitLine, used.hitAim = r.track.line+1, r.track.aim+1
		}
		out.Results[i] = r
		if r.Reachable {
			reached++
		} else if n := len(out.NoReach); n > 0 && out.NoReach[n-1].Last == i-1 {
			out.NoReach[n-1].Last = i
		} else {
			out.NoReach = append(out.NoReach, Stretch{First: i, Last: i})
		}
		if out.Worst < 0 || r.worse(&out.Results[out.Worst]) {
			out.Worst = i
		}
	}
	if len(points) > 0 {
		out.ReachRatio = float64(reached) / float64(len(points))
	}
	return out
}

// worse reports whether a result has less margin than another.
func (r *Result) worse(than *Result) bool {
	if r.Area < 0 || than.Area < 0 {
		return r.Area < 0 && than.Area >= 0
	}
	return r.Margin < than.Margin
}

// Zone is the answer for a place.
type Zone struct {
	At     field.Point
	Reach  float64 // share of the Headings from which an area is reached, 0 to 1
	Blind  int     // number of headings from which none is
	Height float64 // over the landing areas, m
}

// Zones answers for places at a height, flown over wings level on each of Headings at an airspeed: the map of what is out of reach.
func (m *Map) Zones(places []field.Point, height, airspeed float64) []Zone {
	zones := make([]Zone, len(places))
	var used room
	for i, at := range places {
		zones[i] = Zone{At: at, Height: height}
		for k := range Headings {
			p := Point{At: at, Height: height, Heading: 2 * math.Pi * float64(k) / Headings, Airspeed: airspeed}
			if !m.reaches(&p, &used) {
				zones[i].Blind++
			}
		}
		zones[i].Reach = float64(Headings-zones[i].Blind) / Headings
	}
	return zones
}

// reaches reports whether an area is reached from a point.
func (m *Map) reaches(p *Point, used *room) bool {
	reached, _ := m.outlook(p, used)
	return reached
}

// outlook reports whether an area is reached from a point, and the landing straight on.
func (m *Map) outlook(p *Point, used *room) (reached bool, straight Result) {
	if p.Check() != nil {
		return false, Result{Area: -1}
	}
	s := m.begin(p, &m.turn)
	s.room = *used
	straight = m.ahead(p, &s)
	best := straight
	if best.Area < 0 || best.Needed > p.Height {
		m.search(&s, &m.turn, &best, anyLine, p.Height)
	}
	*used = s.room
	return best.decide(p).Reachable, straight
}
