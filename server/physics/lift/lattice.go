package lift

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/planform"
	"pitgate/server/physics/section"
)

// point is a place in space, m.
type point struct{ x, y, z float64 }

// panel is one horseshoe: bound leg from a to b at the panel's quarter chord, control point at its three-quarter chord.
type panel struct {
	a, b, control point
	normalY       float64
	normalZ       float64
	strip         int
}

// latticeStrip is a strip with what the lattice alone needs.
type latticeStrip struct {
	Strip
	surface      int
	a, b, middle point // edges and middle at the leading edge
	incidence    float64
	zeroLift     float64 // zero-lift angle of the section, rad
	camberMoment float64 // quarter-chord moment coefficient of the section
	inner, outer float64 // edges over the half span (over the height of a winglet)
}

// surfaceName is a surface that takes part.
type surfaceName struct {
	name, role string
	index      int
}

// lattice is the starboard half of all surfaces cut into panels.
type lattice struct {
	panels  []panel
	strips  []latticeStrip
	names   []surfaceName
	skipped []string
	chosen  int // index of the only surface that counts, or -1

	meanWidth []float64 // of the strips of each surface, m
	group     []int     // of each surface; surfaces joined end to end share one
}

// newLattice cuts the surfaces into panels.
func newLattice(surfaces []planform.Surface, grid Grid) lattice {
	l := lattice{chosen: -1, meanWidth: make([]float64, len(surfaces)), group: groupJoined(surfaces)}
	for i, s := range surfaces {
		if s.Role == planform.RoleFin || !s.Mirrored {
			l.skipped = append(l.skipped, s.Name)
			continue
		}
		l.names = append(l.names, surfaceName{s.Name, s.Role, i})
		l.addSurface(i, planform.Extended(s), grid)
	}
	return l
}

// groupJoined numbers the surfaces so that those joined end to end, as a winglet to its wing, share a number.
func groupJoined(surfaces []planform.Surface) []int {
	group := make([]int, len(surfaces))
	for i := range surfaces {
		group[i] = i
		for j := range i {
			if joined(surfaces[i], surfaces[j]) || joined(surfaces[j], surfaces[i]) {
				merge(group[:i+1], group[i], group[j])
			}
		}
	}
	return group
}

// merge gives all members of one group the number of another.
func merge(group []int, from, to int) {
	for i, g := range group {
		if g == from {
			group[i] = to
		}
	}
}

// joined reports whether the outer surface begins where the inner one ends, seen along the stream, within 1 % of the chord there.
func joined(inner, outer planform.Surface) bool {
	tip, root := inner.Stations[len(inner.Stations)-1], outer.Stations[0]
	near := float64(0.01 * tip.Chord)
	return inner.Mirrored && outer.Mirrored && math.Abs(tip.Y-root.Y) <= near && math.Abs(tip.Z-root.Z) <= near
}

// only returns the same lattice of which one surface counts in the sums.
func (l lattice) only(name surfaceName) lattice {
	l.chosen = name.index
	return l
}

// counts reports whether a strip counts in the sums.
func (l lattice) counts(strip int) bool { return l.chosen < 0 || l.strips[strip].surface == l.chosen }

// gridFor returns rows and strips of a surface.
func gridFor(role string, grid Grid) (rows, strips int) {
	rows, strips = 6, 12
	if role == planform.RoleTailplane || role == planform.RoleVTail || role == planform.RoleWinglet {
		rows, strips = 4, 10
	}
	if grid.Chordwise > 0 {
		rows = grid.Chordwise
	}
	if grid.Spanwise > 0 {
		strips = grid.Spanwise
	}
	return rows, strips
}

// addSurface cuts one surface into strips and panels.
func (l *lattice) addSurface(index int, s planform.Surface, grid Grid) {
	rows, count := gridFor(s.Role, grid)
	first := len(l.strips)
	places := stationPlaces(s)
	for k := 1; k < len(s.Stations); k++ {
		edges, middles := cutSegment(places[k-1], places[k], count, spacingOf(s, grid))
		for i, middle := range middles {
			l.addStrip(index, s, stripCut{
				station: k, from: places[k-1], to: places[k], inner: edges[i], outer: edges[i+1], middle: middle,
			}, rows)
		}
	}
	for _, strip := range l.strips[first:] {
		l.meanWidth[index] += strip.Width / float64(len(l.strips)-first)
	}
}

// stationPlaces returns the place of each station along the surface, 0 at the root and 1 at the tip.
func stationPlaces(s planform.Surface) []float64 {
	places := make([]float64, len(s.Stations))
	for i := 1; i < len(places); i++ {
		dy, dz := s.Stations[i].Y-s.Stations[i-1].Y, s.Stations[i].Z-s.Stations[i-1].Z
		places[i] = places[i-1] + math.Sqrt(float64(dy*dy)+float64(dz*dz))
	}
	total := places[len(places)-1]
	for i := range places {
		places[i] /= total
	}
	return places
}

// spacing says how strips crowd along a surface.
type spacing int

const (
	towardsTip  spacing = iota // a surface that begins at the plane of symmetry
	towardsEnds                // a surface with two free or joined ends
	evenly
)

