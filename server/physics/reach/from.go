package reach

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// Result is the answer for a point.
type Result struct {
	Reachable bool
	// Area is the index of the landing area that needs least height; -1 when none can be landed on at all.
	Area int
	// Needed is the height from which it is just reached, m, obstacles included, and Margin the height at hand beyond it. Both are zero when Area is -1.
	Needed, Margin float64
	// Heading to take after the first turn, rad from 0 to below 2 pi, and that turn, rad, to the right positive.
	Heading, Turn float64
	// Ahead says that the way is straight on, without turns.
	Ahead bool
	// Obstacle is the height added for obstacles under the way, m.
	Obstacle float64
	track    track
}

// From answers for a point. It must pass Check; what does not reach nothing: Area -1.
func (m *Map) From(p Point) Result {
	return m.from(&p, &room{})
}

// from is From with room to work in.
func (m *Map) from(p *Point, used *room) Result {
	if p.Check() != nil {
		return Result{Area: -1}
	}
	s := m.begin(p, &m.turn)
	s.room = *used
	best := m.ahead(p, &s)
	m.search(&s, &m.turn, &best, anyLine, math.Inf(-1))
	*used = s.room
	return best.decide(p)
}

// decide fills in what follows from the height needed.
func (r Result) decide(p *Point) Result {
	if r.Area < 0 {
		return Result{Area: -1}
	}
	r.Needed = max(r.Needed, 0)
	r.Margin = p.Height - r.Needed
	r.Reachable = r.Margin >= 0
	return r
}

// anyLine wants every line.
func anyLine(*line) bool { return true }

// search looks for the line that needs least height among those wanted, leaving out what its bound rules out. With enough above zero it only looks for
// a line that needs no more than that, and stops at the first.
func (m *Map) search(s *start, turn *Turn, best *Result, wanted func(*line) bool, enough float64) {
	if enough > 0 && m.again(s, turn, best, wanted, enough) {
		return
	}
	first, aim, least := -1, 0, math.Inf(1)
	s.bounds = s.bounds[:0]
	for i := range m.lines {
		for k := range m.lines[i].usable {
			b := m.bound(s, &m.lines[i], k, turn)
			s.bounds = append(s.bounds, b)
			if b < least && wanted(&m.lines[i]) {
				first, aim, least = i, k, b
			}
		}
	}
	if first < 0 || enough > 0 && least > enough {
		return
	}
	if last := s.hitLine - 1; last >= 0 && !(enough > 0) && wanted(&m.lines[last]) {
		first, aim = last, s.hitAim-1
	}
	m.try(s, turn, best, first, aim, enough)
	next := 0
	for i := range m.lines {
		bounds := s.bounds[next : next+m.lines[i].usable]
		next += len(bounds)
		if !wanted(&m.lines[i]) {
			continue
		}
		for k, bound := range bounds {
			if best.Area >= 0 && best.Needed <= enough {
				return
			}
			if i == first && k == aim || best.Area >= 0 && bound >= best.Needed || enough > 0 && (bound > enough || m.tooMuchTurn(s, &m.lines[i], k, turn, enough)) {
				continue
			}
			m.try(s, turn, best, i, k, enough)
		}
	}
}

// again tries the gate that was enough the last time, and reports whether it is so again.
func (m *Map) again(s *start, turn *Turn, best *Result, wanted func(*line) bool, enough float64) bool {
	index, aim := s.hitLine-1, s.hitAim-1
	if index < 0 || !wanted(&m.lines[index]) {
		return false
	}
	if m.bound(s, &m.lines[index], aim, turn) > enough {
		return false
	}
	m.try(s, turn, best, index, aim, enough)
	return best.Area >= 0 && best.Needed <= enough
}

