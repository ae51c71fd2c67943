// Package section gives what a wing section can do: greatest lift, lift slope, zero-lift angle, moment, drag, flaps, by family or by outline.
package section

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/planform"
)

// reflexZeroLift is the zero-lift angle over camber of the cubic mean line z = k x (1-x)(7/8-x), whose moment vanishes.
const reflexZeroLift = -0.0625 / 0.12085

// ZeroLiftAngle returns the zero-lift angle of a section by thin-aerofoil theory, rad (negative for positive camber).
//
// Formula: a0 = -(1/pi) integral_0^pi (dz/dx)(cos t - 1) dt, x = (1 - cos t)/2, mean line of two parabolas that meet at the greatest
// camber; for a reflexed section the cubic line without moment; for an outline its measured mean line.
// Valid for: camber up to 0.09, attached flow; below Re 2e5 the angle is up to a fifth smaller.
// Source: thin-aerofoil theory, Anderson, Fundamentals of Aerodynamics, chapter 4.
func ZeroLiftAngle(s planform.Section) float64 { return Prepare(s).ZeroLift }

// Moment returns the moment coefficient of a section about its quarter chord, nose up positive.
//
// Formula: cm = (pi/4)(A2 - A1); where A_n = (2/pi) integral (dz/dx) cos(n t) dt.
// Valid for: as ZeroLiftAngle.
// Source: thin-aerofoil theory, Anderson, Fundamentals of Aerodynamics, chapter 4.
func Moment(s planform.Section) float64 { return Prepare(s).Moment }

// closedForm returns zero-lift angle and moment of a section without outline.
func closedForm(family string, f Figures) (zeroLift, moment float64) {
	switch {
	case f.Camber == 0:
		return 0, 0
	case family == planform.FamilyReflexed:
		return float64(reflexZeroLift * f.Camber), 0
	}
	a, a1, a2 := meanLineIntegrals(f.Camber, f.CamberPosition)
	return a, float64(math.Pi / 4 * (a2 - a1))
}

// thinAerofoil returns zero-lift angle and moment of a measured mean line, integrated by parts so that no slope is read off points.
//
// Formula: a0 = -(1/pi) integral_0^pi z/(1 - x) dt; cm = integral_0^pi z ((3 - 4 x)/(2 (1 - x)) - 4 x) dt; midpoint rule.
// Valid for: as ZeroLiftAngle; the chord line runs through the middle of the trailing edge.
// Source: Munk's integrals, NACA Report 142, from the series of thin-aerofoil theory by partial integration.
func (m *measured) thinAerofoil() (zeroLift, moment float64) {
	step := math.Pi / stationCount
	for i := range stationCount {
		angle := float64((float64(i) + 0.5) * step)
		x := float64(0.5 * (1 - elementary.Cos(angle)))
		z := m.meanLine(angle)
		zeroLift -= z / (1 - x)
		moment += float64(z * ((3-float64(4*x))/(2*(1-x)) - float64(4*x)))
	}
	return zeroLift / stationCount, float64(moment * step)
}

// meanLineIntegrals returns zero-lift angle, A1 and A2 of the two-parabola mean line.
//
// Formula: dz/dx = (2 m/p^2)(p - x) ahead of p and (2 m/(1-p)^2)(p - x) behind; p - x = (k + cos t)/2, k = 2p - 1.
// Valid for: 0 < p < 1.
// Source: NACA four-digit mean line (NACA Report 460), integrated in closed form.
func meanLineIntegrals(camber, position float64) (zeroLift, a1, a2 float64) {
	k := float64(2*position) - 1
	fore := 2 * camber / float64(position*position)
	aft := 2 * camber / float64((1-position)*(1-position))
	split := elementary.Atan2(math.Sqrt(max(0, 1-float64(k*k))), -k)
	i0, i1, i2 := meanLinePrimitive(split, k)
	e0, e1, e2 := meanLinePrimitive(math.Pi, k)
	total := func(at, end float64) float64 { return float64(fore*at) + float64(aft*(end-at)) }
	return -total(i1-i0, e1-e0) / math.Pi, 2 * total(i1, e1) / math.Pi, 2 * total(i2, e2) / math.Pi
}

// meanLinePrimitive returns the integrals from 0 to t of (k + cos t)/2 times 1, cos t and cos 2t.
//
// Formula: (k t + sin t)/2; (k sin t + t/2 + sin 2t/4)/2; (k sin 2t/2 + sin t/2 + sin 3t/6)/2.
// Valid for: any t.
// Source: integral calculus.
func meanLinePrimitive(t, k float64) (zero, one, two float64) {
	s1, s2, s3 := elementary.Sin(t), elementary.Sin(float64(2*t)), elementary.Sin(float64(3*t))
	zero = float64(0.5 * (float64(k*t) + s1))
	one = float64(0.5 * (float64(k*s1) + float64(0.5*t) + float64(0.25*s2)))
	two = float64(0.5 * (float64(0.5*float64(k*s2)) + float64(0.5*s1) + s3/6))
	return zero, one, two
}
