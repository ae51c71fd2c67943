package field

import "math"

// Incursion is how a track keeps clear of an area.
type Incursion struct {
	Enters bool
	// Distance is the least level distance from the track, its spread included, to the area, m; zero when it enters.
	Distance float64
	At       Place
	Along    float64 // of the level way along the track to there, m; of the first place inside when it enters
	Inside   float64 // length of the track's middle within the area, m
	Lowest   float64 // least height of the track's middle over the datum within the area, m; infinite when the middle stays out
}

// Enter returns how a track keeps clear of an area below a height (m over the datum; infinite for all heights): pieces of the track above it do not
// count. The area must have corners and the track a place.
//
// Valid for: legs straight. Source: plane geometry.
func (g Polygon) Enter(track Track, ceiling float64) Incursion {
	found := Incursion{Distance: math.Inf(1), Lowest: math.Inf(1)}
	for _, l := range track.legs(0) {
		if below, lies := l.under(ceiling); lies {
			found.take(g, below)
		}
	}
	return found
}

// under returns the part of a leg that lies at or below a height, and whether there is any.
func (l leg) under(ceiling float64) (leg, bool) {
	from, to := clip(0, 1, roomUnder(ceiling, l.from.Height), roomUnder(ceiling, l.to.Height))
	if from > to {
		return leg{}, false
	}
	return leg{l.at(from), l.at(to), l.way(from)}, true
}

// roomUnder is the room under a ceiling, finite.
func roomUnder(ceiling, height float64) float64 {
	return min(ceiling, 1e9) - height
}

// take takes a leg into account: it is cut where it crosses the outline, so that each piece lies on one side.
func (f *Incursion) take(g Polygon, l leg) {
	cuts := g.cuts(Segment{l.from.Point, l.to.Point})
	for i := 1; i < len(cuts); i++ {
		a, b := cuts[i-1], cuts[i]
		if !g.Contains(l.at(between(a, b, 0.5)).Point) {
			f.outside(g, l, a, b)
			continue
		}
		f.Inside += l.way(b) - l.way(a)
		f.Lowest = min(f.Lowest, l.at(a).Height, l.at(b).Height)
		f.enter(l, a)
	}
}

// enter notes the first place inside.
func (f *Incursion) enter(l leg, share float64) {
	if !f.Enters || l.way(share) < f.Along {
		f.Enters, f.Distance, f.At, f.Along = true, 0, l.at(share), l.way(share)
	}
}

// outside takes a piece that lies outside into account: its distance less the spread.
func (f *Incursion) outside(g Polygon, l leg, from, to float64) {
	for i := range g {
		gap := func(x float64) float64 {
			q := l.at(between(from, to, x))
			return g.edge(i).Distance(q.Point) - q.Spread
		}
		share := leastAt(gap)
		least := gap(share)
		if least <= 0 {
			f.enter(l, between(from, to, edgeOf(gap, share, 0)))
		} else if !f.Enters && least < f.Distance {
			at := between(from, to, share)
			f.Distance, f.At, f.Along = least, l.at(at), l.way(at)
		}
	}
}

// cuts returns the shares of a segment where it crosses the outline, in order, with its ends.
func (g Polygon) cuts(s Segment) []float64 {
	cuts := []float64{0, 1}
	length := s.Length()
	if !(length > 0) {
		return cuts
	}
	for i := range g {
		e := g.edge(i)
		d, back := s.B.Minus(s.A), e.B.Minus(e.A)
		if d.Cross(back) == 0 {
			for _, p := range [...]Point{e.A, e.B} {
				if s.Distance(p) == 0 {
					cuts = append(cuts, s.A.Distance(p)/length)
				}
			}
			continue
		}
		if at, crosses := s.Crosses(e); crosses {
			cuts = append(cuts, min(1, s.A.Distance(at)/length))
		}
	}
	return sorted(cuts)
}

// Approach is the nearest a track comes to a line on the ground.
type Approach struct {
	Distance float64 // level, its spread included, m; zero when it leads over the line
	At       Place
	Along    float64 // of the level way along the track to there, m
	Slant    float64 // least distance in space to the line on the ground, m
}

// Approach returns the nearest a track comes to a line of people or a road, with the ground of the line at a height over the datum (m). Both must have
// points.
//
// Valid for: legs straight. Source: as Pass.
func (l Line) Approach(track Track, ground float64) Approach {
	found := Approach{Distance: math.Inf(1), Slant: math.Inf(1)}
	for _, piece := range track.legs(0) {
		for j := range max(len(l)-1, 1) {
			found.near(piece, wall{Segment{l[j], l[min(j+1, len(l)-1)]}, ground})
		}
	}
	return found
}

// near takes a leg's distance from one straight piece of the line into account.
func (a *Approach) near(l leg, w wall) {
	share := l.least(w.gap, w.foot)
	if d := w.level(l.at(share)); d < a.Distance {
		a.Distance, a.At, a.Along = d, l.at(share), l.way(share)
	}
	slant := l.least(w.away, w.foot)
	a.Slant = min(a.Slant, w.away(l.at(slant)))
}
