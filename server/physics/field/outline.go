package field

import (
	"errors"
	"fmt"
	"strings"
)

// Repair is what Normal changed in an outline. Corners are numbered from 1 as they were given.
type Repair struct {
	Closing  []int // corners at the end that repeat the first
	Repeated []int // corners that repeat the one before them
	Turned   bool  // the corners ran clockwise and were put in the other order
}

// Any reports whether anything was changed.
func (r Repair) Any() bool { return r.Turned || len(r.Closing)+len(r.Repeated) > 0 }

// String says what was changed, in one sentence; empty when nothing was.
func (r Repair) String() string {
	var parts []string
	if len(r.Closing) > 0 {
		parts = append(parts, "the first corner is repeated at the end: "+numbers(r.Closing)+" dropped")
	}
	if len(r.Repeated) > 0 {
		parts = append(parts, "corner repeats the one before it: "+numbers(r.Repeated)+" dropped")
	}
	if r.Turned {
		parts = append(parts, "corners ran clockwise: order turned round")
	}
	return strings.Join(parts, "; ")
}

// numbers writes whole numbers with commas.
func numbers(of []int) string {
	words := make([]string, len(of))
	for i, n := range of {
		words[i] = fmt.Sprint(n)
	}
	return strings.Join(words, ", ")
}

// sameCorner is the distance below which two corners are the same place, m.
const sameCorner = 1e-3

// Normal returns the outline in its normal form: open (the last corner is not the first again), no corner twice in a row, corners
// counter-clockwise, beginning with the first corner given. It also returns what had to be changed. Corners closer than 1 mm are the same.
//
// Errors name the corner or edge by its number as given: a coordinate that is not a number, fewer than three different corners, no area,
// edges that cross (CrossingError, with the place).
func (g Polygon) Normal() (Polygon, Repair, error) {
	var repair Repair
	for i, p := range g {
		if !p.Finite() {
			return nil, repair, fmt.Errorf("outline corner %d is not a number", i+1)
		}
	}
	kept, from := g.distinct(&repair)
	if len(kept) < 3 {
		return nil, repair, fmt.Errorf("outline has %d different corners, needs three", len(kept))
	}
	if crossing, crosses := kept.SelfCrossing(); crosses {
		crossing.First, crossing.Second = from[crossing.First-1], from[crossing.Second-1]
		return nil, repair, crossing
	}
	area := kept.SignedArea()
	if area == 0 {
		return nil, repair, errors.New("outline has no area")
	}
	if area < 0 {
		repair.Turned = true
		kept = kept.turned()
	}
	return kept, repair, nil
}

// distinct drops corners that repeat their neighbour, and returns the number each kept corner was given with.
func (g Polygon) distinct(repair *Repair) (kept Polygon, from []int) {
	for i, p := range g {
		if len(kept) > 0 && p.Distance(kept[len(kept)-1]) < sameCorner {
			repair.Repeated = append(repair.Repeated, i+1)
			continue
		}
		kept, from = append(kept, p), append(from, i+1)
	}
	for len(kept) > 1 && kept[len(kept)-1].Distance(kept[0]) < sameCorner {
		last := len(kept) - 1
		repair.Closing = append([]int{from[last]}, repair.Closing...)
		kept, from = kept[:last], from[:last]
	}
	return kept, from
}

// turned returns the corners the other way round, the first staying first.
func (g Polygon) turned() Polygon {
	out := make(Polygon, 0, len(g))
	out = append(out, g[0])
	for i := len(g) - 1; i > 0; i-- {
		out = append(out, g[i])
	}
	return out
}
