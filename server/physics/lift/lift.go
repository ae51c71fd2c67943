// Package lift solves the lifting surfaces of a model together by a vortex lattice and reads from it what the other packages need:
// lift slope, pitching moment, neutral point, induced drag, control powers, span loading and the lift at which the first strip stalls.
// Axes: x aft, y to starboard, z up; metres, radians, coefficients on the reference of the main wing.
package lift

import (
	"errors"
	"fmt"
	"math"

	"pitgate/server/physics/planform"
)

// ErrNothingLifts reports that no surface takes part in the symmetric solution.
var ErrNothingLifts = errors.New("surfaces: no mirrored lifting surface")

// ErrUnsolvable reports that the lattice has no solution: surfaces coincide or a measure is out of all proportion.
var ErrUnsolvable = errors.New("surfaces: lattice has no solution, surfaces may coincide")

// Grid chooses the lattice. The zero value is the standard one.
type Grid struct {
	Chordwise int  // rows of panels; 0 = 6 on wings and canards, 4 on tails
	Spanwise  int  // strips on the half span; 0 = 12 on wings and canards, 10 on tails
	Equal     bool // equal strips instead of strips that narrow towards the tip
}

// Reference holds what the coefficients are made with. Zero fields are taken from the main wing.
type Reference struct {
	Area  float64 // m2
	Chord float64 // mean aerodynamic chord, m
	Span  float64 // m
	Grid  Grid
}

// ControlEffect is what one control does per radian, trailing edge down positive, moved the same way on both sides.
type ControlEffect struct {
	Surface    string
	Name       string
	Role       string
	LiftSlope  float64 // lift coefficient per rad
	momentZero float64 // moment coefficient about x = 0 per rad
	chord      float64
}

// MomentAt returns the pitching-moment coefficient about x per radian of the control, nose up positive.
func (c ControlEffect) MomentAt(x float64) float64 {
	return c.momentZero + float64(c.LiftSlope*x)/c.chord
}

// SurfaceLift is the share of one surface in the lift, in the presence of the others, on the reference area.
type SurfaceLift struct {
	Name      string
	Role      string
	LiftSlope float64 // per rad of the model's incidence
	BasicLift float64 // at zero incidence of the model's x axis
	CentreX   float64 // where the lift of LiftSlope acts, m
}

// Strip is one strip of a surface at the starboard side.
type Strip struct {
	Surface    string
	Role       string
	Y, Z       float64 // middle of the strip, m
	QuarterX   float64 // its quarter chord, m
	Chord      float64 // m
	Width      float64 // along the span of the surface, m
	SpanRatio  float64 // y over the half span of its surface
	LiftSlope  float64 // section lift coefficient per rad of the model's incidence
	BasicLift  float64 // section lift coefficient at zero incidence
	inner      planform.Section
	outer      planform.Section
	outerShare float64
	projected  float64
	controls   []float64
	chordRatio []float64
}

// Solution is the answer of the lattice for one geometry; it does not depend on speed, mass or air.
type Solution struct {
	Reference         Reference
	LiftSlope         float64 // per rad
	ZeroLiftIncidence float64 // incidence of the model's x axis without lift, rad
	ZeroLiftMoment    float64 // pitching-moment coefficient without lift, about any point
	NeutralPointX     float64 // of the lifting surfaces alone, m
	InducedFactor     float64 // K in CDi = K CL^2 for the loading that grows with incidence
	SpanEfficiency    float64 // 1/(pi A K), A = span^2/area
	Strips            []Strip
	Surfaces          []SurfaceLift
	Controls          []ControlEffect
	Skipped           []string // surfaces that take no part: fins and surfaces on one side only

	momentZeroSlope float64 // moment slope about x = 0
	inducedCross    float64 // cross term of incidence and basic loading
	inducedBasic    float64 // induced drag of the basic loading at zero incidence
	rateLift        float64 // lift per unit q/V about x = 0
	rateMomentZero  float64
	lattice         lattice
	slopeStrength   []float64 // circulation over speed per rad, each panel
}