// try takes a line where it needs less than the best so far and, above zero, no more than enough.
func (m *Map) try(s *start, turn *Turn, best *Result, index, aim int, enough float64) {
	limit := math.Inf(1)
	if best.Area >= 0 {
		limit = best.Needed
	}
	if enough > 0 {
		limit = min(limit, enough)
	}
	t := m.need(s, index, aim, turn, limit)
	if math.IsNaN(t.need) || math.IsInf(t.need, 0) || t.need > limit {
		return
	}
	lacking := 0.0
	if len(m.obstacles) > 0 {
		s.places = m.draw(s.places[:0], s, &t, turn, t.need, m.top)
		lacking = m.lacking(s.places)
	}
	if best.Area >= 0 && t.need+lacking >= best.Needed {
		return
	}
	if t.need+lacking <= enough {
		s.hitLine, s.hitAim = index+1, aim+1
	}
	*best = Result{
		Area: m.lines[index].area, Needed: t.need + lacking, Obstacle: lacking,
		Heading: turned(t.way.ahead), Turn: float64(t.way.first * t.way.turn1), track: t,
	}
}

// turned returns the heading of a vector, 0 to below 2 pi.
func turned(v field.Point) float64 {
	heading := elementary.Atan2(v.X, v.Y)
	if heading < 0 {
		heading += 2 * math.Pi
	}
	return heading
}

// window is a landing straight on into an area: the heights between which it succeeds.
type window struct {
	least, most float64 // m
	distance    float64 // to the area's edge, m; zero within it
	lacking     float64 // of the least height for obstacles, m
}

// ahead looks for a landing straight on.
func (m *Map) ahead(p *Point, s *start) Result {
	best := Result{Area: -1}
	for i := range m.areas {
		w, found := m.window(p, s, i)
		if !found || p.Height > w.most || best.Area >= 0 && w.least >= best.Needed {
			continue
		}
		best = Result{Area: i, Needed: w.least, Ahead: true, Heading: turned(s.heading), Obstacle: w.lacking}
		best.track.line = -1
		best.track.way.length = w.distance
	}
	return best
}

// window returns the heights from which a landing straight on into an area succeeds; the nose's heading is the track held over the ground. What lies in
// front of the area's edge is glided; within it the model must still come down.
//
//	most = (room - run - reaction) tan(steepest) - (V^2 - Va^2)/(2 g)
//
// where room is the way to the far edge and the last part counts when speed is to be lost. Valid for: no turns. Source: plane trigonometry; energy.
func (m *Map) window(p *Point, s *start, area int) (window, bool) {
	l := line{ahead: s.heading}
	if !m.approach(&l) {
		return window{}, false
	}
	reaction := float64(m.model.Reaction * max(p.Airspeed+m.wind.mean(0, l.height).Dot(s.heading), 0))
	near, far, found := nextPiece(m.areas[area], p.At, s.heading, l.run+reaction)
	if !found {
		return window{}, false
	}
	surplus := max(0, (float64(p.Airspeed*p.Airspeed)-float64(m.final.Speed*m.final.Speed))/(2*m.model.Gravity))
	w := window{most: float64((far-l.run-reaction)*elementary.Tan(m.model.Steepest)) - surplus, distance: max(near, 0)}
	if near > 0 {
		w.least = max(m.glided(s, near-reaction), 0)
		w.lacking = m.lackingAlong(p.At, s.heading, near, w.least)
		w.least += w.lacking
	}
	return w, true
}

// glided returns the height that a glide straight on over a distance needs, with the mean wind over that height; without end where the wind is faster.
func (m *Map) glided(s *start, distance float64) float64 {
	need := s.loss + float64(max(distance, 0)*m.glides.flattest)
	for range 4 {
		wind := m.wind.mean(0, need).Dot(s.heading)
		pace, sink := m.glides.at(wind)
		if !(pace+wind > 0.05*pace) {
			return math.Inf(1)
		}
		need = s.loss + float64(max(distance, 0)/(pace+wind)*sink)
	}
	return need
}

// nextPiece returns the first piece of a ray within an area that leaves a length ahead of the ray's origin.
func nextPiece(area field.Polygon, origin, ahead field.Point, length float64) (near, far float64, found bool) {
	for _, piece := range inside(area, origin, ahead) {
		if piece[1]-max(piece[0], 0) >= length && piece[1] > 0 {
			return piece[0], piece[1], true
		}
	}
	return 0, 0, false
}
