package footprint

import (
	"cmp"
	"slices"

	"pitgate/server/physics/field"
)

// roundCorners is the number of corners a disc is drawn with.
const roundCorners = 16

// hull returns the convex outline of places, counter-clockwise; fewer than three corners when they lie on a line.
//
// Source: Andrew, Information Processing Letters 9 (1979) 216-219 (monotone chain).
func hull(places []field.Point) field.Polygon {
	sorted := slices.Clone(places)
	slices.SortFunc(sorted, func(a, b field.Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	sorted = slices.Compact(sorted)
	if len(sorted) < 3 {
		return sorted
	}
	lower := chain(sorted)
	slices.Reverse(sorted)
	upper := chain(sorted)
	return append(lower[:len(lower)-1], upper[:len(upper)-1]...)
}

// chain returns the places of a sorted run that turn left all along.
func chain(sorted []field.Point) field.Polygon {
	var out field.Polygon
	for _, p := range sorted {
		for len(out) > 1 && out[len(out)-1].Minus(out[len(out)-2]).Cross(p.Minus(out[len(out)-1])) <= 0 {
			out = out[:len(out)-1]
		}
		out = append(out, p)
	}
	return out
}

// grown returns the convex outline of places, each with a disc of a radius about it.
func grown(places []field.Point, radius float64) field.Polygon {
	core := hull(places)
	corners := aroundCircle(roundCorners)
	all := make([]field.Point, 0, len(core)*len(corners))
	for _, p := range core {
		for _, c := range corners {
			all = append(all, p.Plus(c.Times(radius)))
		}
	}
	return hull(all)
}
