package field

import (
	"cmp"
	"errors"
	"fmt"
	"math"

	"pitgate/server/physics/order"
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

// stretch is one straight stretch of an obstacle as walls.
type stretch struct {
	foot  Segment
	top   float64 // highest of its walls
	walls []wall
}

// newStretch gathers the walls on a segment.
func newStretch(foot Segment, walls []wall) stretch {
	s := stretch{foot: foot, top: math.Inf(-1), walls: walls}
	for _, w := range walls {
		s.top = max(s.top, w.top)
	}
	return s
}

// stretches returns the obstacle as walls, by straight stretches.
func (s Standing) stretches() []stretch {
	n := len(s.Points)
	edges := n - 1
	if n == 1 || s.Closed {
		edges = n
	}
	out := make([]stretch, 0, edges)
	for i := range edges {
		j := (i + 1) % n
		foot := Segment{s.Points[i], s.Points[j]}
		walls := []wall{{foot, s.top(i)}}
		switch {
		case s.Closed:
			walls[0].top = s.roof()
		case n > 1:
			walls = Span{Support{foot.A, s.top(i)}, Support{foot.B, s.top(j)}, s.Sag}.pieces()
		}
		out = append(out, newStretch(foot, walls))
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
	stretches := raised.stretches()
	found := Passing{Nearest: math.Inf(1), Above: math.Inf(1)}
	legs := track.legs(widened)
	for _, m := range meetings(legs, stretches) {
		if m.apart > 0 && m.bound > found.Nearest {
			continue
		}
		for _, w := range stretches[m.stretch].walls {
			found.meet(legs[m.leg], w)
		}
	}
	if raised.Closed {
		for _, l := range legs {
			found.block(l, raised)
		}
	}
	return found
}

// meeting is a leg and a stretch of an obstacle with a lower bound of what lies between them.
type meeting struct {
	leg, stretch int
	apart        float64 // level distance left at least, spread taken off, m; not above zero where they may lie over each other
	bound        float64 // distance in space at least, m
}

// meetings returns every leg with every stretch, those that may be nearest first.
func meetings(legs []leg, stretches []stretch) []meeting {
	out := make([]meeting, 0, len(legs)*len(stretches))
	for i, l := range legs {
		for j, s := range stretches {
			apart := l.apart(s.foot)
			out = append(out, meeting{i, j, apart, l.bound(apart, s.top)})
		}
	}
	order.Sort(out, func(a, b meeting) int {
		return cmp.Or(cmp.Compare(a.bound, b.bound), cmp.Compare(a.leg, b.leg), cmp.Compare(a.stretch, b.stretch))
	})
	return out
}

// meet takes a leg's passing of one wall into account.
func (p *Passing) meet(l leg, w wall) {
	apart := l.apart(w.foot)
	if l.bound(apart, w.top) <= p.Nearest {
		least := l.least(w.away, w.foot)
		if d := w.away(l.at(least)); d < p.Nearest {
			p.Nearest, p.At, p.Along = d, l.at(least), l.way(least)
		}
	}
	if apart > 0 {
		return
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
