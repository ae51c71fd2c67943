package weather

import (
	"errors"
	"math"
)

// Search finds which winds a verdict holds in.
type Search struct {
	// Top is the greatest wind looked at, m/s.
	Top float64
	// Tolerance is how closely a limit is found, m/s.
	Tolerance float64
	// Probes is how many speeds from 0 to Top are tried before a limit is narrowed; at least 2. More of them find narrower windows.
	Probes int
}

// Window is the range of wind speeds from one direction in which a verdict holds.
type Window struct {
	From float64 // direction the wind comes from, rad clockwise from true north
	// Least and Most are the lowest and highest speed found to hold, m/s: true limits lie up to the tolerance beyond.
	Least, Most float64
	None        bool // no speed that was tried holds; Least and Most are meaningless
	// Open is true when the verdict still holds at the greatest wind looked at.
	Open bool
	// Split is true when the verdict was found to fail between speeds in which it holds, so that the assumption of one range does not apply.
	// Least and Most are then the range of the lowest winds.
	Split       bool
	Evaluations int // how often the verdict was asked
}

// maximumProbes keeps a search from growing without bound.
const maximumProbes = 1000

// Check returns an error that names what is impossible.
func (s Search) Check() error {
	if !(s.Top > 0 && s.Top <= 200) {
		return errors.New("wind search, top: has to lie above 0 and up to 200 m/s")
	}
	if !(s.Tolerance > 0 && s.Tolerance <= s.Top) {
		return errors.New("wind search, tolerance: has to lie above 0 and up to the top")
	}
	if s.Probes < 2 || s.Probes > maximumProbes {
		return errors.New("wind search, probes: has to lie between 2 and 1000")
	}
	return nil
}

// Rose returns the window for each direction the wind may come from (rad clockwise from true north).
//
// It assumes that a verdict holds in one range of speeds for each direction: from a least wind (often none) to a greatest. The probes check
// that, and Split says where it is not so. The number of evaluations for a direction is at most the probes and two times the binary logarithm
// of the step between probes over the tolerance, rounded up.
// Valid for: verdicts without chance. Source: bisection.
func (s Search) Rose(directions []float64, holds func(speed, from float64) bool) ([]Window, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	windows := make([]Window, len(directions))
	for i, from := range directions {
		windows[i] = s.window(from, holds)
	}
	return windows, nil
}

// window returns the window of one direction.
func (s Search) window(from float64, holds func(speed, from float64) bool) Window {
	w := Window{From: from}
	ask := func(speed float64) bool {
		w.Evaluations++
		return holds(speed, from)
	}
	answers := make([]bool, s.Probes)
	for i := range answers {
		answers[i] = ask(s.probe(i))
	}
	first, last, split := firstRun(answers)
	w.Split = split
	if first < 0 {
		w.None = true
		return w
	}
	w.Least, w.Most, w.Open = s.probe(first), s.probe(last), last == s.Probes-1
	if first > 0 {
		w.Least = s.narrow(ask, w.Least, s.probe(first-1))
	}
	if !w.Open {
		w.Most = s.narrow(ask, w.Most, s.probe(last+1))
	}
	return w
}

// probe returns the speed of a probe.
func (s Search) probe(i int) float64 {
	return float64(s.Top * (float64(i) / float64(s.Probes-1)))
}

// firstRun returns the first and last of the first run of true answers, -1 when there is none, and whether another run follows.
func firstRun(answers []bool) (first, last int, split bool) {
	first = -1
	for i, answer := range answers {
		switch {
		case !answer:
		case first < 0:
			first, last = i, i
		case i == last+1:
			last = i
		default:
			split = true
		}
	}
	return first, last, split
}

// narrow returns the speed nearest to a failing one that was found to hold, within the tolerance.
func (s Search) narrow(ask func(float64) bool, holding, failing float64) float64 {
	for math.Abs(failing-holding) > s.Tolerance {
		middle := holding + float64((failing-holding)/2)
		if ask(middle) {
			holding = middle
		} else {
			failing = middle
		}
	}
	return holding
}

// Directions returns a number of directions evenly round the compass from north, rad.
func Directions(count int) []float64 {
	out := make([]float64, max(0, count))
	for i := range out {
		out[i] = float64(i) * (2 * math.Pi / float64(count))
	}
	return out
}
