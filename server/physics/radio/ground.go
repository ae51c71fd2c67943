package radio

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Polarization is the direction of the electric field against the ground.
type Polarization int

// Polarizations.
const (
	// Vertical is the usual one: a transmitter's antenna held upright.
	Vertical Polarization = iota + 1
	// Horizontal reflects almost wholly at every low angle.
	Horizontal
)

// Ground is a reflecting plane.
type Ground struct {
	Permittivity float64 // relative, 1 and up; 1 with no conductivity reflects nothing
	Conductivity float64 // S/m
	Roughness    float64 // standard deviation of its height, m
}

// soil is a kind of ground whose constants are powers of the frequency in GHz.
type soil struct {
	permittivity, permittivityPower float64 // at 1 GHz, relative
	conductivity, conductivityPower float64 // at 1 GHz, S/m
}

// soils that are very dry, medium dry and wet.
//
// Source: Recommendation ITU-R P.2040, table of material properties, after the curves of ITU-R P.527.
var (
	drySoil    = soil{3, 0, 0.00015, 2.52}
	mediumSoil = soil{15, -0.1, 0.035, 1.63}
	wetSoil    = soil{30, -0.4, 0.15, 1.30}
)

// at returns the ground at a frequency (Hz).
//
//	er = a f^b,  sigma = c f^d
//
// where f is the frequency in GHz. Valid for: 1 to 10 GHz; below, the permittivity stays that at 1 GHz, as the curves of ITU-R P.527 do.
// Source: Recommendation ITU-R P.2040.
func (s soil) at(frequency float64) Ground {
	f := frequency / 1e9
	return Ground{
		Permittivity: s.permittivity * elementary.Pow(max(1, f), s.permittivityPower),
		Conductivity: s.conductivity * elementary.Pow(f, s.conductivityPower),
	}
}

// DryGround returns very dry ground at a frequency (Hz).
func DryGround(frequency float64) Ground { return drySoil.at(frequency) }

// MediumGround returns medium dry ground, ordinary soil under short grass, at a frequency (Hz).
func MediumGround(frequency float64) Ground { return mediumSoil.at(frequency) }

// WetGround returns wet ground at a frequency (Hz).
func WetGround(frequency float64) Ground { return wetSoil.at(frequency) }

// vacuumPermittivity is in F/m.
const vacuumPermittivity = 8.8541878128e-12

// Reflection is a complex coefficient.
type Reflection struct {
	Real, Imaginary float64
}

// Magnitude returns the coefficient's absolute value, from 0 to 1.
func (r Reflection) Magnitude() float64 { return math.Sqrt(square(r.Real) + square(r.Imaginary)) }

// PerfectReflection turns the phase by half a turn and loses nothing: the limit of every ground at grazing incidence.
var PerfectReflection = Reflection{Real: -1}

// quotient returns (a+ib)/(c+id).
func quotient(a, b, c, d float64) Reflection {
	n := square(c) + square(d)
	return Reflection{(float64(a*c) + float64(b*d)) / n, (float64(b*c) - float64(a*d)) / n}
}

// Reflect returns the coefficient of reflection of plane ground.
//
//	G = (sin(psi) - X) / (sin(psi) + X), X = sqrt(e - cos^2(psi)) horizontal, the same over e vertical
//	e = er - i sigma/(2 pi f e0), times exp(-2 (2 pi s sin(psi)/lambda)^2) for roughness s
//
// where grazing is psi, the angle from the plane (rad, 0 to a quarter turn), frequency f is in Hz. Valid for: plane waves, roughness below a
// wavelength. Source: Fresnel's coefficients as in Recommendation ITU-R P.2040 and textbooks of propagation, recalled; roughness by Ament 1953, recalled.
func (g Ground) Reflect(frequency, grazing float64, polarization Polarization) Reflection {
	sine, cosine := elementary.Sin(grazing), elementary.Cos(grazing)
	er, ei := g.Permittivity, -g.Conductivity/(2*math.Pi*frequency*vacuumPermittivity)
	xr, xi := rootBelow(er-square(cosine), ei)
	if polarization != Horizontal {
		x := quotient(xr, xi, er, ei)
		xr, xi = x.Real, x.Imaginary
	}
	out := Reflection{Real: -1}
	if sine > 0 {
		out = quotient(sine-xr, -xi, sine+xr, xi)
	}
	factor := elementary.Exp(-2 * square(2*math.Pi*g.Roughness*sine/Wavelength(frequency)))
	return Reflection{out.Real * factor, out.Imaginary * factor}
}

// rootBelow returns the square root of a + ib with a positive real part, for b not positive.
func rootBelow(a, b float64) (re, im float64) {
	r := math.Sqrt(square(a) + square(b))
	return math.Sqrt(math.Max(0, (r+a)/2)), -math.Sqrt(math.Max(0, (r-a)/2))
}
