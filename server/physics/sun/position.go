package sun

import (
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
)

// Standard air for refraction where a place names none.
const (
	standardPressure    = 101000.0 // Pa
	standardTemperature = 283.15   // K
	// lowestRefracted is the true elevation below which no refraction is added: the sun has set.
	lowestRefracted = -1.0 * radiansPerDegree
)

// Place is where the sun is seen from.
type Place struct {
	Latitude    float64 // rad, north positive
	Longitude   float64 // rad, east positive
	Pressure    float64 // of the air at the place, Pa; zero means 101000
	Temperature float64 // of the air at the place, K; zero means 283.15
}

// Position is where the sun stands.
type Position struct {
	Elevation float64 // of its centre above the level horizon, as seen through the air, rad
	True      float64 // the same without the air, rad
	Azimuth   float64 // clockwise from true north, rad from 0 to a full circle
	HourAngle float64 // westward from the meridian, rad from minus half to half a circle; zero at solar noon
}

// At returns where the sun stands at a moment (s since 1970-01-01 UTC).
//
//	sin(h) = sin(f) sin(d) + cos(f) cos(d) cos(H)
//	tan(A) = -cos(d) sin(H) / (sin(d) cos(f) - cos(d) cos(H) sin(f))
//
// where f is the latitude, d the declination and H the hour angle; parallax and refraction are added to h.
// Valid for: 1900 to 2100, see the package. Source: Meeus, Astronomical Algorithms (1998), chapters 12, 13, 16, 25 and 40.
func At(moment float64, place Place) (Position, error) {
	if err := check(moment, place); err != nil {
		return Position{}, err
	}
	return seen(moment, place), nil
}

// check returns the error of a moment or a place that cannot be.
func check(moment float64, place Place) error {
	if !(math.Abs(daysSince2000(moment)) <= centuriesOfRange*daysPerCentury) {
		return fmt.Errorf("time: has to lie between the years 1900 and 2100")
	}
	if !(math.Abs(place.Latitude) <= math.Pi/2) {
		return fmt.Errorf("latitude: has to lie between -90 and 90 degrees")
	}
	if !(math.Abs(place.Longitude) <= fullCircle) {
		return fmt.Errorf("longitude: has to lie between -360 and 360 degrees")
	}
	if !(place.Pressure >= 0 && place.Pressure <= 120000) {
		return fmt.Errorf("pressure: has to lie between 0 and 120000 Pa")
	}
	if place.Temperature != 0 && !(place.Temperature >= 173 && place.Temperature <= 353) {
		return fmt.Errorf("temperature: has to lie between 173 and 353 K")
	}
	return nil
}

// daysSince2000 returns days of universal time since 2000 January 1.5.
func daysSince2000(moment float64) float64 {
	return moment/secondsPerDay + (julianDayOfUnix - julianDayOfJ2000)
}

// seen returns where the sun stands, for a moment and a place that can be.
func seen(moment float64, place Place) Position {
	days := daysSince2000(moment)
	sun := Apparent((days + dynamicLessClock/secondsPerDay) / daysPerCentury)
	hour := withinHalfTurn(siderealAngle(days) + place.Longitude - sun.RightAscension)
	height, azimuth := horizontal(hour, sun.Declination, place.Latitude)
	height -= float64(horizontalParallax * elementary.Cos(height))
	return Position{
		Elevation: height + place.refraction(height),
		True:      height,
		Azimuth:   azimuth,
		HourAngle: hour,
	}
}

// horizontal returns elevation and azimuth, rad, from hour angle, declination and latitude, rad, as At says.
func horizontal(hour, declination, latitude float64) (height, azimuth float64) {
	sinHour, cosHour := elementary.Sin(hour), elementary.Cos(hour)
	sinDeclination, cosDeclination := elementary.Sin(declination), elementary.Cos(declination)
	sinLatitude, cosLatitude := elementary.Sin(latitude), elementary.Cos(latitude)
	level := float64(cosDeclination * cosHour)
	height = arcsine(float64(sinLatitude*sinDeclination) + float64(cosLatitude*level))
	north := float64(sinDeclination*cosLatitude) - float64(level*sinLatitude)
	return height, withinTurn(elementary.Atan2(-float64(cosDeclination*sinHour), north))
}

// refraction returns how much the air of the place lifts the sun, rad, at a true elevation, rad.
func (p Place) refraction(elevation float64) float64 {
	pressure, temperature := p.Pressure, p.Temperature
	if pressure == 0 {
		pressure = standardPressure
	}
	if temperature == 0 {
		temperature = standardTemperature
	}
	return Refraction(elevation, pressure, temperature)
}

// Refraction returns how much air of a pressure (Pa) and temperature (K) lifts a body at a true elevation (rad), rad.
//
//	R = 1.02' / tan(h + 10.3/(h + 5.11)) P/101000 283/T
//
// where h is the true elevation in degrees. It is zero below -1 degree and never negative.
// Valid for: elevations from -1 degree; 0.1' in ordinary air, some minutes of arc near the horizon in a strong inversion.
// Source: Saemundsson, in Meeus, Astronomical Algorithms (1998), equation 16.4.
func Refraction(elevation, pressure, temperature float64) float64 {
	if !(elevation >= lowestRefracted) {
		return 0
	}
	h := elevation / radiansPerDegree
	minutes := 1.02 / elementary.Tan(degrees(h+10.3/(h+5.11)))
	return max(0, float64(minutes/60*radiansPerDegree*(pressure/standardPressure)*(283/temperature)))
}
