// Package elementary holds the transcendental functions of the core, written so that every processor gives the same bits:
// no assembly, and every product that feeds a sum is rounded by an explicit conversion.
//
// The exponential, logarithm and power follow the published fdlibm algorithms, whose notice reads:
//
//	Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved.
//	Developed at SunPro, a Sun Microsystems, Inc. business.
//	Permission to use, copy, modify, and distribute this software is freely granted,
//	provided that this notice is preserved.
package elementary

import "math"

const (
	ln2High      = 6.93147180369123816490e-01
	ln2Low       = 1.90821492927058770002e-10
	inverseLn2   = 1.44269504088896338700
	expOverflow  = 7.09782712893383973096e+02
	expUnderflow = -7.45133219101941108420e+02
)

// Exp returns e to the power x.
//
// Formula: x = k ln 2 + r, |r| <= ln 2 / 2; e^x = 2^k e^r, e^r = 1 + r + r c/(2 - c), c = r - r^2 P(r^2).
// Valid for: all x; error below 1 unit in the last place; +Inf above 709.78, 0 below -745.13, NaN for NaN.
// Source: fdlibm e_exp.c.
func Exp(x float64) float64 {
	switch {
	case math.IsNaN(x):
		return x
	case x > expOverflow:
		return math.Inf(1)
	case x < expUnderflow:
		return 0
	case math.Abs(x) < 0x1p-28:
		return 1 + x
	}
	k := roundHalfAway(float64(inverseLn2 * x))
	high := x - float64(k*ln2High)
	low := float64(k * ln2Low)
	return scale(expReduced(high, low), int(k))
}

// roundHalfAway rounds to the nearest integer, halves away from zero.
func roundHalfAway(x float64) float64 {
	if x < 0 {
		return math.Trunc(x - 0.5)
	}
	return math.Trunc(x + 0.5)
}

// expReduced returns e^(high-low) for an argument already brought within half of ln 2.
//
// Source: fdlibm e_exp.c, rational approximation on [0, 0.34658].
func expReduced(high, low float64) float64 {
	r := high - low
	c := r - remainderPolynomial(r)
	return 1 - ((low - float64(r*c)/(2-c)) - high)
}

// remainderPolynomial returns t (P1 + t (P2 + ...)), t = r^2: the Remez polynomial that exponential and power share.
//
// Source: fdlibm e_exp.c.
func remainderPolynomial(r float64) float64 {
	const (
		p1 = 1.66666666666666019037e-01
		p2 = -2.77777777770155933842e-03
		p3 = 6.61375632143793436117e-05
		p4 = -1.65339022054652515390e-06
		p5 = 4.13813679705723846039e-08
	)
	t := float64(r * r)
	return float64(t * (p1 + float64(t*(p2+float64(t*(p3+float64(t*(p4+float64(t*p5)))))))))
}

// horner returns c0 + x (c1 + x (c2 + ...)) with every step rounded.
func horner(x float64, coefficients ...float64) float64 {
	sum := 0.0
	for i := len(coefficients) - 1; i >= 0; i-- {
		sum = coefficients[i] + float64(x*sum)
	}
	return sum
}
