package weather

import (
	"math"
	"strings"
	"testing"

	"pitgate/server/physics/field"
)

func TestPublishedWake(t *testing.T) {
	t.Parallel()
	hedge := func(in inputs) Windbreak { return Windbreak{Height: in["height"], Porosity: in["porosity"]} }
	at := func(in inputs) Shelter { return hedge(in).At(in["distance"], in["above"], in["roughness"]) }
	far := func(in inputs) float64 { return FarLoss(in["heights"], in["above"], in["ratio"], in["porosity"]) }
	checkPublished(t, "shelter_wake", map[string]method{
		"near":              func(in inputs) float64 { return 1 - NearLoss(in["heights"], in["density"]) },
		"excess":            func(in inputs) float64 { return max(0, at(in).WindFactor-in["measured"]) },
		"gone":              func(in inputs) float64 { return at(in).WindFactor },
		"wake-meets-ground": func(in inputs) float64 { return first(hedge(in), 1, RoughAir) },
		"ahead":             func(in inputs) float64 { return first(hedge(in), -1, OpenWind) },
		"far":               far,
		"far-against-table": func(in inputs) float64 { return 1 - far(in) },
		"demonstrated":      func(in inputs) float64 { return DemonstratedCrosswind(in["stall"]) },
	})
}

// first returns the distance in heights, along the wind (1) or against it (-1), at which a zone begins at the ground.
func first(w Windbreak, sense float64, zone Zone) float64 {
	for step := range 4000 {
		heights := float64(step) / 100
		if w.At(sense*heights*w.Height, 0, 0.03).Zone == zone {
			return heights
		}
	}
	return math.NaN()
}

// hedge is 2.4 m high and half open.
var hedge = Windbreak{Height: 2.4, Porosity: 0.5}

func TestZonesFollowEachOther(t *testing.T) {
	t.Parallel()
	wall := Windbreak{Height: 2, Porosity: 0}
	cases := []struct {
		name      string
		windbreak Windbreak
		x, z      float64
		zone      Zone
	}{
		{"ahead", hedge, -2, 0.5, AirAhead}, {"too far ahead", hedge, -5.1, 0.5, OpenWind}, {"quiet", hedge, 3, 0.25, QuietAir},
		{"wake over the quiet air", hedge, 3, 0.8, RoughAir},
		{"under the line from the top to eight heights", hedge, 4, 0.49, QuietAir}, {"over that line", hedge, 4, 0.51, RoughAir},
		{"under it near the end", hedge, 7, 0.12, QuietAir}, {"over it near the end", hedge, 7, 0.13, RoughAir}, {"wake on the ground", hedge, 8.5, 0.1, RoughAir}, {"fading", hedge, 15, 0.5, FadingAir},
		{"slowed", hedge, 25, 0.5, SlowedAir}, {"gone", hedge, 36, 0.5, OpenWind}, {"over it", hedge, 3, 2, OpenWind}, {"wall", wall, 3, 0.25, RoughAir},
	}
	for _, c := range cases {
		if s := c.windbreak.At(c.x*c.windbreak.Height, c.z*c.windbreak.Height, 0.03); s.Zone != c.zone {
			t.Errorf("%s: zone %d, want %d", c.name, s.Zone, c.zone)
		}
	}
}

func TestTurbulenceOfTheWake(t *testing.T) {
	t.Parallel()
	for heights, want := range map[float64]float64{9: 1.5, 10: 1.5, 15: 1.25, 19.99: 1.0005, 25: 1} {
		if got := hedge.At(heights*hedge.Height, 0.1, 0.03).TurbulenceFactor; math.Abs(got-want) > 1e-9 {
			t.Errorf("%g heights: %g, want %g", heights, got, want)
		}
	}
}

func TestShelterKeepsItsBounds(t *testing.T) {
	t.Parallel()
	for _, porosity := range []float64{0, 0.2, 0.5, 0.8, 1} {
		for x := -6.0; x < 40; x += 0.37 {
			denser, looser := Windbreak{2, porosity}, Windbreak{2, 1}
			for z := 0.0; z < 6; z += 0.31 {
				s, none := denser.At(2*x, 2*z, 0.03), looser.At(2*x, 2*z, 0.03)
				if !(s.WindFactor >= 0 && s.WindFactor <= 1) || !(s.TurbulenceFactor >= 1 && s.TurbulenceFactor <= 2) {
					t.Errorf("porosity %g at %g, %g: %+v", porosity, x, z, s)
				}
				if none.WindFactor != 1 || none.TurbulenceFactor != 1 {
					t.Errorf("no windbreak at %g, %g: %+v", x, z, none)
				}
			}
		}
	}
}

