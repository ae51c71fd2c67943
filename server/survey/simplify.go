package survey

import (
	"sort"

	"pitgate/server/physics/field"
)

// Simplify returns the indexes of the places of a line that are kept so that every place lies within a tolerance (m) of the line through them: its first
// and last, and wherever the line between two kept ones misses a place by more, the place missed most.
//
// Valid for: any line. Source: Douglas and Peucker, Cartographica 10 (2), 1973.
func Simplify(line field.Line, tolerance float64) []int {
	n := len(line)
	if n < 3 {
		kept := make([]int, n)
		for i := range kept {
			kept[i] = i
		}
		return kept
	}
	keep := map[int]bool{0: true, n - 1: true}
	split(line, 0, n-1, tolerance, keep)
	return indexes(keep)
}

// SimplifyRing is Simplify for a line whose last place joins its first: the two halves between the first place and the one farthest from it.
func SimplifyRing(line field.Line, tolerance float64) []int {
	if len(line) < 4 {
		return Simplify(line, tolerance)
	}
	far := 0
	for i := range line {
		if line[i].Distance(line[0]) > line[far].Distance(line[0]) {
			far = i
		}
	}
	closed := append(line[:len(line):len(line)], line[0])
	keep := map[int]bool{0: true, far: true}
	split(closed, 0, far, tolerance, keep)
	split(closed, far, len(line), tolerance, keep)
	delete(keep, len(line))
	return indexes(keep)
}

// split keeps what lies too far from the line between two kept places.
func split(line field.Line, first, last int, tolerance float64, keep map[int]bool) {
	pending := [][2]int{{first, last}}
	for len(pending) > 0 {
		from, to := pending[len(pending)-1][0], pending[len(pending)-1][1]
		pending = pending[:len(pending)-1]
		chord := field.Segment{A: line[from], B: line[to]}
		worst, most := -1, tolerance
		for i := from + 1; i < to; i++ {
			if d := chord.Distance(line[i]); d > most {
				worst, most = i, d
			}
		}
		if worst >= 0 {
			keep[worst] = true
			pending = append(pending, [2]int{from, worst}, [2]int{worst, to})
		}
	}
}

// indexes returns the kept indexes in order.
func indexes(keep map[int]bool) []int {
	kept := make([]int, 0, len(keep))
	for i := range keep {
		kept = append(kept, i)
	}
	sort.Ints(kept)
	return kept
}
