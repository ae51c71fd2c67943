package aeroelastic

import (
	"errors"
	"math"
	"testing"

	"pitgate/server/physics/structure"
)

// usable is true without an error; it fails when an error is not one that this package may give.
func usable(t *testing.T, err error) bool {
	t.Helper()
	if err != nil && !errors.Is(err, ErrInput) && !errors.Is(err, ErrOutOfRange) {
		t.Errorf("%v", err)
	}
	return err == nil
}

func FuzzSpeeds(f *testing.F) {
	f.Add(40.0, 0.8, 0.28, 0.12, 0.38, 4.8, 0.0, 0.003, 3e9, 0.3, 0.012, 0.018, 0.2, 0.3, 1.2)
	f.Add(1e300, 1e300, 1e-300, 1e300, 0.2500001, 1e-300, -1.0, 1e300, 1e300, 1e300, 1e-300, 1e300, 1.0, 1.5, 1e-300)
	f.Add(5e-324, 1e-300, 5e-324, 0.0, 1.19, 1e300, 1.0, 5e-324, 5e-324, 5e-324, 1e300, 1e-300, 1e-3, 1e-300, 1e300)
	f.Add(math.NaN(), math.Inf(1), -1.0, 0.0, 2.0, 0.0, math.NaN(), 0.0, -1.0, 0.0, 0.0, 0.0, 0.0, 3.0, math.NaN())
	f.Add(3.5e-323, 1e-300, -41.0, 36.0, 1.19, 5e+300, 58.0, 15.0, 5e-324, 38.0, 1e+300, 1e-300, 0.001, 1e-300, 1e+300)
	wire, _ := structure.FindMaterial("wire, steel")
	f.Fuzz(func(t *testing.T, stiffness, span, root, tip, axis, slope, sweep, thickness, modulus, torque, arm, horn, ratio, throw, density float64) {
		var told []float64
		if d, err := (Wing{stiffness, span, []float64{root, tip}, axis, slope, sweep}).Divergence(); usable(t, err) {
			told = append(told, d.Pressure)
		}
		if r, err := (PlateFin{root, tip, span, thickness, modulus}).Flutter(modulus, slope); usable(t, err) {
			told = append(told, r.Speed)
		}
		c := Control{TaperedMomentArea(span, root, tip), ratio, throw, sweep, thickness}
		if h, err := c.HingeMoment(stiffness, slope); usable(t, err) {
			told = append(told, h)
		}
		l := Linkage{torque, 1, arm, horn, span, thickness, wire}
		if h, err := l.Limits(c, slope, density); usable(t, err) {
			told = append(told, h.ServoSpeed, h.ServoStallSpeed, h.RodSpeed, h.Travel.Ratio, h.Travel.ServoAngle, h.RodLoad)
		}
		if n, err := NeverExceed([]Term{{KindRule, "", torque, true}, {KindFlutter, "", arm, false}}); usable(t, err) {
			told = append(told, n.Speed)
		}
		if err := checkResult(told...); err != nil {
			t.Errorf("%v", told)
		}
	})
}

// BenchmarkSpeeds is one wing, one fin and four controls.
func BenchmarkSpeeds(b *testing.B) {
	w := glider()
	l, c := aileron()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := w.Divergence(); err != nil {
			b.Fatal(err)
		}
		if _, err := (PlateFin{0.2, 0.12, 0.18, 0.003, 3.5e9}).Flutter(101325, 340); err != nil {
			b.Fatal(err)
		}
		for range 4 {
			if _, err := l.Limits(c, 4, 1.225); err != nil {
				b.Fatal(err)
			}
		}
	}
}
