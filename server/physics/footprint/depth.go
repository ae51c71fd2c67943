package footprint

import (
	"cmp"
	"math"
	"slices"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// depthDirections is the number of directions in which the depth of a place is looked at.
const depthDirections = 36

// deepestFirst returns the indices of places, the deepest within the cloud first.
//
//	depth(p) = least over directions n of the number of places with n.q <= n.p, both ways along each direction
//
// Places of one depth stand in order of their distance from the middle of the cloud, then of their number. Valid for: any cloud; 36 directions stand
// in for all. Source: Tukey, Mathematics and the picturing of data, 1975 (half-space depth).
func deepestFirst(places []field.Point) []int {
	depth := make([]int, len(places))
	for i := range depth {
		depth[i] = len(places)
	}
	order := make([]int, len(places))
	along := make([]float64, len(places))
	for k := range depthDirections {
		angle := math.Pi * float64(k) / depthDirections
		direction := field.Point{X: elementary.Cos(angle), Y: elementary.Sin(angle)}
		for i, p := range places {
			along[i], order[i] = direction.Dot(p), i
		}
		slices.SortFunc(order, func(a, b int) int { return cmp.Compare(along[a], along[b]) })
		lowerDepths(depth, order, along)
	}
	middle := middleOf(places)
	out := identityOf(len(places))
	slices.SortStableFunc(out, func(a, b int) int {
		return cmp.Or(cmp.Compare(depth[b], depth[a]), cmp.Compare(places[a].Distance(middle), places[b].Distance(middle)))
	})
	return out
}

// lowerDepths brings depths down to those along one direction; places at the same distance along it have the same.
func lowerDepths(depth, order []int, along []float64) {
	n := len(order)
	for i := 0; i < n; {
		j := i
		for j+1 < n && along[order[j+1]] == along[order[i]] {
			j++
		}
		for _, place := range order[i : j+1] {
			depth[place] = min(depth[place], j+1, n-i)
		}
		i = j + 1
	}
}

// middleOf returns the mean of places; the origin when there are none.
func middleOf(places []field.Point) field.Point {
	var sum field.Point
	for _, p := range places {
		sum = sum.Plus(p)
	}
	return sum.Times(1 / float64(max(len(places), 1)))
}

// identityOf returns the numbers from zero to below n.
func identityOf(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}
