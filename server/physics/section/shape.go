package section

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/planform"
)

// Figures are the measures of a section, all over chord.
type Figures struct {
	Thickness             float64 // greatest thickness
	ThicknessPosition     float64 // its place
	Camber                float64 // greatest camber, negative when the mean line lies below the chord
	CamberPosition        float64 // its place
	NoseRadius            float64 // 0 = not known
	NoseRise              float64 // rise of the half thickness from 0.15 % to 6 % of the chord; 0 = not known
	TrailingEdgeThickness float64
	TrailingEdgeAngle     float64 // between the two sides at the trailing edge, rad
	Measured              bool    // read from the outline
}

// Shape returns the measures of a section: from its outline when it has one, else from the family.
//
// Formula: four-digit r = 1.1019 t^2, dy = 0.26 t, edge 0.021 t, edge angle 2 atan(1.169 t).
// Valid for: outlines that pass Check; figures of plates and sheets are as given.
// Source: NACA Report 460 (thickness polynomial); DATCOM 4.1.1 for dy (from memory).
func Shape(s planform.Section) Figures { return Prepare(s).Shape }

// familyShape returns the measures of a section without outline.
func familyShape(s planform.Section) Figures {
	camber, position := s.EffectiveCamber()
	t := max(0, s.EffectiveThickness())
	out := Figures{Thickness: t, ThicknessPosition: 0.3, Camber: camber, CamberPosition: position}
	if s.Family == planform.FamilyCurvedSheet && camber == 0 {
		out.Camber = assumedSheetCamber
	}
	if s.Family == planform.FamilyFlatPlate || s.Family == planform.FamilyCurvedSheet {
		out.ThicknessPosition, out.TrailingEdgeThickness = 0.5, t
		return out
	}
	out.NoseRadius = float64(float64(noseRadiusFactor*t) * t)
	out.NoseRise = float64(noseRiseFactor * t)
	out.TrailingEdgeThickness = float64(0.021 * t)
	out.TrailingEdgeAngle = float64(2 * elementary.Atan(float64(1.169*t)))
	return out
}

const (
	noseRadiusFactor   = 1.1019 // of the square of the thickness, NACA Report 460
	noseRiseFactor     = 0.26   // of the thickness
	assumedSheetCamber = 0.03   // of a curved sheet whose camber is not said: a shallow one
)

// Foil is a section made ready: its outline is read once, so that limits at many Reynolds numbers cost little.
type Foil struct {
	Shape     Figures
	ZeroLift  float64 // zero-lift angle, rad
	Moment    float64 // about the quarter chord, nose up positive
	family    string
	given     float64 // greatest lift the builder knows
	estimated bool    // the figures come from an outline, the tables are those of the nearest family
}

// Prepare reads a section once. An outline that does not pass Check is left aside: the family's figures are used.
func Prepare(s planform.Section) Foil {
	f := Foil{family: s.Family, given: s.ClMax}
	if len(s.Outline) == 0 || Check(s.Outline) != nil {
		f.Shape, f.estimated = familyShape(s), s.Family == planform.FamilyOwn
		f.ZeroLift, f.Moment = closedForm(f.family, f.Shape)
		return f
	}
	m := newMeasured(s.Outline)
	f.Shape, f.estimated = m.shape(), true
	f.ZeroLift, f.Moment = m.thinAerofoil()
	f.family = nearestFamily(f.Shape, f.Moment)
	return f
}

// nearestFamily returns the family whose tables serve an outline: a plate or sheet up to 4 % thick with a nose that is no four-digit
// nose, a reflexed section when its mean line has less than a quarter of the moment of a plain arc, else four-digit.
func nearestFamily(f Figures, moment float64) string {
	sharp := f.NoseRise < float64(0.5*noseRiseFactor*f.Thickness)
	if f.Thickness <= 0.04 || (sharp && f.Thickness < 0.06) {
		if math.Abs(f.Camber) < 0.01 {
			return planform.FamilyFlatPlate
		}
		return planform.FamilyCurvedSheet
	}
	if f.Camber > 0.005 && moment > -float64(0.25*float64(math.Pi*f.Camber)) {
		return planform.FamilyReflexed
	}
	return planform.FamilyFourDigit
}

// Inverted returns a section upside down; a greatest lift the builder gave holds upright only and is dropped.
func Inverted(s planform.Section) planform.Section {
	camber, position := s.EffectiveCamber()
	out := planform.Section{Family: s.Family, Thickness: s.EffectiveThickness(), Camber: -camber, CamberPosition: position}
	if s.Family == planform.FamilyCurvedSheet && camber == 0 {
		out.Camber = -assumedSheetCamber
	}
	for i := len(s.Outline) - 1; i >= 0; i-- {
		out.Outline = append(out.Outline, planform.OutlinePoint{X: s.Outline[i].X, Z: -s.Outline[i].Z})
	}
	return out
}
