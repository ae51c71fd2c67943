package structure

import (
	"pitgate/server/physics/loads"
	"pitgate/server/physics/stability"
)

// BredtShear returns the shear stress in the wall of a closed cell, Pa.
//
// Formula: t = T/(2 A w); where T torque, N m, A area within the middle of the wall, m2, w wall, m.
// Valid for: thin walls of one closed cell.
// Source: Bredt's first formula; Megson, Aircraft Structures for Engineering Students, chapter 18.
func BredtShear(torque, enclosed, wall float64) float64 { return torque / (2 * enclosed * wall) }

// BredtWall returns the wall that a shear stress and a twist ask for, m: the greater of both.
//
// Formula: w = max(T/(2 A t), T s l/(4 A^2 G f)); where t allowable shear, Pa, s length round the cell, l of it, m, G shear modulus, Pa, f allowed twist, rad.
// Valid for, source: BredtShear and Bredt's second formula.
func BredtWall(torque, enclosed, around, length, shear, shearModulus, twist float64) float64 {
	strength := torque / float64(2*enclosed*shear)
	stiffness := float64(torque*around) * length / (4 * float64(enclosed*enclosed) * float64(shearModulus*twist))
	return max(strength, stiffness)
}

// AssessBox returns what a closed box stands of a twist, N m over the load factor. knockDown as Part. Errors name the impossible field.
//
// Formula: BredtShear against the allowable shear of the skin; as ModeSkinBuckling the wider wall against PlateBucklingStress in shear: wrinkles there cost
// stiffness before strength.
// Valid for: boxes without cut-outs.
// Source: as named there.
func AssessBox(box stability.Box, material Material, knockDown float64, torsion loads.Line) (shear, wrinkles Check, err error) {
	err = checkPositive(named{"torsionBox.width", box.Width}, named{"torsionBox.depth", box.Depth}, named{"torsionBox.wall", box.Wall},
		named{"modulus", material.Modulus}, named{"shearModulus", material.ShearModulus}, named{"shear", material.Shear})
	if err != nil {
		return Check{}, Check{}, err
	}
	if err := checkFinite(named{"torsion", torsion.AtZero}, named{"torsion", torsion.PerLoad}); err != nil {
		return Check{}, Check{}, err
	}
	allow, err := material.Allow(knockDown)
	if err != nil {
		return Check{}, Check{}, err
	}
	stress := torsion.Times(BredtShear(1, float64(box.Width*box.Depth), box.Wall))
	shear = check(0, ModeShear, stress, allow.Shear, allow.Shear)
	limit := PlateBucklingStress(PlateInShear, plateModulus(material), box.Wall, max(box.Width, box.Depth))
	wrinkles = check(0, ModeSkinBuckling, stress, limit, limit)
	return shear, wrinkles, checkResult(stress.AtZero, stress.PerLoad, limit)
}

// TipDeflection returns how far a cantilever's tip moves, m, from bending moments (N m) and stiffnesses (N m2) at places from root to tip (m). Errors name the
// impossible field.
//
// Formula: d = integral of M/(E I) (s - y) dy by trapezia; where s the last place.
// Valid for: small slopes; enough places where M/(E I) bends.
// Source: Mohr's second theorem.
func TipDeflection(places, moments, stiffness []float64) (float64, error) {
	if err := checkPositive(named{"count of places less one", float64(len(places) - 1)}); err != nil {
		return 0, err
	}
	short := float64(min(len(moments), len(stiffness)) - len(places))
	if err := checkNotNegative(named{"moments and stiffness less places", short}); err != nil {
		return 0, err
	}
	tip, sum, before := places[len(places)-1], 0.0, 0.0
	for i, y := range places {
		if err := checkPositive(named{"stiffness", stiffness[i]}); err != nil {
			return 0, err
		}
		here := float64(moments[i] / stiffness[i] * (tip - y))
		if i > 0 {
			if err := checkNotNegative(named{"places less the one before", y - places[i-1]}); err != nil {
				return 0, err
			}
			sum += float64(0.5 * (y - places[i-1]) * (here + before))
		}
		before = here
	}
	return sum, checkResult(sum)
}

// BoomLoad returns the load at the root of a tail boom: the tail's lift and the weight of tail and boom times the load factor, both at their arms.
//
// Formula: V = F - n (m_t + m_b) g, M = F l - n (m_t + m_b/2) g l; where F lift of the tail, up, l arm from the boom's root to the tail's quarter chord, m.
// Valid for: an even boom; the tail's weight at the same arm.
// Source: statics.
func BoomLoad(tailLift loads.Line, arm, tailMass, boomMass float64) loads.Load {
	weight := loads.Line{PerLoad: float64(-(tailMass + boomMass) * loads.StandardGravity)}
	bending := loads.Line{PerLoad: float64(-(tailMass + float64(0.5*boomMass)) * loads.StandardGravity)}
	return loads.Load{Shear: tailLift.Plus(weight), Bending: tailLift.Plus(bending).Times(arm)}
}
