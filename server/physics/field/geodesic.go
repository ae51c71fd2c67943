package field

import (
	"errors"
	"math"

	"pitgate/server/physics/elementary"
)

// Geodesic is the shortest line between two places on the ellipsoid.
type Geodesic struct {
	Length float64 // m
	Start  float64 // azimuth at the first place, rad from 0 to below 2 pi, clockwise from true north
	End    float64 // azimuth at the second place, along the line, rad
}

// ErrNotConverged is the error for places nearly opposite on the earth, where Vincenty's iteration has no answer.
var ErrNotConverged = errors.New("geodesic: places are nearly opposite on the earth")

const polarRadius = equatorialRadius * (1 - flattening)

// reduced returns sine and cosine of the reduced latitude, tan(U) = (1 - f) tan(lat).
func reduced(latitude float64) (sin, cos float64) {
	sin = float64((1 - flattening) * elementary.Sin(latitude))
	cos = elementary.Cos(latitude)
	length := math.Sqrt(float64(sin*sin) + float64(cos*cos))
	return sin / length, cos / length
}

// series are the coefficients of Vincenty's length series.
type series struct{ a, b float64 }

// newSeries returns the coefficients for the squared cosine of the azimuth at the equator.
//
//	u^2 = cos^2(alpha) (a^2 - b^2)/b^2, A = 1 + u^2/16384 (4096 + u^2(-768 + u^2(320 - 175 u^2))), B = u^2/1024 (256 + u^2(-128 + u^2(74 - 47 u^2)))
//
// Source: Vincenty, Survey Review 23 (176), 1975, equations 3 and 4.
func newSeries(cosAlpha2 float64) series {
	u := cosAlpha2 * (equatorialRadius*equatorialRadius - polarRadius*polarRadius) / (polarRadius * polarRadius)
	return series{
		a: 1 + float64(u/16384*(4096+float64(u*(-768+float64(u*(320-float64(175*u))))))),
		b: u / 1024 * (256 + float64(u*(-128+float64(u*(74-float64(47*u)))))),
	}
}

// correction returns the difference between the arc on the sphere and that of the series (Vincenty's equation 6).
func (s series) correction(sinSigma, cosSigma, middle float64) float64 {
	square := float64(middle * middle)
	inner := float64(cosSigma*(-1+float64(2*square))) -
		float64(s.b/6*middle*(-3+float64(4*sinSigma*sinSigma))*(-3+float64(4*square)))
	return float64(s.b * sinSigma * (middle + float64(s.b/4*inner)))
}

// shift returns how far the longitude on the sphere runs ahead of that on the ellipsoid (Vincenty's equations 10 and 11).
func shift(sinAlpha, cosAlpha2, sigma, sinSigma, cosSigma, middle float64) float64 {
	c := float64(flattening / 16 * cosAlpha2 * (4 + float64(flattening*(4-float64(3*cosAlpha2)))))
	inner := middle + float64(c*cosSigma*(-1+float64(2*middle*middle)))
	return float64((1 - c) * flattening * sinAlpha * (sigma + float64(c*sinSigma*inner)))
}

// Between returns the geodesic from one place to another; heights do not count. Two equal places give no length and azimuth zero.
//
// Formula: iteration on the difference of longitude of the auxiliary sphere, then the series of newSeries.
// Valid for: all places but those nearly opposite (ErrNotConverged); error below 0.1 mm. Source: Vincenty, Direct and inverse solutions of
// geodesics on the ellipsoid with application of nested equations, Survey Review 23 (176), 1975.
func Between(from, to Position) (Geodesic, error) {
	sin1, cos1 := reduced(from.Latitude)
	sin2, cos2 := reduced(to.Latitude)
	difference := nearestTurn(to.Longitude - from.Longitude)
	lambda := difference
	for range 200 {
		sinL, cosL := elementary.Sin(lambda), elementary.Cos(lambda)
		across, along := float64(cos2*sinL), float64(cos1*sin2)-float64(sin1*cos2*cosL)
		sinSigma := math.Sqrt(float64(across*across) + float64(along*along))
		if sinSigma == 0 {
			return Geodesic{}, nil
		}
		cosSigma := float64(sin1*sin2) + float64(cos1*cos2*cosL)
		sigma := elementary.Atan2(sinSigma, cosSigma)
		sinAlpha := cos1 * cos2 * sinL / sinSigma
		cosAlpha2 := 1 - float64(sinAlpha*sinAlpha)
		middle := 0.0
		if cosAlpha2 > 1e-15 {
			middle = cosSigma - float64(2*sin1*sin2/cosAlpha2)
		}
		next := difference + shift(sinAlpha, cosAlpha2, sigma, sinSigma, cosSigma, middle)
		if math.Abs(next-lambda) < 1e-14 {
			s := newSeries(cosAlpha2)
			return Geodesic{
				Length: polarRadius * s.a * (sigma - s.correction(sinSigma, cosSigma, middle)),
				Start:  fullTurn(elementary.Atan2(across, along)),
				End:    fullTurn(elementary.Atan2(cos1*sinL, float64(cos1*sin2*cosL)-float64(sin1*cos2))),
			}, nil
		}
		lambda = next
	}
	return Geodesic{}, ErrNotConverged
}

// Along returns the place at a distance (m) along the geodesic that leaves a place with an azimuth (rad), and the azimuth there. The height
// is kept.
//
// Valid for: all places; error below 0.1 mm up to half round the earth. Source: as Between.
func (p Position) Along(azimuth, distance float64) (Position, float64) {
	sin1, cos1 := reduced(p.Latitude)
	sinA, cosA := elementary.Sin(azimuth), elementary.Cos(azimuth)
	start := elementary.Atan2(sin1, float64(cos1*cosA))
	sinAlpha := float64(cos1 * sinA)
	cosAlpha2 := 1 - float64(sinAlpha*sinAlpha)
	s := newSeries(cosAlpha2)
	base := distance / (polarRadius * s.a)
	sigma := base
	var sinSigma, cosSigma, middle float64
	for range 200 {
		middle = elementary.Cos(float64(2*start) + sigma)
		sinSigma, cosSigma = elementary.Sin(sigma), elementary.Cos(sigma)
		next := base + s.correction(sinSigma, cosSigma, middle)
		done := math.Abs(next-sigma) < 1e-15
		sigma = next
		if done {
			break
		}
	}
	sinSigma, cosSigma = elementary.Sin(sigma), elementary.Cos(sigma)
	inward := float64(sin1*sinSigma) - float64(cos1*cosSigma*cosA)
	latitude := elementary.Atan2(float64(sin1*cosSigma)+float64(cos1*sinSigma*cosA),
		(1-flattening)*math.Sqrt(float64(sinAlpha*sinAlpha)+float64(inward*inward)))
	lambda := elementary.Atan2(sinSigma*sinA, float64(cos1*cosSigma)-float64(sin1*sinSigma*cosA))
	longitude := p.Longitude + lambda - shift(sinAlpha, cosAlpha2, sigma, sinSigma, cosSigma, middle)
	return Position{Latitude: latitude, Longitude: nearestTurn(longitude), Height: p.Height},
		fullTurn(elementary.Atan2(sinAlpha, -inward))
}

// nearestTurn returns an angle less whole turns, from -pi to pi.
func nearestTurn(angle float64) float64 {
	return angle - float64(2*math.Pi*math.Round(angle/(2*math.Pi)))
}

// fullTurn returns an angle from 0 to below 2 pi.
func fullTurn(angle float64) float64 {
	if angle < 0 {
		angle += 2 * math.Pi
	}
	if angle >= 2*math.Pi {
		return 0
	}
	return angle
}
