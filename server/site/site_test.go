package site_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/site"
	"pitgate/testdata/demo"
)

// load reads a field of the demo.
func load(t *testing.T, name string) assess.FieldDescription {
	t.Helper()
	data, err := demo.Files.ReadFile(name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	field, err := document.DecodeField(data)
	if err != nil {
		t.Fatal(err)
	}
	return field
}

func at(x, y float64) assess.Point { return assess.Point{XMeters: &x, YMeters: &y} }

func outline(points ...assess.Point) *assess.Polygon { return &assess.Polygon{Corners: points} }

func box(x0, y0, x1, y1 float64) *assess.Polygon {
	return outline(at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1))
}

func quantity(v float64) *assess.Quantity {
	return &assess.Quantity{Value: &v, Basis: assess.BasisMeasured}
}

// plain is a field about which nothing is to be remarked.
func plain() assess.FieldDescription {
	latitude, longitude, pilot, heading := 54.0, -1.0, at(0, -30), 90.0
	start, end := at(-100, 0), at(100, 0)
	return assess.FieldDescription{
		DatumLatitudeDegrees: &latitude, DatumLongitudeDegrees: &longitude, FlyingArea: box(-300, -60, 300, 400), PilotPosition: &pilot,
		HeightLimitMeters: quantity(120), Permission: &assess.Permission{ValidFromDate: "2026-03-01", ValidToDate: "2026-11-30"},
		Strips:       []assess.Strip{{Name: "09/27", Start: &start, End: &end, WidthMeters: quantity(20), Surface: assess.SurfaceShortGrass}},
		LaunchSpots:  []assess.LaunchSpot{{Name: "pad", Position: &pilot, HeadingDegrees: &heading}},
		Obstacles:    []assess.Obstacle{{Name: "hedge", Kind: assess.ObstacleKindHedge, Points: []assess.Point{at(150, -50), at(150, 50)}, HeightMeters: quantity(2.4)}},
		KeepOuts:     []assess.KeepOut{{Name: "yard", Area: box(320, 0, 380, 60), Reason: "KEEP_OUT_REASON_BUILDINGS"}},
		LandingAreas: []assess.NamedArea{{Name: "meadow", Area: box(-90, 40, 90, 90), Surface: assess.SurfaceLongGrass}},
		Pits:         []assess.NamedArea{{Name: "pits", Area: box(-20, -55, 20, -40)}},
		PeopleLines:  []assess.NamedLine{{Name: "line", Points: []assess.Point{at(-50, -58), at(50, -58)}}},
		Roads:        []assess.NamedLine{{Name: "track", Points: []assess.Point{at(310, -300), at(310, 300)}}},
	}
}

func TestNothingIsRemarkedAboutAPlainField(t *testing.T) {
	t.Parallel()
	for _, r := range site.Remarks(plain()) {
		t.Errorf("%s: %s", r.Path, r.Text)
	}
}

