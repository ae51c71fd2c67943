package field

import (
	"errors"
	"fmt"
	"math"
)

// Place is a point of a flight path over the field.
type Place struct {
	Point
	Height float64 // over the datum, m
	Spread float64 // how far the path may lie to each side of it, m
}

// Track is a flight path as straight legs through places.
type Track []Place

// Standing is an obstacle in space: a mast at one point, a wall or hedge or wire along a line, or a block when closed. A wire is taken as a wall
// up to the wire: nothing flies under it.
type Standing struct {
	Points []Point
	Ground []float64 // height of the ground at each point over the datum, m; missing ones are level with the datum
	Closed bool
	Height float64 // top over the ground, m
	Sag    float64 // how far a wire hangs below the straight line at the middle of each span, m
	// HeightSpread and PositionSpread are one standard deviation of the height and of the place, m.
	HeightSpread, PositionSpread float64
}

// Check returns an error that names what is impossible.
func (s Standing) Check() error {
	if len(s.Points) == 0 {
		return errors.New("obstacle has no points")
	}
	if s.Closed && len(s.Points) < 3 {
		return fmt.Errorf("obstacle outline has %d corners, needs three", len(s.Points))
	}
	for i, p := range s.Points {
		if !p.Finite() || !(math.Abs(s.ground(i)) <= 1e5) {
			return fmt.Errorf("obstacle point %d is not a number", i+1)
		}
	}
	for _, v := range []struct {
		name  string
		value float64
	}{{"height", s.Height}, {"sag", s.Sag}, {"height spread", s.HeightSpread}, {"position spread", s.PositionSpread}} {
		if !(v.value >= 0 && v.value <= 1e4) {
			return fmt.Errorf("obstacle %s: %g is outside 0 to 10000", v.name, v.value)
		}
	}
	return nil
}

// ground returns the height of the ground at a point.
func (s Standing) ground(i int) float64 {
	if i < len(s.Ground) {
		return s.Ground[i]
	}
	return 0
}

// top returns the height of the top at a point over the datum.
func (s Standing) top(i int) float64 { return s.ground(i) + s.Height }

// Allowed returns the obstacle with a number of standard deviations of its survey taken against the flight: higher, and wider (on every side).
func (s Standing) Allowed(deviations float64) (raised Standing, widened float64) {
	s.Height += float64(deviations * s.HeightSpread)
	return s, float64(deviations * s.PositionSpread)
}

// walls returns the obstacle as walls.
func (s Standing) walls() []wall {
	n := len(s.Points)
	if n == 1 {
		return []wall{{Segment{s.Points[0], s.Points[0]}, s.top(0)}}
	}
	edges := n - 1
	if s.Closed {
		edges = n
	}
	out := make([]wall, 0, edges)
	for i := range edges {
		j := (i + 1) % n
		if s.Closed {
			out = append(out, wall{Segment{s.Points[i], s.Points[j]}, s.roof()})
			continue
		}
		out = append(out, Span{Support{s.Points[i], s.top(i)}, Support{s.Points[j], s.top(j)}, s.Sag}.pieces()...)
	}
	return out
}

// roof returns the height of a block's top over the datum: over its highest ground.
func (s Standing) roof() float64 {
	highest := math.Inf(-1)
	for i := range s.Points {
		highest = max(highest, s.top(i))
	}
	return highest
}

// Passing is how a track passes an obstacle.
type Passing struct {
	Nearest float64 // least distance in space with the spread against the flight, m; zero when the track meets it
	At      Place   // of the track, where
	Along   float64 // of the level way along the track to there, m

	Over      bool    // the track, its spread included, leads over the obstacle
	Above     float64 // least height over its top while over it, m; negative below the top
	OverAt    Place   // of the track, where
	OverAlong float64 // m
}

// Pass returns how a track passes the obstacle, with a number of standard deviations of the obstacle's survey taken against the flight (zero:
// as surveyed). The obstacle must pass Check; an empty track passes at infinity.
//
// Valid for: legs straight; distances to 1 mm. A line's top is the straight line or, with sag, the parabola between its points, each taken in 24
// pieces as high as their higher end, so that a sloping or hanging top is taken too high by up to a 24th of its rise or a 6th of its sag at the pole. Source: distance to a convex body is convex along a straight leg, so its least is bracketed.
func (s Standing) Pass(track Track, deviations float64) Passing {
	raised, widened := s.Allowed(deviations)
	walls := raised.walls()
	found := Passing{Nearest: math.Inf(1), Above: math.Inf(1)}
	legs := track.legs(widened)
	for _, l := range legs {
		for _, w := range walls {
			if d := w.away(l.from); d < found.Nearest {
				found.Nearest, found.At, found.Along = d, l.from, l.along
			}
		}
	}
	for _, l := range legs {
		for _, w := range walls {
			found.meet(l, w)
		}
		if raised.Closed {
			found.block(l, raised)
		}
	}
	return found
}

