package lift

import "pitgate/server/physics/planform"

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
	Reason             string  // what ends the lift: one of the Limit constants
	ControlAngle       float64 // command of the pitch controls at the trimmed maximum, trailing edge down positive, rad
	TipMarginIncidence float64 // incidence left at the outer 15 % of the surface when its first strip stalls, rad; 0 = the tip stalls first
	Found              bool    // false when no wing or canard strip gains lift with incidence; the other fields are then zero
}

// Setting is a control held at an angle, trailing edge down positive, rad; Index points into Solution.Controls, one that does not is left out.
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
	p := s.stallPath(re, factor, nil)
	best := Maximum{}
	for i := range s.Strips {
		if strip := &s.Strips[i]; strip.stallsTheModel() && strip.LiftSlope > leastSlope {
			e := p.edge(strip, -1)
			if at := -(e.fixed + e.load) / e.rise; !best.Found || at > best.Incidence {
				best = e.state(at, p)
			}
		}
	}
	if best.Found {
		best.Coefficient = s.Lift(best.Incidence)
		best.SectionCoefficient = -best.SectionCoefficient
		best.Spread = float64(best.Spread * s.LiftSlope)
	}
	return best
}

// MaximumLiftSet returns the greatest lift with controls held at angles, as MaximumLift does with neutral ones.
func (s *Solution) MaximumLiftSet(re func(chord float64) float64, factor float64, settings []Setting) Maximum {
	p := s.stallPath(re, factor, settings)
	best := Maximum{}
	for i := range s.Strips {
		if strip := &s.Strips[i]; strip.stallsTheModel() && strip.LiftSlope > leastSlope {
			e := p.edge(strip, 1)
			if at := (e.fixed - e.load) / e.rise; !best.Found || at < best.Incidence {
				best = e.state(at, p)
			}
		}
	}
	if !best.Found {
		return best
	}
	best.Coefficient = s.Lift(best.Incidence) + s.SettingsLift(settings)
	best.Spread = float64(best.Spread * s.LiftSlope)
	best.TipMarginIncidence = p.tipMargin(best.Surface, best.Incidence)
	return best
}

// leastSlope is the gain of section lift per rad below which a strip does not stall by incidence.
const leastSlope = 1e-6

// stallsTheModel reports whether a stall of this strip ends the model's lift.
func (s *Strip) stallsTheModel() bool {
	return s.Role == planform.RoleWing || s.Role == planform.RoleSecondWing || s.Role == planform.RoleCanard
}
