package footprint

import (
	"errors"
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// Hit is how likely something is met, given that the link is lost.
type Hit struct {
	Share float64 // of the samples that meet it
	// Most is the greatest share that the number of samples leaves open, one-sided at 95 %.
	Most float64
	// Nearest is the least distance of a sample's way on and near the ground to it, less the reach, m; zero when it is met, the greatest number there is
	// without impacts or without a place to meet.
	Nearest float64
}

// swathe is the ground over which an impact sweeps at less than a person's height, to where the slide ends.
func (c Cloud) swathe(impact Impact, ground Ground) field.Segment {
	level := impact.Velocity.Level()
	if !(level > 0) {
		return field.Segment{A: impact.Place, B: impact.Place}
	}
	ahead := field.Point{X: impact.Velocity.X / level, Y: impact.Velocity.Y / level}
	area := c.strike(impact).area(ground)
	return field.Segment{A: impact.Place.Minus(ahead.Times(area.GlideLength)), B: impact.Place.Plus(ahead.Times(area.SlideLength))}
}

// AreaHit returns how many samples meet an area: their way below a person's height, or their slide, comes within half the model's width and a
// person's radius of it. An area without a corner is met by none. A building is met from its own height: set PersonHeight to it. A LethalEnergy of zero
// counts the slide to its end. Corners that are no numbers and an impossible ground are errors.
func (c Cloud) AreaHit(area field.Polygon, ground Ground) (Hit, error) {
	if err := errors.Join(finitePlaces("area corner", area), ground.Check()); err != nil {
		return Hit{}, err
	}
	if len(area) == 0 {
		return c.hit(ground, func(field.Segment) float64 { return math.Inf(1) }), nil
	}
	return c.hit(ground, func(s field.Segment) float64 { return area.PathDistance(field.Line{s.A, s.B}) }), nil
}

// finitePlaces returns an error that names the first place that is no number.
func finitePlaces(name string, places []field.Point) error {
	for i, p := range places {
		if !p.Finite() {
			return fmt.Errorf("%s %d: is not a number", name, i+1)
		}
	}
	return nil
}

// LineHit returns how many samples meet a strip of ground along a line, half its width (m) to each side, as AreaHit.
func (c Cloud) LineHit(line field.Line, halfWidth float64, ground Ground) (Hit, error) {
	err := errors.Join(finitePlaces("line point", line), firstOutside([]bounded{{"half width", halfWidth, 0, 1e5}}), ground.Check())
	if err != nil {
		return Hit{}, err
	}
	if len(line) == 0 {
		return c.hit(ground, func(field.Segment) float64 { return math.Inf(1) }), nil
	}
	return c.hit(ground, func(s field.Segment) float64 {
		return max(0, field.LineClearance(field.Line{s.A, s.B}, line)-halfWidth)
	}), nil
}

// hit counts the samples whose swathe comes within reach of something.
func (c Cloud) hit(ground Ground, distance func(field.Segment) float64) Hit {
	reach := float64(0.5*c.width) + ground.PersonRadius
	count, nearest := 0, math.Inf(1)
	for _, impact := range c.Impacts {
		gap := max(0, distance(c.swathe(impact, ground))-reach)
		nearest = min(nearest, gap)
		if gap == 0 {
			count++
		}
	}
	n := len(c.Impacts)
	if math.IsInf(nearest, 1) {
		nearest = math.MaxFloat64
	}
	return Hit{Share: float64(count) / float64(max(n, 1)), Most: mostShare(count, n), Nearest: nearest}
}

// mostShare returns the greatest share that a count of samples leaves open at 95 %.
//
//	(p + z^2/(2n) + z sqrt(p(1-p)/n + z^2/(4 n^2))) / (1 + z^2/n), and 1 - 0.05^(1/n) for none
//
// where p is the share counted, n the number of samples and z 1.645. Valid for: independent samples; an even sequence is more exact.
// Source: Wilson, Journal of the American Statistical Association 22 (1927) 209-212.
func mostShare(count, samples int) float64 {
	switch {
	case samples == 0:
		return 1
	case count == 0:
		return 1 - elementary.Pow(0.05, 1/float64(samples))
	}
	const z = 1.6448536269514722
	n := float64(samples)
	p := float64(count) / n
	square := z * z / n
	middle := p + float64(0.5*square)
	swing := z * math.Sqrt(float64(p*(1-p))/n+square/(4*n))
	return min(1, (middle+float64(swing))/(1+square))
}

// Inside is a line that an outline holds part of.
type Inside struct {
	Line     int     // number of the line, from 0
	Length   float64 // of the line within the outline, m
	Distance float64 // least distance of the line to the area inside the outline, m, zero when any of it lies within
}

// LinesInside returns, for each line, how much of it lies within a convex outline, counter-clockwise, and how far away it stays. Lines without points or
// with points that are no numbers are left out.
func LinesInside(outline field.Polygon, lines []field.Line) []Inside {
	var out []Inside
	for i, line := range lines {
		if len(line) == 0 || len(outline) == 0 || finitePlaces("line point", line) != nil {
			continue
		}
		inside := Inside{Line: i, Distance: outline.PathDistance(line)}
		for j := 1; j < len(line); j++ {
			inside.Length += lengthInside(outline, field.Segment{A: line[j-1], B: line[j]})
		}
		out = append(out, inside)
	}
	return out
}

// lengthInside returns the length of a segment within a convex outline, counter-clockwise, m.
//
// Formula: the share of the segment to the left of every edge. Source: Cyrus and Beck, Computers and Graphics 3 (1978) 23-28.
func lengthInside(outline field.Polygon, s field.Segment) float64 {
	from, to := 0.0, 1.0
	way := s.B.Minus(s.A)
	for i, corner := range outline {
		edge := outline[(i+1)%len(outline)].Minus(corner)
		start, change := edge.Cross(s.A.Minus(corner)), edge.Cross(way)
		switch {
		case change > 0:
			from = max(from, -start/change)
		case change < 0:
			to = min(to, -start/change)
		case start < 0:
			return 0
		}
	}
	return max(0, to-from) * s.Length()
}

// AreaDistance returns the least distance between the areas inside two outlines, m: zero when they share a place, the greatest number there is when one
// has no corner.
func AreaDistance(a, b field.Polygon) float64 {
	if len(a) == 0 || len(b) == 0 {
		return math.MaxFloat64
	}
	if a.Contains(b[0]) {
		return 0
	}
	closed := append(append(make(field.Line, 0, len(b)+1), b...), b[0])
	if b.Contains(a[0]) {
		return 0
	}
	return a.PathDistance(closed)
}
