package radio

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Gains of ideal antennas against an isotropic one, dB. Source: textbooks of antennas.
const (
	HalfWaveGain    = 2.15
	ShortDipoleGain = 1.76
)

// NullFloor is how deep an installed wire's null goes below its peak, dB: scatter by the model fills the ideal null. Judgement, 20 to 25.
const NullFloor = 20.0

// Vector is a direction or an axis in the model; its length does not count.
type Vector struct {
	X, Y, Z float64
}

// dot returns the inner product.
func (v Vector) dot(w Vector) float64 {
	return float64(v.X*w.X) + float64(v.Y*w.Y) + float64(v.Z*w.Z)
}

// cross returns the outer product.
func (v Vector) cross(w Vector) Vector {
	return Vector{float64(v.Y*w.Z) - float64(v.Z*w.Y), float64(v.Z*w.X) - float64(v.X*w.Z), float64(v.X*w.Y) - float64(v.Y*w.X)}
}

// unit returns the vector with length one, x when it has none.
func (v Vector) unit() Vector {
	size := math.Sqrt(v.dot(v))
	if !(size > 0) || math.IsInf(size, 0) {
		return Vector{X: 1}
	}
	return Vector{v.X / size, v.Y / size, v.Z / size}
}

// Axis returns the direction of an azimuth about z from x and an elevation above the x-y plane, rad.
//
// Valid for: any angles. Source: spherical coordinates.
func Axis(azimuth, elevation float64) Vector {
	level := elementary.Cos(elevation)
	return Vector{float64(level * elementary.Cos(azimuth)), float64(level * elementary.Sin(azimuth)), elementary.Sin(elevation)}
}

// HalfWavePattern returns the power pattern of a half-wave dipole, 0 to 1: (cos(pi/2 c)/s)^2, c = cos(t), s = sin(t).
//
// where cosine is c, of the angle t between the wire and the direction. Valid for: thin straight wire alone in space; sleeve antennas of receivers are
// close to it. Source: textbooks of antennas.
func HalfWavePattern(cosine float64) float64 {
	return square(halfWaveShape(cosine)) * (1 - square(clamp(cosine, -1, 1)))
}

// halfWaveShape returns the amplitude pattern over the sine: cos(pi/2 c)/s^2, from 1 at right angles to pi/4 along the wire.
func halfWaveShape(cosine float64) float64 {
	c := clamp(cosine, -1, 1)
	if s := 1 - square(c); s > 1e-9 {
		return elementary.Cos(math.Pi/2*c) / s
	}
	return math.Pi / 4
}

// ShortDipolePattern returns the power pattern of a wire much shorter than the wavelength, 0 to 1: sin^2(t).
//
// where cosine is that of the angle t between wire and direction. Valid for: wires below a tenth of a wavelength. Source: textbooks of antennas.
func ShortDipolePattern(cosine float64) float64 { return 1 - square(clamp(cosine, -1, 1)) }

// PolarizationLoss returns what crossed wires lose, dB: -20 log10 |cos(a)|, at most NullFloor.
//
// where angle is a, between the field and the wire, both across the path (rad). Valid for: linear polarization. Source: Malus' law.
func PolarizationLoss(angle float64) float64 {
	return floored(square(elementary.Cos(angle)))
}

// floored returns the loss of a ratio of powers, dB, held below NullFloor.
func floored(ratio float64) float64 {
	if !(ratio > Ratio(-NullFloor)) {
		return NullFloor
	}
	return math.Max(0, -Decibels(ratio))
}

// CircularToLinear is what a linear antenna loses to a circular one, dB. Source: half the power.
const CircularToLinear = 3.0103

// Spacing returns the least distance of two antennas that fade apart from one another, m: half a wavelength. Source: common practice.
func Spacing(frequency float64) float64 { return Wavelength(frequency) / 2 }

// PatternLoss returns what patterns alone take in a direction from the best of several half-wave antennas, dB from 0 to NullFloor.
//
// where axes are those of the antennas and direction that of the transmitter, both in the model. No axis gives NullFloor.
// Valid for: fields that suit each antenna. Source: HalfWavePattern.
func PatternLoss(axes []Vector, direction Vector) float64 {
	best, d := 0.0, direction.unit()
	for _, axis := range axes {
		best = math.Max(best, HalfWavePattern(axis.unit().dot(d)))
	}
	return floored(best)
}

// VerticalPart returns the greatest share of an axis that is upright, 0 to 1: antennas that all lie flat share a null for an upright transmitter
// antenna however they are turned. Below one half (30 degrees) is little. Valid for: level flight. Source: projection.
func VerticalPart(axes []Vector) float64 {
	most := 0.0
	for _, axis := range axes {
		most = math.Max(most, math.Abs(axis.unit().Z))
	}
	return most
}

// Between returns the greatest angle between any two axes, rad from 0 to a quarter turn; one antenna alone gives 0.
//
// Valid for: any axes. Source: inner product.
func Between(axes []Vector) float64 {
	most := 0.0
	for i := range axes {
		for j := range i {
			a, b := axes[i].unit(), axes[j].unit()
			n := a.cross(b)
			most = math.Max(most, elementary.Atan2(math.Sqrt(n.dot(n)), math.Abs(a.dot(b))))
		}
	}
	return most
}
