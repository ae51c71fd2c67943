package elementary

import "math"

// Log returns the natural logarithm of x.
//
// Formula: x = 2^k (1+f), sqrt(2)/2 < 1+f < sqrt(2); s = f/(2+f); ln(1+f) = f - (f^2/2 - s (f^2/2 + R(s^2))).
// Valid for: x > 0, error below 1 unit in the last place; -Inf at 0, NaN below.
// Source: fdlibm e_log.c.
func Log(x float64) float64 {
	switch {
	case math.IsNaN(x) || x < 0:
		return math.NaN()
	case x == 0:
		return math.Inf(-1)
	case math.IsInf(x, 1):
		return x
	}
	fraction, exponent := split(x)
	if fraction < math.Sqrt2/2 {
		fraction, exponent = float64(2*fraction), exponent-1
	}
	f, k := fraction-1, float64(exponent)
	s := f / (2 + f)
	half := float64(0.5 * float64(f*f))
	tail := float64(s*(half+logPolynomial(s))) + float64(k*ln2Low)
	return float64(k*ln2High) - ((half - tail) - f)
}

// logPolynomial returns R(s^2) of Log.
//
// Source: fdlibm e_log.c.
func logPolynomial(s float64) float64 {
	const (
		l1 = 6.666666666666735130e-01
		l2 = 3.999999999940941908e-01
		l3 = 2.857142874366239149e-01
		l4 = 2.222219843214978396e-01
		l5 = 1.818357216161805012e-01
		l6 = 1.531383769920937332e-01
		l7 = 1.479819860511658591e-01
	)
	s2 := float64(s * s)
	return float64(s2 * (l1 + float64(s2*(l2+float64(s2*(l3+float64(s2*(l4+float64(s2*(l5+float64(s2*(l6+float64(s2*l7)))))))))))))
}

// Log10 returns the decimal logarithm of x.
//
// Formula: ln x / ln 10.
// Valid for: x > 0, error within 2 units in the last place away from 1.
// Source: definition.
func Log10(x float64) float64 { return Log(x) / math.Ln10 }

// split returns x as a fraction from a half to below one and a power of two: math.Frexp of a positive finite number, quickly for normal ones.
func split(x float64) (fraction float64, exponent int) {
	const whole, least, bias = 52, 0x1p-1022, 1022
	if x < least {
		return math.Frexp(x)
	}
	bits := math.Float64bits(x)
	return math.Float64frombits(bits&(1<<whole-1) | bias<<whole), int(bits>>whole) - bias
}

// scale returns a number near one times two to the power k: math.Ldexp, quickly where the power is a normal number.
func scale(x float64, k int) float64 {
	if k < -1000 || k > 1000 {
		return math.Ldexp(x, k)
	}
	return x * math.Float64frombits(uint64(k+1023)<<52)
}
