package field

import "math"

// Clearance is how far something lies within an outline.
type Clearance struct {
	// Distance is the least distance to the outline, m; negative when any of it lies outside, by how far the worst point does.
	Distance float64
	// At is the point of the thing measured that decides.
	At Point
}

// PathClearance returns the clearance of a line within the outline. An edge of the outline that cuts the line between two points of it counts as
// outside; the outline and the line must have points.
func (g Polygon) PathClearance(path Line) Clearance {
	least := Clearance{Distance: math.Inf(1)}
	for i, p := range path {
		least = least.or(Clearance{g.SignedDistance(p), p})
		if i > 0 && least.Distance > 0 {
			least = least.or(g.legClearance(Segment{path[i-1], p}))
		}
	}
	return least
}

// legClearance returns the clearance of a leg whose ends lie inside: the corners of the outline decide, or an edge that cuts it.
func (g Polygon) legClearance(leg Segment) Clearance {
	least := Clearance{Distance: math.Inf(1)}
	for i, corner := range g {
		q := leg.Nearest(corner)
		least = least.or(Clearance{q.Distance(corner), q})
		if at, cuts := leg.Crosses(g.edge(i)); cuts {
			least = least.or(Clearance{0, at})
		}
	}
	return least
}

// or returns the lesser of two clearances.
func (c Clearance) or(d Clearance) Clearance {
	if d.Distance < c.Distance {
		return d
	}
	return c
}

// DiscClearance returns the clearance of a disc within the outline, m.
func (g Polygon) DiscClearance(centre Point, radius float64) float64 {
	return g.SignedDistance(centre) - radius
}

// LineClearance returns the least distance between two lines, m; both must have points.
func LineClearance(a, b Line) float64 {
	best := math.Inf(1)
	for i := range max(len(a)-1, 1) {
		first := Segment{a[i], a[min(i+1, len(a)-1)]}
		for j := range max(len(b)-1, 1) {
			best = min(best, first.SegmentDistance(Segment{b[j], b[min(j+1, len(b)-1)]}))
		}
	}
	return best
}

// PathDistance returns the least distance from a line to the area inside the outline, m: zero when the line enters it. Both must have points.
func (g Polygon) PathDistance(path Line) float64 {
	if g.Contains(path[0]) {
		return 0
	}
	closed := append(append(make(Line, 0, len(g)+1), g...), g[0])
	return LineClearance(path, closed)
}
