package planform

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Measures are the figures of one surface, both sides together when it is mirrored.
type Measures struct {
	Area                 float64 // projected reference area with the carry-through across the body, m2
	ExposedArea          float64 // true area outside the body, m2
	WettedArea           float64 // skin outside the body, m2
	Span                 float64 // projected span tip to tip (height of a fin), m
	AspectRatio          float64 // Span^2/Area
	MeanChord            float64 // Area/Span, m
	MeanAerodynamicChord float64 // m
	LeadingEdgeX         float64 // leading edge of the mean aerodynamic chord, m
	LateralY             float64 // distance of the mean aerodynamic chord from the plane of symmetry, m
	HeightZ              float64 // height of the mean aerodynamic chord, m
	QuarterChordX        float64 // its quarter-chord point: aerodynamic centre by thin-aerofoil theory, m
	RootChord            float64 // m
	TipChord             float64 // m
	TaperRatio           float64
	LeadingEdgeSweep     float64 // root to tip, aft positive, rad
	QuarterChordSweep    float64 // rad
	HalfChordSweep       float64 // rad
	Dihedral             float64 // root to tip, up positive, rad
	Thickness            float64 // area-weighted greatest thickness over chord
	MaximumThicknessX    float64 // area-weighted place of greatest thickness over chord
}

// stripLength returns the length of a strip across the stream, m.
//
// Formula: sqrt(dy^2 + dz^2).
// Valid for: any two stations.
// Source: geometry.
func stripLength(a, b Station) float64 {
	dy, dz := b.Y-a.Y, b.Z-a.Z
	return math.Sqrt(float64(dy*dy) + float64(dz*dz))
}

// projectedWidth returns the part of a strip that counts as span: along y, or the height of a fin.
func (s Surface) projectedWidth(a, b Station) float64 {
	if s.Vertical() {
		return math.Abs(b.Z - a.Z)
	}
	return b.Y - a.Y
}

// Extended returns the surface with its root carried to the plane of symmetry at constant chord, as the reference area counts it.
//
// Only a mirrored surface that is no fin or winglet and whose root lies within a quarter of the half span is carried through.
func Extended(s Surface) Surface {
	if s.Vertical() || !s.Mirrored || len(s.Stations) < 2 {
		return s
	}
	root, tip := s.Stations[0], s.Stations[len(s.Stations)-1]
	if root.Y <= 0 || root.Y > float64(0.25*tip.Y) {
		return s
	}
	root.Y = 0
	s.Stations = append([]Station{root}, s.Stations...)
	return s
}

// Measure returns the figures of a surface, or the error of Check.
func Measure(s Surface) (Measures, error) {
	if err := Check(s); err != nil {
		return Measures{}, err
	}
	extended := Extended(s)
	m := Measures{}
	m.addSpanwise(extended)
	m.addExposed(s)
	m.addEnds(extended)
	return m, nil
}

// addSpanwise integrates area, span and mean aerodynamic chord over the strips.
//
// Formula: S = sum w (c1+c2)/2; mean aerodynamic chord = (1/S) integral c^2 dw; its place = (1/S) integral x c dw; straight edges.
// Valid for: straight lines between stations.
// Source: definition of the mean aerodynamic chord.
func (m *Measures) addSpanwise(s Surface) {
	var area, width, square, x, y, z float64
	for i := 1; i < len(s.Stations); i++ {
		a, b := s.Stations[i-1], s.Stations[i]
		w := s.projectedWidth(a, b)
		c1, c2 := a.Chord, b.Chord
		area += float64(0.5 * float64(w*(c1+c2)))
		width += w
		square += float64(w*(float64(c1*c1)+float64(c1*c2)+float64(c2*c2))) / 3
		x += float64(w * chordMoment(a.X, b.X, c1, c2))
		y += float64(w * chordMoment(a.Y, b.Y, c1, c2))
		z += float64(w * chordMoment(a.Z, b.Z, c1, c2))
	}
	if !(area > 0) || !(width > 0) {
		return
	}
	m.Area, m.Span = float64(s.Sides()*area), float64(s.spanSides()*width)
	m.MeanAerodynamicChord, m.LeadingEdgeX, m.LateralY, m.HeightZ = square/area, x/area, y/area, z/area
	m.QuarterChordX = m.LeadingEdgeX + float64(0.25*m.MeanAerodynamicChord)
	m.AspectRatio = float64(m.Span*m.Span) / m.Area
	if s.Vertical() {
		m.AspectRatio = float64(width*width) / area
	}
	m.MeanChord = m.Area / m.Span
}

// spanSides returns how often the half width counts in the span: twin fins are no wider than one.
func (s Surface) spanSides() float64 {
	if s.Vertical() {
		return 1
	}
	return s.Sides()
}

