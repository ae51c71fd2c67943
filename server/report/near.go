package report

import (
	"cmp"
	"slices"
	"strings"

	"pitgate/server/physics/assess"
)

// shownNear is how many ids an error lists.
const shownNear = 8

// near returns the ids of a report that resemble one that it does not hold, best first.
func near(r assess.Report, id string) []string {
	type candidate struct {
		id       string
		distance int
	}
	var list []candidate
	add := func(known string) {
		distance := edits(strings.ToLower(id), known)
		if distance <= max(2, len(known)/2) || strings.Contains(known, id) || sameStem(known, id) {
			list = append(list, candidate{known, distance})
		}
	}
	for i := range r.Findings {
		add(r.Findings[i].ID)
	}
	for i := range r.Quantities {
		add(r.Quantities[i].ID)
	}
	slices.SortStableFunc(list, func(a, b candidate) int { return cmp.Compare(a.distance, b.distance) })
	var ids []string
	for _, c := range list {
		if !slices.Contains(ids, c.id) && len(ids) < shownNear {
			ids = append(ids, c.id)
		}
	}
	return ids
}

// sameStem reports whether two ids begin with the same word.
func sameStem(a, b string) bool {
	stemA, _, _ := strings.Cut(a, ".")
	stemB, _, _ := strings.Cut(b, ".")
	return stemA == stemB
}

// edits returns how many letters have to be put in, taken out or changed to turn a into b.
func edits(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := diagonal
			if a[i] != b[j] {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
