package footprint

import (
	"errors"
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// TopSpeed returns the airspeed of level flight at full thrust, m/s; zero when the thrust does not carry the model level.
//
//	q = (F/S + sqrt((F/S)^2 - 4 CD0 K (m g/S)^2)) / (2 CD0), V = sqrt(2 q/rho)
//
// where F is FullThrust, S the wing area, K the induced factor, and F falls by ThrustSlope (N per m/s) from standstill. The slope is met by
// repeating. Valid for: parabolic polar, thrust straight in airspeed. Source: level flight, e.g. Anderson, Introduction to Flight, section 6.5.
func TopSpeed(m Model, density, gravity float64) float64 {
	speed := 0.0
	for range 60 {
		next := topSpeedAt(m, density, gravity, m.FullThrust-float64(m.ThrustSlope*speed))
		if math.Abs(next-speed) <= 1e-9*next {
			return next
		}
		speed = (speed + next) / 2
	}
	return speed
}

// topSpeedAt returns the greater airspeed of level flight at a thrust, m/s.
func topSpeedAt(m Model, density, gravity, thrust float64) float64 {
	push, load := thrust/m.Area, m.Mass*gravity/m.Area
	if !(thrust > 0) || !(m.CD0 > 0) {
		return 0
	}
	root := float64(push*push) - float64(4*m.CD0*m.InducedFactor*load*load)
	if root < 0 {
		return 0
	}
	return math.Sqrt((push + math.Sqrt(root)) / (m.CD0 * density))
}

// Endurance returns the time to the end of a mass of fuel (kg) at a flow (kg/s), s. Source: definition.
func Endurance(fuel, flow float64) (float64, error) {
	if !(fuel >= 0) || math.IsInf(fuel, 0) {
		return 0, errors.New("fuel: must be a mass, not negative")
	}
	if !(flow > 0) || math.IsInf(flow, 0) {
		return 0, errors.New("fuel flow: must be above zero")
	}
	return fuel / flow, nil
}

// Reach is a disc no powered flight leaves.
type Reach struct {
	Centre field.Point
	Radius float64 // m
}

// FlyAwayReach returns the disc within which a fly-away ends, from a place: it drifts with the wind while it flies and glides.
//
//	centre = p + w t, R = V te + E h, t = te + E h/V
//
// where V is the airspeed (m/s), te the endurance (s), h the height (m), E the glide ratio and w the wind at the height (m/s), which is the
// strongest it meets below. Valid for: no climb on the way, no thermals, the fastest the model flies level. A climb trades distance for height, and
// back. Source: kinematics.
func FlyAwayReach(from Release, speed, endurance, glideRatio float64, wind Wind) (Reach, error) {
	if err := firstOutside([]bounded{
		{"speed", speed, leastSpeed, 300},
		{"endurance", endurance, 0, longestFlight},
		{"glide ratio", glideRatio, 0, 100},
	}); err != nil {
		return Reach{}, err
	}
	if err := errors.Join(from.Check(), wind.Check()); err != nil {
		return Reach{}, err
	}
	glide := float64(glideRatio * from.Height)
	radius := float64(speed*endurance) + glide
	drift := wind.At(from.Height).Times(radius / speed)
	return Reach{Centre: from.Place.Plus(drift), Radius: radius}, nil
}

// Farthest returns the greatest distance of the disc from a place, m.
func (r Reach) Farthest(p field.Point) float64 { return r.Centre.Distance(p) + r.Radius }

// Outline returns a polygon around the disc, nowhere inside it.
func (r Reach) Outline() field.Polygon {
	out := make(field.Polygon, 0, 2*roundCorners)
	for _, corner := range aroundCircle(2 * roundCorners) {
		out = append(out, r.Centre.Plus(corner.Times(r.Radius)))
	}
	return out
}

// roundCorners is the number of corners a disc is drawn with.
const roundCorners = 16

// aroundCircle returns the corners of a regular polygon around the unit circle, counter-clockwise: its sides touch the circle.
func aroundCircle(corners int) []field.Point {
	half := math.Pi / float64(corners)
	size := 1 / elementary.Cos(half)
	out := make([]field.Point, corners)
	for i := range out {
		angle := 2 * half * float64(i)
		out[i] = field.Point{X: float64(size * elementary.Cos(angle)), Y: float64(size * elementary.Sin(angle))}
	}
	return out
}
