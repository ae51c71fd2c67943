package elementary

import "math"

// Pi over two in three parts: the first two have 33 bits, so that a whole number of up to 20 bits times them is exact.
const (
	halfPiFirst  = 1.57079632673412561417e+00
	halfPiSecond = 6.07710050630396597660e-11
	halfPiThird  = 2.02226624879595063154e-21
	twoOverPi    = 6.36619772367581382433e-01
	largestAngle = 1e6
)

// Sin returns the sine of x in radians.
//
// Formula: x = k pi/2 + r, |r| <= pi/4; the polynomial of sine or cosine of r by k.
// Valid for: |x| up to 1e6, error within 1 unit in the last place away from the zeros; NaN beyond and for NaN.
// Source: fdlibm s_sin.c, k_sin.c.
func Sin(x float64) float64 {
	if x == 0 {
		return x
	}
	quadrant, r, tail := reduceAngle(x)
	return quarterSine(quadrant, r, tail)
}

// Cos returns the cosine of x in radians.
//
// Formula: as Sin, a quadrant on.
// Valid for: as Sin.
// Source: fdlibm s_cos.c, k_cos.c.
func Cos(x float64) float64 {
	if x == 0 {
		return 1
	}
	quadrant, r, tail := reduceAngle(x)
	return quarterSine(quadrant+1, r, tail)
}

// Tan returns the tangent of x in radians.
//
// Formula: sin x/cos x.
// Valid for: as Sin, error within 2 units in the last place.
// Source: definition.
func Tan(x float64) float64 {
	if x == 0 {
		return x
	}
	quadrant, r, tail := reduceAngle(x)
	return quarterSine(quadrant, r, tail) / quarterSine(quadrant+1, r, tail)
}

// reduceAngle returns x less the nearest multiple of pi/2, as a value and a tail, and the quadrant.
func reduceAngle(x float64) (quadrant int, r, tail float64) {
	if !(math.Abs(x) <= largestAngle) {
		return 0, math.NaN(), 0
	}
	k := roundHalfAway(float64(x * twoOverPi))
	first := x - float64(k*halfPiFirst)
	second := float64(k * halfPiSecond)
	r = first - second
	lost := (first - r) - second
	third := float64(k * halfPiThird)
	high := r - (third - lost)
	return int(k), high, (r - high) - (third - lost)
}

// quarterSine returns the sine of r + tail + quadrant pi/2.
func quarterSine(quadrant int, r, tail float64) float64 {
	var value float64
	if quadrant&1 == 0 {
		value = sineKernel(r, tail)
	} else {
		value = cosineKernel(r, tail)
	}
	if quadrant&2 != 0 {
		return -value
	}
	return value
}

// sineKernel returns sin(x + y) for |x| up to pi/4 and y its tail.
//
// Source: fdlibm k_sin.c.
func sineKernel(x, y float64) float64 {
	const (
		s1 = -1.66666666666666324348e-01
		s2 = 8.33333333332248946124e-03
		s3 = -1.98412698298579493134e-04
		s4 = 2.75573137070700676789e-06
		s5 = -2.50507602534068634195e-08
		s6 = 1.58969099521155010221e-10
	)
	z := float64(x * x)
	v := float64(z * x)
	r := s2 + float64(z*(s3+float64(z*(s4+float64(z*(s5+float64(z*s6)))))))
	return x - ((float64(z*(float64(0.5*y)-float64(v*r))) - y) - float64(v*s1))
}

// cosineKernel returns cos(x + y) for |x| up to pi/4 and y its tail.
//
// Source: fdlibm k_cos.c, in the form that keeps the rounding error of 1 - x^2/2.
func cosineKernel(x, y float64) float64 {
	const (
		c1 = 4.16666666666666019037e-02
		c2 = -1.38888888888741095749e-03
		c3 = 2.48015872894767294178e-05
		c4 = -2.75573143513906633035e-07
		c5 = 2.08757232129817482790e-09
		c6 = -1.13596475577881948265e-11
	)
	z := float64(x * x)
	r := float64(z * (c1 + float64(z*(c2+float64(z*(c3+float64(z*(c4+float64(z*(c5+float64(z*c6)))))))))))
	half := float64(0.5 * z)
	w := 1 - half
	return w + (((1 - w) - half) + (float64(z*r) - float64(x*y)))
}

