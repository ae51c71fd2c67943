package site

import (
	"pitgate/server/physics/assess"
	"pitgate/server/physics/field"
)

// named is an outline with its name.
type named struct {
	name    string
	outline field.Polygon
}

// run is a strip as a line and an outline.
type run struct {
	name    string
	centre  field.Segment
	outline field.Polygon
}

// shapes are the outlines that others are held against. Those that are none (too few corners, crossing) are left out.
type shapes struct {
	flying  field.Polygon
	keepOut []named
	strips  []run
}

func newShapes(f assess.FieldDescription) shapes {
	s := shapes{flying: outlineOf(f.FlyingArea)}
	for _, k := range f.KeepOuts {
		if outline := outlineOf(k.Area); outline != nil {
			s.keepOut = append(s.keepOut, named{k.Name, outline})
		}
	}
	for _, strip := range f.Strips {
		if r, ok := runOf(strip); ok {
			s.strips = append(s.strips, r)
		}
	}
	return s
}

// runOf is a strip's shape; false without two different thresholds. A strip without a width is as wide as a line.
func runOf(strip assess.Strip) (run, bool) {
	if strip.Start == nil || strip.End == nil {
		return run{}, false
	}
	start, end := pointOf(*strip.Start), pointOf(*strip.End)
	if start == end {
		return run{}, false
	}
	half := value(strip.WidthMeters) / 2
	right := field.Right(start.Heading(end)).Times(half)
	return run{strip.Name, field.Segment{A: start, B: end},
		field.Polygon{start.Plus(right), end.Plus(right), end.Minus(right), start.Minus(right)}}, true
}

// outlineOf is the outline in normal form, or nil when it is none.
func outlineOf(p *assess.Polygon) field.Polygon {
	if p == nil {
		return nil
	}
	normal, _, err := field.Polygon(pointsOf(p.Corners)).Normal()
	if err != nil {
		return nil
	}
	return normal
}

func pointOf(p assess.Point) field.Point {
	return field.Point{X: number(p.XMeters), Y: number(p.YMeters)}
}

func pointsOf(points []assess.Point) []field.Point {
	out := make([]field.Point, len(points))
	for i, p := range points {
		out[i] = pointOf(p)
	}
	return out
}

func number(v *float64) float64 {
	if v == nil {
		return 0
	}
	return *v
}

// value of a quantity; zero without one.
func value(q *assess.Quantity) float64 {
	if q == nil {
		return 0
	}
	return number(q.Value)
}

// given tells whether a quantity has a value.
func given(q *assess.Quantity) bool { return q != nil && q.Value != nil }

// edge is the distance up to which a place counts as on an outline, m.
const edge = 0.01

// within tells whether a place lies inside an outline or on it.
func within(outline field.Polygon, p field.Point) bool { return outline.SignedDistance(p) > -edge }

// overlap tells whether two outlines share more than their edges: a side of one crosses into the other, or one lies within the other.
func overlap(a, b field.Polygon) bool {
	return reaches(a, b) || reaches(b, a)
}

// reaches tells whether a corner or the middle of a side of a lies inside b, or sides of both cross.
func reaches(a, b field.Polygon) bool {
	for i, p := range a {
		next := a[(i+1)%len(a)]
		if b.SignedDistance(p) > edge || b.SignedDistance(p.Plus(next).Times(0.5)) > edge {
			return true
		}
		for j := range b {
			if crossesSide(field.Segment{A: p, B: next}, field.Segment{A: b[j], B: b[(j+1)%len(b)]}) {
				return true
			}
		}
	}
	return false
}

// crossesSide tells whether two sides cross, other than by touching at their ends.
func crossesSide(a, b field.Segment) bool {
	at, meets := a.Crosses(b)
	if !meets {
		return false
	}
	for _, end := range []field.Point{a.A, a.B, b.A, b.B} {
		if at.Distance(end) < edge {
			return false
		}
	}
	return true
}
