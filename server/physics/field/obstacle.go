package field

import "math"

// Obstacle is a point, a line, or an outline when closed, with a height over the ground.
type Obstacle struct {
	Points []Point
	Closed bool
	Height float64 // top over the ground at its place, m
}

// Corridor is the strip of ground under a straight flight path.
type Corridor struct {
	Origin    Point
	Heading   float64 // rad, clockwise from true north
	HalfWidth float64 // m on each side at the origin
	// Spread is the growth of the half width with distance, m/m: crosswind drift or held heading.
	Spread float64
	// Drift is the sideways shift of the middle of the corridor with distance, m/m, positive to the right.
	Drift float64
}

// Crossing is the stretch of a corridor an obstacle takes up.
type Crossing struct {
	Near, Far float64 // distances along the corridor, m
	Lateral   float64 // least distance of the obstacle from the corridor's middle within that stretch, m
}

// Along returns the distance ahead of the corridor's origin and the distance to the right of its axis of a point, m.
func (c Corridor) Along(p Point) (ahead, right float64) {
	d := p.Minus(c.Origin)
	return d.Dot(Ahead(c.Heading)), d.Dot(Right(c.Heading))
}

// Cross returns the stretch of the corridor ahead of its origin that an obstacle takes up, and whether it takes up any. A point obstacle within the
// corridor gives a stretch of no length.
func (c Corridor) Cross(o Obstacle) (Crossing, bool) {
	found := Crossing{Near: math.Inf(1), Far: math.Inf(-1), Lateral: math.Inf(1)}
	for _, s := range o.segments() {
		found = found.with(c.crossSegment(s))
	}
	if o.Closed && Polygon(o.Points).Contains(c.Origin) {
		found = found.with(Crossing{}, true)
	}
	return found, found.Far >= found.Near
}

// segments returns the edges of an obstacle; one of no length for a point.
func (o Obstacle) segments() []Segment {
	n := len(o.Points)
	if n == 1 {
		return []Segment{{o.Points[0], o.Points[0]}}
	}
	edges := make([]Segment, 0, n)
	for i := 1; i < n; i++ {
		edges = append(edges, Segment{o.Points[i-1], o.Points[i]})
	}
	if o.Closed && n > 2 {
		edges = append(edges, Segment{o.Points[n-1], o.Points[0]})
	}
	return edges
}

// with widens a crossing by another.
func (c Crossing) with(d Crossing, found bool) Crossing {
	if !found {
		return c
	}
	return Crossing{min(c.Near, d.Near), max(c.Far, d.Far), min(c.Lateral, d.Lateral)}
}

// crossSegment returns the stretch of the corridor one straight piece takes up.
//
// In corridor coordinates (u ahead, v right of the drifting middle) the corridor is u >= 0, v <= w + s u, -v <= w + s u; each bound is linear along
// the piece, so the piece is clipped by each in turn. Valid for: any piece. Source: clipping of a line by half planes (Cyrus and Beck).
func (c Corridor) crossSegment(s Segment) (Crossing, bool) {
	ua, va := c.middle(s.A)
	ub, vb := c.middle(s.B)
	from, to := 0.0, 1.0
	for _, side := range [...]float64{-1, 1} {
		from, to = clip(from, to, c.room(ua, float64(side*va)), c.room(ub, float64(side*vb)))
	}
	from, to = clip(from, to, ua, ub)
	if from > to {
		return Crossing{}, false
	}
	u0, v0 := between(ua, ub, from), between(va, vb, from)
	u1, v1 := between(ua, ub, to), between(va, vb, to)
	lateral := min(math.Abs(v0), math.Abs(v1))
	if float64(v0*v1) < 0 {
		lateral = 0
	}
	return Crossing{Near: min(u0, u1), Far: max(u0, u1), Lateral: lateral}, true
}

// middle returns a point in corridor coordinates: ahead, and right of the drifting middle.
func (c Corridor) middle(p Point) (ahead, right float64) {
	u, v := c.Along(p)
	return u, v - float64(c.Drift*u)
}

// room returns how far a place lies within one side of the corridor, m.
func (c Corridor) room(ahead, right float64) float64 {
	return c.HalfWidth + float64(c.Spread*ahead) - right
}

// between returns the value at a share of the way from a to b.
func between(a, b, share float64) float64 {
	return a + float64((b-a)*share)
}

// clip keeps the part of the range from..to where a value that runs linearly from a to b is not negative; an empty range has from above to.
func clip(from, to, a, b float64) (low, high float64) {
	switch {
	case a < 0 && b < 0:
		return 1, 0
	case a < 0:
		return max(from, a/(a-b)), to
	case b < 0:
		return from, min(to, a/(a-b))
	}
	return from, to
}
