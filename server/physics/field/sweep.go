package field

import (
	"math"
	"slices"

	"pitgate/server/physics/elementary"
)

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

// sweep looks for the longest run along a heading; nothing where the area does not reach as far as a length along it.
func (s *swept) sweep(heading, enough float64) Run {
	if s.turn(heading) < enough-closeReach {
		return Run{}
	}
	s.place()
	s.best = found{}
	for _, offset := range s.offsets {
		s.look(offset - s.hair)
		s.look(offset + s.hair)
	}
	for i, offset := range s.offsets {
		if i > 0 && math.Min(math.Abs(offset-s.best.offset), math.Abs(s.offsets[i-1]-s.best.offset)) <= 2*s.hair {
			s.crest(s.offsets[i-1]+s.hair, offset-s.hair, enough)
		}
	}
	start := s.ahead.Times(s.best.start).Plus(s.right.Times(s.best.offset))
	return Run{Length: s.best.length, Heading: heading, Middle: Segment{start, start.Plus(s.ahead.Times(s.best.length))}}
}

// found is the longest free piece of a heading so far.
type found struct{ length, offset, start float64 }

// look looks at a sideways place of the run's middle and returns what it leaves.
func (s *swept) look(offset float64) piece {
	p := s.longest(offset)
	if p.length > s.best.length {
		s.best = found{p.length, offset, p.start}
	}
	return p
}

// closeCrest is how near to its greatest a length is looked for, m.
const closeCrest = 1e-9

// crest looks for the greatest length between two sideways places with no corner between them, where it is more than enough.
//
// The length of a free piece bends downward there and runs straight from bend to bend, so that the lines that touch it at both ends meet above its greatest,
// and on it where there is one bend: the next place looked at, which then takes the place of the end it falls towards. Where the ends belong to pieces that
// do not rise towards each other, the middle tells whether another one does. Source: cutting planes in one variable.
func (s *swept) crest(low, high, enough float64) {
	a, b := s.look(low), s.look(high)
	for range 40 {
		aside := (high - low) / 2
		if rise := a.slope - b.slope; a.slope > 0 && b.slope < 0 {
			aside = (b.length - a.length - float64(b.slope*(high-low))) / rise
			if most := a.length + float64(a.slope*aside); most < max(enough, s.best.length+closeCrest) {
				return
			}
		}
		place := low + aside
		if !(place > low && place < high) {
			return
		}
		middle := s.look(place)
		switch {
		case middle.slope > 0 && b.slope < 0:
			a, low = middle, place
		case middle.slope < 0 && a.slope > 0:
			b, high = middle, place
		default:
			return
		}
	}
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
	offsets      []float64 // sideways places where the run may change
	room         []barred  // for what is taken, used again from place to place
	best         found
}

// barred is what an edge takes up along the heading, m, and by how much its ends move by a step aside.
type barred struct{ from, to, fromSlope, toSlope float64 }

// piece is a free piece along the heading: its start and length, m, and by how much it grows by a step aside.
type piece struct{ start, length, slope float64 }

// newSwept prepares an area for runs of a width.
func newSwept(g Ground, width float64) *swept { return &swept{ground: g, half: width / 2} }

// turn turns what is seen so that x runs to the right of a heading and y along it, and returns how far the area reaches along it.
func (s *swept) turn(heading float64) (reach float64) {
	s.ahead = Point{elementary.Sin(heading), elementary.Cos(heading)}
	s.right = Point{s.ahead.Y, -s.ahead.X}
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range s.ground.Area {
		along := p.Dot(s.ahead)
		low, high = min(low, along), max(high, along)
	}
	return high - low
}

// place turns the edges of the area and of what stands in it, and lists the sideways places where the run may change.
func (s *swept) place() {
	s.edges, s.offsets = s.edges[:0], s.offsets[:0]
	s.add(s.ground.Area)
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

// longest returns the longest free piece at a sideways place of the run's middle.
func (s *swept) longest(offset float64) (best piece) {
	s.take(offset)
	reach, slope := math.Inf(-1), 0.0
	for i := range s.room {
		t := &s.room[i]
		if gap := t.from - reach; gap > best.length && reach > math.Inf(-1) && s.free(offset, reach+float64(gap/2)) {
			best = piece{reach, gap, t.fromSlope - slope}
		}
		if t.to > reach {
			reach, slope = t.to, t.toSlope
		}
	}
	return best
}

// take gathers what the edges take up along the heading within the run's width, in order.
func (s *swept) take(offset float64) {
	s.room = s.room[:0]
	left, right := offset-s.half, offset+s.half
	for i := range s.edges {
		e := &s.edges[i]
		if e.A.X < left && e.B.X < left || e.A.X > right && e.B.X > right {
			continue
		}
		from, to := clip(0, 1, e.A.X-left, e.B.X-left)
		from, to = clip(from, to, right-e.A.X, right-e.B.X)
		if from > to {
			continue
		}
		s.insert(barredBy(e, from, to))
	}
}

// barredBy returns what the part of an edge between two shares of it takes up; an end that is none of the edge's own moves along it by a step aside.
func barredBy(e *Segment, from, to float64) barred {
	a, b := between(e.A.Y, e.B.Y, from), between(e.A.Y, e.B.Y, to)
	aSlope, bSlope := 0.0, 0.0
	if slope := (e.B.Y - e.A.Y) / (e.B.X - e.A.X); from > 0 {
		aSlope = slope
		if to < 1 {
			bSlope = slope
		}
	} else if to < 1 {
		bSlope = slope
	}
	if a > b {
		return barred{b, a, bSlope, aSlope}
	}
	return barred{a, b, aSlope, bSlope}
}

// insert puts a stretch among those taken, by where they begin.
func (s *swept) insert(t barred) {
	s.room = append(s.room, t)
	i := len(s.room) - 1
	for ; i > 0 && s.room[i-1].from > t.from; i-- {
		s.room[i] = s.room[i-1]
	}
	s.room[i] = t
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
