package field

import (
	"errors"
	"fmt"
)

// Polygon is a closed outline; the last corner joins the first.
type Polygon []Point

// edge returns the edge from corner i to the next.
func (g Polygon) edge(i int) Segment {
	return Segment{g[i], g[(i+1)%len(g)]}
}

// Check returns an error that names what is wrong with the outline: fewer than three corners, a corner that is not a number, no area,
// or two edges that cross.
func (g Polygon) Check() error {
	if len(g) < 3 {
		return fmt.Errorf("outline has %d corners, needs three", len(g))
	}
	for i, p := range g {
		if !p.Finite() {
			return fmt.Errorf("outline corner %d is not a number", i+1)
		}
	}
	if c, crosses := g.SelfCrossing(); crosses {
		return c
	}
	if g.SignedArea() == 0 {
		return errors.New("outline has no area")
	}
	return nil
}

// CrossingError is the error that an outline crosses itself.
type CrossingError struct {
	First, Second int   // numbers of the edges, from 1; edge n starts at corner n
	At            Point // where they meet
}

// Error names the two edges and the place.
func (c CrossingError) Error() string {
	return fmt.Sprintf("outline crosses itself: edge %d meets edge %d at (%.2f, %.2f)", c.First, c.Second, c.At.X, c.At.Y)
}

// SelfCrossing returns the first pair of edges that meet where they should not, and whether there is one.
func (g Polygon) SelfCrossing() (CrossingError, bool) {
	n := len(g)
	for i := range n {
		for j := i + 1; j < n; j++ {
			if at, meets := g.meeting(i, j); meets {
				return CrossingError{First: i + 1, Second: j + 1, At: at}, true
			}
		}
	}
	return CrossingError{}, false
}

// meeting reports whether edges i < j meet, other than at the corner neighbours share.
func (g Polygon) meeting(i, j int) (Point, bool) {
	n := len(g)
	first, second := g.edge(i), g.edge(j)
	switch {
	case j == i+1:
		return foldsBack(first.A, first.B, second.B)
	case i == 0 && j == n-1:
		return foldsBack(second.A, second.B, first.B)
	}
	return first.Crosses(second)
}

// foldsBack reports whether the line from a by b to c turns back on itself at b, or b repeats a neighbour.
func foldsBack(a, b, c Point) (Point, bool) {
	in, out := b.Minus(a), c.Minus(b)
	repeats := in.Dot(in) == 0 || out.Dot(out) == 0
	return b, repeats || (in.Cross(out) == 0 && in.Dot(out) < 0)
}

// SignedArea returns the area, m2, positive for corners counter-clockwise.
//
//	A = sum(x_i y_(i+1) - x_(i+1) y_i) / 2
//
// taken from the first corner to keep digits. Valid for: outlines that do not cross themselves. Source: shoelace formula.
func (g Polygon) SignedArea() float64 {
	sum := 0.0
	for i := 2; i < len(g); i++ {
		sum += g[i-1].Minus(g[0]).Cross(g[i].Minus(g[0]))
	}
	return sum / 2
}

// Area returns the area, m2.
func (g Polygon) Area() float64 {
	return max(g.SignedArea(), -g.SignedArea())
}

// Perimeter returns the length of the outline, m.
func (g Polygon) Perimeter() float64 {
	sum := 0.0
	for i := range g {
		sum += g.edge(i).Length()
	}
	return sum
}

// Centroid returns the centre of area; the first corner when there is no area.
//
//	c = sum((p_i + p_(i+1)) (p_i x p_(i+1))) / (6 A), from the first corner
//
// Valid for: outlines that do not cross themselves. Source: plane geometry.
func (g Polygon) Centroid() Point {
	if len(g) == 0 {
		return Point{}
	}
	var sum Point
	for i := 2; i < len(g); i++ {
		p, q := g[i-1].Minus(g[0]), g[i].Minus(g[0])
		sum = sum.Plus(p.Plus(q).Times(p.Cross(q)))
	}
	area := g.SignedArea()
	if area == 0 {
		return g[0]
	}
	return g[0].Plus(sum.Times(1 / (6 * area)))
}

// Contains reports whether p lies inside the outline. Points on the outline may fall either way: ask SignedDistance.
//
// Valid for: outlines that do not cross themselves. Source: even-odd crossing count.
func (g Polygon) Contains(p Point) bool {
	inside := false
	for i := range g {
		e := g.edge(i)
		if (e.A.Y > p.Y) == (e.B.Y > p.Y) {
			continue
		}
		if toLeft := e.B.Minus(e.A).Cross(p.Minus(e.A)); (toLeft > 0) == (e.B.Y > e.A.Y) {
			inside = !inside
		}
	}
	return inside
}

// Distance returns the least distance from p to the outline, m, whichever side it is on, and the nearest point of it.
func (g Polygon) Distance(p Point) (float64, Point) {
	nearest := g[0]
	best := nearest.Distance(p)
	for i := range g {
		q := g.edge(i).Nearest(p)
		if d := q.Distance(p); d < best {
			best, nearest = d, q
		}
	}
	return best, nearest
}

// SignedDistance returns the distance from p to the outline, m, positive inside and negative outside.
func (g Polygon) SignedDistance(p Point) float64 {
	d, _ := g.Distance(p)
	if g.Contains(p) {
		return d
	}
	return -d
}
