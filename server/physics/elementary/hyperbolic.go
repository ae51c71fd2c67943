package elementary

import "math"

// Sinh returns the hyperbolic sine of x.
//
// Formula: (e^x - e^-x)/2; below 1 the power series to x^19, which does not cancel.
// Valid for: all x; error within 2 units in the last place.
// Source: definition.
func Sinh(x float64) float64 {
	a := math.Abs(x)
	switch {
	case a < 1:
		return sinhSeries(x)
	case a > 709:
		half := Exp(float64(0.5 * a))
		return math.Copysign(float64(float64(0.5*half)*half), x)
	}
	e := Exp(a)
	return math.Copysign(float64(0.5*(e-1/e)), x)
}

// sinhSeries returns x + x^3/3! + ... + x^19/19!.
//
// Valid for: |x| < 1, truncation below 1e-19 of x.
// Source: Taylor series.
func sinhSeries(x float64) float64 {
	t := float64(x * x)
	sum := horner(t, 1.0/6, 1.0/120, 1.0/5040, 1.0/362880, 1.0/39916800, 1.0/6227020800, 1.0/1307674368000,
		1.0/355687428096000, 1.0/121645100408832000)
	return x + float64(float64(x*t)*sum)
}

// Cosh returns the hyperbolic cosine of x.
//
// Formula: (e^x + e^-x)/2.
// Valid for: all x; error within 2 units in the last place.
// Source: definition.
func Cosh(x float64) float64 {
	a := math.Abs(x)
	if a > 709 {
		half := Exp(float64(0.5 * a))
		return float64(float64(0.5*half) * half)
	}
	e := Exp(a)
	return float64(0.5 * (e + 1/e))
}

// Tanh returns the hyperbolic tangent of x.
//
// Formula: sinh x / cosh x below 1; 1 - 2/(e^2x + 1) above.
// Valid for: all x; error within 4 units in the last place.
// Source: definition.
func Tanh(x float64) float64 {
	a := math.Abs(x)
	switch {
	case a < 1:
		return Sinh(x) / Cosh(x)
	case a > 22:
		return math.Copysign(1, x)
	}
	return math.Copysign(1-2/(Exp(float64(2*a))+1), x)
}

// Asinh returns the inverse hyperbolic sine of x.
//
// Formula: ln(|x| + sqrt(x^2+1)) with the sign of x, sharpened by one Newton step on sinh y = x.
// Valid for: |x| < 1e150; error within 4 units in the last place.
// Source: definition.
func Asinh(x float64) float64 {
	a := math.Abs(x)
	if a < 1e-9 {
		return x
	}
	y := Log(a + math.Sqrt(float64(a*a)+1))
	if a < 10 {
		y -= (Sinh(y) - a) / Cosh(y)
	}
	return math.Copysign(y, x)
}
