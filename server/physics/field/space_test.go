package field

import (
	"math"
	"testing"
)

// over is a level track at a height through places.
func over(height, spread float64, points ...Point) Track {
	track := make(Track, len(points))
	for i, p := range points {
		track[i] = Place{p, height, spread}
	}
	return track
}

func TestPassingObstacles(t *testing.T) {
	t.Parallel()
	hedge := Standing{Points: []Point{{100, -50}, {100, 50}}, Height: 2.4}
	barn := Standing{Points: []Point{{100, -10}, {120, -10}, {120, 10}, {100, 10}}, Closed: true, Height: 6}
	tree := Standing{Points: []Point{{100, 8}}, Height: 12, Ground: []float64{1.5}}
	wire := Standing{Points: []Point{{100, -40}, {100, 40}}, Height: 9, Sag: 2}
	cases := []struct {
		name     string
		obstacle Standing
		track    Track
		nearest  float64
		over     bool
		above    float64
	}{
		{"level over a hedge", hedge, over(10, 2, Point{0, 0}, Point{200, 0}), 7.6, true, 7.6},
		{"into a hedge", hedge, over(2, 0, Point{0, 0}, Point{200, 0}), 0, true, -0.4},
		{"beside a hedge", hedge, over(1, 2, Point{0, 60}, Point{200, 60}), 8, false, 0},
		{"ends over a barn", barn, over(9, 0, Point{0, 0}, Point{110, 0}), 3, true, 3},
		{"past a barn", barn, over(3, 1, Point{0, 30}, Point{200, 30}), 19, false, 0},
		{"beside a tree", tree, over(10, 3, Point{0, 0}, Point{200, 0}), 5, false, 0},
		{"over a tree on a mound", tree, over(20, 9, Point{0, 0}, Point{200, 0}), 6.5, true, 6.5},
		{"over the middle of a wire", wire, over(10, 0, Point{0, 0}, Point{200, 0}), 3 - 8.0/576, true, 3 - 8.0/576},
		{"over a wire near its pole", wire, over(10, 0, Point{0, 40}, Point{200, 40}), 1, true, 1},
		{"standing still", hedge, over(5.4, 0, Point{96, 0}), 5, false, 0},
		{"nowhere", hedge, nil, math.Inf(1), false, 0},
	}
	for _, c := range cases {
		if err := c.obstacle.Check(); err != nil {
			t.Fatal(err)
		}
		got := c.obstacle.Pass(c.track, 0)
		if got.Over != c.over || !(math.Abs(got.Nearest-c.nearest) <= 1e-3 || got.Nearest == c.nearest) || c.over && math.Abs(got.Above-c.above) > 1e-3 {
			t.Errorf("%s: %+v, want nearest %g, over %t by %g", c.name, got, c.nearest, c.over, c.above)
		}
	}
}

// wallsOf is an obstacle as walls.
func wallsOf(s Standing) []wall {
	var all []wall
	for _, part := range s.stretches() {
		all = append(all, part.walls...)
	}
	return all
}

// bruteNearest is the least distance in space by sampling the track.
func bruteNearest(s Standing, track Track) float64 {
	best := math.Inf(1)
	eachPlace(track, func(p Place) {
		for _, w := range wallsOf(s) {
			best = min(best, w.away(p))
		}
		if s.Closed && Polygon(s.Points).Contains(p.Point) {
			best = min(best, max(0, p.Height-s.roof()))
		}
	})
	return best
}

// bruteAbove is the least height over the top while over the obstacle, by sampling the track.
func bruteAbove(s Standing, track Track) float64 {
	best := math.Inf(1)
	eachPlace(track, func(p Place) {
		for _, w := range wallsOf(s) {
			if w.foot.Distance(p.Point) <= p.Spread {
				best = min(best, p.Height-w.top)
			}
		}
		if s.Closed && Polygon(s.Points).Contains(p.Point) {
			best = min(best, p.Height-s.roof())
		}
	})
	return best
}

// eachPlace visits a track in 1,500 steps a leg.
func eachPlace(track Track, visit func(Place)) {
	for i := 1; i < len(track); i++ {
		l := leg{track[i-1], track[i], 0}
		for k := range 1501 {
			visit(l.at(float64(k) / 1500))
		}
	}
}

func TestPassingAgreesWithSampling(t *testing.T) {
	t.Parallel()
	obstacles := []Standing{
		{Points: []Point{{60, -30}, {75, 10}, {90, 60}}, Height: 4, Sag: 1.5, Ground: []float64{0, 2, 1}},
		{Points: []Point{{50, 20}, {90, 20}, {90, 50}, {70, 30}, {50, 50}}, Closed: true, Height: 7},
		{Points: []Point{{120, -5}}, Height: 15},
		{Points: []Point{{90, -20}, {110, 20}}, Height: 2.4},
	}
	track := Track{{Point{0, 0}, 1, 1}, {Point{60, 25}, 6, 4}, {Point{130, -20}, 9, 7}, {Point{140, 60}, 18, 8}}
	for i, o := range obstacles {
		got := o.Pass(track, 0)
		if want := bruteNearest(o, track); math.Abs(got.Nearest-want) > 0.01 {
			t.Errorf("obstacle %d: nearest %g, sampled %g", i, got.Nearest, want)
		}
		want := bruteAbove(o, track)
		if got.Over != !math.IsInf(want, 1) || got.Over && math.Abs(got.Above-want) > 0.01 {
			t.Errorf("obstacle %d: above %g, sampled %g", i, got.Above, want)
		}
	}
}

