package motion

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// Acuity is the angle that a normal eye resolves, rad: one minute of arc. It tells how far a thing can be made out at best, not how far its attitude can be
// seen. Source: definition of normal visual acuity.
const Acuity = math.Pi / (180 * 60)

// HalfDetection is the angle under which half of 32 observers found a small multi-rotor against the sky, rad: 0.065 degrees. Source: Li et al.,
// Applied Ergonomics 81.
const HalfDetection = 0.065 * math.Pi / 180

// VisualRange returns the distance at which a size across (m) is seen under an angle (rad), m.
//
//	d = s / (2 tan(a/2))
//
// Valid for: angles from above zero to below 180 degrees. Source: geometry.
func VisualRange(size, angle float64) float64 {
	return size / (2 * elementary.Tan(angle/2))
}

// AttitudeRange returns the distance up to which the attitude of a fixed-wing model of a greatest dimension (m) is taken to be seen, m.
//
//	d = 490 s + 30
//
// Valid for: daylight; dimensions of models. Source: EASA acceptable means of compliance to Regulation (EU) 2019/947, attitude line of sight.
func AttitudeRange(size float64) float64 { return float64(490*size) + 30 }

// DetectionRange returns the distance up to which other traffic is taken to be seen in a ground visibility (m), m.
//
//	d = 0.3 v
//
// Valid for: visibility of 5 km or more. Source: as AttitudeRange, detection line of sight.
func DetectionRange(visibility float64) float64 { return 0.3 * visibility }

// SightRange returns the lesser of AttitudeRange and DetectionRange, m.
func SightRange(size, visibility float64) float64 {
	return min(AttitudeRange(size), DetectionRange(visibility))
}

// LapPoint is a point of a lap.
type LapPoint struct {
	field.Point
	Time float64 // from the start of the lap, s
}

// Lap is one lap of a circuit over the ground.
type Lap struct {
	Points []LapPoint
	Time   float64 // s; infinite when the airspeed cannot hold the legs in the crosswind or against the headwind
	Length float64 // m
}

// Lap returns the lap of Path with its times: reaction and turns by their own time, legs by the speed over the ground.
//
//	Vg = sqrt(V^2 - wc^2) - wh
//
// where wc and wh are the wind across and against the leg. Valid for: legs corrected for drift, steady wind. Source: wind triangle.
func (c Circuit) Lap() Lap {
	path := c.Path()
	lap := Lap{Points: make([]LapPoint, 0, len(path))}
	for i, p := range path {
		if i > 0 {
			way := p.Distance(path[i-1])
			lap.Length += way
			lap.Time += c.pieceTime(i, path[i-1], p)
		}
		lap.Points = append(lap.Points, LapPoint{p, lap.Time})
	}
	return lap
}

// pieceTime returns the time of the piece of Path that ends at a point.
func (c Circuit) pieceTime(i int, from, to field.Point) float64 {
	const firstTurn, abeam = 2, 2 + turnPoints + 1
	switch {
	case i == firstTurn || i == abeam+1:
		return c.Reaction
	case i > firstTurn && i < abeam, i > abeam+1 && i <= abeam+1+turnPoints:
		return c.TurnTime() / turnPoints
	}
	return c.legTime(from, to)
}

// legTime returns the time of a leg flown straight over the ground.
func (c Circuit) legTime(from, to field.Point) float64 {
	way := to.Minus(from)
	length := way.Length()
	if !(length > 0) {
		return 0
	}
	along := way.Times(1 / length)
	drift := c.drift()
	across := drift.Cross(along)
	square := float64(c.Airspeed*c.Airspeed) - float64(across*across)
	if square <= 0 {
		return math.Inf(1)
	}
	speed := math.Sqrt(square) + drift.Dot(along)
	if speed <= 0 {
		return math.Inf(1)
	}
	return length / speed
}

// Sight is how a lap is seen by its pilot.
type Sight struct {
	Farthest     float64     // greatest distance from the pilot's eye in space, m
	At           field.Point // where
	Share        float64     // share of the lap's time within the range asked for
	TimeOut      float64     // longest time in one piece beyond it, s
	LeastAngle   float64     // least angle of a size asked for, seen across, rad
	HighestAngle float64     // greatest elevation over the horizon, rad
}

// Seen returns how a lap at a height over the pilot's eye (m) is seen from a place: the size (m) is the span or length that should be made out, the reach
// the distance within which it is (SightRange, VisualRange), m.
//
// Valid for: level laps; to the length of the drawn pieces, each taken in 8 parts. Source: geometry.
func (l Lap) Seen(pilot field.Point, height, size, reach float64) Sight {
	const parts = 8
	var s Sight
	within, beyond := 0.0, 0.0
	for i := 1; i < len(l.Points); i++ {
		a, b := l.Points[i-1], l.Points[i]
		piece := field.Segment{A: a.Point, B: b.Point}
		for k := range parts {
			p := piece.At((float64(k) + 0.5) / parts)
			if s.look(pilot, p, height) <= reach {
				within += float64((b.Time - a.Time) / parts)
				beyond = 0
			} else {
				beyond += float64((b.Time - a.Time) / parts)
				s.TimeOut = max(s.TimeOut, beyond)
			}
		}
		s.look(pilot, b.Point, height)
	}
	if l.Time > 0 && !math.IsInf(l.Time, 1) {
		s.Share = within / l.Time
	}
	if s.Farthest > 0 {
		s.LeastAngle = 2 * elementary.Atan(size/(2*s.Farthest))
	}
	return s
}

// look takes one place of a lap into account and returns its distance from the eye.
func (s *Sight) look(pilot, p field.Point, height float64) float64 {
	level := p.Distance(pilot)
	distance := math.Sqrt(float64(level*level) + float64(height*height))
	if distance > s.Farthest {
		s.Farthest, s.At = distance, p
	}
	s.HighestAngle = max(s.HighestAngle, elementary.Atan2(height, level))
	return distance
}