// Solve builds and solves the lattice of all surfaces together.
//
// Fins and surfaces that exist on one side only take no part and are listed in Skipped. Errors: planform.ErrImpossible,
// ErrNothingLifts, ErrUnsolvable.
//
// Valid for: attached flow, incidence within about 0.2 rad of zero lift, Mach below 0.3, aspect ratio above 0.5.
// Source: vortex-lattice method as in Bertin and Smith, Aerodynamics for Engineers; Katz and Plotkin, Low-Speed Aerodynamics.
func Solve(surfaces []planform.Surface, reference Reference) (*Solution, error) {
	l, reference, err := prepare(surfaces, reference)
	if err != nil {
		return nil, err
	}
	controls := listControls(surfaces, l)
	columns := l.boundaryColumns(controls)
	strengths, err := solveColumns(l.influence(1), columns)
	if err != nil {
		return nil, err
	}
	s := &Solution{Reference: reference, Skipped: l.skipped, lattice: l, slopeStrength: strengths[columnIncidence]}
	s.fill(strengths, controls)
	if !s.finite() {
		return nil, ErrUnsolvable
	}
	return s, nil
}

// ReferenceOf returns area, chord and span of the main wing.
func ReferenceOf(surfaces []planform.Surface) (Reference, error) {
	return completeReference(surfaces, Reference{})
}

// completeReference fills the missing fields from the main wing.
func completeReference(surfaces []planform.Surface, r Reference) (Reference, error) {
	if r.Area > 0 && r.Chord > 0 && r.Span > 0 {
		return r, nil
	}
	i := planform.MainWing(surfaces)
	if i < 0 {
		return r, ErrNothingLifts
	}
	m, err := planform.Measure(surfaces[i])
	if err != nil {
		return r, err
	}
	if !(m.Area > 0) {
		return r, fmt.Errorf("surface %q: projected area is zero: %w", surfaces[i].Name, planform.ErrImpossible)
	}
	if !(r.Area > 0) {
		r.Area = m.Area
	}
	if !(r.Chord > 0) {
		r.Chord = m.MeanAerodynamicChord
	}
	if !(r.Span > 0) {
		r.Span = m.Span
	}
	return r, nil
}

// fill turns the circulations into coefficients.
func (s *Solution) fill(strengths [][]float64, controls []control) {
	area, chord := s.Reference.Area, s.Reference.Chord
	liftSlope, momentSlope := s.lattice.liftAndMoment(strengths[columnIncidence])
	basicLift, basicMoment := s.lattice.liftAndMoment(strengths[columnBasic])
	basicMoment += s.lattice.camberMoment()
	rateLift, rateMoment := s.lattice.liftAndMoment(strengths[columnRate])
	s.LiftSlope, s.momentZeroSlope = liftSlope/area, momentSlope/float64(area*chord)
	s.rateLift, s.rateMomentZero = rateLift/area, rateMoment/float64(area*chord)
	s.ZeroLiftIncidence = -basicLift / liftSlope
	s.NeutralPointX = -float64(chord*s.momentZeroSlope) / s.LiftSlope
	s.ZeroLiftMoment = basicMoment/float64(area*chord) + float64(s.momentZeroSlope*s.ZeroLiftIncidence)
	s.fillInduced(strengths)
	s.fillStrips(strengths, controls)
	s.fillSurfaces(strengths)
	for i, c := range controls {
		lift, moment := s.lattice.liftAndMoment(strengths[columnControls+i])
		moment += s.lattice.controlMoment(c)
		s.Controls = append(s.Controls, ControlEffect{
			Surface: c.surface, Name: c.name, Role: c.role, LiftSlope: lift / area,
			momentZero: moment / float64(area*chord), chord: chord,
		})
	}
}

// fillInduced stores the induced drag as a quadratic of the incidence.
func (s *Solution) fillInduced(strengths [][]float64) {
	slope, basic := s.lattice.stripStrength(strengths[columnIncidence]), s.lattice.stripStrength(strengths[columnBasic])
	washSlope, washBasic := s.lattice.trefftzWash(slope), s.lattice.trefftzWash(basic)
	area := s.Reference.Area
	quadratic := s.lattice.inducedArea(slope, washSlope) / area
	s.inducedCross = (s.lattice.inducedArea(slope, washBasic) + s.lattice.inducedArea(basic, washSlope)) / area
	s.inducedBasic = s.lattice.inducedArea(basic, washBasic) / area
	s.InducedFactor = quadratic / float64(s.LiftSlope*s.LiftSlope)
	aspect := float64(s.Reference.Span*s.Reference.Span) / area
	s.SpanEfficiency = 1 / float64(float64(math.Pi*aspect)*s.InducedFactor)
}

