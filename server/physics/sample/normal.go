package sample

import (
	"math"

	"pitgate/server/physics/elementary"
)

// rational is a quotient of two polynomials, lowest power first.
type rational struct{ over, under [8]float64 }

func (r *rational) at(x float64) float64 { return horner(&r.over, x) / horner(&r.under, x) }

func horner(c *[8]float64, x float64) float64 {
	sum := c[7]
	for k := 6; k >= 0; k-- {
		sum = float64(sum*x) + c[k]
	}
	return sum
}

// The three pieces: the middle, the tails, and the far tails.
var (
	middlePiece = rational{
		[8]float64{
			3.3871328727963666080, 1.3314166789178437745e2, 1.9715909503065514427e3, 1.3731693765509461125e4,
			4.5921953931549871457e4, 6.7265770927008700853e4, 3.3430575583588128105e4, 2.5090809287301226727e3,
		},
		[8]float64{
			1, 4.2313330701600911252e1, 6.8718700749205790830e2, 5.3941960214247511077e3,
			2.1213794301586595867e4, 3.9307895800092710610e4, 2.8729085735721942674e4, 5.2264952788528545610e3,
		},
	}
	tailPiece = rational{
		[8]float64{
			1.42343711074968357734, 4.63033784615654529590, 5.76949722146069140550, 3.64784832476320460504,
			1.27045825245236838258, 2.41780725177450611770e-1, 2.27238449892691845833e-2, 7.74545014278341407640e-4,
		},
		[8]float64{
			1, 2.05319162663775882187, 1.67638483018380384940, 6.89767334985100004550e-1,
			1.48103976427480074590e-1, 1.51986665636164571966e-2, 5.47593808499534494600e-4, 1.05075007164441684324e-9,
		},
	}
	farPiece = rational{
		[8]float64{
			6.65790464350110377720, 5.46378491116411436990, 1.78482653991729133580, 2.96560571828504891230e-1,
			2.65321895265761230930e-2, 1.24266094738807843860e-3, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
		},
		[8]float64{
			1, 5.99832206555887937690e-1, 1.36929880922735805310e-1, 1.48753612908506148525e-2,
			7.86869131145613259100e-4, 1.84631831751005468180e-5, 1.42151175831644588870e-7, 2.04426310338993978564e-15,
		},
	}
)

// NormalQuantile returns the deviate of the standard normal distribution below which a share of it lies; no number outside 0 to 1, and infinite at
// either end.
//
//	|p - 1/2| <= 0.425: z = q A(r)/B(r), q = p - 1/2, r = 0.425^2 - q^2
//	else:               r = sqrt(-ln min(p, 1-p)), z = +-C(r-1.6)/D(r-1.6) for r <= 5, +-E(r-5)/F(r-5) beyond
//
// Valid for: 0 < p < 1 to about 1 part in 10^15.
// Source: M. J. Wichura, "Algorithm AS 241", Applied Statistics 37 (1988) 477, PPND16.
func NormalQuantile(share float64) float64 {
	q := share - 0.5
	switch {
	case math.IsNaN(share) || share < 0 || share > 1:
		return math.NaN()
	case share == 0 || share == 1:
		return math.Copysign(math.Inf(1), q)
	case math.Abs(q) <= 0.425:
		return q * middlePiece.at(0.180625-float64(q*q))
	}
	r := math.Sqrt(-elementary.Log(min(share, 1-share)))
	if r <= 5 {
		return math.Copysign(tailPiece.at(r-1.6), q)
	}
	return math.Copysign(farPiece.at(r-5), q)
}
