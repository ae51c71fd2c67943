// Package sun finds where the sun stands over a place, when it rises and sets, and whether it stands behind a model for the pilot. Moments are
// seconds since 1970-01-01 UTC as a number; latitudes, longitudes and all angles are radians, north and east positive, azimuths clockwise from
// true north.
//
// Positions on the sky are good to 0.01 degrees between 1950 and 2050 and to 0.02 degrees between 1900 and 2100; rising and setting are good to a minute
// below 65 degrees of latitude over a level horizon, where refraction near the horizon, which changes with the weather, is the greater doubt.
package sun

import "math"

const (
	secondsPerDay      = 86400.0
	daysPerCentury     = 36525.0
	julianDayOfUnix    = 2440587.5
	julianDayOfJ2000   = 2451545.0
	dynamicLessClock   = 69.0 // s, of 2005 to 2040; 10 s of it move the sun by 0.0001 degrees
	centuriesOfRange   = 1.0
	radiansPerDegree   = math.Pi / 180
	fullCircle         = 2 * math.Pi
	horizontalParallax = 8.794 / 3600 * radiansPerDegree
)

// degrees turns degrees into radians within one turn.
func degrees(value float64) float64 {
	return float64(math.Mod(value, 360) * radiansPerDegree)
}

// withinTurn returns an angle between 0 and a full circle.
func withinTurn(angle float64) float64 {
	angle = math.Mod(angle, fullCircle)
	if angle < 0 {
		angle += fullCircle
	}
	return angle
}

// withinHalfTurn returns an angle from minus half a circle, exclusive, to half a circle.
func withinHalfTurn(angle float64) float64 {
	angle = withinTurn(angle)
	if angle > math.Pi {
		angle -= fullCircle
	}
	return angle
}