// fillStrips stores the span loading.
func (s *Solution) fillStrips(strengths [][]float64, controls []control) {
	columns := make([][]float64, len(strengths))
	for k := range strengths {
		columns[k] = s.lattice.stripStrength(strengths[k])
	}
	for i, strip := range s.lattice.strips {
		out := strip.Strip
		out.LiftSlope = float64(2*columns[columnIncidence][i]) / strip.Chord
		out.BasicLift = float64(2*columns[columnBasic][i]) / strip.Chord
		for k, c := range controls {
			out.controls = append(out.controls, float64(2*columns[columnControls+k][i])/strip.Chord)
			out.chordRatio = append(out.chordRatio, float64(c.chordRatio*c.cover[i]))
		}
		s.Strips = append(s.Strips, out)
	}
}

// fillSurfaces stores the share of each surface.
func (s *Solution) fillSurfaces(strengths [][]float64) {
	for _, name := range s.lattice.names {
		only := s.lattice.only(name)
		slope, moment := only.liftAndMoment(strengths[columnIncidence])
		basic, _ := only.liftAndMoment(strengths[columnBasic])
		share := SurfaceLift{Name: name.name, Role: name.role, LiftSlope: slope / s.Reference.Area, BasicLift: basic / s.Reference.Area}
		if slope != 0 {
			share.CentreX = -moment / slope
		}
		s.Surfaces = append(s.Surfaces, share)
	}
}

// finite reports whether every figure that leaves the package is a number.
func (s *Solution) finite() bool {
	sum := s.LiftSlope + s.ZeroLiftIncidence + s.ZeroLiftMoment + s.NeutralPointX + s.InducedFactor + s.SpanEfficiency +
		s.inducedBasic + s.inducedCross + s.rateLift + s.rateMomentZero
	for _, strip := range s.Strips {
		sum += strip.LiftSlope + strip.BasicLift
	}
	for _, c := range s.Controls {
		sum += c.LiftSlope + c.momentZero
	}
	return !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

// Lift returns the lift coefficient at an incidence of the model's x axis, controls neutral.
func (s *Solution) Lift(incidence float64) float64 {
	return float64(s.LiftSlope * (incidence - s.ZeroLiftIncidence))
}

// IncidenceFor returns the incidence of the model's x axis at a lift coefficient, controls neutral, rad.
func (s *Solution) IncidenceFor(liftCoefficient float64) float64 {
	return s.ZeroLiftIncidence + liftCoefficient/s.LiftSlope
}

// MomentSlopeAt returns the slope of the pitching-moment coefficient about x with incidence, per rad, nose up positive.
//
// Formula: Cm_alpha = CL_alpha (x - x_np)/c.
// Valid for: lifting surfaces alone; add BodyMomentSlope for bodies.
// Source: definition of the neutral point.
func (s *Solution) MomentSlopeAt(x float64) float64 {
	return float64(s.LiftSlope*(x-s.NeutralPointX)) / s.Reference.Chord
}

// MomentAt returns the pitching-moment coefficient about x at an incidence, controls neutral, nose up positive.
func (s *Solution) MomentAt(x, incidence float64) float64 {
	return s.ZeroLiftMoment + float64(s.MomentSlopeAt(x)*(incidence-s.ZeroLiftIncidence))
}

// InducedDrag returns the induced-drag coefficient at a lift coefficient, with the part that twist and camber cause.
//
// Formula: CDi = D2 a^2 + D1 a + D0; where a incidence at that lift, rad.
// Valid for: controls neutral, out of ground effect.
// Source: Trefftz plane of the same lattice.
func (s *Solution) InducedDrag(liftCoefficient float64) float64 {
	a := s.IncidenceFor(liftCoefficient)
	quadratic := float64(s.InducedFactor * float64(s.LiftSlope*s.LiftSlope))
	return max(0, float64(quadratic*float64(a*a))+float64(s.inducedCross*a)+s.inducedBasic)
}

// PitchRateAt returns lift and pitching moment about x per unit of q c/(2 V), the model turning nose up about x.
//
// Formula: CLq = 2/c (CL_rate - x CL_alpha), likewise the moment; where CL_rate per unit q/V about x = 0.
// Valid for: lifting surfaces alone, slow motion.
// Source: the lattice with the local incidence q (x_c - x)/V.
func (s *Solution) PitchRateAt(x float64) (liftSlope, momentSlope float64) {
	scale := 2 / s.Reference.Chord
	lift := s.rateLift - float64(x*s.LiftSlope)
	moment := s.rateMomentZero - float64(x*s.momentZeroSlope)
	return float64(scale * lift), float64(scale * (moment + float64(lift*x)/s.Reference.Chord))
}
