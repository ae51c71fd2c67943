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

// commands is the effective command of every degree of command from -60 to 60, rising.
type commands [121]float64

// commandsOf tabulates the effect of pitch controls: the mean over the controls of what each keeps of its angle, weighted by power.
func (s *Solution) commandsOf(pitch []Setting) *commands {
	out, whole := &commands{}, 0.0
	for _, set := range pitch {
		weight := math.Abs(float64(set.Angle * s.Controls[set.Index].LiftSlope))
		if weight == 0 {
			continue
		}
		whole += weight
		for i := range out {
			angle := float64(set.Angle * commandAt(i))
			out[i] += float64(weight*s.effectiveAngle(Setting{set.Index, angle})) / set.Angle
		}
	}
	for i := range out {
		out[i] /= max(whole, 1e-300)
	}
	return out
}

// commandAt returns the command of an entry, rad.
func commandAt(i int) float64 { return float64(float64(i-60)*math.Pi) / 180 }

// commandFor returns the command whose effect equals an effective one, linear between degrees, and whether the controls reach it at all.
func (c *commands) commandFor(effective float64) (command float64, reached bool) {
	if !(effective >= c[0] && effective <= c[len(c)-1]) {
		return math.Copysign(widestAngle, effective), false
	}
	low, high := 0, len(c)-1
	for high-low > 1 {
		if middle := (low + high) / 2; c[middle] <= effective {
			low = middle
		} else {
			high = middle
		}
	}
	share := 0.0
	if c[high] > c[low] {
		share = (effective - c[low]) / (c[high] - c[low])
	}
	return blend(commandAt(low), commandAt(high), share), true
}

// effectOf returns the effective command of a command within 60 degrees.
func (c *commands) effectOf(command float64) float64 {
	place := max(0, min(float64(len(c)-1), float64(command*180)/math.Pi+60))
	i := min(int(place), len(c)-2)
	return blend(c[i], c[i+1], place-float64(i))
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
