package reach

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// track is a way to a gate of a line with what it takes.
type track struct {
	line, aim  int
	way        way
	pace, sink float64     // on the straight
	need       float64     // height at the point where the engine stops, m
	time       float64     // until the line-up, s
	wind       field.Point // mean until the line-up
}

const (
	mostRounds   = 10  // how often the drift is corrected
	closeDrift   = 0.1 // drift that need not be corrected, m
	longestGlide = 1e4 // time of a glide looked at, s
	closeWind    = 0.1 // change of the mean wind that need not be followed, m/s
)

// need returns the way to a gate that needs least height, wind included.
//
//	way through the air from the start to the gate less the drift w T;  need = loss + (turn1 + turn2) loss a radian + L sink/pace + line-up
//
// where T is the time flown and w the mean wind over the height flown through; both come by iteration (secant on T). What drift is left when the rounds
// are used up is flown at the flattest glide on top. A way that needs more than a limit by more than its drift left is not followed further.
// Valid for: wind slower than the glide. Source: flight in the frame of the air.
func (m *Map) need(s *start, index, aim int, turn *Turn, limit float64) track {
	l := &m.lines[index]
	target := l.gates[aim]
	ground := target.at.Minus(s.from)
	t := track{line: index, aim: aim}
	wind := m.wind.mean(l.height, l.height+float64(ground.Length()*m.glides.flattest))
	guess := m.flown(s, &target, ground, turn, wind)
	before, missBefore := 0.0, 0.0
	for round := range mostRounds {
		target.at = ground.Minus(wind.Times(guess))
		m.best(&t, s, &target, turn, l.height, wind)
		miss := t.time - guess
		flownIn := wind
		wind = m.wind.mean(l.height, t.need)
		t.wind = wind
		drift := wind.Times(t.time).Minus(flownIn.Times(guess)).Length()
		settled := drift < closeDrift && wind.Distance(flownIn) < closeWind
		if settled || t.need-drift > limit {
			return t
		}
		if round == mostRounds-1 {
			t.need += float64(drift * m.glides.flattest * 3)
			return t
		}
		next := t.time
		if round > 0 {
			next = secant(before, missBefore, guess, miss)
		}
		before, missBefore, guess = guess, miss, next
	}
	return t
}

// secant returns the next guess of a time from two guesses and what each missed, or the time itself where the misses do not lead to one.
func secant(before, missBefore, guess, miss float64) float64 {
	change, slope := guess-before, miss-missBefore
	if math.Abs(slope) < 1e-12 || math.Abs(slope) > 3*math.Abs(change) {
		return guess + miss
	}
	return min(max(guess-float64(miss*change/slope), 0), longestGlide)
}

// between returns the lesser angle between two headings, rad: the least that any turns from one to the other add up to.
func between(a, b float64) float64 {
	angle := wrap(a - b)
	return min(angle, 2*math.Pi-angle)
}

// flown returns a first guess of the time to a gate: the turn to its heading at the least, and what is left of the distance over the ground.
func (m *Map) flown(s *start, target *gate, ground field.Point, turn *Turn, wind field.Point) float64 {
	angle := between(target.heading, s.gate.heading)
	along, distance := unit(ground.Minus(s.gate.at))
	left := max(distance-float64(turn.Radius*angle), 0)
	return s.time + angle/turn.Rate + left/max(m.final.Pace+along.Dot(wind), 0.3*m.final.Pace)
}

// best fills in the way of the four that needs least height to a target through the air.
func (m *Map) best(t *track, s *start, target *gate, turn *Turn, lineUp float64, wind field.Point) {
	t.need = math.Inf(1)
	side := 1.0
	if s.gate.ahead.Cross(target.at.Minus(s.gate.at)) > 0 {
		side = -1
	}
	fixed := s.loss + lineUp
	least := float64(between(target.heading, s.gate.heading) * turn.Loss)
	for _, sides := range [4][2]float64{{side, side}, {side, -side}, {-side, side}, {-side, -side}} {
		w, possible := join(&s.gate, target, turn.Radius, sides[0], sides[1])
		if !possible || fixed+float64(w.length*m.glides.flattest)+least >= t.need {
			continue
		}
		pace, sink := m.glides.at(w.ahead.Dot(wind))
		need := fixed + float64(w.length/pace*sink)
		if need+least >= t.need {
			continue
		}
		w.angles(&s.gate, target)
		angle := w.turn1 + w.turn2
		need += float64(angle * turn.Loss)
		if need < t.need {
			t.way, t.pace, t.sink, t.need = w, pace, sink, need
			t.time = s.time + angle/turn.Rate + w.length/pace
		}
	}
}

// bound returns a height that any way to a gate needs at the least, wind included: that of the turn from the heading at hand to the gate's, and of the
// distance that the turn does not cover at the flattest glide in its direction with the most favourable wind of all heights.
func (m *Map) bound(s *start, l *line, aim int, turn *Turn) float64 {
	along, distance := unit(l.gates[aim].at.Minus(s.from))
	distance -= s.gate.at.Length() + float64(m.wind.fastest*s.time)
	flattest := m.glides.flattestWith(m.wind.tailwind(along))
	angle := between(l.gates[aim].heading, s.gate.heading)
	covered := turn.Radius + m.wind.fastest/turn.Rate
	if turn.Loss < float64(covered*flattest) {
		angle = 0
	}
	left := max(distance-float64(covered*angle), 0)
	return s.loss + l.height + float64(angle*turn.Loss) + float64(left*flattest)
}

// hairDrift is what a way may end beside its gate and still count as settled, with room to spare, m.
const hairDrift = 1.0

// tooMuchTurn reports whether any way to a gate turns so much that it needs more than what is enough. A way that is enough turns no more than that height
// pays for, so its turns and its drift cover no more than c; the straight then leads to within c of the gate, and its heading is known to
//
//	e = asin(c/d) + asin(w/V),  turns >= |h0 - b| + |b - h1| - 2 e
//
// where d and b are distance and bearing of the gate, h0 and h1 the headings at both ends, w the fastest wind and V the slowest glide.
// Valid for: ways of turn, straight and turn. Source: plane geometry.
func (m *Map) tooMuchTurn(s *start, l *line, aim int, turn *Turn, enough float64) bool {
	gate := &l.gates[aim]
	toward := gate.at.Minus(s.from).Minus(s.gate.at)
	distance, height := toward.Length(), enough-s.loss-l.height
	covered := m.covered(s, turn, height)
	if covered >= distance || m.wind.fastest >= m.glides.slowest {
		return false
	}
	for range 2 {
		covered = m.covered(s, turn, height-float64((distance-covered)*m.glides.flattest))
	}
	bearing := elementary.Atan2(toward.X, toward.Y)
	sum := between(bearing, s.gate.heading) + between(bearing, gate.heading)
	if float64(sum*turn.Loss) <= height {
		return false
	}
	spread := arcSine(covered/distance) + arcSine(m.wind.fastest/m.glides.slowest)
	return float64((sum-2*spread)*turn.Loss)+float64((distance-covered)*m.glides.flattest) > height
}

// covered returns how far turns that a height pays for, and the drift while turning and reacting, lead at the most, m.
func (m *Map) covered(s *start, turn *Turn, height float64) float64 {
	most := max(height, 0) / turn.Loss
	return float64(min(most, 4)*turn.Radius) + float64(m.wind.fastest*(s.time+most/turn.Rate)) + hairDrift
}

// arcSine returns the angle of a sine from 0 to 1.
func arcSine(x float64) float64 { return elementary.Atan2(x, math.Sqrt(max(1-float64(x*x), 0))) }
