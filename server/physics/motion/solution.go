package motion

import (
	"math"
	"sort"
)

// piece is one step with its dense output.
type piece struct {
	start, step float64
	places      int // used of the state
	r           [5]State
}

// prepare prepares the dense output of a step.
//
//	y(x) = r0 + x (r1 + (1-x)(r2 + x (r3 + (1-x) r4))), x = (t - t0)/h
//
// Valid for: x from 0 to 1, fourth order. Source: Hairer, Norsett and Wanner, Solving Ordinary Differential Equations I, section II.6.
func (p *piece) prepare(t, h float64, from, to *State, k *stages) {
	p.start, p.step = t, h
	for i := 0; i < p.places && i < Dimensions; i++ {
		change := to[i] - from[i]
		bend := float64(h*k[0][i]) - change
		p.r[0][i] = from[i]
		p.r[1][i] = change
		p.r[2][i] = bend
		p.r[3][i] = change - float64(h*k[6][i]) - bend
		p.r[4][i] = h * (float64(d1*k[0][i]) + float64(d3*k[2][i]) + float64(d4*k[3][i]) + float64(d5*k[4][i]) + float64(d6*k[5][i]) + float64(d7*k[6][i]))
	}
}

// least returns what the state at a place does not fall below within the piece: on the straight line between its ends, less the most that the other terms of
// the dense output take off.
func (p *piece) least(i int) float64 {
	bends := float64(math.Abs(p.r[2][i])/4) + float64(math.Abs(p.r[3][i])*(4.0/27)) + float64(math.Abs(p.r[4][i])/16)
	return min(p.r[0][i], p.r[0][i]+p.r[1][i]) - bends
}

// at returns the state within the piece.
func (p *piece) at(t float64) State {
	x := (t - p.start) / p.step
	y := 1 - x
	var s State
	for i := 0; i < p.places && i < Dimensions; i++ {
		inner := p.r[3][i] + float64(y*p.r[4][i])
		inner = p.r[2][i] + float64(x*inner)
		inner = p.r[1][i] + float64(y*inner)
		s[i] = p.r[0][i] + float64(x*inner)
	}
	return s
}

// Solution is the answer of Solve: the state at every time between start and end.
type Solution struct {
	start, end  float64
	first, last State
	pieces      []piece
	// Crossings are the events met, in order of time.
	Crossings []Crossing
	// stopped is the index of the terminal event that ended the solution, if ended.
	stopped int
	ended   bool
}

// add appends the piece of a step to a state of which some places are used.
func (s *Solution) add(step float64, to *State, k *stages, places int) {
	s.pieces = append(s.pieces, piece{places: places})
	s.pieces[len(s.pieces)-1].prepare(s.end, step, &s.last, to, k)
	s.end, s.last = s.end+step, *to
}

// Start returns the time the solution starts.
func (s *Solution) Start() float64 { return s.start }

// End returns the time the solution ends and the state there.
func (s *Solution) End() (float64, State) { return s.end, s.last }

// Steps returns the number of accepted steps.
func (s *Solution) Steps() int { return len(s.pieces) }

// Stopped returns the index of the terminal event that ended the solution, and false when none did.
func (s *Solution) Stopped() (int, bool) { return s.stopped, s.ended }

// At returns the state at a time; times outside the solution give its nearest end.
func (s *Solution) At(t float64) State {
	switch {
	case t <= s.start:
		return s.first
	case t >= s.end:
		return s.last
	}
	i := sort.Search(len(s.pieces), func(i int) bool { return s.pieces[i].start > t })
	return s.pieces[i-1].at(t)
}

// LastUnder returns a time from which on the state at a place stays over a value; the start where it does so all along.
func (s *Solution) LastUnder(place int, value float64) float64 {
	for i := len(s.pieces) - 1; i >= 0; i-- {
		if p := &s.pieces[i]; !(p.least(place) > value) {
			return min(p.start+p.step, s.end)
		}
	}
	return s.start
}

// First returns the first crossing of the event with an index, and whether there is one.
func (s *Solution) First(event int) (Crossing, bool) {
	for _, c := range s.Crossings {
		if c.Event == event {
			return c, true
		}
	}
	return Crossing{}, false
}
