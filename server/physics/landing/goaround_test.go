package landing

import (
	"math"
	"testing"

	"pitgate/server/physics/field"
)

// follow flies a go-around that must be possible.
func follow(t *testing.T, g GoAround, height float64, thrust func(speed, time float64) float64) Climbout {
	t.Helper()
	a := jet()
	a.Thrust = thrust
	c, err := BreakOff(a, still, usual(), g, height)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// lagged is first-order thrust with a time constant.
func lagged(full, tau float64) func(speed, time float64) float64 {
	return func(_, time float64) float64 { return 4 + (full-4)*(1-math.Exp(-time/tau)) }
}

func TestSlowerSpoolUpLosesMoreHeight(t *testing.T) {
	t.Parallel()
	before := 0.0
	for _, tau := range []float64{0.2, 0.6, 1.2, 2, 3} {
		c := follow(t, GoAround{Reaction: 0.7}, 60, lagged(100, tau))
		if !c.Climbs || c.HeightLost <= before || c.Regained.Distance <= c.Lowest.Distance {
			t.Errorf("tau %g: %+v after %g m", tau, c, before)
		}
		before = c.HeightLost
	}
	slow, quick := follow(t, GoAround{Reaction: 2}, 60, lagged(100, 1)), follow(t, GoAround{Reaction: 0}, 60, lagged(100, 1))
	sink := slow.Start.Sink
	if got := slow.HeightLost - quick.HeightLost; math.Abs(got-2*sink) > 1e-3 {
		t.Errorf("two seconds of reaction cost %g m, sink %g m/s", got, sink)
	}
	if c := follow(t, GoAround{}, 60, func(float64, float64) float64 { return 4 }); c.Climbs || c.Clearance > 0 {
		t.Errorf("climbs on idle thrust: %+v", c)
	}
}

func TestLeastGoAroundJustClears(t *testing.T) {
	t.Parallel()
	a := jet()
	a.Thrust = lagged(60, 1.5)
	g := GoAround{Reaction: 1, Margin: 1}
	c, found, err := LeastGoAround(a, still, usual(), g)
	if err != nil || !found {
		t.Fatal(found, err)
	}
	if c.Clearance < 0 || c.Clearance > 0.05 {
		t.Errorf("clears by %g m", c.Clearance)
	}
	lower, err := BreakOff(a, still, usual(), g, c.Start.Height-0.1)
	if err != nil || lower.Clearance >= 0 {
		t.Errorf("a little lower: %+v, %v", lower, err)
	}
	g.Obstacles = []Obstacle{{Near: 120, Far: 125, Top: 40}}
	higher, found, err := LeastGoAround(a, still, usual(), g)
	if err != nil || !found || higher.Start.Height <= c.Start.Height {
		t.Errorf("with a tree: %+v, %v", higher, err)
	}
	a.Thrust = nil
	if _, found, err = LeastGoAround(a, still, usual(), g); found || err != nil {
		t.Errorf("without thrust: %t, %v", found, err)
	}
}

func TestObstaclesUnderTheApproach(t *testing.T) {
	t.Parallel()
	hedge := field.Obstacle{Points: []field.Point{{X: -80, Y: -30}, {X: -80, Y: 30}}, Height: 2.4}
	beyond := field.Obstacle{Points: []field.Point{{X: 80, Y: 0}}, Height: 9}
	found, index := UnderApproach(field.Point{}, math.Pi/2, 5, 0.05, []field.Obstacle{beyond, hedge})
	if len(found) != 1 || index[0] != 1 || math.Abs(found[0].Far+80) > 1e-9 || found[0].Top != 2.4 {
		t.Errorf("found %+v at %v", found, index)
	}
}

func TestGoAroundRefusals(t *testing.T) {
	t.Parallel()
	for name, g := range map[string]GoAround{
		"reaction": {Reaction: -1}, "load": {MaxLoad: math.NaN()}, "margin": {Margin: -1}, "obstacle": {Obstacles: []Obstacle{{Top: math.Inf(1)}}},
	} {
		if _, err := BreakOff(jet(), still, usual(), g, 10); err == nil {
			t.Errorf("%s taken", name)
		}
		if _, _, err := LeastGoAround(jet(), still, usual(), g); err == nil {
			t.Errorf("%s taken for the least height", name)
		}
	}
	if _, err := BreakOff(jet(), still, usual(), GoAround{}, math.NaN()); err == nil {
		t.Error("height that is no number taken")
	}
}
