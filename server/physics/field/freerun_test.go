package field

import (
	"math"
	"strings"
	"testing"
)

func TestLongestRuns(t *testing.T) {
	t.Parallel()
	bent := Polygon{{0, 0}, {400, 0}, {400, 150}, {200, 150}, {200, 300}, {0, 300}}
	rectangle := Polygon{{0, 0}, {300, 0}, {300, 100}, {0, 100}}
	barn := Polygon{{140, 0.001}, {160, 0.001}, {160, 60}, {140, 60}}
	east, north := math.Pi/2, 0.0
	along := func(g Ground, heading, width float64) Run {
		r, err := g.LongestAlong(heading, width)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	cases := []struct {
		name   string
		got    Run
		expect float64
	}{
		{"bent, east", along(Ground{Area: bent}, east, 0), 400},
		{"bent, north", along(Ground{Area: bent}, north, 0), 300},
		{"bent, north, too wide for the short arm", along(Ground{Area: bent}, north, 210), 150},
		{"bent, west, 160 m wide", along(Ground{Area: bent}, -east, 160), 200},
		{"rectangle past a barn", along(Ground{Area: rectangle, Blocked: []Polygon{barn}}, east, 20), 300},
		{"rectangle beside a barn", along(Ground{Area: rectangle, Blocked: []Polygon{barn}}, east, 50), 140},
		{"rectangle with a post", along(Ground{Area: rectangle, Posts: []Point{{120, 50}}}, east, 60), 180},
		{"too wide", along(Ground{Area: rectangle}, east, 101), 0},
		{"diagonal", along(Ground{Area: rectangle}, math.Atan2(300, 100), 0), math.Hypot(300, 100)},
	}
	for _, c := range cases {
		if math.Abs(c.got.Length-c.expect) > 1e-3 {
			t.Errorf("%s: %g, want %g (%+v)", c.name, c.got.Length, c.expect, c.got)
		}
		if d := c.got.Middle.Length(); math.Abs(d-c.got.Length) > 1e-9 {
			t.Errorf("%s: its middle line is %g m long", c.name, d)
		}
	}
}

func TestLongestRunInAnyDirection(t *testing.T) {
	t.Parallel()
	rectangle := Ground{Area: Polygon{{0, 0}, {300, 0}, {300, 100}, {0, 100}}}
	free, err := rectangle.Longest(0)
	if err != nil || math.Abs(free.Length-math.Hypot(300, 100)) > 1e-3 {
		t.Errorf("longest %g m, want the diagonal (%v)", free.Length, err)
	}
	if free.Heading < 0 || free.Heading >= math.Pi || math.Abs(free.Middle.A.Heading(free.Middle.B)-free.Heading) > 1e-6 {
		t.Errorf("heading %g along %v", free.Heading, free.Middle)
	}
	bent, err := Ground{Area: Polygon{{0, 0}, {400, 0}, {400, 150}, {200, 150}, {200, 300}, {0, 300}}}.Longest(0)
	if err != nil || math.Abs(bent.Length-math.Hypot(400, 300)) > 1e-3 {
		t.Errorf("longest in the bent field %g m, want corner to corner past the re-entrant one (%v)", bent.Length, err)
	}
	last := math.Inf(1)
	for _, width := range []float64{0, 5, 10, 20, 40} {
		r, err := rectangle.Longest(width)
		if err != nil || r.Length > last+1e-6 {
			t.Errorf("%g m wide: %g m, after %g (%v)", width, r.Length, last, err)
		}
		if room := (Polygon{{-1e-6, -1e-6}, {300 + 1e-6, -1e-6}, {300 + 1e-6, 100 + 1e-6}, {-1e-6, 100 + 1e-6}}).PathClearance(Line{r.Middle.A, r.Middle.B}); room.Distance < 0 {
			t.Errorf("%g m wide: leaves the area by %g", width, -room.Distance)
		}
		last = r.Length
	}
}

func TestRunsThatCannotBe(t *testing.T) {
	t.Parallel()
	sound := Polygon{{0, 0}, {300, 0}, {300, 100}, {0, 100}}
	for expect, g := range map[string]Ground{
		"outline has 0 corners":   {},
		"blocked area 2: outline": {Area: sound, Blocked: []Polygon{sound, {{0, 0}}}},
		"post 1 is not a number":  {Area: sound, Posts: []Point{{math.NaN(), 0}}},
	} {
		if _, err := g.Longest(1); err == nil || !strings.HasPrefix(err.Error(), expect) {
			t.Errorf("got %v, want %s", err, expect)
		}
	}
	if _, err := (Ground{Area: sound}).LongestAlong(math.NaN(), 1); err == nil {
		t.Error("a heading that is not a number")
	}
	if _, err := (Ground{Area: sound}).Longest(-1); err == nil {
		t.Error("a width below zero")
	}
}

func BenchmarkLongestRun(b *testing.B) {
	g := Ground{Area: Polygon{{0, 0}, {400, 0}, {400, 150}, {200, 150}, {200, 300}, {0, 300}}}
	for b.Loop() {
		if _, err := g.Longest(10); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPass(b *testing.B) {
	wire := Standing{Points: []Point{{100, -40}, {100, 40}, {160, 120}}, Height: 9, Sag: 2}
	var track Track
	for i := range 60 {
		track = append(track, Place{Point{float64(4 * i), 0}, float64(i), float64(i) / 10})
	}
	for b.Loop() {
		wire.Pass(track, 1)
	}
}
