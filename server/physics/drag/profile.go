package drag

import (
	"math"

	"pitgate/server/physics/planform"
	"pitgate/server/physics/section"
)

// SectionStrip is one strip of a lifting surface with what it carries.
type SectionStrip struct {
	Section   planform.Section
	Area      float64 // of the planform, both sides together, m2
	Reynolds  float64 // on its chord
	BasicLift float64 // section lift coefficient at zero incidence of the model
	LiftSlope float64 // section lift coefficient per rad of the model's incidence
}

// LiftLine is the lift of the whole model: its slope per rad and the incidence without lift, rad.
type LiftLine struct{ Slope, ZeroIncidence float64 }

// Lift coefficients at which the least drag of a section is looked for.
const (
	leastFrom  = -0.4
	leastStep  = 0.2
	leastCount = 7
)

// ProfileRise returns by how much the sections' profile drag rises above its least value, as a coefficient on the reference area, at each of
// the model's lift coefficients, in their order: the Profile of a Polar.
//
// Formula: (1/S) sum [cd(cl_i) - least cd_i] S_i; where cl_i = basic + slope (CL/a + incidence without lift), a lift slope of the model; a symmetrical section drags
// the same either way up.
// Valid for: attached flow; the build-up holds the least value. Empty without slope or reference area.
// Source: strips of the lattice with section data.
func ProfileRise(strips []SectionStrip, line LiftLine, referenceArea float64, rough section.Roughness, lifts []float64) []PolarPoint {
	if !(referenceArea > 0) || !(line.Slope > 0) {
		return nil
	}
	points := make([]PolarPoint, len(lifts))
	for i, cl := range lifts {
		points[i].Lift = cl
	}
	for i := range strips {
		s := &strips[i]
		foil := section.Prepare(s.Section)
		least := leastDrag(foil, s.Reynolds, rough).Value
		share := usable(s.Area) / referenceArea
		for j, cl := range lifts {
			incidence := cl/line.Slope + line.ZeroIncidence
			local := s.BasicLift + float64(s.LiftSlope*incidence)
			if foil.ZeroLift == 0 {
				local = math.Abs(local)
			}
			points[j].Drag += float64(share * max(0, foil.ProfileDrag(s.Reynolds, local, rough).Value-least))
		}
	}
	return points
}

// leastDrag returns the least profile drag of a section over its lift, never below that of the smooth skin: tape may shorten a laminar
// bubble, but no finish is counted on for that.
func leastDrag(foil section.Foil, reynolds float64, rough section.Roughness) section.Drag {
	best := section.Drag{Value: math.Inf(1)}
	for i := range leastCount {
		cl := leastFrom + float64(float64(i)*leastStep)
		own := foil.ProfileDrag(reynolds, cl, rough)
		if clean := foil.ProfileDrag(reynolds, cl, section.Roughness{}); clean.Value > own.Value {
			own.Value = clean.Value
		}
		if own.Value < best.Value {
			best = own
		}
	}
	return best
}

// sectionDrag returns drag over dynamic pressure of the outer skin of a surface at its least, from section data, m2, and one standard
// deviation over it; false when a section or its Reynolds number lies outside the data.
//
// Formula: sum over panels of the mean of both ends' least cd times panel area.
// Valid for: Re 4e4 to 5e6.
// Source: section data, see section.ProfileDrag.
func sectionDrag(s planform.Surface, finish string, reynoldsPerMeter float64) (area, spread float64, inside bool) {
	rough := section.Roughness{Finish: finish}
	ends := make([]section.Drag, len(s.Stations))
	for i, st := range s.Stations {
		ends[i] = leastDrag(section.Prepare(st.Section), float64(reynoldsPerMeter*st.Chord), rough)
		if !ends[i].Inside {
			return 0, 0, false
		}
	}
	deviation := 0.0
	for i := 1; i < len(s.Stations); i++ {
		a, b := s.Stations[i-1], s.Stations[i]
		dy, dz := b.Y-a.Y, b.Z-a.Z
		panel := float64(float64(s.Sides()*0.5) * float64(math.Sqrt(float64(dy*dy)+float64(dz*dz))*(a.Chord+b.Chord)))
		area += float64(0.5 * float64((ends[i-1].Value+ends[i].Value)*panel))
		deviation += float64(0.5 * float64((ends[i-1].Spread+ends[i].Spread)*panel))
	}
	if !(area > 0) || math.IsInf(area, 0) {
		return 0, 0, false
	}
	return area, deviation / area, true
}
