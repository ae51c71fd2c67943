package weighing

import (
	"errors"
	"math"
	"strings"
	"testing"
)

func at(value float64) *float64 { return &value }

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.9g, want %.9g within %g", what, got, want, tolerance)
	}
}

// threeWheels is a model on a nose wheel and two main wheels.
func threeWheels() []Reading {
	return []Reading{
		{Name: "nose wheel", X: at(0.2), Y: at(0), Shown: []float64{1.5, 1.51, 1.49}, Tare: 0.1, Spread: 0.01},
		{Name: "left wheel", X: at(1.1), Y: at(-0.3), Shown: []float64{4.1}, Tare: 0.1, Spread: 0.01},
		{Name: "right wheel", X: at(1.1), Y: at(0.3), Shown: []float64{4.2}, Tare: 0.1, Spread: 0.01},
	}
}

func weigh(t *testing.T, readings []Reading) Weighed {
	t.Helper()
	w, err := Weigh(readings)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func TestWeighThreeWheels(t *testing.T) {
	t.Parallel()
	w := weigh(t, threeWheels())
	near(t, "mass", w.Mass.Value, 9.5, 1e-12)
	near(t, "x", w.X.Value, (1.4*0.2+8.1*1.1)/9.5, 1e-12)
	near(t, "y", w.Y.Value, 0.1*0.3/9.5, 1e-12)
	if !w.X.Known || !w.Y.Known || len(w.Notes) != 0 {
		t.Errorf("got %+v", w)
	}
	near(t, "sample deviation", w.Lines[0].Deviation, 0.01, 1e-12)
	near(t, "repeat spread", w.Lines[0].RepeatSpread, StudentFactor(2)*0.01/math.Sqrt(3), 1e-12)
}

// TestSpreadIsThatOfManyWeighings moves each input up and down by its spread and compares the sum of squares.
func TestSpreadIsThatOfManyWeighings(t *testing.T) {
	t.Parallel()
	base := weigh(t, threeWheels())
	var mass, x, y, cross float64
	add := func(change func(r []Reading, by float64)) {
		up, down := threeWheels(), threeWheels()
		change(up, 1)
		change(down, -1)
		a, b := weigh(t, up), weigh(t, down)
		dm, dx, dy := (a.Mass.Value-b.Mass.Value)/2, (a.X.Value-b.X.Value)/2, (a.Y.Value-b.Y.Value)/2
		mass, x, y, cross = mass+dm*dm, x+dx*dx, y+dy*dy, cross+dm*dx
	}
	for i := range base.Lines {
		l := base.Lines[i]
		add(func(r []Reading, by float64) { r[i].Tare -= by * l.Net.Spread })
		add(func(r []Reading, by float64) { *r[i].X += by * l.XSpread })
		add(func(r []Reading, by float64) { *r[i].Y += by * l.YSpread })
	}
	near(t, "u(mass)", base.Mass.Spread, math.Sqrt(mass), 1e-6*base.Mass.Spread)
	near(t, "u(x)", base.X.Spread, math.Sqrt(x), 1e-4*base.X.Spread)
	near(t, "u(y)", base.Y.Spread, math.Sqrt(y), 1e-4*base.Y.Spread)
	near(t, "u(mass, x)", base.MassX, cross, 1e-4*math.Abs(cross))
}

func TestSupportsThatTellLess(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name   string
		places [][2]float64
		x, y   bool
		note   string
	}{
		{"one scale", [][2]float64{{0.5, 0}}, false, false, noteOneScale},
		{"along", [][2]float64{{0.2, 0}, {1.1, 0}}, true, false, noteAlong},
		{"across", [][2]float64{{0.8, -0.3}, {0.8, 0.3}}, false, true, noteAcross},
		{"slanting", [][2]float64{{0.2, -0.3}, {1.1, 0.3}}, false, false, noteSlantwise},
		{"three along", [][2]float64{{0.2, 0}, {0.7, 0}, {1.1, 0}}, true, false, noteAlong},
		{"all at one place", [][2]float64{{0.5, 0}, {0.5, 0}}, false, false, noteAcross},
		{"four corners", [][2]float64{{0.2, -0.3}, {0.2, 0.3}, {1.1, -0.3}, {1.1, 0.3}}, true, true, ""},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			var readings []Reading
			for _, p := range row.places {
				readings = append(readings, Reading{X: at(p[0]), Y: at(p[1]), Shown: []float64{2}})
			}
			w := weigh(t, readings)
			if w.X.Known != row.x || w.Y.Known != row.y {
				t.Errorf("x known %v, y known %v; want %v, %v", w.X.Known, w.Y.Known, row.x, row.y)
			}
			if strings.Join(w.Notes, "|") != row.note {
				t.Errorf("notes %q, want %q", w.Notes, row.note)
			}
			near(t, "mass", w.Mass.Value, 2*float64(len(row.places)), 1e-12)
		})
	}
}

