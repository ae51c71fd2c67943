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

func TestGeodesicLines(t *testing.T) {
	t.Parallel()
	between := func(in inputs) Geodesic {
		g, err := Between(position(in, "from_"), position(in, "to_"))
		if err != nil {
			return Geodesic{Length: math.NaN()}
		}
		return g
	}
	along := func(in inputs) (Position, float64) {
		return position(in, "from_").Along(degrees(in["azimuth"]), in["distance"])
	}
	turn := 180 / math.Pi
	checkPublished(t, "geodesic_lines", map[string]method{
		"length":          func(in inputs) float64 { return between(in).Length },
		"start":           func(in inputs) float64 { return between(in).Start * turn },
		"end":             func(in inputs) float64 { return between(in).End * turn },
		"back":            func(in inputs) float64 { return between(in).End*turn - 180 },
		"along-latitude":  func(in inputs) float64 { p, _ := along(in); return p.Latitude * turn },
		"along-longitude": func(in inputs) float64 { p, _ := along(in); return p.Longitude * turn },
		"along-azimuth":   func(in inputs) float64 { _, azimuth := along(in); return azimuth * turn },
		"perimeter":       func(inputs) float64 { return perimeter(at(0, 0), at(0, 1), at(1, 1), at(1, 0)) },
	})
}

// perimeter is the length of the geodesics round positions.
func perimeter(corners ...Position) float64 {
	sum := 0.0
	for i, p := range corners {
		g, err := Between(p, corners[(i+1)%len(corners)])
		if err != nil {
			return math.NaN()
		}
		sum += g.Length
	}
	return sum
}

func TestPlaneIsGoodToAMillimetreOverTwoKilometres(t *testing.T) {
	t.Parallel()
	for _, latitude := range []float64{-80, -45, -3, 0, 30, 52, 70} {
		origin := at(latitude, 179.99)
		datum, err := NewDatum(origin)
		if err != nil {
			t.Fatal(err)
		}
		for azimuth := 0.0; azimuth < 360; azimuth += 15 {
			for _, distance := range []float64{1, 200, 2000} {
				there, _ := origin.Along(degrees(azimuth), distance)
				p := datum.Local(there).Point()
				want := Ahead(degrees(azimuth)).Times(distance)
				if off := p.Distance(want); off > 1e-3 {
					t.Errorf("latitude %g, azimuth %g, %g m: %g m off", latitude, azimuth, distance, off)
				}
				back, err := Between(origin, there)
				if err != nil || math.Abs(back.Length-distance) > 1e-6 {
					t.Errorf("latitude %g, azimuth %g: %g m comes back as %g (%v)", latitude, azimuth, distance, back.Length, err)
				}
			}
		}
	}
	if _, err := Between(at(0, 0), at(0.1, 179.9)); err == nil {
		t.Error("opposite places have a line by a method that has none")
	}
	if g, err := Between(at(5, 5), at(5, 5)); err != nil || g != (Geodesic{}) {
		t.Errorf("a place and itself: %+v %v", g, err)
	}
}

func TestHangingWire(t *testing.T) {
	t.Parallel()
	wire := func(in inputs) Catenary {
		c, err := NewCatenary(in["span"], in["sag"])
		if err != nil {
			return Catenary{Parameter: math.NaN()}
		}
		return c
	}
	checkPublished(t, "hanging_wire", map[string]method{
		"parameter": func(in inputs) float64 { return wire(in).Parameter },
		"length":    func(in inputs) float64 { return wire(in).Length() },
		"end-pull":  func(in inputs) float64 { return wire(in).EndPull() },
	})
}

func TestPolygonSets(t *testing.T) {
	t.Parallel()
	notched := Polygon{{0, 0}, {0, 10}, {5, 5}, {10, 10}, {10, 0}}
	four := Polygon{{1, 2}, {6, 3}, {7, 6}, {0, 5}}
	count := func(g Polygon) float64 {
		n := 0.0
		for x := -1.0; x <= 11; x++ {
			for y := -1.0; y <= 11; y++ {
				if g.Within(Point{x, y}, 0) {
					n++
				}
			}
		}
		return n
	}
	checkPublished(t, "polygon_sets", map[string]method{
		"grid-count": func(inputs) float64 {
			if turned := count(notched.turned()); turned != count(notched) {
				return math.NaN()
			}
			return count(notched)
		},
		"inside": func(in inputs) float64 {
			if four.Within(Point{in["x"], in["y"]}, 0) {
				return 1
			}
			return 0
		},
		"touching":   func(in inputs) float64 { return four.SignedDistance(Point{in["x"], in["y"]}) },
		"grown-area": func(in inputs) float64 { return grownArea(outline, in["distance"]) },
	})
}

// grownArea counts the area within a distance of an outline over a grid of half a metre.
func grownArea(g Polygon, distance float64) float64 {
	n := 0.0
	for x := -40.25; x < 440; x += 0.5 {
		for y := -40.25; y < 340; y += 0.5 {
			if g.Within(Point{x, y}, distance) {
				n++
			}
		}
	}
	return n / 4
}
