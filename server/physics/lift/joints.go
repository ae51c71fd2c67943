package lift

import (
	"math"
	"slices"

	"pitgate/server/physics/planform"
)

const (
	joinedWithin = 0.1   // of the chord: body, fillet and thickness close so small a gap
	sameStation  = 0.005 // of the length of a surface
)

// joints says which surfaces are joined so that their strips meet edge to edge.
type joints struct {
	group []int  // of each surface; mirrored surfaces joined end to end, also by way of others, share one
	meet  []bool // of each pair, row by row: one stands on the other or carries it
}

// join extends the surfaces that take part to the plane of symmetry and cuts each where an end of another stands on it, so that a trailing
// leg of the one runs along a strip edge of the other.
func join(surfaces []planform.Surface, takesPart func(planform.Surface) bool) ([]planform.Surface, joints) {
	n := len(surfaces)
	j := joints{group: make([]int, n), meet: make([]bool, n*n)}
	out := make([]planform.Surface, n)
	for i := range surfaces {
		j.group[i], out[i] = i, planform.Extended(surfaces[i])
		for k := range i {
			if endToEnd(surfaces[i], surfaces[k]) || endToEnd(surfaces[k], surfaces[i]) {
				merge(j.group[:i+1], j.group[i], j.group[k])
			}
		}
	}
	cuts := make([][]float64, n)
	for i := range out {
		for k := range out {
			if i == k || !takesPart(surfaces[i]) || !takesPart(surfaces[k]) {
				continue
			}
			if places := standsOn(out[i], out[k]); len(places) > 0 {
				cuts[i] = append(cuts[i], places...)
				j.meet[i*n+k], j.meet[k*n+i] = true, true
			}
		}
	}
	for i := range out {
		out[i] = cutAt(out[i], cuts[i])
	}
	return out, j
}

// joined reports whether two surfaces, by index, meet edge to edge or are the same.
func (j joints) joined(a, b int) bool {
	return j.group[a] == j.group[b] || j.meet[a*len(j.group)+b]
}

// merge gives all members of one group the number of another.
func merge(group []int, from, to int) {
	for i, g := range group {
		if g == from {
			group[i] = to
		}
	}
}

// endToEnd reports whether the outer of two mirrored surfaces begins where the inner one ends: seen along the stream, within 1 % of the chord.
func endToEnd(inner, outer planform.Surface) bool {
	tip, root := inner.Stations[len(inner.Stations)-1], outer.Stations[0]
	near := float64(0.01 * tip.Chord)
	return inner.Mirrored && outer.Mirrored && math.Abs(tip.Y-root.Y) <= near && math.Abs(tip.Z-root.Z) <= near
}

// standsOn returns the places along a surface, 0 to 1, at which the ends of another stand on it: within a tenth of the chord and with chords
// that overlap.
func standsOn(carrier, other planform.Surface) []float64 {
	var out []float64
	places := stationPlaces(carrier)
	for _, end := range []planform.Station{other.Stations[0], other.Stations[len(other.Stations)-1]} {
		if carrier.Mirrored {
			end.Y = math.Abs(end.Y)
		}
		segment, share, distance := nearest(carrier, end)
		here := between(carrier.Stations[segment-1], carrier.Stations[segment], share)
		overlap := min(here.X+here.Chord, end.X+end.Chord) - max(here.X, end.X)
		if distance <= float64(joinedWithin*here.Chord) && overlap > 0 {
			out = append(out, blend(places[segment-1], places[segment], share))
		}
	}
	return out
}

// nearest returns the place of a surface, seen along the stream, that is nearest to a station: the segment ends at the station of that number.
func nearest(s planform.Surface, to planform.Station) (segment int, share, distance float64) {
	distance = math.Inf(1)
	for k := 1; k < len(s.Stations); k++ {
		a, b := s.Stations[k-1], s.Stations[k]
		dy, dz := b.Y-a.Y, b.Z-a.Z
		along := (float64((to.Y-a.Y)*dy) + float64((to.Z-a.Z)*dz)) / (float64(dy*dy) + float64(dz*dz))
		along = max(0, min(1, along))
		y, z := to.Y-a.Y-float64(along*dy), to.Z-a.Z-float64(along*dz)
		if d := math.Sqrt(float64(y*y) + float64(z*z)); d < distance {
			segment, share, distance = k, along, d
		}
	}
	return segment, share, distance
}

// cutAt returns the surface with a station at each place, 0 to 1, that has none near; its section is that of the nearer neighbour.
func cutAt(s planform.Surface, cuts []float64) planform.Surface {
	for _, cut := range cuts {
		places := stationPlaces(s)
		next, _ := slices.BinarySearch(places, cut)
		if next == 0 || next == len(places) || cut-places[next-1] < sameStation || places[next]-cut < sameStation {
			continue
		}
		share := (cut - places[next-1]) / (places[next] - places[next-1])
		station := between(s.Stations[next-1], s.Stations[next], share)
		station.Section = s.Stations[next-1].Section
		if share > 0.5 {
			station.Section = s.Stations[next].Section
		}
		s.Stations = slices.Insert(slices.Clone(s.Stations), next, station)
	}
	return s
}
