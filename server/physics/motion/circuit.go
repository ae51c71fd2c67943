package motion

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// Circuit is a racetrack circuit: a leg along the launch heading, a half turn, the leg back and a half turn, level and at one airspeed.
type Circuit struct {
	Middle   field.Point // middle of the leg along the launch heading
	Heading  float64     // of that leg, rad
	Leg      float64     // its length, m
	LeftHand bool        // turns to the left
	Airspeed float64     // m/s
	Bank     float64     // rad
	Reaction float64     // time by which each turn starts late, s
	// Headwind and Crosswind are the wind at circuit height along and from the right of the heading, m/s.
	Headwind, Crosswind float64
}

// turnPoints is the number of straight pieces a half turn is drawn with.
const turnPoints = 24

// Radius returns the radius of the turns through the air, m.
func (c Circuit) Radius() float64 { return TurnRadius(c.Airspeed, c.Bank) }

// drift returns the speed of the air over the ground, m/s.
func (c Circuit) drift() field.Point {
	against := field.Ahead(c.Heading).Times(c.Headwind)
	across := field.Right(c.Heading).Times(c.Crosswind)
	return field.Point{}.Minus(against).Minus(across)
}

// TurnTime returns the time of a half turn, s: pi V / (g tan(bank)). Source: TurnRate.
func (c Circuit) TurnTime() float64 {
	return math.Pi / TurnRate(c.Airspeed, c.Bank)
}

// Path returns the closed track over the ground, from the start of the leg along the heading. Each half turn starts late by the reaction time and drifts
// with the wind while it lasts. The leg back runs parallel to the first from where the turn came out, and the second turn is called abeam the start of
// the first leg whatever the wind, so the track is the widest a pilot flies who corrects the drift only on the straight legs.
func (c Circuit) Path() field.Line {
	ahead := field.Ahead(c.Heading)
	start := c.Middle.Minus(ahead.Times(c.Leg / 2))
	end := c.Middle.Plus(ahead.Times(c.Leg / 2))
	out := end.Plus(c.way(c.Heading, c.Reaction))
	first := c.halfTurn(out, c.Heading)
	back := first[len(first)-1]
	abeam := back.Minus(ahead.Times(max(0, back.Minus(start).Dot(ahead))))
	second := c.halfTurn(abeam.Plus(c.way(c.Heading+math.Pi, c.Reaction)), c.Heading+math.Pi)

	path := make(field.Line, 0, 2*turnPoints+6)
	path = append(path, start, end)
	path = append(path, first...)
	path = append(path, abeam)
	path = append(path, second...)
	return append(path, start)
}

// way returns the way over the ground on a heading in a time, drift included.
func (c Circuit) way(heading, time float64) field.Point {
	return field.Ahead(heading).Times(c.Airspeed).Plus(c.drift()).Times(time)
}

// halfTurn returns the track of a half turn from a place on a heading.
//
//	p(t) = p0 + arc of radius V^2/(g tan(bank)) + wind t
//
// Valid for: constant bank and airspeed, steady wind. Source: kinematics.
func (c Circuit) halfTurn(from field.Point, heading float64) field.Line {
	inward := field.Right(heading)
	if c.LeftHand {
		inward = inward.Times(-1)
	}
	ahead, drift := field.Ahead(heading), c.drift()
	radius, time := c.Radius(), c.TurnTime()
	points := make(field.Line, 0, turnPoints+1)
	for i := range turnPoints + 1 {
		share := float64(i) / turnPoints
		angle := math.Pi * share
		p := from.Plus(ahead.Times(radius * elementary.Sin(angle))).Plus(inward.Times(radius * (1 - elementary.Cos(angle))))
		points = append(points, p.Plus(drift.Times(time*share)))
	}
	return points
}

// Fit is how a circuit lies in the flying area.
type Fit struct {
	Fits     bool
	Distance float64     // least distance to the area's edge, m, negative when outside
	At       field.Point // the point of the circuit that decides
	// LargestSpeed is the greatest airspeed at which the circuit fits, m/s, up to the one asked for; zero when none does.
	LargestSpeed float64
}

// Fit lays the circuit in a flying area and asks for a distance to its edge (m). Where it does not fit, LargestSpeed comes from a bracketed
// root over the airspeed, from just above the wind to the one asked for. The straight pieces a turn is drawn with lie inside it by less than
// 0.3 % of its radius, which is added.
func (c Circuit) Fit(area field.Polygon, distance float64) Fit {
	clearance := c.clearance(area)
	fit := Fit{Fits: clearance.Distance >= distance, Distance: clearance.Distance, At: clearance.At}
	if fit.Fits {
		fit.LargestSpeed = c.Airspeed
		return fit
	}
	fit.LargestSpeed = c.largestSpeed(area, distance)
	return fit
}

// largestSpeed returns the greatest airspeed up to the circuit's with which it keeps a distance to the area's edge; zero when none does.
func (c Circuit) largestSpeed(area field.Polygon, distance float64) float64 {
	surplus := func(speed float64) float64 {
		slower := c
		slower.Airspeed = speed
		return slower.clearance(area).Distance - distance
	}
	least := c.wind() + 1
	if least < c.Airspeed && surplus(least) >= 0 {
		return bisectTo(surplus, least, c.Airspeed, 1e-6)
	}
	return 0
}

// wind returns the speed of the wind at circuit height, m/s.
func (c Circuit) wind() float64 {
	return math.Sqrt(float64(c.Headwind*c.Headwind) + float64(c.Crosswind*c.Crosswind))
}

// longestLeg is the longest leg LongestLeg looks for, m.
const longestLeg = 2000.0

// LongestLeg returns the length of the longest leg (m, up to 2000) about the circuit's middle with which it keeps a distance to the area's edge (m), and
// false when it does not fit even without a leg.
func (c Circuit) LongestLeg(area field.Polygon, distance float64) (float64, bool) {
	surplus := func(leg float64) float64 {
		longer := c
		longer.Leg = leg
		return longer.clearance(area).Distance - distance
	}
	if !(surplus(0) >= 0) {
		return 0, false
	}
	if surplus(longestLeg) >= 0 {
		return longestLeg, true
	}
	return bisectTo(surplus, 0, longestLeg, 1e-3), true
}

// clearance returns the clearance of the drawn circuit less the rise of the turn over its straight pieces.
func (c Circuit) clearance(area field.Polygon) field.Clearance {
	least := area.PathClearance(c.Path())
	least.Distance -= float64(c.Radius() * (1 - elementary.Cos(math.Pi/(2*turnPoints))))
	return least
}

// bisectTo is bisect to a width.
func bisectTo(value func(float64) float64, low, high, width float64) float64 {
	for high-low > width {
		mid := low + float64((high-low)/2)
		if value(mid) >= 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// Check returns an error that names the first impossible value.
func (c Circuit) Check() error {
	return firstOutside([]limited{
		{"circuit middle x", c.Middle.X, -1e6, 1e6},
		{"circuit middle y", c.Middle.Y, -1e6, 1e6},
		{"circuit heading", c.Heading, -10, 10},
		{"circuit leg", c.Leg, 0, 1e5},
		{"circuit airspeed", c.Airspeed, 0.1, 1000},
		{"circuit bank", c.Bank, 0.01, 1.5},
		{"circuit reaction", c.Reaction, 0, 60},
		{"circuit headwind", c.Headwind, -200, 200},
		{"circuit crosswind", c.Crosswind, -200, 200},
	})
}
