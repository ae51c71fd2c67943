package lift

import (
	"math"

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
	alone        bool  // has no image at the other side: a fin on the plane of symmetry, or any strip of a whole lattice
	port         bool  // lies at the port side of a whole lattice
	a, b, middle point // edges and middle at the leading edge
	chordA       float64
	chordB       float64
	incidence    float64
	zeroLift     float64 // zero-lift angle of the section, rad
	camberMoment float64 // quarter-chord moment coefficient of the section
	slopeLoss    float64 // incidence lost per section lift coefficient, rad
	builtA       float64 // incidence and twist at the edges, rad
	builtB       float64
	inner, outer float64 // edges over the half span (over the height of a winglet)
}

// surfaceName is a surface that takes part.
type surfaceName struct {
	name, role string
	index      int
}

// lattice is the starboard half of all surfaces cut into panels, or all of both sides after unfold.
type lattice struct {
	panels  []panel
	strips  []latticeStrip
	names   []surfaceName
	skipped []string
	chosen  int     // index of the only surface that counts, or -1
	ground  float64 // height of z = 0 above the ground, m; 0 = free air

	meanWidth []float64 // of the strips of each surface, m
	joints    joints
}

// slopeOf gives the lift slope of a section at a Reynolds number, per rad.
type slopeOf func(s *section.Foil, reynolds float64) float64

// tableSlope is the slope of the section tables.
func tableSlope(s *section.Foil, reynolds float64) float64 { return s.LiftSlope(reynolds).PerRadian }

// foils is a section upright and upside down, ready for its tables.
type foils struct{ upright, inverted section.Foil }

// prepareFoils reads the sections of all stations.
func prepareFoils(stations []planform.Station) []foils {
	out := make([]foils, len(stations))
	for i := range stations {
		out[i] = foils{section.Prepare(stations[i].Section), section.Prepare(section.Inverted(stations[i].Section))}
	}
	return out
}

// newLattice cuts the mirrored surfaces into panels: all that take part in symmetric flight.
func newLattice(surfaces []planform.Surface, reference Reference, slope slopeOf) lattice {
	ready, joints := join(surfaces, inSymmetry)
	l := lattice{chosen: -1, meanWidth: make([]float64, len(surfaces)), joints: joints, ground: reference.GroundHeight}
	for i, s := range surfaces {
		if inSymmetry(s) {
			l.addSurface(i, ready[i], reference.Grid, false)
		} else {
			l.skipped = append(l.skipped, s.Name)
		}
	}
	l.loseSlope(reference.ReynoldsPerMeter, slope)
	return l
}

// inSymmetry reports whether a surface takes part in symmetric flight.
func inSymmetry(s planform.Surface) bool { return s.Mirrored && !onPlane(s) }

// onPlane reports whether a surface lies in the plane of symmetry, within a millionth of its tip's chord.
func onPlane(s planform.Surface) bool {
	for _, station := range s.Stations {
		if math.Abs(station.Y) > float64(1e-6*station.Chord) {
			return false
		}
	}
	return true
}

// loseSlope gives every strip the incidence that its section loses against a slope of 2 pi.
//
// Formula: loss per lift coefficient = (1/a0 - 1/(2 pi))/cos(sweep); where a0 slope of the section at the Reynolds number of the chord
// per rad, sweep of the strip's quarter-chord line. A swept section loses its incidence across its own line, hence the cosine.
// Valid for: attached flow; a wing of infinite span then has the slope a0 cos(sweep) exactly.
// Source: decambering of strips, Katz and Plotkin, Low-Speed Aerodynamics (from memory), with simple sweep theory.
func (l *lattice) loseSlope(reynoldsPerMeter float64, slope slopeOf) {
	if !(reynoldsPerMeter > 0) {
		return
	}
	for i := range l.strips {
		s := &l.strips[i]
		reynolds := float64(reynoldsPerMeter * s.Chord)
		a0 := blend(slope(&s.Strip.inner.upright, reynolds), slope(&s.Strip.outer.upright, reynolds), s.outerShare)
		dx := s.b.x + float64(0.25*s.chordB) - s.a.x - float64(0.25*s.chordA)
		secant := math.Sqrt(1 + float64(dx*dx)/float64(s.Width*s.Width))
		if a0 > 0 {
			s.slopeLoss = float64((1/a0 - 1/(2*math.Pi)) * secant)
		}
	}
}