func TestSurveySpreadNeverHelps(t *testing.T) {
	t.Parallel()
	hedge := Standing{Points: []Point{{100, -50}, {100, 50}}, Height: 2.4, HeightSpread: 0.5, PositionSpread: 2}
	track := Track{{Point{0, 0}, 0, 1}, {Point{200, 0}, 20, 5}}
	last := Passing{Nearest: math.Inf(1), Above: math.Inf(1)}
	for k := 0.0; k <= 3; k += 0.5 {
		got := hedge.Pass(track, k)
		if got.Nearest > last.Nearest || got.Above > last.Above {
			t.Errorf("%g deviations: %g and %g m, after %g and %g", k, got.Nearest, got.Above, last.Nearest, last.Above)
		}
		last = got
	}
	if last.Above > 10-2.4-1.5-0.6 {
		t.Errorf("three deviations leave %g m", last.Above)
	}
}

func TestStandingCheckNamesTheField(t *testing.T) {
	t.Parallel()
	for expect, s := range map[string]Standing{
		"obstacle has no points":                               {},
		"obstacle outline has 2 corners, needs three":          {Points: []Point{{0, 0}, {1, 0}}, Closed: true},
		"obstacle point 1 is not a number":                     {Points: []Point{{math.NaN(), 0}}},
		"obstacle height: -1 is outside 0 to 10000":            {Points: []Point{{0, 0}}, Height: -1},
		"obstacle position spread: NaN is outside 0 to 10000":  {Points: []Point{{0, 0}}, PositionSpread: math.NaN()},
		"obstacle height spread: 100000 is outside 0 to 10000": {Points: []Point{{0, 0}}, HeightSpread: 1e5},
		"obstacle sag: -0.5 is outside 0 to 10000":             {Points: []Point{{0, 0}}, Sag: -0.5},
	} {
		if err := s.Check(); err == nil || err.Error() != expect {
			t.Errorf("got %v, want %s", err, expect)
		}
	}
}

func TestWires(t *testing.T) {
	t.Parallel()
	span := Span{Support{Point{0, 0}, 8}, Support{Point{60, 0}, 10}, 2}
	if share, low := span.Lowest(); math.Abs(share-0.375) > 1e-12 || math.Abs(low-span.Height(0.375)) > 1e-12 || low > span.Height(0.374) || low > span.Height(0.376) {
		t.Errorf("lowest %g at %g", low, share)
	}
	if mid := span.Height(0.5); math.Abs(mid-7) > 1e-12 {
		t.Errorf("middle at %g, want the mean less the sag", mid)
	}
	taut := Span{Support{Point{0, 0}, 8}, Support{Point{60, 0}, 6}, 0}
	if share, low := taut.Lowest(); share != 1 || low != 6 {
		t.Errorf("a taut wire is lowest at %g, %g m", share, low)
	}
	for _, sag := range []float64{0.1, 1, 3, 6} {
		c, err := NewCatenary(60, sag)
		if err != nil {
			t.Fatal(err)
		}
		level := Span{Support{Point{0, 0}, 8}, Support{Point{60, 0}, 8}, sag}
		for share := 0.0; share <= 1; share += 0.05 {
			if off := math.Abs(8 - c.Below(share) - level.Height(share)); off > 0.01*sag {
				t.Errorf("sag %g: parabola is %g m off the catenary at %g", sag, off, share)
			}
		}
	}
	for _, bad := range [][2]float64{{0, 1}, {60, 0}, {60, 61}, {math.NaN(), 1}, {60, math.NaN()}} {
		if _, err := NewCatenary(bad[0], bad[1]); err == nil {
			t.Errorf("a wire of %v", bad)
		}
	}
}

