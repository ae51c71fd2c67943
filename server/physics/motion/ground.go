package motion

import (
	"math"

	"pitgate/server/physics/elementary"
)

// ground is the height of the ground along the launch.
type ground struct {
	points []ProfilePoint
	slope  float64 // rise over distance where there are no points
	level  float64 // distance from which sloping ground is level
}

// newGround returns the ground of a launch: its profile, else the plane of the strip, or the slope under the stroke and level ground after it.
func newGround(l *Launch) *ground {
	g := &ground{points: l.Ground, level: math.Inf(1)}
	switch l.Method {
	case Wheels:
		g.slope = elementary.Tan(l.Slope)
	case Bungee:
		g.slope = elementary.Tan(l.Slope)
		g.level = l.Stretch * elementary.Cos(l.Slope)
	case Ramp, Hand, Catapult:
	}
	return g
}

// height returns the height of the ground at a distance.
func (g *ground) height(distance float64) float64 {
	if len(g.points) > 0 {
		return heightAlong(g.points, distance)
	}
	return g.slope * min(distance, g.level)
}

// highest returns a height that the ground nowhere exceeds.
func (g *ground) highest() float64 {
	if len(g.points) == 0 {
		if g.slope == 0 {
			return 0
		}
		return math.Inf(1)
	}
	most := math.Inf(-1)
	for _, p := range g.points {
		most = max(most, p.Height)
	}
	return most
}
