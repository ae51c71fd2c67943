package field

import (
	"math"
	"strings"
	"testing"
)

// position returns the position named in a row with a prefix.
func position(in inputs, prefix string) Position {
	return Position{
		Latitude: degrees(in[prefix+"latitude"]), Longitude: degrees(in[prefix+"longitude"]), Height: in[prefix+"height"],
	}
}

// rectangle returns a row's rectangle of latitudes and longitudes in the local plane.
func rectangle(in inputs) Polygon {
	datum, err := NewDatum(position(in, "datum_"))
	if err != nil {
		return nil
	}
	var g Polygon
	for _, c := range [][2]string{{"south", "west"}, {"south", "east"}, {"north", "east"}, {"north", "west"}} {
		g = append(g, datum.Local(Position{Latitude: degrees(in[c[0]]), Longitude: degrees(in[c[1]])}).Point())
	}
	return g
}

func TestGeodesy(t *testing.T) {
	t.Parallel()
	local := func(in inputs) Local {
		datum, err := NewDatum(position(in, "datum_"))
		if err != nil {
			return Local{X: math.NaN()}
		}
		return datum.Local(position(in, ""))
	}
	checkPublished(t, "wgs84_geodesy", map[string]method{
		"centred-x":       func(in inputs) float64 { return position(in, "").Centred().X },
		"centred-y":       func(in inputs) float64 { return position(in, "").Centred().Y },
		"centred-z":       func(in inputs) float64 { return position(in, "").Centred().Z },
		"local-east":      func(in inputs) float64 { return local(in).X },
		"local-north":     func(in inputs) float64 { return local(in).Y },
		"local-up":        func(in inputs) float64 { return local(in).Z },
		"local-length":    func(in inputs) float64 { return local(in).Point().Length() },
		"local-area":      func(in inputs) float64 { return rectangle(in).Area() },
		"local-perimeter": func(in inputs) float64 { return rectangle(in).Perimeter() },
	})
}

func TestLocalPlaneAndBack(t *testing.T) {
	t.Parallel()
	for _, latitude := range []float64{-89.9, -60, -17, 0, 30, 52, 71, 90} {
		datum, err := NewDatum(Position{Latitude: degrees(latitude), Longitude: degrees(-1), Height: 80})
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range []Local{{}, {2000, 0, 0}, {-1400, 1400, 120}, {3, -2000, -40}} {
			back := datum.Local(datum.Position(l))
			if d := math.Abs(back.X-l.X) + math.Abs(back.Y-l.Y) + math.Abs(back.Z-l.Z); d > 1e-6 {
				t.Errorf("latitude %g: %+v comes back %g m away", latitude, l, d)
			}
		}
	}
}

func TestDatumRefusesPlacesOffTheEarth(t *testing.T) {
	t.Parallel()
	for _, p := range []Position{{Latitude: 2}, {Longitude: -4}, {Height: 1e6}, {Latitude: math.NaN()}} {
		if _, err := NewDatum(p); err == nil {
			t.Errorf("datum taken at %+v", p)
		}
	}
}

// re-entrant outline of the published rows.
var outline = Polygon{{0, 0}, {400, 0}, {400, 150}, {200, 150}, {200, 300}, {0, 300}}

func TestPlaneGeometry(t *testing.T) {
	t.Parallel()
	checkPublished(t, "plane_geometry", map[string]method{
		"area":            func(inputs) float64 { return outline.Area() },
		"perimeter":       func(inputs) float64 { return outline.Perimeter() },
		"centroid-x":      func(inputs) float64 { return outline.Centroid().X },
		"centroid-y":      func(inputs) float64 { return outline.Centroid().Y },
		"signed-distance": func(in inputs) float64 { return outline.SignedDistance(Point{in["x"], in["y"]}) },
	})
}

