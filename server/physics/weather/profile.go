package weather

import (
	"pitgate/server/physics/elementary"
)

// Roughness is the class of the ground upwind, by its roughness length.
type Roughness int

// Classes of ground, smoothest first.
const (
	OpenWater Roughness = iota + 1
	OpenGrass
	LowCrops
	HighCrops
	Parkland
	SuburbOrForest
)

// lengths are the roughness lengths of the classes, m.
var lengths = [...]float64{
	OpenWater:      0.0002,
	OpenGrass:      0.03,
	LowCrops:       0.10,
	HighCrops:      0.25,
	Parkland:       0.5,
	SuburbOrForest: 1.0,
}

// Length returns the roughness length of the class in m, and zero for a class that does not exist.
//
// Valid for: level ground of one kind for at least some hundred metres upwind. Source: Davenport roughness classification (open water
// 0.0002 m, open grass 0.03 m, low crops 0.10 m, high crops 0.25 m, parkland and bushes 0.5 m, suburb or forest 1.0 m).
func (r Roughness) Length() float64 {
	if r < OpenWater || r > SuburbOrForest {
		return 0
	}
	return lengths[r]
}

// StandardHeight is the height at which wind is measured and reported, m.
const StandardHeight = 10.0

// Profile is the change of mean wind with height over the ground. The zero Profile is a wind that is the same at all heights.
type Profile struct {
	// RoughnessLength of the ground upwind, m; zero or less means no change with height.
	RoughnessLength float64
	// ReferenceHeight is the height at which the wind was measured, m; zero means StandardHeight.
	ReferenceHeight float64
	// scale is one over the logarithm of reference height over roughness length, kept by NewProfile.
	scale float64
}

// NewProfile returns the profile over a class of ground for a wind measured at a height (m; zero means StandardHeight).
func NewProfile(ground Roughness, measuredAt float64) Profile {
	p := Profile{RoughnessLength: ground.Length(), ReferenceHeight: measuredAt}
	p.scale = p.inverseLogarithm()
	return p
}

// Factor returns the mean wind at a height over the ground (m) over the wind at the reference height.
//
//	u(z)/u(r) = ln(z/z0) / ln(r/z0), and 0 for z <= z0
//
// where z is the height, r the reference height and z0 the roughness length (m).
// Valid for: neutral surface layer, up to about 100 m, no hedge or bank upwind within twenty of its heights.
// Source: logarithmic wind profile, e.g. Stull, An Introduction to Boundary Layer Meteorology, section 9.7.
func (p Profile) Factor(height float64) float64 {
	if p.RoughnessLength <= 0 {
		return 1
	}
	scale := p.scale
	if scale == 0 {
		scale = p.inverseLogarithm()
	}
	if height <= p.RoughnessLength {
		return 0
	}
	return scale * elementary.Log(height/p.RoughnessLength)
}

// inverseLogarithm returns 1/ln(r/z0), zero when the reference height lies within the roughness.
func (p Profile) inverseLogarithm() float64 {
	reference := p.ReferenceHeight
	if reference <= 0 {
		reference = StandardHeight
	}
	if !(p.RoughnessLength > 0) || reference <= p.RoughnessLength {
		return 0
	}
	return 1 / elementary.Log(reference/p.RoughnessLength)
}

// PowerLawFactor returns the mean wind at a height over the wind at a reference height by the power law, for comparison with Factor.
//
//	u(z)/u(r) = (z/r)^a
//
// where a is the exponent of the ground. Valid for: z and r above zero. Source: power-law wind profile (Davenport).
func PowerLawFactor(height, reference, exponent float64) float64 {
	return elementary.Pow(height/reference, exponent)
}

// EquivalentExponent returns the exponent of the power law that has the slope of the logarithmic profile at a height (m).
//
//	a = 1 / ln(z/z0)
//
// where z0 is the roughness length (m). Valid for: z above z0. Source: logarithmic wind profile, derivative.
func EquivalentExponent(height, roughnessLength float64) float64 {
	return 1 / elementary.Log(height/roughnessLength)
}
