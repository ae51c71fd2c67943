package field

import "math"

// Overlaps reports whether two areas share a place: an edge of one crosses an edge of the other, or one lies within the other.
func (g Polygon) Overlaps(o Polygon) bool {
	for i := range g {
		for j := range o {
			if _, crosses := g.edge(i).Crosses(o.edge(j)); crosses {
				return true
			}
		}
	}
	return len(g) > 0 && len(o) > 0 && (g.Contains(o[0]) || o.Contains(g[0]))
}

// Separation returns the least distance between two areas, m, and the place on this outline where it is met; zero when they overlap.
// Both must have corners.
func (g Polygon) Separation(o Polygon) (float64, Point) {
	if g.Overlaps(o) {
		return 0, g[0]
	}
	best, at := math.Inf(1), g[0]
	for i := range g {
		for j := range o {
			if d, p := g.edge(i).nearestTo(o.edge(j)); d < best {
				best, at = d, p
			}
		}
	}
	return best, at
}

// nearestTo returns the least distance to another segment that does not cross this one, and the place on this one.
func (s Segment) nearestTo(o Segment) (float64, Point) {
	best, at := o.Distance(s.A), s.A
	if d := o.Distance(s.B); d < best {
		best, at = d, s.B
	}
	for _, p := range [...]Point{o.A, o.B} {
		q := s.Nearest(p)
		if d := q.Distance(p); d < best {
			best, at = d, q
		}
	}
	return best, at
}

// AreaClearance returns how far another area lies within this one (Clearance as PathClearance gives it): negative when part of it lies
// outside. Both must have corners.
func (g Polygon) AreaClearance(o Polygon) Clearance {
	closed := append(append(make(Line, 0, len(o)+1), o...), o[0])
	return g.PathClearance(closed)
}

// Within reports whether a place lies inside the outline or within a distance (m) of it: the outline grown by that distance with round corners.
// A negative distance shrinks it.
func (g Polygon) Within(p Point, distance float64) bool {
	return g.SignedDistance(p) >= -distance
}
