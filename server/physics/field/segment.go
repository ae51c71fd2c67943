package field

// Segment is the straight line between two points.
type Segment struct {
	A, B Point
}

// Length returns the length of the segment, m.
func (s Segment) Length() float64 { return s.A.Distance(s.B) }

// At returns the point at a share of the way from A to B.
func (s Segment) At(share float64) Point {
	return s.A.Plus(s.B.Minus(s.A).Times(share))
}

// Nearest returns the point of the segment nearest to p.
//
//	t = (p - a).(b - a) / |b - a|^2, kept within 0 to 1
//
// Valid for: any segment, a point included. Source: plane geometry.
func (s Segment) Nearest(p Point) Point {
	d := s.B.Minus(s.A)
	square := d.Dot(d)
	if !(square > 0) {
		return s.A
	}
	return s.At(min(max(p.Minus(s.A).Dot(d)/square, 0), 1))
}

// Distance returns the distance from p to the segment, m.
func (s Segment) Distance(p Point) float64 {
	return s.Nearest(p).Distance(p)
}

// Crosses reports whether two segments share a point, and one such point.
func (s Segment) Crosses(o Segment) (Point, bool) {
	d, e := s.B.Minus(s.A), o.B.Minus(o.A)
	gap := o.A.Minus(s.A)
	denominator := d.Cross(e)
	if denominator == 0 {
		return s.touches(o)
	}
	t, u := gap.Cross(e)/denominator, gap.Cross(d)/denominator
	if t < 0 || t > 1 || u < 0 || u > 1 {
		return Point{}, false
	}
	return s.At(t), true
}

// touches is Crosses for parallel segments.
func (s Segment) touches(o Segment) (Point, bool) {
	for _, p := range []Point{o.A, o.B} {
		if s.Distance(p) == 0 {
			return p, true
		}
	}
	for _, p := range []Point{s.A, s.B} {
		if o.Distance(p) == 0 {
			return p, true
		}
	}
	return Point{}, false
}

// SegmentDistance returns the least distance between two segments, m, zero when they cross.
func (s Segment) SegmentDistance(o Segment) float64 {
	if _, crosses := s.Crosses(o); crosses {
		return 0
	}
	return min(s.Distance(o.A), s.Distance(o.B), o.Distance(s.A), o.Distance(s.B))
}

// Line is a run of straight lines through points.
type Line []Point

// Distance returns the least distance from p to the line and the nearest point of it. The line must have a point.
func (l Line) Distance(p Point) (float64, Point) {
	nearest := l[0]
	best := nearest.Distance(p)
	for i := 1; i < len(l); i++ {
		q := Segment{l[i-1], l[i]}.Nearest(p)
		if d := q.Distance(p); d < best {
			best, nearest = d, q
		}
	}
	return best, nearest
}

// Length returns the length of the line, m.
func (l Line) Length() float64 {
	sum := 0.0
	for i := 1; i < len(l); i++ {
		sum += l[i-1].Distance(l[i])
	}
	return sum
}
