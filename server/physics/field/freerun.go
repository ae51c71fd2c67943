package field

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/order"
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
	if err := g.Check(); err != nil {
		return Run{}, err
	}
	if !(math.Abs(heading) <= 100) || !(width >= 0 && width <= 1e5) {
		return Run{}, errors.New("run heading or width: out of range")
	}
	return newSwept(g, width).sweep(heading, 0), nil
}

// Longest returns the longest run of a width (m) in any direction: every degree (every third for more than 40 corners), every direction between two corners of
// areas of up to 20 corners, then the best refined to a thousandth of a degree. Of the two ways along it the one with heading below pi is given. What is returned is free.
//
// A direction along which the area reaches less far than a run already found is not looked at.
//
// Valid for: as LongestAlong. Source: the longest line within an outline touches two of its corners. Errors name what is impossible.
func (g Ground) Longest(width float64) (Run, error) {
	if _, err := g.LongestAlong(0, width); err != nil {
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

// alongEdges returns the longest run along the edges of the area, which are among the directions that betweenCorners tries.
func (s *swept) alongEdges() float64 {
	longest := 0.0
	for i := range s.ground.Area {
		e := s.ground.Area.edge(i)
		if i == len(s.ground.Area)-1 {
			e.A, e.B = e.B, e.A
		}
		longest = max(longest, s.sweep(math.Mod(e.A.Heading(e.B), math.Pi), longest).Length)
	}
	return longest
}

// betweenCorners tries the heading from every corner of the area to every later one.
func (s *swept) betweenCorners(try func(heading float64)) {
	area := s.ground.Area
	for i := range area {
		for j := i + 1; j < len(area); j++ {
			try(math.Mod(area[i].Heading(area[j]), math.Pi))
		}
	}
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

// sweep looks for the longest run along a heading; nothing where the area does not reach as far as a length along it.
func (s *swept) sweep(heading, enough float64) Run {
	if reach := s.turn(heading); reach < enough-closeReach {
		return Run{}
	}
	bestLength, bestOffset, bestStart := 0.0, 0.0, 0.0
	look := func(offset float64) float64 {
		start, length := s.longest(offset)
		if length > bestLength {
			bestLength, bestOffset, bestStart = length, offset, start
		}
		return -length
	}
	for _, offset := range s.offsets {
		look(offset - s.hair)
		look(offset + s.hair)
	}
	for i, offset := range s.offsets {
		if i > 0 && math.Min(math.Abs(offset-bestOffset), math.Abs(s.offsets[i-1]-bestOffset)) <= 2*s.hair {
			low, high := s.offsets[i-1]+s.hair, offset-s.hair
			leastAt(func(x float64) float64 { return look(between(low, high, x)) })
		}
	}
	start := s.ahead.Times(bestStart).Plus(s.right.Times(bestOffset))
	return Run{Length: bestLength, Heading: heading, Middle: Segment{start, start.Plus(s.ahead.Times(bestLength))}}
}

// closeReach is what rounding may make of a length of an area, m.
const closeReach = 1e-6

// swept is an area seen along a heading.
type swept struct {
	ground       Ground
	ahead, right Point
	half         float64 // half the width
	hair         float64 // a step aside from a corner
	edges        []Segment
	offsets      []float64    // sideways places where the run may change
	room         [][2]float64 // for what is taken, used again from place to place
}

// newSwept prepares an area for runs of a width.
func newSwept(g Ground, width float64) *swept { return &swept{ground: g, half: width / 2} }

// turn turns the edges of the area so that x runs to the right of a heading and y along it, and returns how far the area reaches along it.
func (s *swept) turn(heading float64) (reach float64) {
	s.ahead = Point{elementary.Sin(heading), elementary.Cos(heading)}
	s.right = Point{s.ahead.Y, -s.ahead.X}
	s.edges, s.offsets = s.edges[:0], s.offsets[:0]
	s.add(s.ground.Area)
	low, high := math.Inf(1), math.Inf(-1)
	for _, e := range s.edges {
		low, high = min(low, e.A.Y), max(high, e.A.Y)
	}
	for _, b := range s.ground.Blocked {
		s.add(b)
	}
	for _, p := range s.ground.Posts {
		q := s.turned(p)
		s.edges = append(s.edges, Segment{q, q})
	}
	least, most := math.Inf(1), math.Inf(-1)
	for _, e := range s.edges {
		least, most = min(least, e.A.X), max(most, e.A.X)
		s.offsets = append(s.offsets, e.A.X-s.half, e.A.X+s.half)
	}
	s.hair = (most - least) * 1e-9
	slices.Sort(s.offsets)
	s.offsets = slices.Compact(s.offsets)
	return high - low
}

// turned returns a point as seen along the heading.
func (s *swept) turned(p Point) Point { return Point{p.Dot(s.right), p.Dot(s.ahead)} }

// add adds the turned edges of an outline.
func (s *swept) add(o Polygon) {
	for i := range o {
		e := o.edge(i)
		s.edges = append(s.edges, Segment{s.turned(e.A), s.turned(e.B)})
	}
}

// longest returns the longest free piece at a sideways place of the run's middle: its start along the heading and its length.
func (s *swept) longest(offset float64) (start, length float64) {
	taken := s.taken(offset)
	reach := math.Inf(-1)
	for _, t := range taken {
		if gap := t[0] - reach; gap > length && reach > math.Inf(-1) && s.free(offset, reach+float64(gap/2)) {
			start, length = reach, gap
		}
		reach = max(reach, t[1])
	}
	return start, length
}

// taken returns what the edges take up along the heading within the run's width, in order.
func (s *swept) taken(offset float64) [][2]float64 {
	taken := s.room[:0]
	for _, e := range s.edges {
		from, to := clip(0, 1, e.A.X-(offset-s.half), e.B.X-(offset-s.half))
		from, to = clip(from, to, offset+s.half-e.A.X, offset+s.half-e.B.X)
		if from > to {
			continue
		}
		a, b := between(e.A.Y, e.B.Y, from), between(e.A.Y, e.B.Y, to)
		taken = append(taken, [2]float64{min(a, b), max(a, b)})
	}
	order.Sort(taken, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	s.room = taken
	return taken
}

// free reports whether a place of the run's middle lies within the area and in none of the blocked ones.
func (s *swept) free(offset, along float64) bool {
	p := s.ahead.Times(along).Plus(s.right.Times(offset))
	if !s.ground.Area.Contains(p) {
		return false
	}
	for _, b := range s.ground.Blocked {
		if b.Contains(p) {
			return false
		}
	}
	return true
}
