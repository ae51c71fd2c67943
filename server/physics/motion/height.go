package motion

import "math"

// Clearance is the least height of a flight over the ground.
type Clearance struct {
	Height   float64 // over the ground there, m
	Distance float64 // along the launch, m
}

// LeastClearance returns the least height of the flight over the ground profile, from where the model leaves the ground or launcher as far as it was
// followed, and false when there is no flight. A launch from the ground has its least at its start; from (m along the launch) leaves out what comes
// before it.
//
// Valid for: as the flight; looked for at 16 places of every step and at every point of the profile, then by sections. Source: dense output.
func (r *Result) LeastClearance(from float64) (Clearance, bool) {
	if !r.trace.hasFlight {
		return Clearance{}, false
	}
	s, f := &r.trace.flown, r.trace.flight
	least := Clearance{Height: math.Inf(1)}
	look := func(t float64) float64 {
		state := s.At(t)
		height := state[atHeight] - f.ground.height(state[atDistance])
		if state[atDistance] >= from && height < least.Height {
			least = Clearance{height, state[atDistance]}
		}
		return height
	}
	best := s.start
	for i := range s.pieces {
		const looks = 16
		for k := range looks + 1 {
			t := min(s.pieces[i].start+float64(s.pieces[i].step*(float64(k)/looks)), s.end)
			before := least.Height
			if look(t); least.Height < before {
				best = t
			}
		}
	}
	narrow(look, max(s.start, best-0.1), min(s.end, best+0.1))
	for _, p := range f.ground.points {
		if at, reached := r.At(p.Distance); reached && p.Distance >= from && at.Height-p.Height < least.Height && p.Distance >= s.first[atDistance] {
			least = Clearance{at.Height - p.Height, p.Distance}
		}
	}
	return least, !math.IsInf(least.Height, 1)
}

// narrow looks for the least of a value between two times by golden sections.
func narrow(value func(float64) float64, low, high float64) {
	const golden = 0.6180339887498949
	for range 40 {
		a, b := high-float64(golden*(high-low)), low+float64(golden*(high-low))
		if value(a) <= value(b) {
			high = b
		} else {
			low = a
		}
	}
}

// FirstAbove returns the point where the flight first reaches a height (m over the start), and false when it does not as far as it was followed: where a
// height limit is met.
func (r *Result) FirstAbove(height float64) (PathPoint, bool) {
	if !r.trace.hasFlight {
		return PathPoint{}, false
	}
	s, f := &r.trace.flown, r.trace.flight
	if s.first[atHeight] >= height {
		return f.point(s.start, s.first), true
	}
	low := s.start
	for i := range s.pieces {
		high := min(s.pieces[i].start+s.pieces[i].step, s.end)
		if s.At(high)[atHeight] < height {
			low = high
			continue
		}
		for range 60 {
			mid := low + float64((high-low)/2)
			if s.At(mid)[atHeight] < height {
				low = mid
			} else {
				high = mid
			}
		}
		return f.point(high, s.At(high)), true
	}
	return PathPoint{}, false
}
