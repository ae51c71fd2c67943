package fuel

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
	f.Add(0.0052, 0.05, 288.0, 0.35, 0.004, 2, 0.1, -0.2, 8.0, 1e-4, 0.003)
	f.Add(1e-9, 0.0, 150.0, 1e-4, 1e-4, 0, -10.0, 20.0, -100.0, 0.0, 1e-5)
	f.Add(10.0, 0.5, 450.0, 100.0, 0.5, 1000, 10.0, -20.0, 100.0, 1.0, 0.1)
	f.Fuzz(func(t *testing.T, flow, oil, temperature, length, bore float64, elbows int, height, ahead, load, trap, vent float64) {
		s := sound()
		s.Flow, s.OilShare, s.Temperature, s.PumpHeight, s.PumpAhead, s.TrapVolume, s.VentBore = flow, oil, temperature, height, ahead, trap, vent
		s.Lines[0] = Line{Length: length, Bore: bore, Elbows: elbows, Suction: true}
		s.Loads = Loads(load, -load, load)
		r, err := Assess(s)
		if err != nil {
			return
		}
		finite(t, "result", reflect.ValueOf(r))
		for _, fix := range r.Fixes {
			if fix.Cures == AirReleased && fix.Suction > AirReleaseSuction {
				t.Errorf("%v does not cure", fix)
			}
		}
	})
}

func FuzzFlightBudget(f *testing.F) {
	f.Add(2.0, 0.1, 0.003, 30.0, 0.005, 10.0)
	f.Add(0.0, 0.0, 1e-9, 1.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, onBoard, unusable, flow, duration, full, launch float64) {
		plan := flight()
		plan.OnBoard, plan.Unusable = onBoard, unusable
		plan.Circuit.Flow, plan.Circuit.Duration, plan.Launch.Flow, plan.Launch.Duration = flow, duration, full, launch
		b, err := FlightBudget(plan)
		if err != nil {
			return
		}
		finite(t, "budget", reflect.ValueOf(b))
		if b.Circuits < 0 || b.Timer < 0 || (b.Short > 0) != (b.Flying < 0) {
			t.Errorf("budget %+v", b)
		}
	})
}

func BenchmarkAssess(b *testing.B) {
	s := sound()
	s.PumpHeight = 0.25 // with fixes
	for b.Loop() {
		if r, err := Assess(s); err != nil || len(r.Fixes) == 0 {
			b.Fatal(err)
		}
	}
}
