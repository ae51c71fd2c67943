package heat

import (
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

func FuzzAssess(f *testing.F) {
	f.Add("film", 0.06, 923.0, 380.0, 298.0, 0.0, -0.1, 0.06, false, 0.0)
	f.Add("", 2.0, 1600.0, 1000.0, 200.0, 0.0, 0.0, 0.0, true, 0.0)
	f.Add("EPS", 1e-3, 200.0, 0.1, 340.0, 1600.0, 100.0, 100.0, false, 250.0)
	f.Fuzz(func(t *testing.T, material string, diameter, hot, speed, air, pipe, behind, from float64, foil bool, measured float64) {
		run := Run{Exhaust: Exhaust{Diameter: diameter, Temperature: hot, Total: foil, Speed: speed}, Air: Air{Temperature: air}, Pipe: pipe}
		answers, err := Assess(run, []Part{{Material: material, Behind: behind, From: from, Foil: foil, Measured: measured}})
		if err != nil {
			return
		}
		a := answers[0]
		finite(t, "answer", reflect.ValueOf(a))
		if a.Worst < a.Best-1e-6 {
			t.Errorf("conservative %g K is under best %g K", a.Worst, a.Best)
		}
		for _, fix := range a.Fixes {
			if fix.Then > a.Material.Service+1e-6 {
				t.Errorf("%v leaves the part over its limit %g", fix, a.Material.Service)
			}
		}
	})
}

func FuzzOnGround(f *testing.F) {
	f.Add(0.06, 923.0, 380.0, 298.0, 0.1)
	f.Add(2.0, 1600.0, 1000.0, 200.0, 0.0)
	f.Add(1e-3, 200.0, 0.1, 340.0, 20.0)
	f.Fuzz(func(t *testing.T, diameter, hot, speed, air, height float64) {
		p, err := NewPlume(Exhaust{Diameter: diameter, Temperature: hot, Speed: speed}, Air{Temperature: air}, Conservative)
		if err != nil {
			return
		}
		if g, err := OnGround(p, height); err == nil {
			finite(t, "ground", reflect.ValueOf(g))
			finite(t, "height", reflect.ValueOf(LeastHeight(p, GrassIgnition)))
		}
	})
}

func BenchmarkAssess(b *testing.B) {
	parts := []Part{
		{Material: "film", Behind: -0.1, From: 0.06}, {Material: "EPS foam", Behind: 0.5, From: 0.02},
		{Material: "balsa", Behind: -0.05, From: 0.02, Foil: true}, {Material: "carbon", Behind: 1, From: 0.2},
	}
	run := standing()
	for b.Loop() {
		if _, err := Assess(run, parts); err != nil {
			b.Fatal(err)
		}
	}
}