// legs returns the straight pieces of a track, widened on each side (m); one of no length for a single place.
func (t Track) legs(widened float64) []leg {
	out := make([]leg, 0, len(t))
	along := 0.0
	for i := range max(len(t)-1, min(len(t), 1)) {
		l := leg{t[i], t[min(i+1, len(t)-1)], along}
		l.from.Spread += widened
		l.to.Spread += widened
		along += l.from.Distance(l.to.Point)
		out = append(out, l)
	}
	return out
}

// leg is a straight piece of a track.
type leg struct {
	from, to Place
	along    float64 // way along the track to its start, m
}

// at returns the place at a share of the leg.
func (l leg) at(share float64) Place {
	return Place{
		Point:  Segment{l.from.Point, l.to.Point}.At(share),
		Height: between(l.from.Height, l.to.Height, share),
		Spread: between(l.from.Spread, l.to.Spread, share),
	}
}

// way returns the way along the track at a share of the leg, m.
func (l leg) way(share float64) float64 {
	return l.along + float64(share*l.from.Distance(l.to.Point))
}

// meet takes a leg's passing of one wall into account.
func (p *Passing) meet(l leg, w wall) {
	reach := l.from.Distance(l.to.Point) + max(l.from.Spread, l.to.Spread)
	apart := w.foot.Distance(l.from.Point) - reach
	if apart > 0 && max(apart, min(l.from.Height, l.to.Height)-w.top) > p.Nearest {
		return
	}
	least := l.least(w.away, w.foot)
	if d := w.away(l.at(least)); d < p.Nearest {
		p.Nearest, p.At, p.Along = d, l.at(least), l.way(least)
	}
	gap := func(x float64) float64 { return w.gap(l.at(x)) }
	middle := l.least(w.gap, w.foot)
	if gap(middle) > 0 {
		return
	}
	for _, x := range [...]float64{edgeOf(gap, middle, 0), edgeOf(gap, middle, 1)} {
		p.over(l, x, w.top)
	}
}

// least returns the share of the leg at which a distance from what stands on a segment is least: where it crosses the segment, or by sections.
func (l leg) least(value func(Place) float64, foot Segment) float64 {
	at := func(x float64) float64 { return value(l.at(x)) }
	best := leastAt(at)
	if cross, crosses := (Segment{l.from.Point, l.to.Point}).Crosses(foot); crosses {
		length := l.from.Distance(l.to.Point)
		if length > 0 {
			if x := min(1, l.from.Distance(cross)/length); at(x) <= at(best) {
				return x
			}
		}
	}
	return best
}

// over notes the height over a top at a share of a leg.
func (p *Passing) over(l leg, share, top float64) {
	q := l.at(share)
	if above := q.Height - top; !p.Over || above < p.Above {
		p.Over, p.Above, p.OverAt, p.OverAlong = true, above, q, l.way(share)
	}
}

// block takes the ends of a leg that lie within a closed obstacle into account; between them its walls decide.
func (p *Passing) block(l leg, s Standing) {
	for _, share := range [...]float64{0, 1} {
		q := l.at(share)
		if !Polygon(s.Points).Contains(q.Point) {
			continue
		}
		p.over(l, share, s.roof())
		if d := max(0, q.Height-s.roof()); d < p.Nearest {
			p.Nearest, p.At, p.Along = d, q, l.way(share)
		}
	}
}

// leastAt returns where a convex value is least from 0 to 1, by golden sections.
func leastAt(value func(float64) float64) float64 {
	const golden = 0.6180339887498949
	low, high := 0.0, 1.0
	x1, x2 := 1-golden, golden
	v1, v2 := value(x1), value(x2)
	for high-low > 1e-7 {
		if v1 <= v2 {
			high, x2, v2 = x2, x1, v1
			x1 = high - float64(golden*(high-low))
			v1 = value(x1)
		} else {
			low, x1, v1 = x1, x2, v2
			x2 = low + float64(golden*(high-low))
			v2 = value(x2)
		}
	}
	best := (low + high) / 2
	for _, end := range [...]float64{0, 1} {
		if value(end) <= value(best) {
			best = end
		}
	}
	return best
}

// edgeOf returns where a convex value that is not positive at a place becomes zero on the way to an end; the end where it does not.
func edgeOf(value func(float64) float64, inside, end float64) float64 {
	if value(end) <= 0 {
		return end
	}
	for range 40 {
		mid := inside + float64((end-inside)/2)
		if value(mid) <= 0 {
			inside = mid
		} else {
			end = mid
		}
	}
	return inside
}