func TestScatterIsNoted(t *testing.T) {
	t.Parallel()
	readings := threeWheels()
	readings[1].Shown = []float64{4.1, 4.2, 4.0}
	w := weigh(t, readings)
	if !w.Lines[1].Scattered || w.Lines[0].Scattered || len(w.Notes) != 1 || !strings.Contains(w.Notes[0], "left wheel") {
		t.Errorf("got %+v, notes %q", w.Lines, w.Notes)
	}
}

func TestImpossibleReadingsAreNamed(t *testing.T) {
	t.Parallel()
	nan := math.NaN()
	rows := []struct {
		name   string
		change func(r []Reading) []Reading
		path   string
	}{
		{"none", func([]Reading) []Reading { return nil }, "model.mass.scaleReadings"},
		{"no reading", func(r []Reading) []Reading { r[1].Shown = nil; return r }, "model.mass.scaleReadings[1].readingKg"},
		{"negative net", func(r []Reading) []Reading { r[2].Tare = 5; return r }, "model.mass.scaleReadings[2].tareKg"},
		{"negative reading", func(r []Reading) []Reading { r[0].Shown[0] = -1; return r }, "model.mass.scaleReadings[0].readingKg"},
		{"bad repeat", func(r []Reading) []Reading { r[0].Shown[2] = nan; return r }, "model.mass.scaleReadings[0].repeats[1].readingKg"},
		{"no place", func(r []Reading) []Reading { r[0].X = &nan; return r }, "model.mass.scaleReadings[0].xMeters"},
		{"endless spread", func(r []Reading) []Reading { r[0].Spread = math.Inf(1); return r }, "model.mass.scaleReadings[0].readingKg.spread"},
		{"all empty", func(r []Reading) []Reading { return []Reading{{Shown: []float64{1}, Tare: 1}} }, "model.mass.scaleReadings"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			_, err := Weigh(row.change(threeWheels()))
			var fault *FieldError
			if !errors.As(err, &fault) || fault.Path() != row.path {
				t.Errorf("got %v, want a fault at %s", err, row.path)
			}
		})
	}
}

func TestNetSpreadHoldsScaleAndRepeats(t *testing.T) {
	t.Parallel()
	w := weigh(t, threeWheels())
	nose := w.Lines[0]
	near(t, "with repeats", nose.Net.Spread, math.Hypot(0.01, StudentFactor(2)*0.01/math.Sqrt(3)), 1e-12)
	near(t, "single", w.Lines[1].Net.Spread, 0.01, 1e-12)
	readings := threeWheels()
	readings[1].Spread = 0
	near(t, "by default", weigh(t, readings).Lines[1].Net.Spread, DefaultScaleShare*4.1, 1e-12)
}

func TestPlaceSpreadByDefault(t *testing.T) {
	t.Parallel()
	w := weigh(t, threeWheels())
	near(t, "x, a share of 0.9 m", w.Lines[0].XSpread, 0.0027, 1e-12)
	near(t, "y, a share of 0.6 m", w.Lines[0].YSpread, 0.0018, 1e-12)
	readings := threeWheels()
	for i := range readings {
		*readings[i].X, *readings[i].Y = *readings[i].X/10, *readings[i].Y/10
	}
	readings[1].PlaceSpread = 0.004
	w = weigh(t, readings)
	near(t, "x of a small model", w.Lines[0].XSpread, LeastPlaceSpread, 0)
	near(t, "its own", w.Lines[1].YSpread, 0.004, 0)
}

func TestMissingPlaces(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name   string
		change func(r []Reading)
		x, y   bool
		note   string
	}{
		{"no x", func(r []Reading) { r[2].X = nil }, false, false, noteNoX},
		{"no y", func(r []Reading) { r[2].Y = nil }, true, false, noteNoY},
		{"no y, all at one x", func(r []Reading) { r[2].Y, r[0].X = nil, at(1.1) }, false, false, noteAcross},
		{"unloaded", func(r []Reading) { r[0].Shown = []float64{0.1} }, true, true, noteUnloaded},
		{"almost on two", func(r []Reading) { r[0].Shown = []float64{0.13} }, true, true, noteBeyondEdge},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			readings := threeWheels()
			row.change(readings)
			w := weigh(t, readings)
			if w.X.Known != row.x || w.Y.Known != row.y || !strings.Contains(strings.Join(w.Notes, "|"), row.note) {
				t.Errorf("x known %v, y known %v, notes %q", w.X.Known, w.Y.Known, w.Notes)
			}
		})
	}
}
