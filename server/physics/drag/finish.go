package drag

import "pitgate/server/physics/elementary"

// Finishes of the skin.
const (
	FinishPolished   = "polished"
	FinishSmooth     = "smooth"
	FinishOpenFrame  = "covered_open_structure"
	FinishTapedFoam  = "taped_foam"
	criticalReynolds = 5e5
	bodyTransition   = 0.5
)

// finishClass is what one finish does to the boundary layer.
type finishClass struct {
	transition float64 // fraction of the length of a surface that stays laminar
	factor     float64 // what steps, seams and weave multiply friction by
	grain      float64 // height of equivalent sand, m
}

// The grain of a polished and a painted skin is that of smooth moulded composite and of smooth paint, that of a covered structure that of
// dull paint (Raymer, Aircraft Design: A Conceptual Approach, Table 12.5); that of taped foam is judgement.
var (
	finishClasses = map[string]finishClass{
		FinishPolished:  {0.5, 1, 0.52e-6},
		FinishSmooth:    {0.3, 1, 6.34e-6},
		FinishOpenFrame: {0.1, 1.1, 10.15e-6},
		FinishTapedFoam: {0.05, 1.2, 50e-6},
	}
	unknownFinish = finishClasses[FinishOpenFrame]
)

// classOf returns the class of a finish; an unknown one counts as covered open structure.
func classOf(finish string) finishClass {
	if class, ok := finishClasses[finish]; ok {
		return class
	}
	return unknownFinish
}

// Transition returns where the boundary layer of a surface turns turbulent, as a fraction of the length, by finish.
//
// Valid for: models in free air: polished 0.5, smooth 0.3, covered open structure 0.1, taped foam 0.05; not beyond a run of Re 5e5, where
// transition comes by itself. An unknown finish counts as covered open structure.
// Source: common practice, no source.
func Transition(finish string, reynolds float64) float64 {
	return naturalTransition(classOf(finish).transition, reynolds)
}

// BodyTransition returns where the boundary layer of a body turns turbulent, as a fraction of its length: half as far as on a surface, as
// hatches, canopy and wing root end the laminar run.
//
// Valid for: as Transition.
// Source: Raymer, Aircraft Design: A Conceptual Approach, table of laminar runs (fuselage half of wing), from memory.
func BodyTransition(finish string, reynolds float64) float64 {
	return naturalTransition(float64(bodyTransition*classOf(finish).transition), reynolds)
}

// naturalTransition ends a laminar run at Re 5e5.
func naturalTransition(fraction, reynolds float64) float64 {
	if reynolds > 0 {
		return min(fraction, criticalReynolds/reynolds)
	}
	return fraction
}

// RoughnessFactor returns what steps, seams and a rough skin multiply friction by.
//
// Valid for: model Reynolds numbers: polished and smooth 1, covered open structure 1.1, taped foam 1.2, unknown 1.1.
// Source: judgement, no source.
func RoughnessFactor(finish string) float64 { return classOf(finish).factor }

// SandGrain returns the height of sand that roughens turbulent flow as much as a finish, m.
//
// Valid for: paint and composite skins; taped foam by judgement.
// Source: Raymer, Aircraft Design: A Conceptual Approach, Table 12.5.
func SandGrain(finish string) float64 { return classOf(finish).grain }

// CutoffReynolds returns the Reynolds number beyond which turbulent friction of a rough skin falls no more.
//
// Formula: Re = 38.21 (l/k)^1.053; where l length, k height of the grain, m.
// Valid for: Mach below 0.9; no limit without length or grain.
// Source: Raymer, Aircraft Design: A Conceptual Approach, Eq. 12.28.
func CutoffReynolds(length, grain float64) float64 {
	if !(length > 0) || !(grain > 0) {
		return highestReynolds
	}
	return min(highestReynolds, float64(38.21*elementary.Pow(length/grain, 1.053)))
}