func TestCheckNamesWhatIsWrong(t *testing.T) {
	t.Parallel()
	cases := []struct {
		name   string
		given  Polygon
		expect string
	}{
		{"two corners", Polygon{{0, 0}, {1, 0}}, "outline has 2 corners, needs three"},
		{"not a number", Polygon{{0, 0}, {1, 0}, {math.NaN(), 1}}, "outline corner 3 is not a number"},
		{"bow tie", Polygon{{0, 0}, {10, 10}, {10, 0}, {0, 10}}, "outline crosses itself: edge 1 meets edge 3 at (5.00, 5.00)"},
		{"last edge crosses", Polygon{{0, 0}, {10, 0}, {10, 10}, {5, -5}}, "outline crosses itself: edge 1 meets edge 3 at (6.67, 0.00)"},
		{"folds back", Polygon{{0, 0}, {10, 0}, {4, 0}, {4, 8}}, "outline crosses itself: edge 1 meets edge 2 at (10.00, 0.00)"},
		{"repeated corner", Polygon{{0, 0}, {10, 0}, {10, 0}, {4, 8}}, "outline crosses itself: edge 1 meets edge 2 at (10.00, 0.00)"},
		{"touches an edge", Polygon{{0, 0}, {10, 0}, {10, 5}, {5, 0}, {0, 5}}, "outline crosses itself: edge 1 meets edge 3 at (5.00, 0.00)"},
		{"sound", outline, ""},
	}
	for _, c := range cases {
		err := c.given.Check()
		if c.expect == "" {
			if err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		if err == nil || !strings.HasPrefix(err.Error(), c.expect) {
			t.Errorf("%s: got %v, want %s", c.name, err, c.expect)
		}
	}
}

func TestClearance(t *testing.T) {
	t.Parallel()
	cases := []struct {
		name   string
		path   Line
		expect float64
	}{
		{"inside", Line{{50, 50}, {150, 50}}, 50},
		{"past the re-entrant corner", Line{{190, 290}, {190, 100}, {390, 100}}, 10},
		{"cuts the corner between inside points", Line{{150, 250}, {350, 100}}, 0},
		{"ends outside", Line{{100, 100}, {430, 100}}, -30},
		{"diagonal nearest a corner", Line{{100, 200}, {200, 100}}, math.Sqrt(2) * 25},
	}
	for _, c := range cases {
		if got := outline.PathClearance(c.path); math.Abs(got.Distance-c.expect) > 1e-9 {
			t.Errorf("%s: got %g, want %g", c.name, got.Distance, c.expect)
		}
	}
	if got := outline.DiscClearance(Point{100, 100}, 30); math.Abs(got-70) > 1e-12 {
		t.Errorf("disc: got %g, want 70", got)
	}
}

func TestDistancesBetweenLines(t *testing.T) {
	t.Parallel()
	cases := []struct {
		name   string
		got    float64
		expect float64
	}{
		{"parallel", LineClearance(Line{{0, 0}, {10, 0}}, Line{{2, 3}, {8, 3}}), 3},
		{"crossing", LineClearance(Line{{0, 0}, {10, 10}}, Line{{0, 10}, {10, 0}}), 0},
		{"point and line", LineClearance(Line{{5, 4}}, Line{{0, 0}, {10, 0}}), 4},
		{"path outside an area", outline.PathDistance(Line{{300, 200}, {300, 400}}), 50},
		{"path into an area", outline.PathDistance(Line{{300, 200}, {300, 100}}), 0},
		{"length", Line{{0, 0}, {3, 4}, {3, 10}}.Length(), 11},
	}
	for _, c := range cases {
		if math.Abs(c.got-c.expect) > 1e-12 {
			t.Errorf("%s: got %g, want %g", c.name, c.got, c.expect)
		}
	}
}

func TestObstacleCrossing(t *testing.T) {
	t.Parallel()
	east := Corridor{Origin: Point{100, 50}, Heading: math.Pi / 2, HalfWidth: 10}
	widening := east
	widening.Spread = 0.1
	drifting := east
	drifting.Drift = 0.5
	cases := []struct {
		name     string
		corridor Corridor
		obstacle Obstacle
		expect   Crossing
		crosses  bool
	}{
		{"hedge straight across", east, Obstacle{Points: []Point{{180, 0}, {180, 100}}}, Crossing{80, 80, 0}, true},
		{"hedge aslant", east, Obstacle{Points: []Point{{180, 0}, {280, 100}}}, Crossing{120, 140, 0}, true},
		{"hedge behind", east, Obstacle{Points: []Point{{80, 0}, {80, 100}}}, Crossing{}, false},
		{"hedge beside", east, Obstacle{Points: []Point{{120, 65}, {220, 65}}}, Crossing{}, false},
		{"hedge beside a widening corridor", widening, Obstacle{Points: []Point{{120, 65}, {220, 65}}}, Crossing{50, 120, 15}, true},
		{"tree in the way", east, Obstacle{Points: []Point{{150, 54}}}, Crossing{50, 50, 4}, true},
		{"tree beside", east, Obstacle{Points: []Point{{150, 61}}}, Crossing{}, false},
		{"tree where the drift leads", drifting, Obstacle{Points: []Point{{150, 25}}}, Crossing{50, 50, 0}, true},
		{"barn", east, Obstacle{Closed: true, Points: []Point{{150, 55}, {170, 55}, {170, 80}, {150, 80}}}, Crossing{50, 70, 5}, true},
		{"starts within", east, Obstacle{Closed: true, Points: []Point{{0, 0}, {160, 0}, {160, 100}, {0, 100}}}, Crossing{0, 60, 0}, true},
	}
	for _, c := range cases {
		got, crosses := c.corridor.Cross(c.obstacle)
		if crosses != c.crosses {
			t.Errorf("%s: crosses is %t", c.name, crosses)
			continue
		}
		if off := math.Abs(got.Near-c.expect.Near) + math.Abs(got.Far-c.expect.Far) + math.Abs(got.Lateral-c.expect.Lateral); crosses && off > 1e-9 {
			t.Errorf("%s: got %+v, want %+v", c.name, got, c.expect)
		}
	}
}

func TestHeadings(t *testing.T) {
	t.Parallel()
	for _, d := range []float64{0, 30, 90, 179, 240, 359} {
		ahead := Ahead(degrees(d))
		if got := (Point{}).Heading(ahead); math.Abs(got-degrees(d)) > 1e-12 {
			t.Errorf("heading %g comes back as %g", d, got*180/math.Pi)
		}
		if Right(degrees(d)).Cross(ahead) <= 0 {
			t.Errorf("heading %g: right is not to the right", d)
		}
	}
}

func FuzzPolygon(f *testing.F) {
	f.Add(0.0, 0.0, 4.0, 0.0, 4.0, 3.0, 0.0, 3.0, 1.0, 1.0)
	f.Add(0.0, 0.0, 4.0, 4.0, 4.0, 0.0, 0.0, 4.0, 1.0, 1.0)
	f.Fuzz(func(t *testing.T, x1, y1, x2, y2, x3, y3, x4, y4, px, py float64) {
		g := Polygon{{x1, y1}, {x2, y2}, {x3, y3}, {x4, y4}}
		p := Point{px, py}
		for _, q := range append(Line{p}, g...) {
			if !q.Finite() || math.Abs(q.X) > 1e6 || math.Abs(q.Y) > 1e6 {
				return
			}
		}
		if g.Check() != nil {
			return
		}
		d := g.SignedDistance(p)
		if math.IsNaN(d) || g.Contains(p) != (d > 0) && d != 0 {
			t.Errorf("distance %g of %+v in %+v", d, p, g)
		}
		if d > 0 && g.Area() <= 0 {
			t.Errorf("point inside an outline without area: %+v", g)
		}
	})
}
