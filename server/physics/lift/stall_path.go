package lift

import (
	"math"

	"pitgate/server/physics/planform"
	"pitgate/server/physics/section"
)

// What ends the lift: the values of Maximum.Reason.
const (
	LimitWing         = "wing"
	LimitCanard       = "canard"
	LimitTailDownload = "tail_download"
	LimitTailUpload   = "tail_upload"
	LimitThrow        = "throw"
)

// stallPath is a way of raising the incidence: controls held, and pitch controls that follow the balance line when there is one.
type stallPath struct {
	solution *Solution
	reynolds func(chord float64) float64
	factor   float64
	held     []Setting
	pitch    []Setting
	line     balanceLine
	table    commands
}

// stallPath returns the path without pitch control.
func (s *Solution) stallPath(re func(chord float64) float64, factor float64, held []Setting) *stallPath {
	return &stallPath{solution: s, reynolds: re, factor: factor, held: s.known(held)}
}

// edge is one side of one strip's limit: the margin is fixed + gain of the pitch controls - side (load + rise a).
type edge struct {
	strip      *Strip
	side       float64 // 1 upward stall, -1 downward stall
	reynolds   float64
	limit      section.Limit
	fixed      float64 // limit with the gain of the controls held
	load, rise float64 // section lift at zero incidence and per rad along the path
}

// edge returns one side of a strip's limit along the path.
func (p *stallPath) edge(strip *Strip, side float64) edge {
	e := edge{strip: strip, side: side, reynolds: p.reynolds(strip.Chord), load: strip.BasicLift, rise: strip.LiftSlope}
	e.limit = strip.limitOf(e.reynolds, side)
	e.fixed = float64(e.limit.Value * p.factor)
	for _, set := range p.held {
		e.load += float64(strip.controls[set.Index] * p.solution.effectiveAngle(set))
		e.fixed += section.FlapLimitGain(strip.chordRatio[set.Index], float64(side*set.Angle))
	}
	for _, set := range p.pitch {
		power := float64(strip.controls[set.Index] * set.Angle)
		e.load += float64(power * p.line.atZero)
		e.rise += float64(power * p.line.slope)
	}
	return e
}

// bends reports whether a pitch control lies in the strip, so that its limit changes along the path.
func (e *edge) bends(p *stallPath) bool {
	for _, set := range p.pitch {
		if e.strip.chordRatio[set.Index] > 0 {
			return true
		}
	}
	return false
}

// margin returns the section lift coefficient that is left at an incidence of the path.
func (e *edge) margin(p *stallPath, incidence float64) float64 {
	margin := e.fixed - float64(e.side*(e.load+float64(e.rise*incidence)))
	if len(p.pitch) == 0 {
		return margin
	}
	command, _ := p.table.commandFor(p.line.effective(incidence))
	for _, set := range p.pitch {
		margin += section.FlapLimitGain(e.strip.chordRatio[set.Index], float64(e.side*float64(set.Angle*command)))
	}
	return margin
}

// firstStall returns the incidence between two at which the margin vanishes, and whether it does.
//
// Method: closed form where the margin is a straight line, else bisection. A margin that is gone at the beginning counts only when it
// falls further.
func (e *edge) firstStall(p *stallPath, from, to float64) (incidence float64, found bool) {
	start, end := e.margin(p, from), e.margin(p, to)
	switch {
	case end >= 0 || (start <= 0 && end >= start):
		return 0, false
	case start <= 0:
		return from, true
	case !e.bends(p):
		return from + float64((to-from)*start)/(start-end), true
	}
	low, high := from, to
	for range 44 {
		middle := float64(0.5 * (low + high))
		if e.margin(p, middle) > 0 {
			low = middle
		} else {
			high = middle
		}
	}
	return float64(0.5 * (low + high)), true
}

// state returns the maximum at which this edge stalls; Spread is that of the incidence.
func (e *edge) state(incidence float64, p *stallPath) Maximum {
	const step = 1e-3
	fall := (e.margin(p, incidence-step) - e.margin(p, incidence)) / step
	m := Maximum{
		Incidence: incidence, Surface: e.strip.Surface, SpanRatio: e.strip.SpanRatio, Reynolds: e.reynolds, Inside: e.limit.Inside,
		SectionCoefficient: e.margin(p, incidence) + float64(e.side*(e.load+float64(e.rise*incidence))),
		Note:               e.limit.Note, Reason: e.reason(), Found: true,
	}
	if math.Abs(fall) > leastSlope {
		m.Spread = float64(e.limit.Spread*p.factor) / math.Abs(fall)
	}
	return m
}

// reason names the limit by the strip's role and side.
func (e *edge) reason() string {
	switch {
	case e.strip.Role == planform.RoleCanard:
		return LimitCanard
	case e.strip.stallsTheModel():
		return LimitWing
	case e.side < 0:
		return LimitTailDownload
	}
	return LimitTailUpload
}

// tipMargin returns the least incidence left on the outer 15 % of a surface at an incidence, rad; 0 when a strip there has stalled.
func (p *stallPath) tipMargin(surface string, incidence float64) float64 {
	least := math.Inf(1)
	for i := range p.solution.Strips {
		strip := &p.solution.Strips[i]
		if strip.Surface == surface && strip.SpanRatio >= 0.85 && strip.LiftSlope > leastSlope {
			e := p.edge(strip, 1)
			least = min(least, e.margin(p, incidence)/strip.LiftSlope)
		}
	}
	if math.IsInf(least, 0) || least < 1e-12 {
		return 0
	}
	return least
}

// limitOf returns the greatest section lift coefficient of a strip upward (side 1) or downward (side -1, positive too), between those of
// its two stations.
func (s *Strip) limitOf(reynolds, side float64) section.Limit {
	a := s.inner.side(side).MaximumLift(reynolds, section.Roughness{})
	if s.outer == s.inner {
		return a
	}
	b := s.outer.side(side).MaximumLift(reynolds, section.Roughness{})
	out := a
	if s.outerShare > 0.5 {
		out = b
	}
	out.Value = blend(a.Value, b.Value, s.outerShare)
	out.Spread = blend(a.Spread, b.Spread, s.outerShare)
	out.Inside = a.Inside && b.Inside
	return out
}

// side returns the section upright (1) or upside down (-1).
func (f *foils) side(side float64) *section.Foil {
	if side < 0 {
		return &f.inverted
	}
	return &f.upright
}

// Limit returns the greatest section lift coefficient of the strip at a Reynolds number, between those of its two stations.
func (s *Strip) Limit(reynolds float64) section.Limit { return s.limitOf(reynolds, 1) }
