package stability

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Fin is a vertical tail as it steers against sideslip.
type Fin struct {
	LiftSlope float64 // per rad, on its own area, end plates counted
	Area      float64 // of all fins, m2
	Arm       float64 // from the balance point aft to its aerodynamic centre, m
	// Sidewash is SidewashFactor: pressure ratio times (1 + sidewash slope); 1 where unknown.
	Sidewash float64
}

// FinYaw returns Cn with sideslip of the fin, per rad, positive stable.
//
// Formula: a_v f S_v l/(S b).
// Valid for: attached flow, slip to some 10 degrees; 0 without area or span.
// Source: Nelson, Flight Stability and Automatic Control, chapter 2.
func FinYaw(fin Fin, area, span float64) float64 {
	return float64(float64(fin.LiftSlope*fin.Sidewash) * TailVolume(fin.Area, fin.Arm, area, span))
}

// SidewashFactor returns the pressure ratio at the fin times (1 + sidewash slope).
//
// Formula: 0.724 + 3.06 (S_v/S)/(1 + cos sweep) + 0.4 z/d + 0.009 A; where sweep of the wing's quarter chord, z depth of the wing's root quarter
// chord under the body's axis, d depth of the body there.
// Valid for: one fin on a body, subsonic.
// Source: DATCOM, as in Nelson, Flight Stability and Automatic Control, chapter 2, and Raymer, Aircraft Design, chapter 16.
func SidewashFactor(finAreaRatio, sweep, wingDepthRatio, aspect float64) float64 {
	side := float64(3.06*finAreaRatio) / (1 + max(0, elementary.Cos(sweep)))
	return 0.724 + side + float64(0.4*wingDepthRatio) + float64(0.009*aspect)
}

// BodyYaw returns Cn with sideslip of a body, per rad, negative: destabilising.
//
// Formula: -1.3 volume/(S b) (depth/width).
// Valid for: usual bodies under a wing; some 30 %.
// Source: Raymer, Aircraft Design: A Conceptual Approach, chapter 16.
func BodyYaw(volume, depth, width, area, span float64) float64 {
	if !(area > 0) || !(span > 0) || !(width > 0) {
		return 0
	}
	return -float64(float64(1.3*volume/float64(area*span)) * (depth / width))
}

// WingYaw returns Cn with sideslip of a wing, per rad.
//
// Formula: CL^2 (1/(4 pi A) - tan L/(pi A (A + 4 cos L)) (cos L - A/2 - A^2/(8 cos L) + 6 d sin L/A)); where L quarter-chord sweep, d distance of the
// wing's aerodynamic centre aft of the balance point over the mean chord.
// Valid for: sweep below 60 degrees; 0 without aspect ratio.
// Source: Raymer, Aircraft Design: A Conceptual Approach, chapter 16 (DATCOM).
func WingYaw(lift, aspect, sweep, centreBehind float64) float64 {
	cosine := elementary.Cos(sweep)
	if !(aspect > 0) || !(cosine > 0) {
		return 0
	}
	bracket := cosine - float64(0.5*aspect) - float64(aspect*aspect)/float64(8*cosine) + float64(float64(6*centreBehind)*elementary.Sin(sweep))/aspect
	swept := elementary.Tan(sweep) / float64(math.Pi*aspect*(aspect+float64(4*cosine)))
	return float64(float64(lift*lift) * (1/float64(4*math.Pi*aspect) - float64(swept*bracket)))
}

// FinStiffness is Cn with sideslip by its parts, per rad.
type FinStiffness struct{ Fin, Body, Wing float64 }

// Total returns the sum of the parts, per rad; positive turns the nose into the wind.
func (f FinStiffness) Total() float64 { return f.Fin + f.Body + f.Wing }

// FinAreaFor returns the fin area (m2) that brings the total to a target, other parts and the fin's slope, arm and sidewash unchanged.
//
// It returns false when the fin has no arm or slope to do it with.
// Formula: S_v = (target - body - wing) S b/(a_v f l); 0 when no fin is needed.
// Valid for: small changes: slope and sidewash move with the area.
// Source: FinYaw solved for the area.
func FinAreaFor(target float64, parts FinStiffness, fin Fin, area, span float64) (float64, bool) {
	needed := float64((target-parts.Body-parts.Wing)*float64(area*span)) / float64(float64(fin.LiftSlope*fin.Sidewash)*fin.Arm)
	if target <= parts.Body+parts.Wing {
		return 0, true
	}
	if !finite(needed) || needed < 0 {
		return 0, false
	}
	return needed, true
}
