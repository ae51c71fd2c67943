package field

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestRunsAreTheLongestOfAScan wants the run found along a heading to be no shorter than the best of a scan across the area, and free where it lies.
func TestRunsAreTheLongestOfAScan(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		g := randomGround(r)
		heading, width := 3*r.Float64(), 20*r.Float64()
		run, err := g.LongestAlong(heading, width)
		if err != nil {
			continue
		}
		s := newSwept(g, width)
		s.turn(heading)
		s.place()
		low, high := s.offsets[0], s.offsets[len(s.offsets)-1]
		for k := range 500 {
			offset := between(low, high, (float64(k)+0.5)/500)
			if found := s.longest(offset); found.length > run.Length+1e-6 {
				t.Fatalf("%v along %g, %g m wide: %g m at %g, found only %g", g, heading, width, found.length, offset, run.Length)
			}
		}
		if middle := run.Middle.At(0.5); run.Length > 0 && math.Abs(s.longest(middle.Dot(s.right)).length-run.Length) > 1e-6 {
			t.Errorf("%v along %g: the run is not free where it lies", g, heading)
		}
	}
}

// randomGround returns an outline of 3 to 10 corners about the origin with up to two posts and perhaps a barn.
func randomGround(r *rand.Rand) Ground {
	var g Ground
	n := 3 + r.IntN(8)
	for i := range n {
		g.Area = append(g.Area, Ahead(-2*math.Pi*(float64(i)+0.8*r.Float64())/float64(n)).Times(50+200*r.Float64()))
	}
	for range r.IntN(3) {
		g.Posts = append(g.Posts, Point{200*r.Float64() - 100, 200*r.Float64() - 100})
	}
	if r.IntN(2) == 0 {
		x, y := 100*r.Float64()-50, 100*r.Float64()-50
		g.Blocked = append(g.Blocked, Polygon{{x, y}, {x + 30, y}, {x + 30, y + 10}, {x, y + 10}})
	}
	return g
}
