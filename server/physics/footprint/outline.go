package footprint

import (
	"cmp"
	"math"
	"slices"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// outlineSides is the number of directions in which a cloud is looked at.
const outlineSides = 72

// edge is the far end of a cloud in one direction: its farthest places, farthest first.
type edge struct {
	toward field.Point
	far    []int
	along  []float64 // of those places
}

// edges returns the count farthest places in each direction.
func edges(places []field.Point, count int) []edge {
	out := make([]edge, outlineSides)
	along := make([]float64, len(places))
	order := make([]int, len(places))
	for k := range outlineSides / 2 {
		angle := 2 * math.Pi * float64(k) / outlineSides
		toward := field.Point{X: elementary.Cos(angle), Y: elementary.Sin(angle)}
		for i, p := range places {
			along[i], order[i] = toward.Dot(p), i
		}
		out[k] = edgeOf(toward, along, order, count)
		for i := range along {
			along[i] = -along[i]
		}
		out[k+outlineSides/2] = edgeOf(toward.Times(-1), along, order, count)
	}
	return out
}

// edgeOf sorts out the farthest places in one direction.
func edgeOf(toward field.Point, along []float64, order []int, count int) edge {
	farthestFirst(order, along, count)
	e := edge{toward: toward, far: slices.Clone(order[:count]), along: make([]float64, count)}
	slices.SortFunc(e.far, func(a, b int) int { return cmp.Or(cmp.Compare(along[b], along[a]), cmp.Compare(a, b)) })
	for i, place := range e.far {
		e.along[i] = along[place]
	}
	return e
}

// farthestFirst brings the count farthest places to the front, in no order.
//
// Source: Hoare, Communications of the ACM 4 (1961) 321 (find).
func farthestFirst(order []int, along []float64, count int) {
	low, high := 0, len(order)-1
	for low < high {
		pivot := along[order[(low+high)/2]]
		i, j := low, high
		for i <= j {
			for along[order[i]] > pivot {
				i++
			}
			for along[order[j]] < pivot {
				j--
			}
			if i <= j {
				order[i], order[j] = order[j], order[i]
				i, j = i+1, j-1
			}
		}
		switch {
		case count-1 <= j:
			high = j
		case count-1 >= i:
			low = i
		default:
			return
		}
	}
}

// at returns how far the cloud reaches with some places beyond, m.
//
//	q(k) = mean of the farthest places number k/2 to 3k/2
//
// Valid for: k from 0, at which the farthest place counts; it falls as k grows. Source: mean of order statistics, which scatters less than each of them.
func (e *edge) at(beyond int) float64 {
	first, last := beyond/2, min(beyond+beyond/2, len(e.along)-1)
	sum := 0.0
	for _, along := range e.along[first : last+1] {
		sum += along
	}
	return sum / float64(last+1-first)
}

// outside counts the places that lie beyond the edges with some places beyond each.
func outside(list []edge, beyond int, seen []bool) int {
	clear(seen)
	count := 0
	for i := range list {
		e := &list[i]
		reach := e.at(beyond)
		for j := 0; j < len(e.far) && e.along[j] > reach; j++ {
			if !seen[e.far[j]] {
				seen[e.far[j]] = true
				count++
			}
		}
	}
	return count
}

// beyondFor returns how many places may lie beyond each edge so that no more than some lie beyond any.
func beyondFor(list []edge, most, places int) int {
	seen := make([]bool, places)
	low, high := 0, len(list[0].far)-1
	for low < high {
		middle := (low + high + 1) / 2
		if outside(list, middle, seen) <= most {
			low = middle
		} else {
			high = middle - 1
		}
	}
	return low
}

// drawnAround returns the convex outline that leaves out at most some places and lies a margin outside the others.
func drawnAround(places []field.Point, most int, margin float64) field.Polygon {
	count := min(most+most/2+1, len(places))
	list := edges(places, count)
	beyond := beyondFor(list, most, len(places))
	size := 0.0
	for i := range list {
		size = max(size, math.Abs(list[i].along[0]))
	}
	size = 4 * (size + margin + 1)
	out := field.Polygon{{X: -size, Y: -size}, {X: size, Y: -size}, {X: size, Y: size}, {X: -size, Y: size}}
	for i := range list {
		out = cutAlong(out, list[i].toward, list[i].at(beyond)+margin)
	}
	return out
}

// cutAlong returns what of a convex polygon lies within a distance along a direction.
//
// Source: Sutherland and Hodgman, Communications of the ACM 17 (1974) 32-42.
func cutAlong(p field.Polygon, toward field.Point, reach float64) field.Polygon {
	out := make(field.Polygon, 0, len(p)+1)
	for i := range p {
		a, b := p[i], p[(i+1)%len(p)]
		da, db := toward.Dot(a)-reach, toward.Dot(b)-reach
		if da <= 0 {
			out = append(out, a)
		}
		if (da < 0) != (db < 0) && da != 0 && db != 0 {
			out = append(out, a.Plus(b.Minus(a).Times(da/(da-db))))
		}
	}
	return out
}
