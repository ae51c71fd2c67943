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
	far    []place
}

// place is the number of a place and how far it lies along a direction, m.
type place struct {
	along  float64
	number int32
}

// edges returns the count farthest places in each direction.
func edges(places []field.Point, count int) []edge {
	out, all := make([]edge, outlineSides), make([]place, outlineSides*count)
	room := make([]place, 0, len(places))
	for k := range out {
		angle := 2 * math.Pi * float64(k%(outlineSides/2)) / outlineSides
		toward := field.Point{X: elementary.Cos(angle), Y: elementary.Sin(angle)}
		if k >= outlineSides/2 {
			toward = toward.Times(-1)
		}
		out[k] = edge{toward: toward, far: all[k*count : (k+1)*count : (k+1)*count]}
		copy(out[k].far, farthestPlaces(places, toward, count, room))
	}
	return out
}

// farthestPlaces returns the count farthest places in one direction, farthest first, in room for all of them.
//
// Those beyond a distance are sorted out that a sample of the places tells to be met by somewhat more than the count; where it erred, all are.
func farthestPlaces(places []field.Point, toward field.Point, count int, room []place) []place {
	enough := math.Inf(-1)
	if wanted := count/thinned + count/(2*thinned) + 4; 4*wanted < len(places)/thinned {
		for i := 0; i < len(places); i += thinned {
			room = append(room, place{toward.Dot(places[i]), 0})
		}
		farthestFirst(room, wanted)
		enough = leastOf(room[:wanted])
	}
	for {
		room = room[:0]
		for i := range places {
			if along := toward.Dot(places[i]); along >= enough {
				room = append(room, place{along, int32(i)})
			}
		}
		if len(room) >= count {
			break
		}
		enough = math.Inf(-1)
	}
	farthestFirst(room, count)
	slices.SortFunc(room[:count], nearer)
	return room[:count]
}

// thinned is how many places one of the sample stands for.
const thinned = 16

// leastOf returns the least distance.
func leastOf(list []place) float64 {
	least := list[0].along
	for i := range list {
		least = min(least, list[i].along)
	}
	return least
}

// nearer orders places, farthest first.
func nearer(a, b place) int {
	if a.along != b.along {
		return cmp.Compare(b.along, a.along)
	}
	return cmp.Compare(a.number, b.number)
}

// farthestFirst brings the count farthest places to the front, in no order.
//
// Source: Hoare, Communications of the ACM 4 (1961) 321 (find).
func farthestFirst(list []place, count int) {
	low, high := 0, len(list)-1
	for low < high {
		pivot := list[(low+high)/2]
		i, j := low, high
		for i <= j {
			for nearer(list[i], pivot) < 0 {
				i++
			}
			for nearer(list[j], pivot) > 0 {
				j--
			}
			if i <= j {
				list[i], list[j] = list[j], list[i]
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
	first, last := beyond/2, min(beyond+beyond/2, len(e.far)-1)
	sum := 0.0
	for _, far := range e.far[first : last+1] {
		sum += far.along
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
		for j := 0; j < len(e.far) && e.far[j].along > reach; j++ {
			if number := e.far[j].number; !seen[number] {
				seen[number] = true
				count++
			}
		}
	}
	return count
}

// beyondFor returns how many places, at most a number of them, may lie beyond each edge so that no more than some lie beyond any.
func beyondFor(list []edge, most, high, places int) int {
	seen := make([]bool, places)
	low := 0
	high = min(high, len(list[0].far)-1)
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

// depthOf returns the far ends of a cloud and how many places may lie beyond each so that at most some lie beyond any.
//
// Far ends in different directions are mostly other places, so that short ones do; where they do not, they are taken longer.
func depthOf(places []field.Point, most int) ([]edge, int) {
	for short := most/6 + 1; ; short *= 2 {
		short = min(short, most)
		list := edges(places, min(short+short/2+1, len(places)))
		if beyond := beyondFor(list, most, short, len(places)); beyond < short || short == most {
			return list, beyond
		}
	}
}

// drawnAround returns the convex outline that leaves out at most some places and lies a margin outside the others.
func drawnAround(places []field.Point, most int, margin float64) field.Polygon {
	list, beyond := depthOf(places, most)
	size := 0.0
	for i := range list {
		size = max(size, math.Abs(list[i].far[0].along))
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
