package survey

import (
	"math"
	"strings"
	"testing"

	"pitgate/server/physics/field"
)

// here is the datum of the walks.
func here(t testing.TB) field.Datum {
	t.Helper()
	datum, err := field.NewDatum(field.Position{Latitude: radians(52), Longitude: radians(-1)})
	if err != nil {
		t.Fatal(err)
	}
	return datum
}

// fixAt is a fix at a place of the plane.
func fixAt(datum field.Datum, x, y, accuracy float64, mark string) Fix {
	return Fix{datum.Position(field.Local{X: x, Y: y}), accuracy, mark}
}

func TestMarkedCornersAreAveraged(t *testing.T) {
	t.Parallel()
	d := here(t)
	fixes := []Fix{
		fixAt(d, 0, 0, 4, "gate"), fixAt(d, 0, 0, 2, "gate"),
		fixAt(d, 60, 3, 5, ""),
		fixAt(d, 100, 0, 3, "oak"),
		fixAt(d, 100, 80, 3, "post"),
		fixAt(d, 6, 0, 2, "gate"),
	}
	w, err := Walk(fixes, d, 2)
	if err != nil {
		t.Fatal(err)
	}
	if len(w.Corners) != 3 || w.Dropped != 1 || w.Turned || w.Tolerance != 0 {
		t.Fatalf("%+v", w)
	}
	gate := w.Corners[0]
	// Two visits of 2 m each at 0 and 6 m: the mean lies at 3 m; they scatter by 3 m to each side, so by sqrt(18/2/2) each in one direction.
	if math.Abs(gate.Place.X-3) > 1e-6 || gate.Fixes != 3 || gate.Visits != 2 {
		t.Errorf("gate %+v", gate)
	}
	if want := math.Sqrt(9.0/(2*0.5)) / math.Sqrt2; math.Abs(gate.Spread-want) > 1e-6 {
		t.Errorf("gate is known to %g m, its visits scatter to %g", gate.Spread, want)
	}
	if oak := w.Corners[1]; oak.Mark != "oak" || oak.Spread != 3 {
		t.Errorf("oak %+v", oak)
	}
}

func TestMoreVisitsNarrowMoreFixesDoNot(t *testing.T) {
	t.Parallel()
	d := here(t)
	walk := func(visits, fixes int) float64 {
		var track []Fix
		for range visits {
			for range fixes {
				track = append(track, fixAt(d, 0, 0, 4, "a"))
			}
			track = append(track, fixAt(d, 90, 0, 4, "b"), fixAt(d, 90, 70, 4, "c"))
		}
		w, err := Walk(track, d, 1)
		if err != nil {
			t.Fatal(err)
		}
		return w.Corners[0].Spread
	}
	for _, fixes := range []int{1, 10, 200} {
		if got := walk(1, fixes); math.Abs(got-4) > 1e-9 {
			t.Errorf("%d fixes of one visit know it to %g m, want 4", fixes, got)
		}
	}
	for _, visits := range []int{2, 4, 9} {
		if got, want := walk(visits, 3), 4/math.Sqrt(float64(visits)); math.Abs(got-want) > 1e-9 {
			t.Errorf("%d visits know it to %g m, want %g", visits, got, want)
		}
	}
}

// around is a track walked clockwise round a bent field, a fix every so many metres, off its edges by a little.
func around(d field.Datum, every, off float64) []Fix {
	corners := []field.Point{{X: 0, Y: 0}, {X: 0, Y: 300}, {X: 200, Y: 300}, {X: 200, Y: 150}, {X: 400, Y: 150}, {X: 400, Y: 0}, {X: 0, Y: 0}}
	var track []Fix
	for i := 1; i < len(corners); i++ {
		edge := field.Segment{A: corners[i-1], B: corners[i]}
		n := int(edge.Length() / every)
		for k := range n {
			p := edge.At(float64(k) / float64(n))
			wave := off * math.Sin(float64(3*k))
			if k == 0 {
				wave = 0
			}
			track = append(track, fixAt(d, p.X+wave, p.Y+wave, 3, ""))
		}
	}
	return track
}

