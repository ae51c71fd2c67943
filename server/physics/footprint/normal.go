package footprint

import (
	"math"

	"pitgate/server/physics/elementary"
)

// cutNormal is how many standard deviations a sampled spread reaches.
const cutNormal = 3.0

// cutShare is the share of the normal distribution below -cutNormal.
const cutShare = 1.3498980316300946e-3

// normalWithin returns the normal deviate of a share, cut at three standard deviations.
func normalWithin(share float64) float64 {
	inner := cutShare + float64(share*(1-2*cutShare))
	return min(max(normalQuantile(inner), -cutNormal), cutNormal)
}

// normalQuantile returns the deviate below which a share of the standard normal distribution lies.
//
// Formula: quotients of polynomials in q^2, q = p - 1/2, in the middle and in sqrt(-2 ln p) in the tails.
// Valid for: shares between 0 and 1; relative error below 1.2e-9. Source: Acklam's rational approximation, 2003 (from memory).
func normalQuantile(share float64) float64 {
	const tail = 0.02425
	switch {
	case !(share > 0 && share < 1):
		return math.NaN()
	case share < tail:
		return -normalTail(share)
	case share > 1-tail:
		return normalTail(1 - share)
	}
	q := share - 0.5
	r := float64(q * q)
	upper := polynomial(r, -3.969683028665376e+01, 2.209460984245205e+02, -2.759285104469687e+02, 1.383577518672690e+02, -3.066479806614716e+01,
		2.506628277459239e+00)
	lower := polynomial(r, -5.447609879822406e+01, 1.615858368580409e+02, -1.556989798598866e+02, 6.680131188771972e+01, -1.328068155288572e+01, 1)
	return float64(q * upper / lower)
}

// normalTail returns the deviate above which a small share lies.
func normalTail(share float64) float64 {
	q := math.Sqrt(-2 * elementary.Log(share))
	upper := polynomial(q, -7.784894002430293e-03, -3.223964580411365e-01, -2.400758277161838e+00, -2.549732539343734e+00, 4.374664141464968e+00,
		2.938163982698783e+00)
	lower := polynomial(q, 7.784695709041462e-03, 3.224671290700398e-01, 2.445134137142996e+00, 3.754408661907416e+00, 1)
	return -upper / lower
}

// polynomial returns c0 x^n + c1 x^(n-1) + ... + cn.
func polynomial(x float64, coefficients ...float64) float64 {
	sum := 0.0
	for _, c := range coefficients {
		sum = float64(sum*x) + c
	}
	return sum
}
