package lift

import (
	"math"

	"pitgate/server/physics/planform"
)

// searchRange is how far above the trimmed incidence without lift a stall is looked for, rad.
const searchRange = 1.2

// TrimmedMaximum returns the greatest lift in balance: the incidence is raised from lift zero, the pitch controls follow so that nothing
// turns the model, and the first of these ends it: a strip of a wing or canard at its limit (a control in the strip changes load and limit),
// a strip of the tail at its limit for download or upload, or a control at the end of its throw. Reason says which. re and factor as for
// MaximumLift.
//
// Formula: cl_i(a, e(a)) = clmax_i(Re) factor + gain_i(e(a)) for the first strip i along the balance line e(a).
// Valid for: attached flow up to there; the tail in the undelayed stream of the model.
// Source: critical-section method with the balance of moments.
func (s *Solution) TrimmedMaximum(re func(chord float64) float64, factor float64, b Balance) Maximum {
	p := s.stallPath(re, factor, b.Held)
	p.pitch, p.line = s.known(b.Pitch), s.balanceLine(b)
	p.table = s.commandsOf(p.pitch)
	rise := s.LiftSlope + float64(p.line.controlLift*p.line.slope)
	if !p.line.found || !(rise > 1e-9) {
		return Maximum{}
	}
	from := -p.line.lift(s, 0) / rise
	best := p.firstOf(from)
	if at, found := p.throwEnds(from); found && (!best.Found || at <= best.Incidence) {
		best = Maximum{Incidence: at, Surface: s.Controls[p.pitch[0].Index].Surface, Reason: LimitThrow, Inside: true, Found: true}
	}
	if !best.Found {
		return best
	}
	best.Coefficient = p.line.lift(s, best.Incidence)
	best.Spread = float64(best.Spread * rise)
	best.ControlAngle, _ = p.table.commandFor(p.line.effective(best.Incidence))
	best.TipMarginIncidence = p.tipMargin(s.tipSurface(best), best.Incidence)
	return best
}

// firstOf returns the state of the first strip that stalls along the path, on either side for tails.
func (p *stallPath) firstOf(from float64) Maximum {
	best, to := Maximum{}, from+searchRange
	for i := range p.solution.Strips {
		strip := &p.solution.Strips[i]
		for _, side := range strip.sidesOfStall() {
			e := p.edge(strip, side)
			if at, found := e.firstStall(p, from, to); found && (!best.Found || at < best.Incidence) {
				best, to = e.state(at, p), max(at, from+1e-9)
			}
		}
	}
	return best
}

// sidesOfStall returns the sides on which a stall of this strip ends the trimmed lift.
func (s *Strip) sidesOfStall() []float64 {
	switch {
	case s.stallsTheModel():
		return []float64{1}
	case s.Role == planform.RoleTailplane || s.Role == planform.RoleVTail:
		return []float64{-1, 1}
	}
	return nil
}

// throwEnds returns the incidence at which the command reaches the end of a throw as the incidence rises.
func (p *stallPath) throwEnds(from float64) (incidence float64, found bool) {
	if !(math.Abs(p.line.slope) > 1e-9) {
		return 0, false
	}
	low, high := p.solution.throwsOf(p.pitch)
	end := p.table.effectOf(high)
	if p.line.slope < 0 {
		end = p.table.effectOf(low)
	}
	return max(from, (end-p.line.atZero)/p.line.slope), true
}

// tipSurface returns the surface whose tip is of interest: the one that stalls, or the main wing when tail or throw end the lift.
func (s *Solution) tipSurface(m Maximum) string {
	if m.Reason == LimitWing || m.Reason == LimitCanard {
		return m.Surface
	}
	for i := range s.Strips {
		if s.Strips[i].Role == planform.RoleWing {
			return s.Strips[i].Surface
		}
	}
	return m.Surface
}

// StripState is one strip of the starboard side at an incidence against its limit.
type StripState struct {
	Surface, Role   string
	Y               float64 // m
	SpanRatio       float64 // y over the half span of its surface, or the height of a fin
	Coefficient     float64 // section lift coefficient
	Limit           float64 // greatest section lift coefficient, with the gain of a flap
	MarginIncidence float64 // incidence of the model left until the strip stalls, rad; 0 when it has
	Inside          bool    // section and Reynolds number lie inside the tables
}

// StripStates returns the loading of every strip at an incidence of the model's x axis with controls held at angles; re and factor as for
// MaximumLift.
func (s *Solution) StripStates(incidence float64, settings []Setting, re func(chord float64) float64, factor float64) []StripState {
	p := s.stallPath(re, factor, settings)
	out := make([]StripState, len(s.Strips))
	for i := range s.Strips {
		strip := &s.Strips[i]
		e := p.edge(strip, 1)
		out[i] = StripState{
			Surface: strip.Surface, Role: strip.Role, Y: strip.Y, SpanRatio: strip.SpanRatio,
			Coefficient: e.load + float64(e.rise*incidence), Limit: e.fixed, Inside: e.limit.Inside,
		}
		if strip.LiftSlope > leastSlope {
			out[i].MarginIncidence = max(0, e.margin(p, incidence)/strip.LiftSlope)
		}
	}
	return out
}

// StripLoads returns the section lift coefficient of every strip at an incidence of the model's x axis with controls held at angles: the Coefficient of
// StripStates alone.
func (s *Solution) StripLoads(incidence float64, settings []Setting) []float64 {
	known := s.known(settings)
	out := make([]float64, len(s.Strips))
	for i := range s.Strips {
		strip := &s.Strips[i]
		load := strip.BasicLift
		for _, set := range known {
			load += float64(strip.controls[set.Index] * s.effectiveAngle(set))
		}
		out[i] = load + float64(strip.LiftSlope*incidence)
	}
	return out
}
