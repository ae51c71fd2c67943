package weather

import "pitgate/server/physics/field"

// leastWidth is the share of a segment's length that has to face the wind for it to shelter: a hedge along the wind does not.
const leastWidth = 0.1

// Barrier is a windbreak on the field's plane.
type Barrier struct {
	Windbreak
	Line   []field.Point // at least two points, m
	Closed bool          // the last point joins the first: a wood or a building
}

// At returns what the barrier does at a point and a height over the ground (m) in a wind from a direction (rad clockwise from true north) over
// ground of a roughness length (m). Distances are taken along the wind, so that a slanting wind brings the wake nearer to the barrier.
//
// Where the wind comes over several parts of the barrier, the one that takes most wind counts.
// Valid for: as Windbreak.At; places behind the ends are taken as open.
func (b Barrier) At(p field.Point, height, from, roughnessLength float64) Shelter {
	worst := Open
	for i := range b.segments() {
		distance, faces := alongWind(b.segment(i), p, from)
		if !faces {
			continue
		}
		if s := b.Windbreak.At(distance, height, roughnessLength); s.WindFactor < worst.WindFactor || s.TurbulenceFactor > worst.TurbulenceFactor {
			worst = worse(worst, s)
		}
	}
	return worst
}

// worse returns the shelter with less wind, with the rougher air of the two.
func worse(a, b Shelter) Shelter {
	out := a
	if b.WindFactor < a.WindFactor || a.Zone == OpenWind {
		out = b
	}
	out.TurbulenceFactor = max(a.TurbulenceFactor, b.TurbulenceFactor)
	return out
}

// segments returns how many straight parts the barrier has.
func (b Barrier) segments() int {
	if b.Closed && len(b.Line) > 2 {
		return len(b.Line)
	}
	return max(0, len(b.Line)-1)
}

// segment returns a straight part of the barrier.
func (b Barrier) segment(i int) field.Segment {
	return field.Segment{A: b.Line[i], B: b.Line[(i+1)%len(b.Line)]}
}

// alongWind returns the distance along the wind from a segment to a point, m, negative when the point is upwind, and whether the line of the
// wind through the point meets the segment.
//
//	distance = (p - a) x d / (w x d)
//
// where a is an end of the segment, d its direction and w the unit vector the wind blows towards.
// Valid for: segments that do not lie along the wind. Source: plane geometry.
func alongWind(s field.Segment, p field.Point, from float64) (distance float64, faces bool) {
	wind := field.Ahead(from).Times(-1)
	along := s.B.Minus(s.A)
	facing := wind.Cross(along)
	if !(facing > leastWidth*along.Length() || -facing > leastWidth*along.Length()) {
		return 0, false
	}
	offset := p.Minus(s.A)
	share := wind.Cross(offset) / facing
	if !(share >= 0 && share <= 1) {
		return 0, false
	}
	return offset.Cross(along) / facing, true
}

// Wake returns the outlines of the ground within a reach, in heights, downwind of the barrier (rad clockwise from true north the wind comes
// from), one four-cornered outline for each part that faces the wind. ReachOfRoughAir and ReachOfFadingAir are the reaches to draw.
func (b Barrier) Wake(reach, from float64) [][]field.Point {
	shift := field.Ahead(from).Times(-float64(reach * b.Height))
	var outlines [][]field.Point
	for i := range b.segments() {
		s := b.segment(i)
		if _, faces := alongWind(s, s.At(0.5), from); !faces || b.Check() != nil {
			continue
		}
		outlines = append(outlines, []field.Point{s.A, s.B, s.B.Plus(shift), s.A.Plus(shift)})
	}
	return outlines
}

// PathShelter is what barriers do along a path.
type PathShelter struct {
	// Slowest is the shelter with the least wind factor, at the place SlowestAt of the path; it is Open when the path meets none.
	Slowest   Shelter
	SlowestAt int
	// Roughest is the shelter with the greatest turbulence factor, at the place RoughestAt.
	Roughest   Shelter
	RoughestAt int
	// Barrier is the number of the barrier behind Roughest, or behind Slowest when no air is rough; -1 when the path meets none.
	Barrier int
}

// AlongPath returns the worst that barriers do at the places of a path, whose heights are taken over level ground (m), in a wind from a
// direction (rad clockwise from true north). The path has to be given in steps shorter than the barriers are high: places between are not
// looked at.
func AlongPath(path []field.Place, barriers []Barrier, from, roughnessLength float64) PathShelter {
	worst := PathShelter{Slowest: Open, Roughest: Open, Barrier: -1}
	for number, barrier := range barriers {
		for i, place := range path {
			worst.take(barrier.At(place.Point, place.Height, from, roughnessLength), i, number)
		}
	}
	return worst
}

// take keeps the shelter of a place when it is worse.
func (w *PathShelter) take(s Shelter, place, barrier int) {
	if s.WindFactor < w.Slowest.WindFactor {
		w.Slowest, w.SlowestAt = s, place
		if w.Roughest.TurbulenceFactor == 1 {
			w.Barrier = barrier
		}
	}
	if s.TurbulenceFactor > w.Roughest.TurbulenceFactor {
		w.Roughest, w.RoughestAt, w.Barrier = s, place, barrier
	}
}
