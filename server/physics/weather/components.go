package weather

import (
	"math"

	"pitgate/server/physics/elementary"
)

// Headwind returns the part of a wind of the given speed (m/s) that blows against a heading (m/s, negative when it blows from behind).
//
//	head = w cos(from - heading)
//
// where from is the direction the wind comes from and heading the direction of travel, both in radians clockwise from true north.
// Valid for: level wind and level heading. Source: plane trigonometry.
func Headwind(speed, from, heading float64) float64 {
	return speed * elementary.Cos(from-heading)
}

// Crosswind returns the part of a wind of the given speed (m/s) that blows across a heading (m/s, positive when it comes from the right).
//
//	cross = w sin(from - heading)
//
// where from and heading are as for Headwind. Valid for: level wind and level heading. Source: plane trigonometry.
func Crosswind(speed, from, heading float64) float64 {
	return speed * elementary.Sin(from-heading)
}

// Triangle is the answer of the wind triangle.
type Triangle struct {
	// Correction is the angle the nose points into the wind, rad, positive to the right.
	Correction float64
	// GroundSpeed is the speed over the ground along the track, m/s.
	GroundSpeed float64
	// Holds is false when the wind across is stronger than the airspeed, so that the track cannot be held.
	Holds bool
}

// HoldTrack solves the wind triangle for a track held over the ground.
//
//	sin(c) = cross / V,  Vg = V cos(c) - head
//
// where V is the airspeed (m/s), head and cross the wind components along and across the track (m/s) as Headwind and Crosswind return them.
// Valid for: steady level flight. Source: plane trigonometry.
func HoldTrack(airspeed, head, cross float64) Triangle {
	if !(math.Abs(cross) < airspeed) {
		return Triangle{}
	}
	along := math.Sqrt(float64(airspeed*airspeed) - float64(cross*cross))
	return Triangle{
		Correction:  elementary.Atan2(cross, along),
		GroundSpeed: along - head,
		Holds:       true,
	}
}
