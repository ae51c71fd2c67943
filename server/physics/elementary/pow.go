package elementary

import "math"

// Pow returns x to the power y for positive x.
//
// Formula: x^y = 2^(y log2 x), with log2 x and its product with y carried as a high and a low part.
// Valid for: x > 0, finite y, error below 1 unit in the last place; Pow(0, y) is 0, 1 or +Inf; NaN for negative x.
// Source: fdlibm e_pow.c (positive base only).
func Pow(x, y float64) float64 {
	switch {
	case y == 0 || x == 1:
		return 1
	case math.IsNaN(x) || math.IsNaN(y) || x < 0:
		return math.NaN()
	case x == 0 || math.IsInf(x, 0) || math.IsInf(y, 0):
		return powLimit(x, y)
	}
	if math.Abs(y) > 0x1p64 {
		return powLimit(x, math.Copysign(math.Inf(1), y))
	}
	high, low := log2Split(x)
	yHigh := clearLow(y)
	productLow := float64((y-yHigh)*high) + float64(y*low)
	productHigh := float64(yHigh * high)
	return exp2Split(productHigh, productLow)
}

// powLimit returns x^y where base or exponent is zero or infinite.
func powLimit(x, y float64) float64 {
	if grows := x > 1; grows == (y > 0) {
		return math.Inf(1)
	}
	return 0
}

// clearLow returns x with the low 32 bits of its significand set to zero.
func clearLow(x float64) float64 {
	return math.Float64frombits(math.Float64bits(x) &^ 0xffffffff)
}

// log2Split returns log2 of x as a high part of about 21 bits and the rest.
//
// Formula: x = 2^n a, a near 1 or 1.5; ss = (a-b)/(a+b); log2 a = log2 b + 2/ln2 (ss + ss^3/3 + ...), b in {1, 1.5}.
// Valid for: finite x > 0.
// Source: fdlibm e_pow.c.
func log2Split(x float64) (high, low float64) {
	const (
		cp     = 9.61796693925975554329e-01
		cpHigh = 9.61796700954437255859e-01
		cpLow  = -7.02846165095275826516e-09
	)
	a, n, step := reduceBase(x)
	ss, sHigh, sLow := splitQuotient(a, step.base)
	tHigh, tLow := splitSeries(ss, sHigh, sLow)
	u := float64(sHigh * tHigh)
	v := float64(sLow*tHigh) + float64(tLow*ss)
	pHigh := clearLow(u + v)
	pLow := v - (pHigh - u)
	zHigh := float64(cpHigh * pHigh)
	zLow := float64(cpLow*pHigh) + float64(pLow*cp) + step.low
	high = clearLow(((zHigh + zLow) + step.high) + n)
	low = zLow - (((high - n) - step.high) - zHigh)
	return high, low
}

// baseStep is one of the two points about which the logarithm is expanded, with log2 of it split in two.
type baseStep struct{ base, high, low float64 }

// reduceBase writes x = 2^n a with a in [sqrt(3)/2, sqrt(3)) and names the nearer expansion point.
func reduceBase(x float64) (a, n float64, step baseStep) {
	fraction, exponent := split(x)
	a, n = float64(2*fraction), float64(exponent-1)
	switch {
	case a < 1.2247314453125:
		return a, n, baseStep{base: 1}
	case a < 1.7320508075688772:
		return a, n, baseStep{base: 1.5, high: 5.84962487220764160156e-01, low: 1.35003920212974897128e-08}
	}
	return float64(0.5 * a), n + 1, baseStep{base: 1}
}

// splitQuotient returns ss = (a-b)/(a+b) whole, and as a high part of 21 bits and the rest.
func splitQuotient(a, b float64) (ss, sHigh, sLow float64) {
	u := a - b
	v := 1 / (a + b)
	ss = float64(u * v)
	sHigh = clearLow(ss)
	tHigh := clearLow(a + b)
	tLow := a - (tHigh - b)
	sLow = float64(v * ((u - float64(sHigh*tHigh)) - float64(sHigh*tLow)))
	return ss, sHigh, sLow
}

// splitSeries returns 3 + ss^2 + higher powers, the factor of the quotient in the logarithm times 3/2, split in two.
func splitSeries(ss, sHigh, sLow float64) (tHigh, tLow float64) {
	const (
		l1 = 5.99999999999994648725e-01
		l2 = 4.28571428578550184252e-01
		l3 = 3.33333329818377432918e-01
		l4 = 2.72728123808534006489e-01
		l5 = 2.30660745775561754067e-01
		l6 = 2.06975017800338417784e-01
	)
	s2 := float64(ss * ss)
	r := float64(float64(s2*s2) * (l1 + float64(s2*(l2+float64(s2*(l3+float64(s2*(l4+float64(s2*(l5+float64(s2*l6)))))))))))
	r += float64(sLow * (sHigh + ss))
	s2 = float64(sHigh * sHigh)
	tHigh = clearLow(3 + s2 + r)
	tLow = r - ((tHigh - 3) - s2)
	return tHigh, tLow
}

// exp2Split returns 2^(high+low).
//
// Formula: n = round(high+low); 2^(z-n) by the rational approximation of Exp with ln 2 split in two.
// Valid for: all sums; +Inf from 1024, 0 below -1075.
// Source: fdlibm e_pow.c.
func exp2Split(high, low float64) float64 {
	const (
		lg2     = 6.93147180559945286227e-01
		lg2High = 6.93147182464599609375e-01
		lg2Low  = -1.90465429995776804525e-09
	)
	z := low + high
	switch {
	case z >= 1024:
		return math.Inf(1)
	case z < -1080:
		return 0
	}
	n := roundHalfAway(z)
	high -= n
	t := clearLow(low + high)
	u := float64(t * lg2High)
	v := float64((low-(t-high))*lg2) + float64(t*lg2Low)
	z = u + v
	w := v - (z - u)
	c := z - remainderPolynomial(z)
	r := float64(z*c)/(c-2) - (w + float64(z*w))
	return scale(1-(r-z), int(n))
}
