package lift

import (
	"pitgate/server/physics/elementary"
	"pitgate/server/physics/planform"
	"pitgate/server/physics/section"
)

// Maximum is the greatest lift of the whole model: where the first strip reaches its own limit.
type Maximum struct {
	Coefficient        float64 // on the reference area
	Spread             float64 // one standard deviation from the section tables
	Incidence          float64 // of the model's x axis, rad
	Surface            string  // surface that stalls first
	SpanRatio          float64 // 2y/b of the strip that stalls first
	SectionCoefficient float64 // its limit
	Reynolds           float64 // on its chord
	Inside             bool    // section and Reynolds number lie inside the tables
	Note               string
	Found              bool // false when no wing or canard strip gains lift with incidence; the other fields are then zero
}

// Setting is a control held at an angle, trailing edge down positive, rad; Index points into Solution.Controls.
type Setting struct {
	Index int
	Angle float64
}

// MaximumLift returns the greatest lift with controls neutral.
//
// re gives the Reynolds number of a chord (m) at the speed of the question; factor multiplies every section limit (1 = table) and
// carries finish, frost or a sampled spread.
//
// Formula: incidence = min over strips of (clmax(Re) factor - cl_basic)/cl_slope; CLmax = CL at that incidence.
// Valid for: wings and canards of moderate sweep; a stall of the tailplane is not looked for.
// Source: critical-section method, R. F. Anderson, Determination of the Characteristics of Tapered Wings, NACA Report 572 (from memory).
func (s *Solution) MaximumLift(re func(chord float64) float64, factor float64) Maximum {
	return s.MaximumLiftSet(re, factor, nil)
}

// MinimumLift returns the greatest downward lift with controls neutral, Coefficient negative; arguments as MaximumLift.
//
// Formula: as MaximumLift with the sections upside down.
// Valid for: as MaximumLift; a limit the builder gives holds for upright flight only, the table is used here.
// Source: critical-section method.
func (s *Solution) MinimumLift(re func(chord float64) float64, factor float64) Maximum {
	best := Maximum{}
	for i := range s.Strips {
		strip := &s.Strips[i]
		if !strip.stallsTheModel() || !(strip.LiftSlope > 1e-6) {
			continue
		}
		candidate := strip.lowerLimit(re(strip.Chord), factor)
		if !best.Found || candidate.Incidence > best.Incidence {
			best = candidate
		}
	}
	if best.Found {
		best.Coefficient = s.Lift(best.Incidence)
		best.Spread = float64(best.Spread * s.LiftSlope)
	}
	return best
}

// lowerLimit returns the state in which this strip stalls downward; Spread is that of the incidence.
func (s *Strip) lowerLimit(reynolds, factor float64) Maximum {
	upside := *s
	upside.inner, upside.outer = inverted(s.inner), inverted(s.outer)
	upside.BasicLift = -s.BasicLift
	m := upside.limit(reynolds, factor, nil)
	m.Incidence, m.SectionCoefficient = -m.Incidence, -m.SectionCoefficient
	return m
}

// inverted returns a section upside down.
func inverted(s planform.Section) planform.Section {
	camber, position := s.EffectiveCamber()
	thickness := s.EffectiveThickness()
	return planform.Section{Family: s.Family, Thickness: thickness, Camber: -camber, CamberPosition: position}
}

// MaximumLiftSet returns the greatest lift with controls held at angles, as MaximumLift does with neutral ones.
func (s *Solution) MaximumLiftSet(re func(chord float64) float64, factor float64, settings []Setting) Maximum {
	best := Maximum{}
	for i := range s.Strips {
		strip := &s.Strips[i]
		if !strip.stallsTheModel() || !(strip.LiftSlope > 1e-6) {
			continue
		}
		candidate := strip.limit(re(strip.Chord), factor, settings)
		if !best.Found || candidate.Incidence < best.Incidence {
			best = candidate
		}
	}
	if !best.Found {
		return best
	}
	best.Coefficient = s.Lift(best.Incidence)
	for _, set := range settings {
		best.Coefficient += float64(s.Controls[set.Index].LiftSlope * set.Angle)
	}
	best.Spread = float64(best.Spread * s.LiftSlope)
	return best
}

// stallsTheModel reports whether a stall of this strip ends the model's lift.
func (s *Strip) stallsTheModel() bool {
	return s.Role == planform.RoleWing || s.Role == planform.RoleSecondWing || s.Role == planform.RoleCanard
}

// limit returns the state in which this strip stalls; Spread is that of the incidence.
func (s *Strip) limit(reynolds, factor float64, settings []Setting) Maximum {
	table := s.Limit(reynolds)
	value, basic := float64(table.Value*factor), s.BasicLift
	for _, set := range settings {
		basic += float64(s.controls[set.Index] * set.Angle)
		value += section.FlapLimitGain(s.chordRatio[set.Index], set.Angle)
	}
	return Maximum{
		Incidence: (value - basic) / s.LiftSlope, Spread: float64(table.Spread*factor) / s.LiftSlope, Surface: s.Surface,
		SpanRatio: s.SpanRatio, SectionCoefficient: value, Reynolds: reynolds, Inside: table.Inside, Note: table.Note, Found: true,
	}
}

// Limit returns the greatest section lift coefficient of the strip at a Reynolds number, between those of its two stations.
func (s *Strip) Limit(reynolds float64) section.Limit {
	a, b := section.MaximumLift(s.inner, reynolds, section.Roughness{}), section.MaximumLift(s.outer, reynolds, section.Roughness{})
	out := a
	if s.outerShare > 0.5 {
		out = b
	}
	out.Value = blend(a.Value, b.Value, s.outerShare)
	out.Spread = blend(a.Spread, b.Spread, s.outerShare)
	out.Inside = a.Inside && b.Inside
	return out
}

// SweptLimit returns the greatest lift coefficient of a plain wing by the flat rule, for comparison only.
//
// Formula: CLmax = 0.9 clmax cos(sweep of the quarter chord).
// Valid for: aspect ratio above 5; optimistic for rectangular wings, which reach 0.82 to 0.87.
// Source: Raymer, Aircraft Design: A Conceptual Approach, chapter 12 (from memory).
func SweptLimit(sectionMaximum, quarterChordSweep float64) float64 {
	return float64(float64(0.9*sectionMaximum) * elementary.Cos(quarterChordSweep))
}
