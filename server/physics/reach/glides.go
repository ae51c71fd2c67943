package reach

import (
	"math"

	"pitgate/server/physics/field"
)

// glideNodes is the number of tailwinds for which the speed to fly is kept.
const glideNodes = 48

// closeSpeed is how near to the speed to fly the kept ones lie, over the stall speed: what that takes off the distance goes with its square, a few millionths.
const closeSpeed = 2e-3

// glides holds the speed to fly by tailwind.
type glides struct {
	least, step float64
	entry       [glideNodes + 1]Glide
	// slope is the least height lost by distance over the ground for each tailwind, and flattest that in any direction.
	slope    [glideNodes + 1]float64
	flattest float64
	slowest  float64 // pace of them all, m/s
}

// newGlides computes the speeds to fly for winds up to a speed.
func newGlides(m *Model, fastestWind float64) glides {
	reach := float64(max(fastestWind, 0.1) * 1.001)
	g := glides{least: -reach, step: 2 * reach / glideNodes}
	g.slowest = math.Inf(1)
	for i := range g.entry {
		headwind := reach - float64(2*reach*(float64(i)/glideNodes))
		g.entry[i] = m.speedToFly(headwind, closeSpeed)
		g.slowest = min(g.slowest, g.entry[i].Pace)
		g.slope[i] = 1 / max(g.entry[i].Ratio(headwind), 1e-3)
	}
	g.flattest = g.slope[glideNodes]
	return g
}

// flattestWith returns the least height lost by distance over the ground with no more than a tailwind: the kept value of the next tailwind up.
func (g *glides) flattestWith(tailwind float64) float64 {
	return g.slope[min(max(int((tailwind-g.least)/g.step)+1, 0), glideNodes)]
}

// at returns the glide for a tailwind, between two kept ones. Sink is a convex function of speed, so the value between lies on the high side.
func (g *glides) at(tailwind float64) (pace, sink float64) {
	x := (tailwind - g.least) / g.step
	i := min(max(int(x), 0), glideNodes-1)
	share := min(max(x-float64(i), 0), 1)
	a, b := &g.entry[i], &g.entry[i+1]
	return a.Pace + float64((b.Pace-a.Pace)*share), a.Sink + float64((b.Sink-a.Sink)*share)
}

// unit returns a vector of length one along v, and its length; north for no length.
func unit(v field.Point) (field.Point, float64) {
	length := v.Length()
	if !(length > 0) {
		return field.Point{Y: 1}, 0
	}
	return v.Times(1 / length), length
}

// rightOf returns the vector turned to the right by 90 degrees.
func rightOf(v field.Point) field.Point { return field.Point{X: v.Y, Y: -v.X} }
