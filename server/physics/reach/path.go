package reach

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// way is a turn, a straight and a turn through the air.
type way struct {
	first, second float64     // sides of the turns: 1 right, -1 left
	turn1, turn2  float64     // angles turned, rad
	length        float64     // of the straight, m
	ahead         field.Point // direction of the straight
}

// gate is a place with a direction through the air.
type gate struct {
	at      field.Point
	ahead   field.Point // unit vector
	heading float64     // its heading, rad
}

// join returns the straight of the way of two sides from one gate to another with turns of a radius, and whether there is one; angles fills in the turns.
//
//	same sides:  straight along the line of the centres
//	other sides: straight across it, L = sqrt(d^2 - 4 R^2), heading that of the centres + side atan(2R/L)
//
// where d is the distance of the centres. Valid for: constant radius, still air or the frame of the air.
// Source: Dubins, On curves of minimal length with a constraint on average curvature (1957).
func join(from, to *gate, radius, first, second float64) (way, bool) {
	start := from.at.Plus(rightOf(from.ahead).Times(first * radius))
	end := to.at.Plus(rightOf(to.ahead).Times(second * radius))
	along := end.Minus(start)
	ahead, distance := unit(along)
	w := way{first: first, second: second, length: distance, ahead: ahead}
	if first != second {
		square := float64(distance*distance) - float64(4*radius*radius)
		if square < 0 {
			return w, false
		}
		w.length = math.Sqrt(square)
		across := rightOf(ahead).Times(first * 2 * radius / distance)
		w.ahead = ahead.Times(w.length / distance).Plus(across)
	}
	if distance == 0 {
		w.ahead = from.ahead
	}
	return w, true
}

// angles fills in the angles turned.
func (w *way) angles(from, to *gate) {
	heading := elementary.Atan2(w.ahead.X, w.ahead.Y)
	w.turn1 = wrap(w.first * (heading - from.heading))
	w.turn2 = wrap(w.second * (to.heading - heading))
}

// wrap returns an angle within 0 to 2 pi, a hair below 2 pi being 0.
func wrap(angle float64) float64 {
	for angle < 0 {
		angle += 2 * math.Pi
	}
	for angle >= 2*math.Pi {
		angle -= 2 * math.Pi
	}
	if angle > 2*math.Pi-1e-9 {
		return 0
	}
	return angle
}

// arc returns the place after a turn of an angle from a gate, and the direction there.
func arc(from *gate, radius, side, angle float64) (at, ahead field.Point) {
	sine, cosine := elementary.Sin(angle), elementary.Cos(angle)
	right := rightOf(from.ahead).Times(side)
	at = from.at.Plus(from.ahead.Times(radius * sine)).Plus(right.Times(radius * (1 - cosine)))
	return at, from.ahead.Times(cosine).Plus(right.Times(sine))
}
