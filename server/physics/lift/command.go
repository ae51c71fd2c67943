package lift

import (
	"math"
	"slices"

	"pitgate/server/physics/section"
)

// widestAngle is the angle beyond which a plain flap turns nothing more, rad.
const widestAngle = math.Pi / 3

// effectiveAngle returns the angle of linear effect of a control: what is left of its own beyond 12 degrees; all of it when the whole
// surface moves.
func (s *Solution) effectiveAngle(set Setting) float64 {
	bounded := max(-widestAngle, min(widestAngle, set.Angle))
	if s.Controls[set.Index].whole {
		return bounded
	}
	kept, _ := section.FlapKept(bounded)
	return float64(kept * bounded)
}

// known returns the settings whose control exists and whose angle is a number; the others are left out.
func (s *Solution) known(settings []Setting) []Setting {
	strange := func(set Setting) bool {
		return set.Index < 0 || set.Index >= len(s.Controls) || !(math.Abs(set.Angle) <= math.MaxFloat64)
	}
	if !slices.ContainsFunc(settings, strange) {
		return settings
	}
	return slices.DeleteFunc(slices.Clone(settings), strange)
}

// SettingsLift returns the lift coefficient that controls held at angles add at one incidence.
func (s *Solution) SettingsLift(settings []Setting) float64 {
	sum := 0.0
	for _, set := range s.known(settings) {
		sum += float64(s.Controls[set.Index].LiftSlope * s.effectiveAngle(set))
	}
	return sum
}

// mostCommand is the last of the degrees of command, from -60 to 60, whose effect is asked for.
const mostCommand = 120

// commands is the effective command of every degree of command from -60 to 60, rising: the mean over the pitch controls of what each keeps of its angle,
// weighted by power. An entry is computed when it is first asked for.
type commands struct {
	solution *Solution
	pitch    []Setting
	whole    float64 // sum of the weights
	entry    [mostCommand + 1]float64
	filled   [mostCommand + 1]bool
}

// commandsOf returns the effect of pitch controls.
func (s *Solution) commandsOf(pitch []Setting) commands {
	c := commands{solution: s, pitch: pitch}
	for _, set := range pitch {
		c.whole += s.weight(set)
	}
	return c
}

// weight is the power of a control in the command.
func (s *Solution) weight(set Setting) float64 {
	return math.Abs(float64(set.Angle * s.Controls[set.Index].LiftSlope))
}

// of returns an entry.
func (c *commands) of(i int) float64 {
	if c.filled[i] {
		return c.entry[i]
	}
	sum := 0.0
	for _, set := range c.pitch {
		weight := c.solution.weight(set)
		if weight == 0 {
			continue
		}
		angle := float64(set.Angle * commandAt(i))
		sum += float64(weight*c.solution.effectiveAngle(Setting{set.Index, angle})) / set.Angle
	}
	c.entry[i], c.filled[i] = sum/max(c.whole, 1e-300), true
	return c.entry[i]
}

// commandAt returns the command of an entry, rad.
func commandAt(i int) float64 { return float64(float64(i-60)*math.Pi) / 180 }

// commandFor returns the command whose effect equals an effective one, linear between degrees, and whether the controls reach it at all.
func (c *commands) commandFor(effective float64) (command float64, reached bool) {
	if !(effective >= c.of(0) && effective <= c.of(mostCommand)) {
		return math.Copysign(widestAngle, effective), false
	}
	low, high := 0, mostCommand
	for high-low > 1 {
		if middle := (low + high) / 2; c.of(middle) <= effective {
			low = middle
		} else {
			high = middle
		}
	}
	share := 0.0
	if below, above := c.of(low), c.of(high); above > below {
		share = (effective - below) / (above - below)
	}
	return blend(commandAt(low), commandAt(high), share), true
}

// effectOf returns the effective command of a command within 60 degrees.
func (c *commands) effectOf(command float64) float64 {
	place := max(0, min(mostCommand, float64(command*180)/math.Pi+60))
	i := min(int(place), mostCommand-1)
	return blend(c.of(i), c.of(i+1), place-float64(i))
}

// throws returns the least and greatest angle of a control, trailing edge down positive, rad.
func (c ControlEffect) throws() (low, high float64) {
	if !(c.ThrowUp > 0) && !(c.ThrowDown > 0) {
		return -widestAngle, widestAngle
	}
	return -max(0, c.ThrowUp), max(0, c.ThrowDown)
}

// throwsOf returns the least and greatest command that keeps every pitch control within its throws, rad.
func (s *Solution) throwsOf(pitch []Setting) (low, high float64) {
	low, high = -widestAngle, widestAngle
	for _, set := range pitch {
		up, down := s.Controls[set.Index].throws()
		switch {
		case set.Angle > 0:
			low, high = max(low, up/set.Angle), min(high, down/set.Angle)
		case set.Angle < 0:
			low, high = max(low, down/set.Angle), min(high, up/set.Angle)
		}
	}
	return low, high
}
