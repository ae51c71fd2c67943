package lift

import (
	"math"

	"pitgate/server/physics/planform"
)

// joints says which surfaces are joined so that their strips meet edge to edge.
type joints struct {
	group []int  // of each surface; mirrored surfaces joined end to end, also by way of others, share one
	meet  []bool // of each pair, row by row: a fin on the plane of symmetry and the surface it stands on or carries
}

// findJoints compares all pairs of surfaces.
func findJoints(surfaces []planform.Surface) joints {
	n := len(surfaces)
	j := joints{group: make([]int, n), meet: make([]bool, n*n)}
	for i := range surfaces {
		j.group[i] = i
		for k := range i {
			a, b := surfaces[i], surfaces[k]
			if endToEnd(a, b) || endToEnd(b, a) {
				merge(j.group[:i+1], j.group[i], j.group[k])
			}
			meet := (onPlane(a) || onPlane(b)) && anyEndsTouch(a, b)
			j.meet[i*n+k], j.meet[k*n+i] = meet, meet
		}
	}
	return j
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

// endToEnd reports whether the outer of two mirrored surfaces begins where the inner one ends.
func endToEnd(inner, outer planform.Surface) bool {
	return inner.Mirrored && outer.Mirrored && touch(inner.Stations[len(inner.Stations)-1], outer.Stations[0])
}

// anyEndsTouch reports whether any end of one surface lies on any end of another.
func anyEndsTouch(a, b planform.Surface) bool {
	for _, p := range []planform.Station{a.Stations[0], a.Stations[len(a.Stations)-1]} {
		if touch(p, b.Stations[0]) || touch(p, b.Stations[len(b.Stations)-1]) {
			return true
		}
	}
	return false
}

// touch reports whether two stations, seen along the stream, lie within 1 % of the first one's chord.
func touch(a, b planform.Station) bool {
	near := float64(0.01 * a.Chord)
	return math.Abs(a.Y-b.Y) <= near && math.Abs(a.Z-b.Z) <= near
}
