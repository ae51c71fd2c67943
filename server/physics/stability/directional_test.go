package stability

import (
	"math"
	"testing"
)

func fin() Fin { return Fin{LiftSlope: 2.7, Area: 0.06, Arm: 0.95, Sidewash: 1.05} }

func TestFinAreaBringsTheTarget(t *testing.T) {
	t.Parallel()
	const area, span = 0.65, 2.0
	parts := FinStiffness{Fin: FinYaw(fin(), area, span), Body: BodyYaw(0.03, 0.25, 0.22, area, span), Wing: WingYaw(0.4, 6.2, 0.1, 0.05)}
	for _, target := range []float64{0.04, 0.08, 0.2} {
		needed, ok := FinAreaFor(target, parts, fin(), area, span)
		changed := fin()
		changed.Area = needed
		if got := FinYaw(changed, area, span) + parts.Body + parts.Wing; !ok || !near(got, target, 1e-12) {
			t.Errorf("target %g: area %g gives %g", target, needed, got)
		}
	}
	if got, ok := FinAreaFor(-1, parts, fin(), area, span); got != 0 || !ok {
		t.Errorf("target met without a fin: %g, %v", got, ok)
	}
	for name, f := range map[string]Fin{"no arm": {2.7, 0.06, 0, 1}, "ahead": {2.7, 0.06, -0.5, 1}, "no slope": {0, 0.06, 1, 1}} {
		if got, ok := FinAreaFor(0.08, parts, f, area, span); ok {
			t.Errorf("%s: %g", name, got)
		}
	}
}

func TestYawContributions(t *testing.T) {
	t.Parallel()
	if FinYaw(fin(), 0.65, 2) <= 0 || BodyYaw(0.03, 0.25, 0.22, 0.65, 2) >= 0 {
		t.Error("a fin must steady and a body upset")
	}
	deep, flat := BodyYaw(0.03, 0.3, 0.2, 0.65, 2), BodyYaw(0.03, 0.2, 0.3, 0.65, 2)
	if !(deep < flat) {
		t.Errorf("deep body %g, flat body %g", deep, flat)
	}
	if straight := WingYaw(0.5, 6, 0, 0.3); !near(straight, 0.25/(24*math.Pi), 1e-12) {
		t.Errorf("straight wing %g", straight)
	}
	// The published formula worked out apart, swept back by 45 and 30 degrees.
	for _, c := range []struct{ lift, aspect, sweep, behind, want float64 }{
		{0.6, 4, math.Pi / 4, 0.1, 0.024007515517393198}, {1, 5, math.Pi / 6, -0.05, 0.03881088787418302},
	} {
		if got := WingYaw(c.lift, c.aspect, c.sweep, c.behind); !near(got, c.want, 1e-12) {
			t.Errorf("%+v: %g", c, got)
		}
	}
	if up, down := WingYaw(0.5, 6, 0.4, 0), WingYaw(-0.5, 6, 0.4, 0); up != down || !(up > WingYaw(0.5, 6, 0, 0)) {
		t.Errorf("swept wing %g and %g", up, down)
	}
	for name, got := range map[string]float64{
		"body without area": BodyYaw(1, 1, 1, 0, 1), "body without width": BodyYaw(1, 1, 0, 1, 1), "wing without aspect": WingYaw(1, 0, 0, 0),
		"wing along the stream": WingYaw(1, 6, math.Pi, 0), "fin without span": FinYaw(fin(), 1, 0), "no downwash": SimpleDownwash(4, 0),
		"no chord": StaticMargin(1, 0, 0), "body moment without chord": BodyMomentSlope(1, 1, 1, 1, 0),
	} {
		if got != 0 {
			t.Errorf("%s: %g", name, got)
		}
	}
}

// DATCOM's factor: 0.724 with nothing beside it; a low wing, a larger fin and a longer wing raise it, sweep raises the fin's part.
func TestSidewashFactor(t *testing.T) {
	t.Parallel()
	base := SidewashFactor(0.1, 0, 0, 6)
	if want := 0.724 + 3.06*0.1/2 + 0.054; !near(base, want, 1e-12) {
		t.Errorf("%g, want %g", base, want)
	}
	for name, higher := range map[string]float64{
		"low wing": SidewashFactor(0.1, 0, 0.4, 6), "larger fin": SidewashFactor(0.15, 0, 0, 6), "swept": SidewashFactor(0.1, 0.6, 0, 6),
		"long wing": SidewashFactor(0.1, 0, 0, 9),
	} {
		if !(higher > base) {
			t.Errorf("%s: %g, before %g", name, higher, base)
		}
	}
	if got := SidewashFactor(0.1, math.Pi, 0, 6); math.IsInf(got, 0) || got > 1.2 {
		t.Errorf("wing turned round: %g", got)
	}
}
