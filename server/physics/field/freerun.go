package field

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// sorted sorts numbers in place and returns them.
func sorted(values []float64) []float64 {
	slices.Sort(values)
	return values
}

// Run is a straight free run within an area.
type Run struct {
	Length  float64 // m; zero when there is none
	Heading float64 // of it, rad
	Middle  Segment // its middle line, from start to end along the heading
}

// Ground is an area with what stands in it, for landing runs.
type Ground struct {
	Area    Polygon
	Blocked []Polygon // areas within that cannot be rolled over
	Posts   []Point   // single things that cannot be rolled over
}

// Check returns an error that names what is impossible.
func (g Ground) Check() error {
	if err := g.Area.Check(); err != nil {
		return err
	}
	for i, b := range g.Blocked {
		if err := b.Check(); err != nil {
			return fmt.Errorf("blocked area %d: %w", i+1, err)
		}
	}
	for i, p := range g.Posts {
		if !p.Finite() {
			return fmt.Errorf("post %d is not a number", i+1)
		}
	}
	return nil
}

// LongestAlong returns the longest run of a width (m) along a heading (rad) that stays within the area and clear of what stands in it.
//
// The run is looked for beside every corner, which is exact without width, and between the corners next to the best; what is returned is
// free, with a width a longer one elsewhere between two corners may be missed. Valid for: width at least zero. Source: sweep of a strip across the area. Errors name what is
// impossible.
func (g Ground) LongestAlong(heading, width float64) (Run, error) {
	if err := g.takes(heading, width); err != nil {
		return Run{}, err
	}
	return newSwept(g, width).sweep(heading, 0), nil
}

// takes returns an error that names what is impossible of a run along a heading.
func (g Ground) takes(heading, width float64) error {
	if err := g.Check(); err != nil {
		return err
	}
	if !(math.Abs(heading) <= 100) || !(width >= 0 && width <= 1e5) {
		return errors.New("run heading or width: out of range")
	}
	return nil
}

// Longest returns the longest run of a width (m) in any direction: every degree (every third for more than 40 corners), every direction between two corners of
// areas of up to 20 corners, then the best refined to a thousandth of a degree. Of the two ways along it the one with heading below pi is given. What is returned is free.
//
// A direction along which the area reaches less far than a run already found is not looked at.
//
// Valid for: as LongestAlong. Source: the longest line within an outline touches two of its corners. Errors name what is impossible.
func (g Ground) Longest(width float64) (Run, error) {
	if err := g.takes(0, width); err != nil {
		return Run{}, err
	}
	s := newSwept(g, width)
	best, enough := Run{}, 0.0
	try := func(heading float64) {
		if r := s.sweep(heading, max(enough, best.Length)); r.Length > best.Length {
			best = r
		}
	}
	n, step := len(g.Area), 1
	if n > 40 {
		step = 3
	}
	if n <= 20 {
		enough = s.alongEdges()
	}
	for degree := 0; degree < 180; degree += step {
		try(float64(degree) * (math.Pi / 180))
	}
	if n <= 20 {
		s.betweenCorners(try)
	}
	for turn := float64(step) * (math.Pi / 360); turn > 1e-5; turn /= 2 {
		middle := best.Heading
		try(middle - turn)
		try(middle + turn)
	}
	return best.forward(), nil
}

// forward returns the run the way its heading is from 0 to below pi.
func (r Run) forward() Run {
	heading := fullTurn(math.Mod(r.Heading, 2*math.Pi))
	if heading >= math.Pi {
		r.Middle.A, r.Middle.B = r.Middle.B, r.Middle.A
		heading -= math.Pi
	}
	r.Heading = heading
	return r
}
