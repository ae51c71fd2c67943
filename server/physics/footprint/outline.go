package footprint

import (
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
	for k := range out {
		angle := 2 * math.Pi * float64(k%(outlineSides/2)) / outlineSides
		out[k] = edge{toward: field.Point{X: elementary.Cos(angle), Y: elementary.Sin(angle)}, far: all[k*count : (k+1)*count : (k+1)*count]}
		if k >= outlineSides/2 {
			out[k].toward = out[k].toward.Times(-1)
		}
	}
	ended := make(chan struct{})
	for share := range outlineShares {
		go func() {
			first, few := outlineSides*share/outlineShares, min(8*count, len(places))
			room := out[first].choose(places[:few], nil, make([]place, 0, 2*few))
			before := out[first].far
			for k := first; k < outlineSides*(share+1)/outlineShares; k++ {
				room = out[k].choose(places, before, room[:0])
				before = out[k].far
			}
			ended <- struct{}{}
		}()
	}
	for range outlineShares {
		<-ended
	}
	return out
}

// outlineShares is how many directions are looked at side by side.
const outlineShares = 2

// choose fills in the farthest places and returns the room it took. None of them lies less far than all of as many others, of which those of the
// direction before are the best known.
func (e *edge) choose(places []field.Point, before, room []place) []place {
	reach := math.Inf(1)
	for i := range before {
		reach = min(reach, e.toward.Dot(places[before[i].number]))
	}
	if len(before) == 0 {
		reach = math.Inf(-1)
	}
	for i, p := range places {
		if along := e.toward.Dot(p); along >= reach {
			room = append(room, place{along, int32(i)})
		}
	}
	farthestFirst(room, len(e.far))
	copy(e.far, room)
	slices.SortFunc(e.far, func(a, b place) int {
		switch {
		case a.along > b.along:
			return -1
		case a.along < b.along:
			return 1
		}
		return 0
	})
	return room
}

// farthestFirst brings the count farthest places to the front, in no order.
//
// Source: Hoare, Communications of the ACM 4 (1961) 321 (find).
func farthestFirst(list []place, count int) {
	low, high := 0, len(list)-1
	for low < high {
		pivot := list[(low+high)/2].along
		i, j := low, high
		for i <= j {
			for list[i].along > pivot {
				i++
			}
			for list[j].along < pivot {
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

// depth is the far ends of a cloud and how many places lie beyond each side of its outline.
type depth struct {
	list   []edge
	beyond int
}

// depthOf looks for how many places may lie beyond each side so that at most some lie beyond any.
//
// Far ends in different directions are mostly other places, so that short ones do; where they do not, they are taken longer.
func depthOf(places []field.Point, most int) depth {
	for short := most/6 + 1; ; short *= 2 {
		short = min(short, most)
		list := edges(places, min(short+short/2+1, len(places)))
		if beyond := beyondFor(list, most, short, len(places)); beyond+chanceOf(beyond) < short || short == most {
			return depth{list, beyond}
		}
	}
}

// chanceOf returns one standard error of a number of places, rounded up.
func chanceOf(beyond int) int { return int(math.Ceil(math.Sqrt(float64(beyond)))) }

// drawn returns the convex outline that leaves out some places beyond each side and lies a margin outside the others.
func (d *depth) drawn(beyond int, margin float64) field.Polygon {
	size := 0.0
	for i := range d.list {
		size = max(size, math.Abs(d.list[i].far[0].along))
	}
	size = 4 * (size + margin + 1)
	out, room := append(make(field.Polygon, 0, outlineSides+4), field.Point{X: -size, Y: -size}, field.Point{X: size, Y: -size}, field.Point{X: size, Y: size},
		field.Point{X: -size, Y: size}), make(field.Polygon, 0, outlineSides+4)
	for i := range d.list {
		out, room = cutAlong(out, d.list[i].toward, d.list[i].at(beyond)+margin, room[:0]), out
	}
	return out
}

// cutAlong returns what of a convex polygon lies within a distance along a direction, in room that it may take.
//
// Source: Sutherland and Hodgman, Communications of the ACM 17 (1974) 32-42.
func cutAlong(p field.Polygon, toward field.Point, reach float64, out field.Polygon) field.Polygon {
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
