package lift

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/planform"
)

// FlapEfficiency is the part of the thin-aerofoil effectiveness a real plain flap keeps at small angles: the boundary layer and the
// gap take the rest.
//
// Source: common practice, 0.75 to 0.85 for sealed plain flaps; no source verified.
const FlapEfficiency = 0.8

// control is a control of a surface that takes part, with the share of each strip that it covers.
type control struct {
	surface, name, role string
	chordRatio          float64
	effectiveness       float64
	momentSlope         float64
	cover               []float64
}

// FlapEffectiveness returns the change of zero-lift incidence per angle of a plain flap.
//
// Formula: tau = 1 - (t - sin t)/pi; cos t = 2 E - 1, E flap chord over chord (t = pi without flap, 0 for the whole chord).
// Valid for: small angles, sealed gap, before FlapEfficiency.
// Source: thin-aerofoil theory (Glauert 1927).
func FlapEffectiveness(chordRatio float64) float64 {
	t := hingeAngle(chordRatio)
	return 1 - (t-elementary.Sin(t))/math.Pi
}

// FlapMoment returns the quarter-chord moment coefficient of the section per radian of a plain flap.
//
// Formula: cm_delta = -sin t (1 - cos t)/2; cos t = 2 E - 1.
// Valid for: as FlapEffectiveness.
// Source: thin-aerofoil theory (Glauert 1927).
func FlapMoment(chordRatio float64) float64 {
	t := hingeAngle(chordRatio)
	return -float64(0.5 * float64(elementary.Sin(t)*(1-elementary.Cos(t))))
}

// hingeAngle returns the angle of the hinge, cos t = 2 E - 1.
func hingeAngle(chordRatio float64) float64 {
	c := float64(2*max(0, min(1, chordRatio))) - 1
	return elementary.Atan2(math.Sqrt(max(0, 1-float64(c*c))), c)
}

// listControls gathers the controls of the surfaces that take part; an all-moving surface counts as one.
func listControls(surfaces []planform.Surface, l lattice) []control {
	var out []control
	for _, name := range l.names {
		s := surfaces[name.index]
		if s.AllMoving {
			c := control{surface: s.Name, name: s.Name, role: planform.ControlElevator, chordRatio: 1, effectiveness: 1}
			c.cover = l.cover(name.index, 0, 1)
			out = append(out, c)
		}
		for _, hinged := range s.Controls {
			out = append(out, newControl(s, hinged, l.cover(name.index, hinged.Inner, hinged.Outer)))
		}
	}
	return out
}

// newControl returns a hinged control with its efficiency applied.
func newControl(s planform.Surface, c planform.Control, cover []float64) control {
	return control{
		surface: s.Name, name: c.Name, role: c.Role, chordRatio: c.ChordRatio, cover: cover,
		effectiveness: float64(FlapEfficiency * FlapEffectiveness(c.ChordRatio)),
		momentSlope:   float64(FlapEfficiency * FlapMoment(c.ChordRatio)),
	}
}

// cover returns the share of each strip of a surface that lies between two places along its half span.
func (l lattice) cover(surface int, inner, outer float64) []float64 {
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
