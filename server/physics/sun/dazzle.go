package sun

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Limits within which the sun stands in the eyes of somebody who watches a model.
const (
	// LowSun is the elevation below which a hat or a hand no longer helps, rad.
	LowSun = 25 * radiansPerDegree
	// NarrowOffset is the angle in azimuth from the line of sight, rad.
	NarrowOffset = 30 * radiansPerDegree
)

// Dazzle is the sun against a line of sight.
type Dazzle struct {
	Angle  float64 // between the line of sight and the sun, rad from 0 to half a circle
	Offset float64 // the same in azimuth alone, rad, positive when the sun stands to the right
	InEyes bool    // the sun is up, low and within the offset
}

// Along returns the sun against a line of sight of an azimuth and an elevation, rad.
//
//	cos(g) = sin(h) sin(e) + cos(h) cos(e) cos(A - a)
//
// where h and A are the sun's elevation and azimuth, e and a those of the line. InEyes compares with lowSun and narrowOffset (rad; LowSun and
// NarrowOffset unless a rule says otherwise) and with the disc's upper edge on the horizon.
// Valid for: any sun. Source: spherical trigonometry; the limits are common practice, without source.
func (p Position) Along(azimuth, elevation, lowSun, narrowOffset float64) Dazzle {
	offset := withinHalfTurn(p.Azimuth - azimuth)
	across := float64(elementary.Cos(p.Elevation) * elementary.Cos(elevation))
	cosine := float64(elementary.Sin(p.Elevation)*elementary.Sin(elevation)) + float64(across*elementary.Cos(offset))
	up := p.True > RisingElevation
	return Dazzle{
		Angle:  math.Pi/2 - arcsine(cosine),
		Offset: offset,
		InEyes: up && p.Elevation < lowSun && math.Abs(offset) <= narrowOffset,
	}
}

// Landing returns the sun against the two level lines of sight of a landing in a direction (rad clockwise from true north): backwards along
// the approach, where the pilot beside the strip looks for the model, and forwards along the strip, where it rolls and goes around.
//
// Limits as Along takes them. Valid for: a pilot beside the strip. Source: Along.
func (p Position) Landing(direction, lowSun, narrowOffset float64) (approach, forward Dazzle) {
	return p.Along(withinTurn(direction+math.Pi), 0, lowSun, narrowOffset), p.Along(direction, 0, lowSun, narrowOffset)
}

// Light is how bright the day is.
type Light int

// Degrees of light, brightest first.
const (
	// DayLight has the sun above the horizon.
	DayLight Light = iota + 1
	// TwilightLight is civil twilight: the horizon is clear and large things can be told apart.
	TwilightLight
	// Dark is beyond civil twilight.
	Dark
)

// Light returns how bright it is under a clear sky.
//
// Valid for: level horizon. Source: limits of the Astronomical Almanac.
func (p Position) Light() Light {
	switch {
	case p.True > RisingElevation:
		return DayLight
	case p.True > CivilElevation:
		return TwilightLight
	}
	return Dark
}