func TestTrackBecomesItsOutline(t *testing.T) {
	t.Parallel()
	d := here(t)
	track := around(d, 5, 0.8)
	w, err := Walk(track, d, 2)
	if err != nil {
		t.Fatal(err)
	}
	if len(w.Corners) != 6 || !w.Turned || math.Abs(w.Outline.Area()-90000) > 1 || w.Dropped != len(track)-6 || math.Abs(w.Gap-5) > 1.5 {
		t.Errorf("%d corners, area %g, turned %t, dropped %d of %d, gap %g", len(w.Corners), w.Outline.Area(), w.Turned, w.Dropped, len(track), w.Gap)
	}
	last := math.MaxInt
	for _, tolerance := range []float64{0, 0.3, 1, 2, 30} {
		w, err := Walk(track, d, tolerance)
		if err != nil {
			t.Fatal(err)
		}
		if len(w.Corners) > last {
			t.Errorf("tolerance %g keeps %d corners, after %d", tolerance, len(w.Corners), last)
		}
		last = len(w.Corners)
		for i, f := range track {
			if off, _ := w.Outline.Distance(d.Local(f.Position).Point()); off > tolerance+1e-3 {
				t.Errorf("tolerance %g: fix %d lies %g m off the outline", tolerance, i+1, off)
			}
		}
	}
}

func TestWalksThatCannotBe(t *testing.T) {
	t.Parallel()
	d := here(t)
	for expect, walk := range map[string][]Fix{
		"outline has 0 different corners": nil,
		"outline has 2 different corners": {fixAt(d, 0, 0, 1, ""), fixAt(d, 50, 0, 1, "")},
		"fix 2: accuracy of -1 m":         {fixAt(d, 0, 0, 1, ""), fixAt(d, 50, 0, -1, "")},
		"fix 1: 111 km from the datum":    {{Position: field.Position{Latitude: radians(53), Longitude: radians(-1)}}},
		"outline crosses itself": {
			fixAt(d, 0, 0, 1, "a"), fixAt(d, 50, 50, 1, "b"), fixAt(d, 50, 0, 1, "c"), fixAt(d, 0, 50, 1, "d"),
		},
	} {
		if _, err := Walk(walk, d, 1); err == nil || !strings.HasPrefix(err.Error(), expect) {
			t.Errorf("got %v, want %s", err, expect)
		}
	}
	if _, err := Walk(nil, d, math.NaN()); err == nil {
		t.Error("a tolerance that is not a number")
	}
	if _, err := Walk(make([]Fix, MostPlaces+1), d, 1); err == nil {
		t.Error("a walk without end")
	}
	if _, err := Walk(around(d, 0.5, 0.3), d, 0); err == nil || !strings.Contains(err.Error(), "allow a greater tolerance") {
		t.Errorf("an outline of every step: %v", err)
	}
}

func TestFixesOfATrack(t *testing.T) {
	t.Parallel()
	features, err := ReadGPX(gpx(`<trk><trkseg><trkpt lat="52" lon="-1"><hdop>1.2</hdop></trkpt><trkpt lat="52.001" lon="-1"/></trkseg></trk>`))
	if err != nil {
		t.Fatal(err)
	}
	fixes := features[0].Fixes()
	if len(fixes) != 2 || math.Abs(fixes[0].Accuracy-6) > 1e-12 || fixes[1].Accuracy != 0 {
		t.Errorf("%+v", fixes)
	}
}

func FuzzWalk(f *testing.F) {
	f.Add(0.0, 0.0, 50.0, 0.0, 50.0, 40.0, 0.0, 40.0, 2.0, 1.0)
	f.Add(0.0, 0.0, 50.0, 50.0, 50.0, 0.0, 0.0, 50.0, 0.0, 5.0)
	d := here(f)
	f.Fuzz(func(t *testing.T, x1, y1, x2, y2, x3, y3, x4, y4, accuracy, tolerance float64) {
		fixes := []Fix{fixAt(d, x1, y1, accuracy, ""), fixAt(d, x2, y2, accuracy, ""), fixAt(d, x3, y3, accuracy, ""), fixAt(d, x4, y4, accuracy, "")}
		w, err := Walk(fixes, d, tolerance)
		if err == nil && (w.Outline.SignedArea() <= 0 || len(w.Corners) != len(w.Outline)) {
			t.Errorf("outline %v", w.Outline)
		}
	})
}
