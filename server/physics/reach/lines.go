package reach

import (
	"cmp"
	"math"
	"slices"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
	"pitgate/server/physics/order"
)

const (
	mostDirections = 12 // kept an area
	mostEdges      = 24 // looked at an area
	nearlyAlong    = 0.996
	aims           = 4 // places of touchdown looked at on a line: its start, and after each quarter that leaves the landing run
)

// chord is a straight piece within an area.
type chord struct {
	start, end field.Point
	length     float64
}

// line is a landing line of an area in one direction.
type line struct {
	area   int
	start  field.Point
	ahead  field.Point // over the ground
	length float64     // m
	run    float64     // needed from touchdown, m
	pace   float64     // over the ground on it, m/s
	height float64     // when wings level for the line-up time, m
	gates  [aims]gate  // where the line-up starts, through the air
	usable int         // number of gates
}

// chords returns the longest free pieces of an area along its edges, the longest first, and along its longest diagonal: directions that lie closer than
// 5 degrees to a longer one are left out, the diagonal where it is hardly longer.
func chords(area field.Polygon, halfWidth float64) []chord {
	var all []chord
	edges, diagonal := directions(area)
	for _, ahead := range edges {
		if c := longest(area, ahead, halfWidth); c.length > 0 {
			all = append(all, c)
		}
	}
	order.Stable(all, func(a, b chord) int { return cmp.Compare(b.length, a.length) })
	var kept []chord
	for _, c := range all {
		if len(kept) < mostDirections && !c.near(kept, 0) {
			kept = append(kept, c)
		}
	}
	if c := longest(area, diagonal, halfWidth); c.length > 0 && !c.near(kept, c.length/1.05) {
		kept = append(kept, c)
	}
	return kept
}

// near reports whether a chord lies closer than 5 degrees to one of others that has at least a length.
func (c chord) near(others []chord, length float64) bool {
	ahead, _ := unit(c.end.Minus(c.start))
	return slices.ContainsFunc(others, func(o chord) bool {
		other, _ := unit(o.end.Minus(o.start))
		return o.length >= length && math.Abs(other.Dot(ahead)) > nearlyAlong
	})
}

// directions returns the directions of edges of an area and that of its longest diagonal.
func directions(area field.Polygon) (edges []field.Point, longest field.Point) {
	step := (len(area) + mostEdges - 1) / mostEdges
	var diagonal field.Point
	for i := 0; i < len(area); i += step {
		next := area[min(i+step, len(area)+i/step)%len(area)]
		if ahead, length := unit(next.Minus(area[i])); length > 0 {
			edges = append(edges, ahead)
		}
		for j := i + step; j < len(area); j += step {
			if d := area[j].Minus(area[i]); d.Dot(d) > diagonal.Dot(diagonal) {
				diagonal = d
			}
		}
	}
	longest, _ = unit(diagonal)
	return edges, longest
}

// longest returns the longest free piece of an area along a direction with a half width to each side.
func longest(area field.Polygon, ahead field.Point, halfWidth float64) chord {
	right := rightOf(ahead)
	offsets := make([]float64, 0, len(area))
	for _, p := range area {
		offsets = append(offsets, p.Minus(area[0]).Dot(right))
	}
	slices.Sort(offsets)
	best := chord{}
	consider := func(offset float64) {
		origin := area[0].Plus(right.Times(offset))
		for _, s := range free(area, origin, ahead, halfWidth) {
			if length := s[1] - s[0]; length > best.length*(1+1e-9) {
				best = chord{origin.Plus(ahead.Times(s[0])), origin.Plus(ahead.Times(s[1])), length}
			}
		}
	}
	hair := max(1e-6, float64(halfWidth*1.0001))
	for i, o := range offsets {
		if i > 0 && o > offsets[i-1] {
			consider(offsets[i-1] + float64((o-offsets[i-1])/2))
		}
	}
	for _, o := range offsets {
		consider(o + hair)
		consider(o - hair)
	}
	return best
}

