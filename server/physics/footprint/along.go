package footprint

import (
	"errors"
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// Waypoint is a place of a planned flight over the ground.
type Waypoint struct {
	Place  field.Point
	Height float64 // over the ground, m
	Speed  float64 // airspeed, m/s
}

// leg is the flight from one waypoint to the next.
type leg struct {
	heading, climb, time float64
}

// Along returns the states of a flight through waypoints for Plan.Path, one a waypoint: a circuit is closed by giving its first waypoint again.
// Waypoints less than a millimetre from the one before are left out.
//
//	V over the ground = sqrt(V^2 - c^2) - h, sin(correction) = c/V, tan(b) = V w/g, at most the greatest bank
//
// where h and c are the wind against and across the leg (c from the right positive), w the rate of turn from leg to leg and b the bank, positive to the
// right. Valid for: legs short against the radius of the turns, where the path turns. Source: wind triangle; steady turn.
func Along(path []Waypoint, wind Wind, greatestBank float64) ([]Release, error) {
	if err := errors.Join(wind.Check(), firstOutside([]bounded{{"greatest bank", greatestBank, 0, steepest}})); err != nil {
		return nil, err
	}
	path, err := distinct(path)
	if err != nil {
		return nil, err
	}
	legs := make([]leg, len(path)-1)
	for i := range legs {
		if legs[i], err = flown(path[i], path[i+1], wind); err != nil {
			return nil, fmt.Errorf("path leg %d: %w", i+1, err)
		}
	}
	closed := path[0].Place.Distance(path[len(path)-1].Place) < sameplace
	out := make([]Release, len(path))
	for i, w := range path {
		out[i] = atWaypoint(w, legs, i, closed, greatestBank)
	}
	return out, nil
}

// sameplace is the distance below which two waypoints are one, m.
const sameplace = 1e-3

// distinct returns the waypoints without repeats.
func distinct(path []Waypoint) ([]Waypoint, error) {
	var out []Waypoint
	for i, w := range path {
		if err := (Release{Place: w.Place, Height: w.Height, Speed: w.Speed}).Check(); err != nil {
			return nil, fmt.Errorf("waypoint %d: %w", i+1, err)
		}
		if len(out) == 0 || w.Place.Distance(out[len(out)-1].Place) >= sameplace {
			out = append(out, w)
		}
	}
	if len(out) < 2 {
		return nil, errors.New("path: needs at least two waypoints apart")
	}
	return out, nil
}

// flown returns the leg between two waypoints.
func flown(from, to Waypoint, wind Wind) (leg, error) {
	way := to.Place.Minus(from.Place)
	length := way.Length()
	ahead := way.Times(1 / length)
	air := wind.At((from.Height + to.Height) / 2)
	speed := (from.Speed + to.Speed) / 2
	tail, cross := air.Dot(ahead), -air.Dot(field.Point{X: ahead.Y, Y: -ahead.X})
	if !(math.Abs(cross) < speed) {
		return leg{}, errors.New("the wind across is as strong as the airspeed")
	}
	along := math.Sqrt(float64(speed*speed) - float64(cross*cross))
	over := along + tail
	if !(over > 0) {
		return leg{}, errors.New("the wind against is as strong as the airspeed")
	}
	time := length / over
	climb := elementary.Atan2((to.Height-from.Height)/time, speed)
	return leg{heading: elementary.Atan2(way.X, way.Y) + elementary.Atan2(cross, along), climb: climb, time: time}, nil
}

// atWaypoint returns the state at a waypoint, between the legs before and after it.
func atWaypoint(w Waypoint, legs []leg, i int, closed bool, greatestBank float64) Release {
	last := len(legs)
	before, after := legs[max(i-1, 0)], legs[min(i, last-1)]
	if closed && (i == 0 || i == last) {
		before, after = legs[last-1], legs[0]
	}
	turn := shortest(after.heading - before.heading)
	rate := turn / float64(0.5*(before.time+after.time))
	bank := elementary.Atan2(w.Speed*rate, standardGravity)
	return Release{
		Place: w.Place, Height: w.Height, Speed: w.Speed, Heading: before.heading + float64(0.5*turn), Climb: float64(0.5 * (before.climb + after.climb)),
		Bank: min(max(bank, -greatestBank), greatestBank),
	}
}

// shortest returns a change of heading the shorter way round, rad, within half a turn.
func shortest(turn float64) float64 {
	return elementary.Atan2(elementary.Sin(turn), elementary.Cos(turn))
}
