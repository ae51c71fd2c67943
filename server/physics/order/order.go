// Package order puts short lists of large things in order. The standard library's sort is compiled anew for every type, which the page's core would carry
// two dozen times; here it is compiled once, for places in a list.
package order

import "slices"

// Stable puts a list in order by a comparison that is negative when a comes before b and 0 when their order stays.
func Stable[T any](list []T, compare func(a, b T) int) {
	places := make([]int, len(list))
	for i := range places {
		places[i] = i
	}
	slices.SortStableFunc(places, func(a, b int) int { return compare(list[a], list[b]) })
	before := slices.Clone(list)
	for to, from := range places {
		list[to] = before[from]
	}
}
