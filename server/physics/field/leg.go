package field

import "math"

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

// apart returns a lower bound of the level distance between a leg, its spread taken off, and a segment, m.
func (l leg) apart(foot Segment) float64 {
	middle := Segment{l.from.Point, l.to.Point}.At(0.5)
	return foot.Distance(middle) - float64(l.from.Distance(l.to.Point)/2) - max(l.from.Spread, l.to.Spread)
}

// bound returns a lower bound of the distance in space between a leg that lies level at least so far apart (m) and what is no higher than a top, m.
func (l leg) bound(apart, top float64) float64 {
	level, over := max(apart, 0), max(min(l.from.Height, l.to.Height)-top, 0)
	return math.Sqrt(float64(level*level) + float64(over*over))
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

// leastAt returns where a convex value is least from 0 to 1, by golden sections.
func leastAt(value func(float64) float64) float64 {
	const golden = 0.6180339887498949
	low, high := 0.0, 1.0
	x1, x2 := 1-golden, golden
	v1, v2 := value(x1), value(x2)
	for high-low > 1e-6 {
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
