package field

import (
	"errors"
	"math"

	"pitgate/server/physics/elementary"
)

// Support is a pole or other place where a wire is held.
type Support struct {
	Point
	Top float64 // height at which the wire is held, m over the datum
}

// Span is the stretch of a wire between two supports.
type Span struct {
	A, B Support
	Sag  float64 // how far the wire hangs below the straight line between its supports at the middle, m
}

// Length returns the level distance between the supports, m.
func (s Span) Length() float64 { return s.A.Distance(s.B.Point) }

// Height returns the height of the wire over the datum at a share of the way from A to B, m.
//
//	z = zA + (zB - zA) x - 4 sag x (1 - x)
//
// where x is the share from 0 to 1. Valid for: sag up to a tenth of the span, where the catenary through the same sag differs by less than 1 % of
// the sag. Source: cable under a load even along the level (parabola).
func (s Span) Height(share float64) float64 {
	return s.A.Top + float64((s.B.Top-s.A.Top)*share) - float64(4*s.Sag*share*(1-share))
}

// Lowest returns the share of the way from A to B at which the wire is lowest and its height there over the datum, m.
//
//	x = 1/2 - (zB - zA)/(8 sag), kept within 0 to 1
//
// Valid for: as Height. Source: derivative of the parabola.
func (s Span) Lowest() (share, height float64) {
	rise := s.B.Top - s.A.Top
	if !(s.Sag > 0) {
		if rise < 0 {
			return 1, s.B.Top
		}
		return 0, s.A.Top
	}
	share = min(max(0.5-float64(rise/(8*s.Sag)), 0), 1)
	return share, s.Height(share)
}

// Catenary is a wire that hangs between supports of one height under its own weight.
type Catenary struct {
	Parameter float64 // horizontal pull over weight per length, m
	Span      float64 // m
}

// NewCatenary returns the catenary of a span (m) with a sag at its middle (m).
//
//	sag = c (cosh(L/2c) - 1)
//
// solved for c by bisection. Valid for: sag above zero, up to the span. Source: hanging chain. Errors name the value that is out of range.
func NewCatenary(span, sag float64) (Catenary, error) {
	if !(span > 0 && span <= 1e5) {
		return Catenary{}, errors.New("wire span: outside 0 to 100 km")
	}
	if !(sag > span*1e-6 && sag <= span) {
		return Catenary{}, errors.New("wire sag: outside a millionth of the span to the span")
	}
	flatter := float64(span*span) / float64(8*sag) // the parabola's; the catenary's is larger by less than the sag
	low, high := flatter/2, flatter+sag
	for range 200 {
		mid := low + float64((high-low)/2)
		if mid <= low || mid >= high {
			break
		}
		if (Catenary{mid, span}).Sag() >= sag {
			low = mid
		} else {
			high = mid
		}
	}
	return Catenary{Parameter: low, Span: span}, nil
}

// Sag returns how far the middle hangs below the supports, m: c (cosh(L/2c) - 1), written 2 c sinh^2(L/4c) to keep digits.
func (c Catenary) Sag() float64 {
	half := elementary.Sinh(c.Span / (4 * c.Parameter))
	return float64(2 * c.Parameter * half * half)
}

// Length returns the length of the wire, m: 2 c sinh(L/2c). Source: hanging chain.
func (c Catenary) Length() float64 {
	return 2 * c.Parameter * elementary.Sinh(c.Span/(2*c.Parameter))
}

// Below returns how far the wire hangs below its supports at a share of the way between them, m. Source: hanging chain.
func (c Catenary) Below(share float64) float64 {
	place := elementary.Sinh(c.Span * (share - 0.5) / (2 * c.Parameter))
	return c.Sag() - float64(2*c.Parameter*place*place)
}

// EndPull returns the pull at the supports over the weight of a unit of length, m: c + sag. Source: hanging chain.
func (c Catenary) EndPull() float64 { return c.Parameter + c.Sag() }

// spanPieces is the number of straight pieces a hanging span is taken in.
const spanPieces = 24

// pieces returns the span as walls under straight pieces, each as high as the higher of its ends.
func (s Span) pieces() []wall {
	n := 1
	if s.Sag > 0 || s.A.Top != s.B.Top {
		n = spanPieces
	}
	line := Segment{s.A.Point, s.B.Point}
	out := make([]wall, 0, n)
	for i := range n {
		from, to := float64(i)/float64(n), float64(i+1)/float64(n)
		out = append(out, wall{Segment{line.At(from), line.At(to)}, max(s.Height(from), s.Height(to))})
	}
	return out
}

// wall is a level-topped wall on a segment of ground.
type wall struct {
	foot Segment
	top  float64
}

// gap returns the level distance of a place from the wall less its spread, m; negative when the spread reaches it.
func (w wall) gap(p Place) float64 { return w.foot.Distance(p.Point) - p.Spread }

// level returns the gap, not below zero.
func (w wall) level(p Place) float64 { return max(0, w.gap(p)) }

// away returns the distance of a place from the wall in space, m.
//
//	d = sqrt(max(0, r - s)^2 + max(0, z - top)^2)
//
// where r is the level distance to the foot and s the spread of the place. Convex along a straight leg. Source: geometry.
func (w wall) away(p Place) float64 {
	level, over := w.level(p), max(0, p.Height-w.top)
	return math.Sqrt(float64(level*level) + float64(over*over))
}