func TestWindComesBackWithDistance(t *testing.T) {
	t.Parallel()
	for _, porosity := range []float64{0, 0.3, 0.5, 0.7} {
		last := 0.0
		for x := 5.0; x <= 36; x += 0.5 {
			got := Windbreak{10, porosity}.At(10*x, 1, 0.03).WindFactor
			if got < last-1e-12 {
				t.Errorf("porosity %g: the wind falls from %g to %g at %g heights", porosity, last, got, x)
			}
			last = got
		}
		if last != 1 {
			t.Errorf("porosity %g: the wind is not back at 36 heights: %g", porosity, last)
		}
	}
}

func TestImpossibleWindbreaksAreNamedAndOpen(t *testing.T) {
	t.Parallel()
	nan := math.NaN()
	for _, c := range []struct {
		windbreak Windbreak
		names     string
	}{{Windbreak{0, 0.5}, "height"}, {Windbreak{nan, 0.5}, "height"}, {Windbreak{2, -0.1}, "porosity"}, {Windbreak{2, 1.1}, "porosity"}, {Windbreak{2, nan}, "porosity"}} {
		if err := c.windbreak.Check(); err == nil || !strings.Contains(err.Error(), c.names) {
			t.Errorf("%+v: %v", c.windbreak, err)
		}
		if c.windbreak.At(5, 1, 0.03) != Open {
			t.Errorf("%+v shelters", c.windbreak)
		}
	}
	if hedge.At(nan, 1, 0.03) != Open || hedge.At(5, nan, 0.03) != Open {
		t.Error("a place that is none is sheltered")
	}
}

func FuzzWindbreak(f *testing.F) {
	f.Add(2.4, 0.5, 20.0, 1.0, 0.03)
	f.Add(2.4, 0.0, -5.0, 1.0, 0.0)
	f.Add(1.0, 0.0, 1e-300, 1e-300, 0.9)
	f.Fuzz(func(t *testing.T, height, porosity, distance, above, roughness float64) {
		s := Windbreak{height, porosity}.At(distance, above, roughness)
		if !(s.WindFactor >= 0 && s.WindFactor <= 1 && s.TurbulenceFactor >= 1 && s.TurbulenceFactor <= 2) || math.IsNaN(s.Heights) {
			t.Errorf("height %g porosity %g distance %g above %g roughness %g: %+v", height, porosity, distance, above, roughness, s)
		}
	})
}

// northHedge runs from west to east 50 m north of the origin.
var northHedge = Barrier{Windbreak: hedge, Line: []field.Point{{X: -100, Y: 50}, {X: 100, Y: 50}}}

func TestDistanceIsTakenAlongTheWind(t *testing.T) {
	t.Parallel()
	cases := []struct {
		name     string
		at       field.Point
		from     float64
		distance float64
		faces    bool
	}{
		{"straight behind", field.Point{X: 0, Y: 20}, 0, 30, true},
		{"slanting", field.Point{X: 0, Y: 20}, 60, 60, true},
		{"other side", field.Point{X: 0, Y: 20}, 180, -30, true},
		{"past the end", field.Point{X: 101, Y: 20}, 0, 0, false},
		{"wind along the hedge", field.Point{X: 0, Y: 49}, 90, 0, false},
		{"wind nearly along it", field.Point{X: 0, Y: 49}, 87, 0, false},
		{"end in a slanting wind", field.Point{X: -90, Y: 20}, 330, 0, false},
	}
	for _, c := range cases {
		distance, faces := alongWind(northHedge.segment(0), c.at, degrees(c.from))
		if faces != c.faces || faces && math.Abs(distance-c.distance) > 1e-9 {
			t.Errorf("%s: %g, %t", c.name, distance, faces)
		}
	}
}