// free returns the pieces of a line through an area that lie within it with a half width to each side, as distances from the origin.
func free(area field.Polygon, origin, ahead field.Point, halfWidth float64) [][2]float64 {
	middle := inside(area, origin, ahead)
	if halfWidth <= 0 {
		return middle
	}
	side := rightOf(ahead).Times(halfWidth)
	both := common(inside(area, origin.Plus(side), ahead), inside(area, origin.Minus(side), ahead))
	return common(middle, both)
}

// inside returns the pieces of a line within an area, as distances from the origin.
func inside(area field.Polygon, origin, ahead field.Point) [][2]float64 {
	cuts := make([]float64, 0, 8)
	for i := range area {
		if d, cuts1 := crossing(area[i], area[(i+1)%len(area)], origin, ahead); cuts1 {
			cuts = append(cuts, d)
		}
	}
	slices.Sort(cuts)
	pieces := make([][2]float64, 0, len(cuts)/2)
	for i := 0; i+1 < len(cuts); i += 2 {
		pieces = append(pieces, [2]float64{cuts[i], cuts[i+1]})
	}
	return pieces
}

// crossing returns where an edge crosses a line, as a distance from the line's origin.
func crossing(a, b, origin, ahead field.Point) (float64, bool) {
	p, q := a.Minus(origin), b.Minus(origin)
	left, right := ahead.Cross(p), ahead.Cross(q)
	if (left > 0) == (right > 0) {
		return 0, false
	}
	share := left / (left - right)
	return p.Plus(q.Minus(p).Times(share)).Dot(ahead), true
}

// common returns what two lists of pieces have in common.
func common(a, b [][2]float64) [][2]float64 {
	var out [][2]float64
	for _, p := range a {
		for _, q := range b {
			if low, high := max(p[0], q[0]), min(p[1], q[1]); low < high {
				out = append(out, [2]float64{low, high})
			}
		}
	}
	return out
}

// linesOf returns the landing lines of an area, both ways along each chord that is long enough in this wind.
func (m *Map) linesOf(index int, area field.Polygon) []line {
	var out []line
	for _, c := range chords(area, m.model.HalfWidth) {
		ahead, _ := unit(c.end.Minus(c.start))
		for _, way := range []line{{start: c.start, ahead: ahead}, {start: c.end, ahead: ahead.Times(-1)}} {
			way.area, way.length = index, c.length
			if m.approach(&way) && way.run <= way.length {
				out = append(out, way)
			}
		}
	}
	return out
}

// approach fills in what the wind makes of a line, and reports whether it can be flown: the wind triangle gives the heading held on it, and the height is
// what the glide at the approach speed loses in the line-up time.
func (m *Map) approach(l *line) bool {
	glide := m.final
	low := m.wind.mean(0, float64(glide.Sink*m.model.LineUp))
	across := -low.Dot(rightOf(l.ahead))
	if !(math.Abs(across) < glide.Pace) {
		return false
	}
	along := math.Sqrt(float64(glide.Pace*glide.Pace) - float64(across*across))
	l.pace = along + low.Dot(l.ahead)
	if !(l.pace > 0.05*glide.Pace) {
		return false
	}
	l.height = glide.Sink * m.model.LineUp
	share := l.pace / glide.Pace
	l.run = m.model.LandingRun * share * share
	nose := l.ahead.Times(along / glide.Pace).Plus(rightOf(l.ahead).Times(across / glide.Pace))
	heading := elementary.Atan2(nose.X, nose.Y)
	for k := range l.gates {
		at := float64(l.length * (float64(k) / aims))
		if k > 0 && at+l.run > l.length {
			break
		}
		back := at - float64(l.pace*m.model.LineUp)
		l.gates[k] = gate{at: l.start.Plus(l.ahead.Times(back)), ahead: nose, heading: heading}
		l.usable = k + 1
	}
	return true
}
