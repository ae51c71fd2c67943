package field

import (
	"errors"
	"math"

	"pitgate/server/physics/elementary"
)

// WGS-84 ellipsoid.
const (
	equatorialRadius = 6378137.0 // m
	flattening       = 1 / 298.257223563
	eccentricity2    = flattening * (2 - flattening)
)

// Position is a place on or above the WGS-84 ellipsoid.
type Position struct {
	Latitude  float64 // rad, north positive
	Longitude float64 // rad, east positive
	Height    float64 // m above the ellipsoid
}

// Centred is an earth-centred, earth-fixed place, m.
type Centred struct {
	X, Y, Z float64
}

// Local is a place in the plane that touches the ellipsoid at a datum: x east, y north, z up, m. Ground that follows the earth falls below
// the plane by d^2/(2R), 0.31 m at 2 km: that drop is not terrain.
type Local struct {
	X, Y, Z float64
}

// Point drops the height.
func (l Local) Point() Point { return Point{l.X, l.Y} }

// primeVertical returns the radius of curvature across the meridian, m: a / sqrt(1 - e^2 sin^2 lat).
func primeVertical(sinLatitude float64) float64 {
	return equatorialRadius / math.Sqrt(1-float64(eccentricity2*sinLatitude*sinLatitude))
}

// Centred returns the earth-centred place of a position.
//
//	X = (N + h) cos(lat) cos(lon), Y = (N + h) cos(lat) sin(lon), Z = (N (1 - e^2) + h) sin(lat)
//
// where N is the radius across the meridian. Valid for: everywhere. Source: NIMA TR8350.2, WGS-84.
func (p Position) Centred() Centred {
	sin, cos := elementary.Sin(p.Latitude), elementary.Cos(p.Latitude)
	n := primeVertical(sin)
	out := (n + p.Height) * cos
	return Centred{
		X: out * elementary.Cos(p.Longitude),
		Y: out * elementary.Sin(p.Longitude),
		Z: (float64(n*(1-eccentricity2)) + p.Height) * sin,
	}
}

// Position returns the position of an earth-centred place, by fixed-point steps on the latitude to the last digits.
//
// Valid for: places within 10 km of the ellipsoid. Source: tan(lat) = (Z + e^2 N sin(lat)) / p, iterated.
func (c Centred) Position() Position {
	out := math.Sqrt(float64(c.X*c.X) + float64(c.Y*c.Y))
	latitude := elementary.Atan2(c.Z, out*(1-eccentricity2))
	for range 12 {
		sin := elementary.Sin(latitude)
		next := elementary.Atan2(c.Z+float64(eccentricity2*primeVertical(sin)*sin), out)
		done := math.Abs(next-latitude) < 1e-16
		latitude = next
		if done {
			break
		}
	}
	sin, cos := elementary.Sin(latitude), elementary.Cos(latitude)
	height := float64(out*cos) + float64(c.Z*sin) - float64(equatorialRadius*math.Sqrt(1-float64(eccentricity2*sin*sin)))
	return Position{Latitude: latitude, Longitude: elementary.Atan2(c.Y, c.X), Height: height}
}

// Datum is the origin of a field's plane.
type Datum struct {
	origin                         Centred
	sinLat, cosLat, sinLon, cosLon float64
}

// NewDatum returns the datum at a position; an error when the position is not on the earth.
func NewDatum(p Position) (Datum, error) {
	if !(math.Abs(p.Latitude) <= math.Pi/2) {
		return Datum{}, errors.New("datum latitude: outside -90 to 90 degrees")
	}
	if !(math.Abs(p.Longitude) <= math.Pi) {
		return Datum{}, errors.New("datum longitude: outside -180 to 180 degrees")
	}
	if !(math.Abs(p.Height) <= 1e5) {
		return Datum{}, errors.New("datum height: outside -100 to 100 km")
	}
	return Datum{
		origin: p.Centred(),
		sinLat: elementary.Sin(p.Latitude), cosLat: elementary.Cos(p.Latitude),
		sinLon: elementary.Sin(p.Longitude), cosLon: elementary.Cos(p.Longitude),
	}, nil
}

// Local returns a position in the datum's plane.
//
//	e = -sin(lon) dX + cos(lon) dY
//	n = -sin(lat)(cos(lon) dX + sin(lon) dY) + cos(lat) dZ
//	u =  cos(lat)(cos(lon) dX + sin(lon) dY) + sin(lat) dZ
//
// where dX, dY, dZ run from the datum to the place, earth-centred. Valid for: exact; level lengths agree with geodesics to 0.1 mm at 2 km.
// Source: rotation from earth-centred to local axes.
func (d Datum) Local(p Position) Local {
	c := p.Centred()
	x, y, z := c.X-d.origin.X, c.Y-d.origin.Y, c.Z-d.origin.Z
	meridian := float64(d.cosLon*x) + float64(d.sinLon*y)
	return Local{
		X: float64(d.cosLon*y) - float64(d.sinLon*x),
		Y: float64(d.cosLat*z) - float64(d.sinLat*meridian),
		Z: float64(d.cosLat*meridian) + float64(d.sinLat*z),
	}
}

// Position returns the position of a place in the datum's plane: the inverse of Local.
func (d Datum) Position(l Local) Position {
	meridian := float64(d.cosLat*l.Z) - float64(d.sinLat*l.Y)
	return Centred{
		X: d.origin.X + float64(d.cosLon*meridian) - float64(d.sinLon*l.X),
		Y: d.origin.Y + float64(d.sinLon*meridian) + float64(d.cosLon*l.X),
		Z: d.origin.Z + float64(d.cosLat*l.Y) + float64(d.sinLat*l.Z),
	}.Position()
}
