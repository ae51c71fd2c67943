package footprint

import (
	"math"
	"testing"

	"pitgate/server/physics/field"
)

// areaHit is Cloud.AreaHit on open ground.
func areaHit(t *testing.T, cloud Cloud, area field.Polygon) Hit {
	t.Helper()
	hit, err := cloud.AreaHit(area, AnnexF())
	if err != nil {
		t.Fatal(err)
	}
	return hit
}

// square is a square about a place.
func square(middle field.Point, half float64) field.Polygon {
	return field.Polygon{
		middle.Plus(field.Point{X: -half, Y: -half}), middle.Plus(field.Point{X: half, Y: -half}),
		middle.Plus(field.Point{X: half, Y: half}), middle.Plus(field.Point{X: -half, Y: half}),
	}
}

// dropped is a cloud of vertical impacts ten metres apart from the origin eastward.
func dropped(count int) Cloud {
	cloud := Cloud{width: 2, mass: 10}
	for i := range count {
		cloud.Impacts = append(cloud.Impacts, Impact{Place: field.Point{X: 10 * float64(i)}, Velocity: Vector{Z: -20}, Speed: 20, Angle: math.Pi / 2, Landed: true})
	}
	return cloud
}

func TestAreaHitCountsWhatComesWithinReach(t *testing.T) {
	t.Parallel()
	cloud := dropped(10)
	for _, c := range []struct {
		area    field.Polygon
		share   float64
		nearest float64
	}{
		{square(field.Point{X: 45}, 20), 0.4, 0},
		{square(field.Point{X: 45}, 100), 1, 0},
		{square(field.Point{X: 0, Y: 10}, 8.8), 0.1, 0},
		{square(field.Point{X: 0, Y: 10}, 8.6), 0, 0.1},
		{square(field.Point{X: 300}, 10), 0, 300 - 10 - 90 - 1.3},
		{nil, 0, math.MaxFloat64},
	} {
		hit := areaHit(t, cloud, c.area)
		near(t, "share", hit.Share, c.share, 1e-12)
		near(t, "nearest", hit.Nearest, c.nearest, 1e-9)
		if hit.Most < hit.Share || hit.Most > 1 {
			t.Errorf("share %g, at most %g", hit.Share, hit.Most)
		}
	}
}

func TestLineHitCountsTheCorridor(t *testing.T) {
	t.Parallel()
	cloud := dropped(10)
	line := field.Line{{X: 15, Y: 30}, {X: 45, Y: 30}}
	for width, share := range map[float64]float64{10: 0, 28.6: 0, 28.8: 0.3, 40: 0.8, 200: 1} {
		hit, err := cloud.LineHit(line, width, AnnexF())
		if err != nil {
			t.Fatal(err)
		}
		near(t, "share", hit.Share, share, 1e-12)
	}
	if hit, err := cloud.LineHit(nil, 10, AnnexF()); err != nil || hit.Share != 0 {
		t.Error("no line can be hit", hit, err)
	}
	for _, bad := range []float64{-1, math.NaN()} {
		if _, err := cloud.LineHit(line, bad, AnnexF()); err == nil {
			t.Errorf("half width %g must be refused", bad)
		}
	}
	if _, err := cloud.AreaHit(field.Polygon{{X: math.NaN()}}, AnnexF()); err == nil {
		t.Error("a corner that is no number must be refused")
	}
	if _, err := cloud.AreaHit(nil, Ground{PersonHeight: -1}); err == nil {
		t.Error("a person below the ground must be refused")
	}
}

func TestSlideAndLowPassCountAsHit(t *testing.T) {
	t.Parallel()
	angle := 20 * math.Pi / 180
	flat := Impact{Velocity: Vector{Y: 40 * math.Cos(angle), Z: -40 * math.Sin(angle)}, Speed: 40, Angle: angle, Landed: true}
	cloud := Cloud{Impacts: []Impact{flat}, width: 2, mass: 10}
	area := Strike{2, 10, 40, angle}.area(AnnexF())
	for y, want := range map[float64]float64{
		area.SlideLength - 1: 1, area.SlideLength + 4: 0, -area.GlideLength + 1: 1, -area.GlideLength - 4: 0,
	} {
		near(t, "share", areaHit(t, cloud, square(field.Point{Y: y}, 1)).Share, want, 0)
	}
}

func TestWiderAreasAreHitMoreOften(t *testing.T) {
	t.Parallel()
	cloud := cloudOf(t, planned(CutNeutral, 60))
	before := Hit{Nearest: math.Inf(1)}
	for _, half := range []float64{5, 20, 80, 200, 1000} {
		hit := areaHit(t, cloud, square(field.Point{X: 200, Y: 200}, half))
		if hit.Share < before.Share || hit.Most < before.Most || hit.Nearest > before.Nearest {
			t.Errorf("half width %g: %+v after %+v", half, hit, before)
		}
		before = hit
	}
	if before.Share != 1 {
		t.Errorf("an area around everything is hit by %g", before.Share)
	}
}

func TestMostShareFromTables(t *testing.T) {
	t.Parallel()
	// One-sided 95 %: none of 59 leaves 5 %, none of 1000 leaves 0.3 %.
	near(t, "none of 59", mostShare(0, 59), 0.05, 5e-4)
	near(t, "none of 1000", mostShare(0, 1000), 0.003, 1e-5)
	near(t, "half of 100", mostShare(50, 100), 0.5812, 1e-3)
	near(t, "of none", mostShare(0, 0), 1, 0)
	near(t, "all", mostShare(100, 100), 1, 1e-9)
}

func TestLinesInsideMeasuresThem(t *testing.T) {
	t.Parallel()
	outline := square(field.Point{}, 10)
	lines := []field.Line{
		{{X: -20}, {X: 20}}, {{X: 15, Y: -5}, {X: 15, Y: 5}}, {}, {{X: 1, Y: 1}, {X: 4, Y: 5}}, {{X: -20, Y: -20}, {X: 20, Y: 20}, {X: 20, Y: 0}, {X: 0}},
	}
	want := []Inside{{0, 20, 0}, {1, 0, 5}, {3, 5, 0}, {4, 20*math.Sqrt2 + 10, 0}}
	got := LinesInside(outline, lines)
	if len(got) != len(want) {
		t.Fatalf("%d lines, want %d", len(got), len(want))
	}
	for i := range want {
		if got[i].Line != want[i].Line {
			t.Errorf("line %d is %d", i, got[i].Line)
		}
		near(t, "length", got[i].Length, want[i].Length, 1e-9)
		near(t, "distance", got[i].Distance, want[i].Distance, 1e-9)
	}
}

func TestAreaDistance(t *testing.T) {
	t.Parallel()
	a := square(field.Point{}, 10)
	for x, want := range map[float64]float64{0: 0, 5: 0, 14: 0, 16: 1, 115: 100} {
		b := square(field.Point{X: x}, 5)
		near(t, "distance", AreaDistance(a, b), want, 1e-12)
		near(t, "distance the other way", AreaDistance(b, a), want, 1e-12)
	}
}
