package landing

import (
	"fmt"
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/field"
)

// Obstacle is something under the approach.
type Obstacle struct {
	Near, Far float64 // the stretch it takes up, distances from the threshold (m), negative before it, in either order
	Top       float64 // over the threshold, m
	// Standard deviations of its place along the approach and of its top, m.
	PlaceSpread, TopSpread float64
}

// Clearance is how the path passes an obstacle.
type Clearance struct {
	Distance float64 // where it is least, from the threshold, m
	Height   float64 // of the wheels over the top, m; below zero when they hit
	// Lower is Height less the plan's coverage times the standard deviation of place and top together.
	Lower float64
}

// check names what is wrong with an obstacle.
func (o Obstacle) check(index int) error {
	err := firstOutside([]limited{
		{"near", o.Near, -1e5, 1e5}, {"far", o.Far, -1e5, 1e5}, {"top", o.Top, -1e4, 1e4},
		{"place spread", o.PlaceSpread, 0, 1e4}, {"top spread", o.TopSpread, 0, 1e4},
	})
	if err != nil {
		return fmt.Errorf("obstacle %d: %w", index+1, err)
	}
	return nil
}

// clear computes the clearances. The path falls towards the strip, so the far end of an obstacle decides.
//
//	s = sqrt(st^2 + (tan(g) sx)^2)
//
// where st and sx are the standard deviations of top and place and g the slope. Valid for: independent errors. Source: propagation of errors.
func (l *Landing) clear(f *flight) {
	slope := elementary.Tan(f.slope.Angle)
	for _, o := range f.plan.Obstacles {
		at := max(o.Near, o.Far)
		c := Clearance{Distance: at, Height: l.Height(at) - o.Top}
		across := slope * o.PlaceSpread
		spread := math.Sqrt(float64(o.TopSpread*o.TopSpread) + float64(across*across))
		c.Lower = c.Height - float64(f.plan.Coverage*spread)
		l.Clearances = append(l.Clearances, c)
	}
}

// UnderApproach returns the obstacles of a field that stand under the approach to a threshold on a heading (rad, of the landing), within a half width
// (m) that grows with distance by widen (m/m). The top of each is its height, on ground level with the threshold; index gives its place in the list.
func UnderApproach(threshold field.Point, heading, halfWidth, widen float64, obstacles []field.Obstacle) (found []Obstacle, index []int) {
	corridor := field.Corridor{Origin: threshold, Heading: heading + math.Pi, HalfWidth: halfWidth, Spread: widen}
	for i, o := range obstacles {
		if c, crosses := corridor.Cross(o); crosses {
			found = append(found, Obstacle{Near: -c.Near, Far: -c.Far, Top: o.Height})
			index = append(index, i)
		}
	}
	return found, index
}