// TestRemarks changes one thing of the plain field a row and looks for the one remark that names it.
func TestRemarks(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name, path, text string
		change           func(f *assess.FieldDescription)
	}{
		{"no datum", "datumLatitudeDegrees", "no datum", func(f *assess.FieldDescription) { f.DatumLongitudeDegrees = nil }},
		{"no flying area", "flyingArea", "no circuit", func(f *assess.FieldDescription) { f.FlyingArea = nil }},
		{"nothing to launch from", "strips", "neither a strip", func(f *assess.FieldDescription) { f.Strips, f.LaunchSpots = nil, nil }},
		{"no height limit", "heightLimitMeters", "airspace", func(f *assess.FieldDescription) { f.HeightLimitMeters = nil }},
		{"no permission", "permission", "lacks its dates", func(f *assess.FieldDescription) { f.Permission = nil }},
		{"permission reversed", "permission.validToDate", "before it begins", func(f *assess.FieldDescription) { f.Permission.ValidToDate = "2026-02-28" }},
		{"no pilot", "pilotPosition", "no place", func(f *assess.FieldDescription) { f.PilotPosition = nil }},
		{"pilot outside", "pilotPosition", "40.0 m outside", func(f *assess.FieldDescription) { p := at(0, -100); f.PilotPosition = &p }},
		{"pilot on the strip", "pilotPosition", "on strip 09/27", func(f *assess.FieldDescription) { p := at(5, 5); f.PilotPosition = &p }},
		{"strip out of the area", "strips[0].end", "reaches 20.0 m out", func(f *assess.FieldDescription) {
			p := at(320, 0)
			f.Strips[0].End = &p
			f.KeepOuts, f.Obstacles, f.Roads = nil, nil, nil
		}},
		{"strip in a keep-out", "strips[0]", "keep-out yard", func(f *assess.FieldDescription) { f.KeepOuts[0].Area = box(60, -20, 80, 20) }},
		{"strip inside a keep-out", "strips[0]", "keep-out yard", func(f *assess.FieldDescription) { f.KeepOuts[0].Area = box(-150, -20, 140, 20) }},
		{"strip without width", "strips[0].widthMeters", "no width", func(f *assess.FieldDescription) { f.Strips[0].WidthMeters = nil }},
		{"strip wider than long", "strips[0].widthMeters", "wider", func(f *assess.FieldDescription) { p := at(-95, 0); f.Strips[0].End = &p }},
		{"strip without surface", "strips[0].surface", "no surface", func(f *assess.FieldDescription) { f.Strips[0].Surface = "" }},
		{"strip without end", "strips[0]", "two different thresholds", func(f *assess.FieldDescription) { f.Strips[0].End = nil }},
		{"thresholds exchanged", "strips[0].start", "seem exchanged", func(f *assess.FieldDescription) { s := &f.Strips[0]; s.Start, s.End = s.End, s.Start }},
		{"name and direction apart", "strips[0].start", "look at its thresholds", func(f *assess.FieldDescription) { f.Strips[0].Name = "18L/36R" }},
		{"spot without heading", "launchSpots[0].headingDegrees", "no launch direction", func(f *assess.FieldDescription) { f.LaunchSpots[0].HeadingDegrees = nil }},
		{"spot without place", "launchSpots[0].position", "no place", func(f *assess.FieldDescription) { f.LaunchSpots[0].Position = nil }},
		{"spot outside", "launchSpots[0].position", "outside the flying area", func(f *assess.FieldDescription) { p := at(0, 500); f.LaunchSpots[0].Position = &p }},
		{"spot in a keep-out", "launchSpots[0].position", "keep-out yard", func(f *assess.FieldDescription) { f.KeepOuts[0].Area = box(-5, -35, 5, -25) }},
		{"obstacle without height", "obstacles[0].heightMeters", "no height", func(f *assess.FieldDescription) { f.Obstacles[0].HeightMeters = nil }},
		{"obstacle of no kind", "obstacles[0].kind", "no kind", func(f *assess.FieldDescription) { f.Obstacles[0].Kind = "" }},
		{"obstacle across the strip", "obstacles[0].points[0]", "corner 1", func(f *assess.FieldDescription) { f.Obstacles[0].Points = []assess.Point{at(50, -50), at(50, 50)} }},
		{"obstacle on the strip", "obstacles[0].points[1]", "corner 2", func(f *assess.FieldDescription) {
			f.Obstacles[0].Points = []assess.Point{at(150, -50), at(120, 5), at(90, 5)}
		}},
		{"wire hangs to the ground", "obstacles[0].sagMeters", "hangs lower", func(f *assess.FieldDescription) { f.Obstacles[0].SagMeters = quantity(3) }},
		{"keep-out without reason", "keepOuts[0].reason", "no reason", func(f *assess.FieldDescription) { f.KeepOuts[0].Reason = "" }},
		{"keep-out without corners", "keepOuts[0].area", "no corners", func(f *assess.FieldDescription) { f.KeepOuts[0].Area = nil }},
		{"landing area out of the area", "landingAreas[0].area.corners[1]", "corner 2 lies 10.0 m", func(f *assess.FieldDescription) {
			f.LandingAreas[0].Area = outline(at(200, 200), at(310, 210), at(200, 220))
		}},
		{"landing area in a keep-out", "landingAreas[0].area", "keep-out yard", func(f *assess.FieldDescription) { f.KeepOuts[0].Area = box(0, 60, 10, 70) }},
		{"landing area without surface", "landingAreas[0].surface", "no surface", func(f *assess.FieldDescription) { f.LandingAreas[0].Surface = "" }},
		{"pits on the strip", "pits[0].area", "overlaps strip 09/27", func(f *assess.FieldDescription) { f.Pits[0].Area = box(-20, -55, 20, -5) }},
		{"parking crosses itself", "parking[0].area", "crosses itself", func(f *assess.FieldDescription) {
			f.Parking = []assess.NamedArea{{Name: "cars", Area: outline(at(0, 200), at(9, 209), at(9, 200), at(0, 205))}}
		}},
		{"road over the strip", "roads[0].points[0]", "crosses strip", func(f *assess.FieldDescription) { f.Roads[0].Points = []assess.Point{at(0, -50), at(0, 50)} }},
		{"line of one point", "peopleLines[0].points", "needs two", func(f *assess.FieldDescription) { f.PeopleLines[0].Points = f.PeopleLines[0].Points[:1] }},
		{"a corner without east", "pits[0].area.corners[2].xMeters", "corner 3 lacks", func(f *assess.FieldDescription) {
			f.Pits[0].Area.Corners[2].XMeters = nil
			f.Pits[0].Area.Corners[3].XMeters = f.Pits[0].Area.Corners[0].XMeters
		}},
		{"a corner without north", "roads[0].points[1].yMeters", "corner 2 lacks", func(f *assess.FieldDescription) { f.Roads[0].Points[1].YMeters = nil }},
		{"two of a name", "roads[1].name", "same name as number 1", func(f *assess.FieldDescription) { f.Roads = append(f.Roads, f.Roads[0]) }},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			f := plain()
			row.change(&f)
			found := site.Remarks(f)
			if len(found) != 1 || found[0].Path != row.path || !strings.Contains(found[0].Text, row.text) {
				t.Errorf("found %v, want one at %s with %q", found, row.path, row.text)
			}
			if i := strings.Index(row.path, "["); i > 0 && found[0].Part == "" {
				t.Error("the remark names no part")
			}
		})
	}
}