// only returns the same lattice of which one surface counts in the sums.
func (l *lattice) only(name surfaceName) *lattice {
	one := *l
	one.chosen = name.index
	return &one
}

// counts reports whether a strip counts in the sums.
func (l *lattice) counts(strip int) bool { return l.chosen < 0 || l.strips[strip].surface == l.chosen }

// sides returns how often a strip counts in a sum over the whole model.
func (s *latticeStrip) sides() float64 {
	if s.alone {
		return 1
	}
	return 2
}

// gridFor returns rows and strips of a surface.
func gridFor(role string, grid Grid) (rows, strips int) {
	rows, strips = 4, 10
	if role == planform.RoleWing || role == planform.RoleSecondWing || role == planform.RoleCanard {
		rows, strips = 6, 12
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
func (l *lattice) addSurface(index int, s planform.Surface, grid Grid, alone bool) {
	l.names = append(l.names, surfaceName{s.Name, s.Role, index})
	rows, count := gridFor(s.Role, grid)
	first := len(l.strips)
	places, ready := stationPlaces(s), prepareFoils(s.Stations)
	for k := 1; k < len(s.Stations); k++ {
		edges, middles := cutSegment(places[k-1], places[k], count, spacingOf(s, grid))
		for i, middle := range middles {
			l.addStrip(index, s, stripCut{
				station: k, from: places[k-1], to: places[k], inner: edges[i], outer: edges[i+1], middle: middle,
				foils: [2]*foils{&ready[k-1], &ready[k]},
			}, rows)
		}
	}
	for i := first; i < len(l.strips); i++ {
		l.strips[i].alone = alone
		l.meanWidth[index] += l.strips[i].Width / float64(len(l.strips)-first)
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

// stripCut says where along a surface a strip lies, as places from 0 to 1, and between which stations.
type stripCut struct {
	station              int
	from, to             float64
	inner, outer, middle float64
	foils                [2]*foils
}

// addStrip adds one strip and its panels.
func (l *lattice) addStrip(index int, s planform.Surface, cut stripCut, rows int) {
	p, q := s.Stations[cut.station-1], s.Stations[cut.station]
	share := func(place float64) float64 { return (place - cut.from) / (cut.to - cut.from) }
	inner, outer, middle := between(p, q, share(cut.inner)), between(p, q, share(cut.outer)), between(p, q, share(cut.middle))
	strip := newStrip(index, s, cut, inner, outer, middle)
	a, b := cut.foils[0], cut.foils[1]
	if *a == *b {
		b = a // what is asked of both is then asked once
	}
	strip.Strip.inner, strip.Strip.outer, strip.outerShare = a, b, share(cut.middle)
	strip.zeroLift = blend(a.upright.ZeroLift, b.upright.ZeroLift, strip.outerShare)
	strip.camberMoment = blend(a.upright.Moment, b.upright.Moment, strip.outerShare)
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
		surface: index, a: at(inner, 0), b: at(outer, 0), middle: at(middle, 0), chordA: inner.Chord, chordB: outer.Chord,
		incidence: s.Incidence + middle.Twist, builtA: s.Incidence + inner.Twist, builtB: s.Incidence + outer.Twist, inner: cut.inner, outer: cut.outer,
	}
	if tip.Y > 0 && !s.Vertical() && s.Stations[0].Y >= 0 {
		strip.SpanRatio, strip.inner, strip.outer = middle.Y/tip.Y, inner.Y/tip.Y, outer.Y/tip.Y
	}
	return strip
}