// Atan2 returns the angle of the point (x, y) from the x axis, -pi to pi.
//
// Formula: atan(y/x) in the quadrant of the point.
// Valid for: all finite points; 0 or pi on the axis by sign, as math.Atan2.
// Source: definition.
func Atan2(y, x float64) float64 {
	if math.IsNaN(x) || math.IsNaN(y) || math.IsInf(x, 0) || math.IsInf(y, 0) || x == 0 || y == 0 {
		return math.Atan2(y, x)
	}
	angle := Atan(y / x)
	if x < 0 {
		return angle + math.Copysign(math.Pi, y)
	}
	return angle
}

// atanStep is a point about which the arc tangent is expanded: its angle in two parts.
type atanStep struct{ high, low float64 }

// Atan returns the arc tangent of x, -pi/2 to pi/2.
//
// Formula: atan x = atan c + atan((x - c)/(1 + c x)), c in {0, 0.5, 1, 1.5, infinity}, then an odd polynomial.
// Valid for: all x, error below 1 unit in the last place.
// Source: fdlibm s_atan.c.
func Atan(x float64) float64 {
	a := math.Abs(x)
	if !(a > 1e-9) || a > 1e17 {
		return atanEdge(x, a)
	}
	step, r := reduceTangent(a)
	return math.Copysign(step.high-((float64(r*atanPolynomial(r))-step.low)-r), x)
}

// atanEdge returns the arc tangent of numbers so small that it is the number, so large that it is a right angle, or not numbers.
func atanEdge(x, a float64) float64 {
	if a > 1e17 {
		return math.Copysign(math.Pi/2, x)
	}
	return x
}

// reduceTangent brings a positive tangent near zero and names the expansion point.
func reduceTangent(a float64) (atanStep, float64) {
	switch {
	case a < 0.4375:
		return atanStep{}, a
	case a < 0.6875:
		return atanStep{4.63647609000806093515e-01, 2.26987774529616870924e-17}, (float64(2*a) - 1) / (2 + a)
	case a < 1.1875:
		return atanStep{7.85398163397448278999e-01, 3.06161699786838301793e-17}, (a - 1) / (a + 1)
	case a < 2.4375:
		return atanStep{9.82793723247329054082e-01, 1.39033110312309984516e-17}, (a - 1.5) / (1 + float64(1.5*a))
	}
	return atanStep{1.57079632679489655800e+00, 6.12323399573676603587e-17}, -1 / a
}

// atanPolynomial returns 1 - atan(r)/r for |r| below 0.4375.
//
// Source: fdlibm s_atan.c.
func atanPolynomial(r float64) float64 {
	const (
		a0  = 3.33333333333329318027e-01
		a1  = -1.99999999998764832476e-01
		a2  = 1.42857142725034663711e-01
		a3  = -1.11111104054623557880e-01
		a4  = 9.09088713343650656196e-02
		a5  = -7.69187620504482999495e-02
		a6  = 6.66107313738753120669e-02
		a7  = -5.83357013379057348645e-02
		a8  = 4.97687799461593236017e-02
		a9  = -3.65315727442169155270e-02
		a10 = 1.62858201153657823623e-02
	)
	z := float64(r * r)
	return float64(z * (a0 + float64(z*(a1+float64(z*(a2+float64(z*(a3+float64(z*(a4+float64(z*(a5+float64(z*(a6+float64(z*(a7+float64(z*(a8+float64(z*(a9+float64(z*a10)))))))))))))))))))))
}
