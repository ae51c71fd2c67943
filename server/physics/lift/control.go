package lift

import (
	"pitgate/server/physics/planform"
	"pitgate/server/physics/section"
)

// control is a control of a surface that takes part, with the share of each strip that it covers.
type control struct {
	surface, name, role string
	chordRatio          float64 // of a hinged part, which raises the greatest lift of its section; 0 of a whole surface
	whole               bool
	effectiveness       float64
	momentSlope         float64
	throwUp, throwDown  float64
	cover               []float64
}

// listControls gathers the controls of the surfaces that take part; an all-moving surface counts as one.
func listControls(surfaces []planform.Surface, l *lattice) []control {
	var out []control
	for _, name := range l.names {
		s := surfaces[name.index]
		if s.AllMoving {
			c := control{surface: s.Name, name: s.Name, role: allMovingRole(s.Role), effectiveness: 1, whole: true}
			c.cover = l.cover(name.index, 0, 1)
			out = append(out, c)
		}
		for _, hinged := range s.Controls {
			out = append(out, newControl(s, hinged, l.cover(name.index, hinged.Inner, hinged.Outer)))
		}
	}
	return out
}

// allMovingRole returns the role of a surface that turns as a whole.
func allMovingRole(surface string) string {
	switch surface {
	case planform.RoleFin:
		return planform.ControlRudder
	case planform.RoleVTail:
		return planform.ControlRuddervator
	}
	return planform.ControlElevator
}

// lateralControls gathers the controls that are moved opposite on the two sides, and rudders.
func lateralControls(surfaces []planform.Surface, l *lattice) []control {
	var out []control
	for _, c := range listControls(surfaces, l) {
		switch c.role {
		case planform.ControlAileron, planform.ControlElevon, planform.ControlFlaperon, planform.ControlRuddervator, planform.ControlRudder:
			out = append(out, c)
		}
	}
	return out
}

// sideColumn returns the right-hand side of a lateral control: starboard trailing edge up and port one down, on fins to port.
func (l *lattice) sideColumn(c control) []float64 {
	column := make([]float64, len(l.panels))
	for i := range l.panels {
		strip := &l.strips[l.panels[i].strip]
		column[i] = float64(float64(c.effectiveness*c.cover[l.panels[i].strip]) * strip.sideways(l.panels[i].normalY))
	}
	return column
}

// sideways returns 1 where a lateral control takes lift from a strip along its normal, -1 where it adds lift.
func (s *latticeStrip) sideways(normalY float64) float64 {
	upright := s.Role == planform.RoleFin || s.Role == planform.RoleWinglet
	if upright && normalY > 0 || !upright && s.middle.y < 0 {
		return -1
	}
	return 1
}

// newControl returns a hinged control with its efficiency applied.
func newControl(s planform.Surface, c planform.Control, cover []float64) control {
	return control{
		surface: s.Name, name: c.Name, role: c.Role, chordRatio: c.ChordRatio, cover: cover,
		throwUp: c.ThrowUp, throwDown: c.ThrowDown,
		effectiveness: float64(section.FlapEfficiency * section.FlapEffectiveness(c.ChordRatio)),
		momentSlope:   float64(section.FlapEfficiency * section.FlapMoment(c.ChordRatio)),
	}
}

// cover returns the share of each strip of a surface that lies between two places along its half span.
func (l *lattice) cover(surface int, inner, outer float64) []float64 {
	out := make([]float64, len(l.strips))
	for i := range l.strips {
		s := &l.strips[i]
		if s.surface == surface {
			out[i] = overlap(inner, outer, s.inner, s.outer)
		}
	}
	return out
}

// overlap returns the share of the interval from low to high that lies between inner and outer; an interval without length counts whole
// when it lies inside.
func overlap(inner, outer, low, high float64) float64 {
	if high-low > 1e-9 {
		return max(0, min(outer, high)-max(inner, low)) / (high - low)
	}
	if low >= inner && low <= outer {
		return 1
	}
	return 0
}
