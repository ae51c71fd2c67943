package reach

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
	"pitgate/server/physics/weather"
)

// Wind is the motion of the air over the ground at a height over it (m): the velocity it moves with, x east and y north, m/s. Nil means still air.
type Wind func(height float64) field.Point

// ProfileWind returns the wind of a profile: a speed at its reference height (m/s) from a direction (rad clockwise from true north).
func ProfileWind(speed, from float64, profile weather.Profile) Wind {
	x, y := -elementary.Sin(from), -elementary.Cos(from)
	return func(height float64) field.Point {
		s := speed * profile.Factor(height)
		return field.Point{X: float64(s * x), Y: float64(s * y)}
	}
}

const (
	windNodes = 48
	windTop   = 500.0 // the wind above is that at this height, m
)

// column is the wind summed up over height, so that a mean over heights is a difference.
type column struct {
	sum     [windNodes + 1]field.Point // from the ground to each node, m2/s
	still   bool
	fastest float64 // m/s
	// along is the direction of the wind on the whole; the wind at any height from the line-up up lies between low and high along it (Y) and to its right (X).
	along, low, high field.Point
}

// node returns the height of a node: they lie closer near the ground.
func node(i int) float64 {
	share := float64(i) / windNodes
	return float64(windTop * share * share)
}

// newColumn sums a wind up by Simpson's rule between nodes.
func newColumn(wind Wind) column {
	c := column{still: wind == nil}
	if c.still {
		return c
	}
	below := wind(0)
	for i := 1; i <= windNodes; i++ {
		low, high := node(i-1), node(i)
		middle, above := wind(low+float64((high-low)/2)), wind(high)
		mean := below.Plus(middle.Times(4)).Plus(above).Times(1.0 / 6)
		c.sum[i] = c.sum[i-1].Plus(mean.Times(high - low))
		c.fastest = max(c.fastest, middle.Length(), above.Length(), below.Length())
		below = above
	}
	c.still = c.fastest == 0
	return c
}

// surround finds the bounds of the wind from a height up.
func (c *column) surround(wind Wind, from float64) {
	if c.still {
		c.along = field.Point{Y: 1}
		return
	}
	c.along, _ = unit(c.sum[windNodes])
	c.low, c.high = field.Point{X: math.Inf(1), Y: math.Inf(1)}, field.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for i := range 2*windNodes + 1 {
		share := float64(i) / (2 * windNodes)
		w := wind(from + float64(windTop*share*share))
		a := field.Point{X: w.Dot(rightOf(c.along)), Y: w.Dot(c.along)}
		c.low = field.Point{X: min(c.low.X, a.X), Y: min(c.low.Y, a.Y)}
		c.high = field.Point{X: max(c.high.X, a.X), Y: max(c.high.Y, a.Y)}
	}
}

// tailwind returns a speed that the wind along a direction does not exceed at any height from the line-up up.
func (c *column) tailwind(ahead field.Point) float64 {
	x, y := ahead.Dot(rightOf(c.along)), ahead.Dot(c.along)
	return max(float64(c.low.X*x), float64(c.high.X*x)) + max(float64(c.low.Y*y), float64(c.high.Y*y))
}

// finite reports whether the wind is a number everywhere and slower than 200 m/s.
func (c *column) finite() bool {
	return c.sum[windNodes].Finite() && c.fastest <= 200
}

// to returns the sum from the ground to a height.
func (c *column) to(height float64) field.Point {
	if height >= windTop {
		last := c.sum[windNodes].Minus(c.sum[windNodes-1]).Times(1 / (node(windNodes) - node(windNodes-1)))
		return c.sum[windNodes].Plus(last.Times(height - windTop))
	}
	i := min(int(windNodes*math.Sqrt(max(height, 0)/windTop)), windNodes-1)
	low, high := node(i), node(i+1)
	share := (height - low) / (high - low)
	return c.sum[i].Plus(c.sum[i+1].Minus(c.sum[i]).Times(share))
}

// mean returns the mean wind between two heights.
func (c *column) mean(low, high float64) field.Point {
	if c.still {
		return field.Point{}
	}
	high = max(high, low+0.5)
	return c.to(high).Minus(c.to(low)).Times(1 / (high - low))
}
