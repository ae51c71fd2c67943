package motion

import (
	"cmp"

	"pitgate/server/physics/order"
)

// Direction is which way an event's value must pass zero.
type Direction int

// Directions of an event.
const (
	Either  Direction = 0
	Rising  Direction = 1
	Falling Direction = -1
)

// Event is met where its value passes zero. A value that is zero at the start counts as met only when it passes again.
type Event struct {
	Value     func(t float64, s State) float64
	Direction Direction
	Terminal  bool // ends the solution
	// Looks is the number of places within a step where the value is looked at besides its end, for values that may pass zero and come back
	// within one step.
	Looks int
	// Sparing leaves out the looks within steps in which the state at Place stays over a level: the value does not pass zero there.
	Sparing bool
	Place   int
	Over    float64
}

// Crossing is an event met.
type Crossing struct {
	Event int // index of the event
	Time  float64
	State State
}

// watch follows the events of one solution.
type watch struct {
	events []Event
	before []float64
	room   [4]float64
}

// newWatch evaluates the events at the start.
func newWatch(events []Event, t float64, s State) *watch {
	w := &watch{events: events}
	w.before = append(w.room[:0], make([]float64, len(events))...)
	for i, e := range events {
		w.before[i] = e.Value(t, s)
	}
	return w
}

// scan looks for events in the last piece of a solution, adds them, and reports whether a terminal one ended it.
func (w *watch) scan(s *Solution) bool {
	known := len(s.Crossings)
	last := &s.pieces[len(s.pieces)-1]
	for i, e := range w.events {
		w.before[i] = e.look(s, last, i, w.before[i])
	}
	found := s.Crossings[known:]
	if len(found) == 0 {
		return false
	}
	order.Stable(found, func(a, b Crossing) int { return cmp.Compare(a.Time, b.Time) })
	for i, c := range found {
		if w.events[c.Event].Terminal {
			s.Crossings = s.Crossings[:known+i+1]
			s.end, s.last = c.Time, c.State
			s.stopped, s.ended = c.Event, true
			return true
		}
	}
	return false
}

// look adds the crossings of an event within a piece and returns its value at the end.
func (e Event) look(s *Solution, p *piece, index int, before float64) float64 {
	from, looks := p.start, e.Looks
	if e.Sparing && p.least(e.Place) > e.Over {
		looks = 0
	}
	for j := range looks + 1 {
		to, state := s.end, s.last
		if j < looks {
			to = p.start + float64((s.end-p.start)*(float64(j+1)/float64(looks+1)))
			state = p.at(to)
		}
		now := e.Value(to, state)
		if e.passes(before, now) {
			t := e.root(p, from, to, before)
			s.Crossings = append(s.Crossings, Crossing{Event: index, Time: t, State: p.at(t)})
		}
		from, before = to, now
	}
	return before
}

// passes reports whether a value passes zero the way the event asks.
func (e Event) passes(before, now float64) bool {
	rises, falls := before < 0 && now >= 0, before > 0 && now <= 0
	return (rises && e.Direction != Falling) || (falls && e.Direction != Rising)
}

// root finds the time the value passes zero within a piece, by the Illinois form of false position with bisection when it is slow, to 1e-12 s
// or the last digit of the time.
func (e Event) root(p *piece, start, end, atStart float64) float64 {
	low, high := start, end
	vLow, vHigh := atStart, e.Value(high, p.at(high))
	side := 0
	for i := range 100 {
		if high-low <= 1e-12 || vHigh == 0 {
			break
		}
		mid := low + float64((high-low)*(vLow/(vLow-vHigh)))
		if i%3 == 2 || !(mid > low && mid < high) {
			mid = low + float64((high-low)/2)
		}
		if mid <= low || mid >= high {
			break
		}
		v := e.Value(mid, p.at(mid))
		if (v > 0) == (vLow > 0) && v != 0 {
			low, vLow = mid, v
			if side == 1 {
				vHigh /= 2
			}
			side = 1
		} else {
			high, vHigh = mid, v
			if side == -1 {
				vLow /= 2
			}
			side = -1
		}
	}
	return high
}