// chordMoment returns the mean over a strip of a coordinate times the chord, both linear across it.
//
// Formula: (2 p1 c1 + p1 c2 + p2 c1 + 2 p2 c2)/6.
// Valid for: linear variation.
// Source: Simpson's rule, exact for a product of two linear functions.
func chordMoment(p1, p2, c1, c2 float64) float64 {
	return (float64(2*float64(p1*c1)) + float64(p1*c2) + float64(p2*c1) + float64(2*float64(p2*c2))) / 6
}

// addExposed adds true area, wetted area and thickness of what lies outside the body.
func (m *Measures) addExposed(s Surface) {
	var area, wetted, thickness, place float64
	for i := 1; i < len(s.Stations); i++ {
		a, b := s.Stations[i-1], s.Stations[i]
		t := (a.Section.EffectiveThickness() + b.Section.EffectiveThickness()) / 2
		strip := float64(0.5 * float64(stripLength(a, b)*(a.Chord+b.Chord)))
		area += strip
		wetted += float64(strip * wettedFactor(t))
		thickness += float64(strip * t)
		place += float64(0.5 * float64(strip*(thicknessPlace(a.Section)+thicknessPlace(b.Section))))
	}
	m.ExposedArea, m.WettedArea = float64(s.Sides()*area), float64(s.Sides()*wetted)
	m.Thickness, m.MaximumThicknessX = thickness/area, place/area
}

// wettedFactor returns wetted over exposed area.
//
// Formula: 2.003 for t/c < 0.05, else 1.977 + 0.52 t/c.
// Valid for: t/c up to 0.25.
// Source: Raymer, Aircraft Design: A Conceptual Approach, chapter 7 (from memory).
func wettedFactor(thickness float64) float64 {
	if thickness < 0.05 {
		return 2.003
	}
	return 1.977 + float64(0.52*thickness)
}

// thicknessPlace returns the place of greatest thickness over chord: 0.3 for four-digit sections and what is not known.
func thicknessPlace(s Section) float64 {
	if s.Family == FamilyFlatPlate || s.Family == FamilyCurvedSheet {
		return 0.5
	}
	return 0.3
}

// addEnds adds what is read from root and tip.
func (m *Measures) addEnds(s Surface) {
	root, tip := s.Stations[0], s.Stations[len(s.Stations)-1]
	m.RootChord, m.TipChord = root.Chord, tip.Chord
	m.TaperRatio = tip.Chord / root.Chord
	across := stripLength(root, tip)
	m.LeadingEdgeSweep = sweepAt(root, tip, across, 0)
	m.QuarterChordSweep = sweepAt(root, tip, across, 0.25)
	m.HalfChordSweep = sweepAt(root, tip, across, 0.5)
	m.Dihedral = elementary.Atan2(tip.Z-root.Z, tip.Y-root.Y)
}

// sweepAt returns the sweep of the line at a fraction of the chord from root to tip, rad.
//
// Formula: atan((x_tip - x_root)/width); where x = x_LE + fraction c.
// Valid for: root to tip taken as one line.
// Source: geometry.
func sweepAt(root, tip Station, across, fraction float64) float64 {
	dx := (tip.X + float64(fraction*tip.Chord)) - (root.X + float64(fraction*root.Chord))
	return elementary.Atan2(dx, across)
}

// HorizontalTailVolume returns the tail volume of a tailplane or canard.
//
// Formula: V_H = S_h l_h/(S c); where S_h tail area, l_h arm from the wing's to the tail's quarter chord (negative ahead).
// Valid for: positive wing area and chord; 0 otherwise.
// Source: textbook definition.
func HorizontalTailVolume(tailArea, arm, wingArea, meanChord float64) float64 {
	return tailVolume(tailArea, arm, wingArea, meanChord)
}

// VerticalTailVolume returns the tail volume of a fin.
//
// Formula: V_V = S_v l_v/(S b).
// Valid for: positive wing area and span; 0 otherwise.
// Source: textbook definition.
func VerticalTailVolume(finArea, arm, wingArea, span float64) float64 {
	return tailVolume(finArea, arm, wingArea, span)
}

// tailVolume returns area times arm over reference area times reference length.
func tailVolume(area, arm, referenceArea, referenceLength float64) float64 {
	reference := float64(referenceArea * referenceLength)
	if !(reference > 0) {
		return 0
	}
	return float64(area*arm) / reference
}

// MainWing returns the index of the surface of role wing with the largest area, or of the largest horizontal surface when none has
// that role, or -1.
func MainWing(surfaces []Surface) int {
	best, bestArea, bestIsWing := -1, 0.0, false
	for i, s := range surfaces {
		if s.Vertical() {
			continue
		}
		m, err := Measure(s)
		if err != nil {
			continue
		}
		isWing := s.Role == RoleWing
		if best < 0 || (isWing && !bestIsWing) || (isWing == bestIsWing && m.Area > bestArea) {
			best, bestArea, bestIsWing = i, m.Area, isWing
		}
	}
	return best
}