func TestBarrierTurnsWithTheField(t *testing.T) {
	t.Parallel()
	want := northHedge.At(field.Point{X: 10, Y: 20}, 1, degrees(20), 0.03)
	for turn := 15.0; turn < 360; turn += 15 {
		rotated := Barrier{Windbreak: hedge}
		for _, p := range northHedge.Line {
			rotated.Line = append(rotated.Line, rotate(p, degrees(turn)))
		}
		got := rotated.At(rotate(field.Point{X: 10, Y: 20}, degrees(turn)), 1, degrees(20+turn), 0.03)
		if math.Abs(got.WindFactor-want.WindFactor) > 1e-9 || got.Zone != want.Zone || math.Abs(got.Heights-want.Heights) > 1e-9 {
			t.Errorf("turned by %g: %+v, want %+v", turn, got, want)
		}
	}
}

// rotate turns a point clockwise about the origin.
func rotate(p field.Point, angle float64) field.Point {
	sin, cos := math.Sincos(angle)
	return field.Point{X: p.X*cos + p.Y*sin, Y: p.Y*cos - p.X*sin}
}

func TestWoodSheltersFromEverySide(t *testing.T) {
	t.Parallel()
	wood := Barrier{Windbreak: Windbreak{15, 0.4}, Closed: true, Line: []field.Point{{X: -20, Y: -20}, {X: 20, Y: -20}, {X: 20, Y: 20}, {X: -20, Y: 20}}}
	for from := 0.0; from < 360; from += 10 {
		behind := field.Ahead(degrees(from)).Times(-100)
		ahead := field.Ahead(degrees(from)).Times(150)
		if wood.At(behind, 2, degrees(from), 0.03).WindFactor > 0.6 || wood.At(ahead, 2, degrees(from), 0.03) != Open {
			t.Errorf("from %g: %+v behind, %+v ahead", from, wood.At(behind, 2, degrees(from), 0.03), wood.At(ahead, 2, degrees(from), 0.03))
		}
	}
	if outlines := wood.Wake(ReachOfRoughAir, 0); len(outlines) != 2 {
		t.Errorf("%d outlines from the north, want the two sides across the wind", len(outlines))
	}
}

func TestWakeOutlineHoldsWhatIsRough(t *testing.T) {
	t.Parallel()
	outline := field.Polygon(northHedge.Wake(ReachOfRoughAir, degrees(20))[0])
	for x := -150.0; x <= 150; x += 13 {
		for y := 0.0; y < 50; y += 3 {
			p := field.Point{X: x, Y: y}
			rough := northHedge.At(p, 1.5*hedge.Height, degrees(20), 0.03).Zone == RoughAir
			if inside := outline.Contains(p); inside != rough {
				t.Errorf("%v: inside the outline %t, rough %t", p, inside, rough)
			}
		}
	}
	if len(northHedge.Wake(10, degrees(90))) != 0 || len(Barrier{Line: northHedge.Line}.Wake(10, 0)) != 0 {
		t.Error("a hedge along the wind or without height has a wake")
	}
}

func TestPathThroughAWake(t *testing.T) {
	t.Parallel()
	far := Barrier{Windbreak: hedge, Line: []field.Point{{X: -100, Y: 500}, {X: 100, Y: 500}}}
	var path []field.Place
	for y := 200.0; y >= -40; y -= 2 {
		path = append(path, field.Place{Point: field.Point{X: 0, Y: y}, Height: 1})
	}
	met := AlongPath(path, []Barrier{far, northHedge}, 0, 0.03)
	if met.Barrier != 1 || met.Roughest.TurbulenceFactor != 1.5 || met.Slowest.WindFactor > 0.31 {
		t.Errorf("%+v", met)
	}
	if y := path[met.RoughestAt].Y; !(y < 50 && y > 50-10*hedge.Height) {
		t.Errorf("roughest at %g", y)
	}
	if none := AlongPath(path, []Barrier{far, northHedge}, degrees(90), 0.03); none.Barrier != -1 || none.Slowest != Open || none.Roughest != Open {
		t.Errorf("wind along the hedge: %+v", none)
	}
}

func BenchmarkAlongPath(b *testing.B) {
	path := make([]field.Place, 200)
	for i := range path {
		path[i] = field.Place{Point: field.Point{Y: float64(i)}, Height: 2}
	}
	for b.Loop() {
		AlongPath(path, []Barrier{northHedge}, 0.1, 0.03)
	}
}
