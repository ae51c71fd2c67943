package field

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Point is a place or a vector on the field's plane.
type Point struct {
	X float64 // east, m
	Y float64 // north, m
}

// Plus returns the sum of two vectors.
func (p Point) Plus(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Minus returns the vector from q to p.
func (p Point) Minus(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Times returns the vector scaled by k.
func (p Point) Times(k float64) Point { return Point{float64(p.X * k), float64(p.Y * k)} }

// Dot returns the scalar product of two vectors.
func (p Point) Dot(q Point) float64 { return float64(p.X*q.X) + float64(p.Y*q.Y) }

// Cross returns the vector product of two vectors, positive when q lies to the left of p.
func (p Point) Cross(q Point) float64 { return float64(p.X*q.Y) - float64(p.Y*q.X) }

// Length returns the length of the vector, m.
func (p Point) Length() float64 { return math.Sqrt(p.Dot(p)) }

// Distance returns the distance between two points, m.
func (p Point) Distance(q Point) float64 { return p.Minus(q).Length() }

// Finite reports whether both coordinates are numbers.
func (p Point) Finite() bool {
	return !math.IsNaN(p.X-p.X) && !math.IsNaN(p.Y-p.Y)
}

// Ahead returns the unit vector along a heading (rad, clockwise from north).
func Ahead(heading float64) Point {
	return Point{elementary.Sin(heading), elementary.Cos(heading)}
}

// Right returns the unit vector to the right of a heading (rad).
func Right(heading float64) Point {
	a := Ahead(heading)
	return Point{a.Y, -a.X}
}

// Heading returns the heading from p to q, rad from 0 to below 2 pi; zero when the points coincide.
func (p Point) Heading(q Point) float64 {
	d := q.Minus(p)
	h := elementary.Atan2(d.X, d.Y)
	if h < 0 {
		h += 2 * math.Pi
	}
	return h
}