func TestEnteringAreas(t *testing.T) {
	t.Parallel()
	area := Polygon{{100, -20}, {140, -20}, {140, 20}, {100, 20}}
	cases := []struct {
		name    string
		track   Track
		ceiling float64
		expect  Incursion
	}{
		{"through", over(30, 0, Point{0, 0}, Point{200, 0}), math.Inf(1), Incursion{Enters: true, Along: 100, Inside: 40, Lowest: 30}},
		{"above its ceiling", over(30, 0, Point{0, 0}, Point{200, 0}), 25, Incursion{Distance: math.Inf(1), Lowest: math.Inf(1)}},
		{"past", over(30, 3, Point{0, 50}, Point{200, 50}), math.Inf(1), Incursion{Distance: 27, Along: 100, Lowest: math.Inf(1)}},
		{"its spread enters", Track{{Point{0, 30}, 5, 0}, {Point{200, 30}, 5, 20}}, math.Inf(1), Incursion{Enters: true, Along: 100, Lowest: math.Inf(1)}},
		{"starts within", over(2, 0, Point{120, 0}, Point{120, 60}), math.Inf(1), Incursion{Enters: true, Inside: 20, Lowest: 2}},
		{"climbs out of it", Track{{Point{0, 0}, 0, 0}, {Point{120, 0}, 60, 0}}, 55, Incursion{Enters: true, Along: 100, Inside: 10, Lowest: 50}},
		{"along an edge", over(2, 0, Point{90, 20.001}, Point{150, 20.001}), math.Inf(1), Incursion{Distance: 0.001, Lowest: math.Inf(1)}},
	}
	for _, c := range cases {
		got := area.Enter(c.track, c.ceiling)
		w := c.expect
		near := func(a, b float64) bool { return a == b || math.Abs(a-b) < 1e-3 }
		alongFine := near(got.Along, w.Along) || c.name == "past" || c.name == "along an edge"
		if got.Enters != w.Enters || !near(got.Distance, w.Distance) || !alongFine || !near(got.Inside, w.Inside) || !near(got.Lowest, w.Lowest) {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}

func TestApproachOfPeopleAndRoads(t *testing.T) {
	t.Parallel()
	road := Line{{0, 80}, {100, 60}, {200, 60}}
	got := road.Approach(Track{{Point{0, 0}, 0, 0}, {Point{150, 0}, 30, 10}, {Point{150, 20}, 32, 10}}, 0)
	if math.Abs(got.Distance-30) > 1e-6 || math.Abs(got.Along-170) > 1e-6 {
		t.Errorf("nearest %g m, %g m along", got.Distance, got.Along)
	}
	if want := math.Hypot(30, 32); math.Abs(got.Slant-want) > 1e-3 {
		t.Errorf("%g m in space, want %g", got.Slant, want)
	}
	crossing := road.Approach(over(40, 0, Point{150, 0}, Point{150, 100}), 2)
	if crossing.Distance != 0 || math.Abs(crossing.Slant-38) > 1e-6 {
		t.Errorf("over the road: %+v", crossing)
	}
}

func TestAreasApart(t *testing.T) {
	t.Parallel()
	field := Polygon{{0, 0}, {400, 0}, {400, 150}, {200, 150}, {200, 300}, {0, 300}}
	cases := []struct {
		name   string
		other  Polygon
		expect float64
	}{
		{"in the re-entrant corner", Polygon{{230, 190}, {300, 190}, {300, 250}, {230, 250}}, 30},
		{"corner to corner", Polygon{{403, 154}, {450, 154}, {450, 200}}, 5},
		{"overlapping", Polygon{{350, 100}, {450, 100}, {450, 120}}, 0},
		{"within", Polygon{{50, 50}, {60, 50}, {55, 60}}, 0},
		{"around", Polygon{{-500, -500}, {900, -500}, {900, 900}, {-500, 900}}, 0},
	}
	for _, c := range cases {
		got, at := field.Separation(c.other)
		back, _ := c.other.Separation(field)
		if math.Abs(got-c.expect) > 1e-9 || got != back {
			t.Errorf("%s: %g and %g, want %g", c.name, got, back, c.expect)
		}
		if got > 0 {
			if d, _ := c.other.Distance(at); math.Abs(d-got) > 1e-9 {
				t.Errorf("%s: the place %v lies %g away", c.name, at, d)
			}
		}
	}
	if got := field.AreaClearance(Polygon{{50, 50}, {60, 50}, {55, 60}}); math.Abs(got.Distance-50) > 1e-9 {
		t.Errorf("area within: %g", got.Distance)
	}
	if got := field.AreaClearance(Polygon{{350, 100}, {450, 100}, {450, 120}}); got.Distance > -49 {
		t.Errorf("area half outside: %g", got.Distance)
	}
}

func TestPassingOfManyTracks(t *testing.T) {
	t.Parallel()
	for i := 1; i <= 24; i++ {
		u := func(step, size float64) float64 { v := float64(i) * step; return size * (v - math.Floor(v)) }
		o := Standing{
			Points: []Point{{u(0.31, 200), u(0.57, 100)}, {u(0.71, 200), u(0.13, 100)}, {u(0.19, 200), u(0.87, 100)}},
			Closed: i%3 == 0, Height: u(0.43, 12), Sag: u(0.29, 2),
		}
		if o.Closed {
			o.Sag = 0
		}
		var track Track
		for k := range 5 {
			track = append(track, Place{Point{float64(50 * k), u(0.37+0.1*float64(k), 100)}, u(0.61+0.17*float64(k), 25), u(0.23, 6)})
		}
		got := o.Pass(track, 0)
		if want := bruteNearest(o, track); math.Abs(got.Nearest-want) > 0.02 {
			t.Errorf("track %d: nearest %g, sampled %g", i, got.Nearest, want)
		}
		want := bruteAbove(o, track)
		if got.Over != !math.IsInf(want, 1) || got.Over && math.Abs(got.Above-want) > 0.05 {
			t.Errorf("track %d: above %g, sampled %g", i, got.Above, want)
		}
	}
}
