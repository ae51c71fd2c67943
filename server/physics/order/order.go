// Package order puts short lists of large things in order. The standard library's sort is compiled anew for every type, which the page's core would carry
// two dozen times; here it is compiled once, for places in a list.
package order

import "slices"

// Stable puts a list in order by a comparison that is negative when a comes before b and 0 when their order stays.
func Stable[T any](list []T, compare func(a, b T) int) {
	places := first(len(list))
	slices.SortStableFunc(places, func(a, b int) int { return compare(list[a], list[b]) })
	arrange(list, places)
}

// Sort is Stable in less time for long lists; what compares as 0 may change places, the same way every time.
func Sort[T any](list []T, compare func(a, b T) int) {
	places := first(len(list))
	slices.SortFunc(places, func(a, b int) int { return compare(list[a], list[b]) })
	arrange(list, places)
}

// first are the first places of a list.
func first(count int) []int {
	places := make([]int, count)
	for i := range places {
		places[i] = i
	}
	return places
}

// By puts a list in the order of a key of each of its members; equal keys keep theirs.
func By[T any](list []T, keys []int) {
	places := first(len(list))
	slices.SortStableFunc(places, func(a, b int) int { return keys[a] - keys[b] })
	arrange(list, places)
}

// arrange puts at each place of a list what stood at the one given, round by round, and uses up the places.
func arrange[T any](list []T, places []int) {
	for start := range places {
		to, moved := start, list[start]
		for from := places[to]; from != start; from = places[to] {
			list[to], places[to] = list[from], to
			to = from
		}
		list[to], places[to] = moved, to
	}
}