// TestDemoFields: nothing stands out in the fields of the scenario but what a slide on Quarry Top's heath costs, which nobody has tried.
func TestDemoFields(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"long_acre", "quarry_top"} {
		for _, r := range site.Remarks(load(t, name)) {
			if r.Part != "cropped heath" || r.Path != "landingAreas[0].surface" {
				t.Errorf("%s: %s: %s", name, r.Path, r.Text)
			}
		}
	}
}

// TestRemarksDoNotDependOnOrderOrPlace: corners given the other way round, from another corner on, or a field moved as a whole give the same remarks.
func TestRemarksDoNotDependOnOrderOrPlace(t *testing.T) {
	t.Parallel()
	source := rand.New(rand.NewPCG(7, 11))
	for range 200 {
		f := plain()
		f.KeepOuts[0].Area = box(source.Float64()*300-150, source.Float64()*200-100, source.Float64()*300+150, source.Float64()*200+100)
		want := texts(f)
		slices.Reverse(f.FlyingArea.Corners)
		slices.Reverse(f.KeepOuts[0].Area.Corners)
		corners := f.KeepOuts[0].Area.Corners
		f.KeepOuts[0].Area.Corners = append(slices.Clone(corners[1:]), corners[0])
		if got := texts(f); got != want {
			t.Fatalf("remarks after turning:\n%s\nbefore:\n%s", got, want)
		}
	}
}

func texts(f assess.FieldDescription) string {
	var out strings.Builder
	for _, r := range site.Remarks(f) {
		fmt.Fprintln(&out, r.Path, r.Text)
	}
	return out.String()
}

// TestWildFieldsNeverPanic gives places that are missing, not numbers or without end.
func TestWildFieldsNeverPanic(t *testing.T) {
	t.Parallel()
	wild := []float64{0, math.NaN(), math.Inf(1), -1e300, 1e-300}
	for _, x := range wild {
		for _, y := range wild {
			f := plain()
			p := at(x, y)
			f.FlyingArea.Corners[1], f.Strips[0].End, f.PilotPosition = p, &p, &p
			f.KeepOuts[0].Area.Corners[2], f.Obstacles[0].Points[0], f.LandingAreas[0].Area.Corners[0] = p, p, p
			for _, r := range site.Remarks(f) {
				if r.Path == "" || r.Text == "" {
					t.Errorf("empty remark for %g, %g", x, y)
				}
			}
		}
	}
	if site.Remarks(assess.FieldDescription{}) == nil {
		t.Error("an empty field is worth no remark")
	}
}

func TestPartAt(t *testing.T) {
	t.Parallel()
	f := plain()
	rows := map[string]string{"obstacles[0].points[1].xMeters": "hedge", "keepOuts[0]": "yard", "keepOuts[9]": "", "flyingArea.corners[2]": "",
		"elevationMeters": "", "strips[x]": "", "strips[-1]": "", "": ""}
	for path, want := range rows {
		if got := site.PartAt(f, path); got != want {
			t.Errorf("%q leads into %q, want %q", path, got, want)
		}
	}
}
