package weighing

import (
	"errors"
	"math"
	"reflect"
	"testing"
)

// finite fails when a number anywhere in a result is not finite.
func finite(t *testing.T, where string, v reflect.Value) {
	t.Helper()
	switch v.Kind() {
	case reflect.Float64:
		if math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0) {
			t.Errorf("%s is %g", where, v.Float())
		}
	case reflect.Pointer:
		if !v.IsNil() {
			finite(t, where, v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			finite(t, where+"."+v.Type().Field(i).Name, v.Field(i))
		}
	case reflect.Slice:
		for i := range v.Len() {
			finite(t, where, v.Index(i))
		}
	default: // texts, truths and counts
	}
}

// refused fails when an error does not name its field.
func refused(t *testing.T, err error) {
	t.Helper()
	var field *FieldError
	if !errors.As(err, &field) || field.Path() == "" || field.Says == "" {
		t.Errorf("error without a field: %v", err)
	}
}

func FuzzWeigh(f *testing.F) {
	f.Add(0.2, 0.0, 1.5, 1.1, -0.3, 4.1, 1.1, 0.3, 4.2, 0.1, 0.01, 1.52, 0.3)
	f.Add(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1e-300, 0.0, 0.0, 0.0, 0.0)
	f.Add(1e6, -1e6, 1e6, -1e6, 1e6, 5e-324, 1e-9, 1e-9, 1e6, 1e-320, 1e6, 1e6, 1.0)
	f.Add(math.NaN(), math.Inf(1), -1.0, 1e308, -1e308, 1e308, 0.0, 0.0, 1.0, math.Inf(-1), -1.0, math.NaN(), math.NaN())
	f.Fuzz(func(t *testing.T, x1, y1, m1, x2, y2, m2, x3, y3, m3, tare, spread, repeat, tilt float64) {
		readings := []Reading{
			{X: &x1, Y: &y1, Shown: []float64{m1, repeat}, Tare: tare, Spread: spread},
			{X: &x2, Y: &y2, Shown: []float64{m2}, PlaceSpread: spread}, {X: &x3, Y: &y3, Shown: []float64{m3}},
		}
		w, err := Weigh(readings)
		if err != nil {
			refused(t, err)
			return
		}
		finite(t, "weighed", reflect.ValueOf(w))
		if h, err := BalanceHeight(w, w, tilt, 0.01); err == nil {
			finite(t, "height", reflect.ValueOf(h))
		}
		finite(t, "shift", reflect.ValueOf(TiltShift(x1, tilt)))
		items := []Item{{Mass: m1, X: &x1, Y: &y1, Z: &x3, MassSpread: spread}, {Mass: m2, X: &x2, Y: &y2, Z: &y3}, {Mass: m3, X: &x3, Y: &y3, Z: &x1, Movable: true}}
		sum, err := Add(items)
		if err != nil {
			refused(t, err)
			return
		}
		finite(t, "sum", reflect.ValueOf(sum))
		d, err := Reconcile(w.State, sum.State, items)
		if err != nil {
			refused(t, err)
			return
		}
		finite(t, "difference", reflect.ValueOf(d))
	})
}

func FuzzCorrect(f *testing.F) {
	f.Add(8.0, 0.9, 1.0, 0.7, 0.5, 1.3, 1.0, 0.4, 0.05, 0.2, 1.6, 2.0, 0.3, 0.5)
	f.Add(1e-6, 1e6, 1e6, -1e6, 0.0, 0.0, 0.0, 1e6, -1e6, 1e6, 1e6, 1e-300, 1e-5, 0.0)
	f.Add(8.0, 0.8, 0.0, 0.0, 0.0, 0.0, 1.0, 0.4, 0.05, 0.2, 0.92, 0.0, 1e-300, 0.2)
	f.Add(math.NaN(), 0.9, math.Inf(1), 0.7, 0.5, 1.3, math.NaN(), 0.4, 0.05, 0.2, 1.6, 2.0, 0.3, 0.5)
	f.Fuzz(func(t *testing.T, mass, x, fuel1, place1, fuel2, place2, neutral, chord, least, most, where, maximum, itemMass, itemX float64) {
		state := State{Mass: Estimate{mass, 0, true}, X: Estimate{x, 0, true}}
		travel, err := Burn(state, []Tank{{Fuel: fuel1, X: &place1, Order: 1}, {Fuel: fuel2, X: &place2, Unusable: fuel2 / 10}})
		if err != nil {
			refused(t, err)
			return
		}
		finite(t, "travel", reflect.ValueOf(travel))
		s := Search{
			Travel: travel, Window: Window{Neutral: neutral, Chord: chord, Least: least, Most: most}, Places: []Place{{X: &where}, {X: &itemX, Maximum: &maximum}},
			Items: []Item{{Mass: itemMass, X: &itemX, Movable: true}}, MaximumMass: &maximum, Foremost: &place1,
		}
		c, err := Correct(s)
		if err != nil {
			refused(t, err)
			return
		}
		finite(t, "correction", reflect.ValueOf(c))
	})
}
