package field

import (
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
)

// PlaceReach is the distance from a datum beyond which a place is taken for a mistake, m. At that distance the plane lies 31 m over the ground.
const PlaceReach = 20000.0

// PlaceError says why a position cannot be a place of a field.
type PlaceError struct {
	Corner   int     // number of the corner from 1; zero where only one place was asked for
	Swapped  bool    // latitude and longitude seem to have changed places
	Distance float64 // from the datum, m; zero when the position is not on the earth at all
	Reason   string
}

// Error names the corner and the reason.
func (e PlaceError) Error() string {
	if e.Corner > 0 {
		return fmt.Sprintf("corner %d: %s", e.Corner, e.Reason)
	}
	return e.Reason
}

// swapped returns the position with latitude and longitude exchanged.
func (p Position) swapped() Position {
	return Position{Latitude: p.Longitude, Longitude: p.Latitude, Height: p.Height}
}

// onEarth reports whether latitude, longitude and height are possible.
func (p Position) onEarth() bool {
	return math.Abs(p.Latitude) <= math.Pi/2 && math.Abs(p.Longitude) <= math.Pi && math.Abs(p.Height) <= 1e5
}

// CheckPosition returns a PlaceError when a position is not on the earth: a latitude beyond 90 degrees, a longitude beyond 180, a height
// beyond 100 km or a value that is not a number. Where the two angles exchanged would be possible it says that they seem swapped.
func CheckPosition(p Position) error {
	if p.onEarth() {
		return nil
	}
	degrees := 180 / math.Pi
	e := PlaceError{Reason: fmt.Sprintf("latitude %.7g, longitude %.7g degrees at %.6g m is not on the earth", p.Latitude*degrees, p.Longitude*degrees, p.Height)}
	if math.Abs(p.Latitude) > math.Pi/2 && p.swapped().onEarth() {
		e.Swapped = true
		e.Reason = fmt.Sprintf("latitude %.7g degrees is beyond 90: latitude and longitude seem swapped", p.Latitude*degrees)
	}
	return e
}

// Place returns a position in the datum's plane if it can belong to the field: on the earth and within PlaceReach of the datum. Otherwise the
// error is a PlaceError, which says so when the position with latitude and longitude exchanged would lie near the datum.
func (d Datum) Place(p Position) (Local, error) {
	if err := CheckPosition(p); err != nil {
		return Local{}, err
	}
	local := d.Local(p)
	away := d.distance(p)
	if away <= PlaceReach {
		return local, nil
	}
	e := PlaceError{Distance: away, Reason: fmt.Sprintf("%.0f km from the datum, more than %.0f km", away/1000, PlaceReach/1000)}
	if other := p.swapped(); other.onEarth() && d.distance(other) <= PlaceReach {
		e.Swapped = true
		e.Reason = fmt.Sprintf("%.0f km from the datum as given and %.1f km from it with latitude and longitude exchanged: they seem swapped",
			away/1000, d.distance(other)/1000)
	}
	return Local{}, e
}

// distance returns the straight distance of a position from the datum, m.
func (d Datum) distance(p Position) float64 {
	l := d.Local(p)
	return math.Sqrt(float64(l.X*l.X) + float64(l.Y*l.Y) + float64(l.Z*l.Z))
}

// Outline returns the outline through positions in the datum's plane, in normal form (Polygon.Normal), and what had to be changed. Outlines
// across the 180th meridian and around a pole need no care: the plane knows neither. Errors name the corner: a PlaceError, or as Normal.
func (d Datum) Outline(corners []Position) (Polygon, Repair, error) {
	outline := make(Polygon, 0, len(corners))
	for i, p := range corners {
		local, err := d.Place(p)
		if err != nil {
			return nil, Repair{}, numbered(err, i+1)
		}
		outline = append(outline, local.Point())
	}
	return outline.Normal()
}

// numbered gives a PlaceError the number of its corner.
func numbered(err error, corner int) error {
	if e, ok := err.(PlaceError); ok { //nolint:errorlint // Place returns it bare
		e.Corner = corner
		return e
	}
	return err
}

// Middle returns the position in the middle of others, at sea level of the ellipsoid: the direction of the mean of their earth-centred
// places, so that the 180th meridian and the poles need no care. It is the datum to take when none is given. The error names the place that is
// not on the earth by its number from 1, or says that there is none or that they lie all round the earth.
func Middle(places []Position) (Position, error) {
	var sum Centred
	for i, p := range places {
		if err := CheckPosition(p); err != nil {
			return Position{}, numbered(err, i+1)
		}
		p.Height = 0
		c := p.Centred()
		sum.X, sum.Y, sum.Z = sum.X+c.X, sum.Y+c.Y, sum.Z+c.Z
	}
	length := math.Sqrt(float64(sum.X*sum.X) + float64(sum.Y*sum.Y) + float64(sum.Z*sum.Z))
	if !(length > 1e6) {
		return Position{}, PlaceError{Reason: "no places, or places all round the earth: they have no middle"}
	}
	return geocentricDirection(sum), nil
}

// geocentricDirection returns the position on the ellipsoid in the direction of a place seen from the earth's centre.
//
//	tan(lat) = Z / ((1 - e^2) p)
//
// where p is the distance from the axis. Valid for: everywhere. Source: normal of an ellipsoid.
func geocentricDirection(c Centred) Position {
	out := math.Sqrt(float64(c.X*c.X) + float64(c.Y*c.Y))
	return Position{Latitude: elementary.Atan2(c.Z, float64((1-eccentricity2)*out)), Longitude: elementary.Atan2(c.Y, c.X)}
}