// spacingOf returns the spacing of a surface.
func spacingOf(s planform.Surface, grid Grid) spacing {
	switch {
	case grid.Equal:
		return evenly
	case s.Stations[0].Y > 0:
		return towardsEnds
	}
	return towardsTip
}

// angle returns the strip variable of a place from 0 to 1; strips are even in it.
//
// Formula: asin(place); asin(2 place - 1)/2 + pi/4 for two ends; pi/2 place for even strips.
// Valid for: places from 0 to 1, giving 0 to pi/2.
// Source: cosine spacing of lattices.
func (sp spacing) angle(place float64) float64 {
	switch sp {
	case evenly:
		return float64(place * math.Pi / 2)
	case towardsEnds:
		return float64(0.5*arcSine(float64(2*place)-1)) + math.Pi/4
	default:
		return arcSine(place)
	}
}

// place is the inverse of angle.
func (sp spacing) place(angle float64) float64 {
	switch sp {
	case evenly:
		return angle / (math.Pi / 2)
	case towardsEnds:
		return float64(0.5 * (1 + elementary.Sin(float64(2*angle)-math.Pi/2)))
	default:
		return elementary.Sin(angle)
	}
}

// arcSine returns the arc sine of a number from -1 to 1.
func arcSine(x float64) float64 { return elementary.Atan2(x, math.Sqrt(max(0, 1-float64(x*x)))) }

// cutSegment divides one straight segment between two places into strips.
func cutSegment(from, to float64, count int, sp spacing) (edges, middles []float64) {
	low, high := sp.angle(from), sp.angle(to)
	n := max(1, int(math.Round(float64(count)*(high-low)/(math.Pi/2))))
	step := (high - low) / float64(n)
	edges, middles = make([]float64, n+1), make([]float64, n)
	for i := range middles {
		edges[i] = sp.place(low + float64(step*float64(i)))
		middles[i] = sp.place(low + float64(step*(float64(i)+0.5)))
	}
	edges[0], edges[n] = from, to
	return edges, middles
}

// stripCut says where along a surface a strip lies, as places from 0 to 1, and between which stations.
type stripCut struct {
	station              int
	from, to             float64
	inner, outer, middle float64
}

// addStrip adds one strip and its panels.
func (l *lattice) addStrip(index int, s planform.Surface, cut stripCut, rows int) {
	p, q := s.Stations[cut.station-1], s.Stations[cut.station]
	share := func(place float64) float64 { return (place - cut.from) / (cut.to - cut.from) }
	inner, outer, middle := between(p, q, share(cut.inner)), between(p, q, share(cut.outer)), between(p, q, share(cut.middle))
	strip := newStrip(index, s, cut, inner, outer, middle)
	strip.Strip.inner, strip.Strip.outer, strip.outerShare = p.Section, q.Section, share(cut.middle)
	strip.zeroLift = blend(section.ZeroLiftAngle(p.Section), section.ZeroLiftAngle(q.Section), strip.outerShare)
	strip.camberMoment = blend(section.Moment(p.Section), section.Moment(q.Section), strip.outerShare)
	l.strips = append(l.strips, strip)
	ny, nz := -(outer.Z-inner.Z)/strip.Width, (outer.Y-inner.Y)/strip.Width
	for r := range rows {
		bound, control := (float64(r)+0.25)/float64(rows), (float64(r)+0.75)/float64(rows)
		l.panels = append(l.panels, panel{
			a: at(inner, bound), b: at(outer, bound), control: at(middle, control),
			normalY: ny, normalZ: nz, strip: len(l.strips) - 1,
		})
	}
}

// newStrip fills the measures of a strip.
func newStrip(index int, s planform.Surface, cut stripCut, inner, outer, middle planform.Station) latticeStrip {
	dy, dz := outer.Y-inner.Y, outer.Z-inner.Z
	tip := s.Stations[len(s.Stations)-1]
	strip := latticeStrip{
		Strip: Strip{
			Surface: s.Name, Role: s.Role, Y: middle.Y, Z: middle.Z, QuarterX: middle.X + float64(0.25*middle.Chord),
			Chord: (inner.Chord + outer.Chord) / 2, Width: math.Sqrt(float64(dy*dy) + float64(dz*dz)), projected: dy,
			SpanRatio: cut.middle,
		},
		surface: index, a: at(inner, 0), b: at(outer, 0), middle: at(middle, 0),
		incidence: s.Incidence + middle.Twist, inner: cut.inner, outer: cut.outer,
	}
	if tip.Y > 0 && !s.Vertical() {
		strip.SpanRatio, strip.inner, strip.outer = middle.Y/tip.Y, inner.Y/tip.Y, outer.Y/tip.Y
	}
	return strip
}

// between returns the station at a share of the way from p to q.
func between(p, q planform.Station, share float64) planform.Station {
	return planform.Station{
		X: blend(p.X, q.X, share), Y: blend(p.Y, q.Y, share), Z: blend(p.Z, q.Z, share),
		Chord: blend(p.Chord, q.Chord, share), Twist: blend(p.Twist, q.Twist, share),
	}
}

// at returns the point of a station at a fraction of its chord.
func at(s planform.Station, fraction float64) point {
	return point{s.X + float64(fraction*s.Chord), s.Y, s.Z}
}

// blend returns the value at a share of the way from a to b.
func blend(a, b, share float64) float64 { return a + float64(share*(b-a)) }
