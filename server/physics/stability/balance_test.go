package stability

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// parts is a wing of 0.65 m2 with a tail behind it.
func parts() []LiftingPart {
	return []LiftingPart{
		{LiftSlope: 4.4, Area: 0.65, X: 0.5, PressureRatio: 1},
		{LiftSlope: 3.6, Area: 0.12, X: 1.4, PressureRatio: 0.9, Downwash: 0.4},
	}
}

func TestMovingTheBalanceForwardRaisesTheMarginOneToOne(t *testing.T) {
	t.Parallel()
	x, slope, err := NeutralPoint(parts(), 0.65, 0.33, 0.2)
	if err != nil {
		t.Fatal(err)
	}
	for _, forward := range []float64{0.001, 0.033, 0.1} {
		before, after := StaticMargin(x, 0.5, 0.33), StaticMargin(x, 0.5-forward, 0.33)
		if !near(after-before, forward/0.33, 1e-12) {
			t.Errorf("forward %g: margin %.6f to %.6f", forward, before, after)
		}
		if !near(MomentSlope(slope, after)-MomentSlope(slope, before), -slope*forward/0.33, 1e-12) {
			t.Errorf("forward %g: moment slope", forward)
		}
	}
}

// The moment slope about any point, added up part by part, must agree with neutral point and lift slope.
func TestNeutralPointIsWhereTheMomentDoesNotChange(t *testing.T) {
	t.Parallel()
	const area, chord, body = 0.65, 0.33, 0.25
	x, slope, err := NeutralPoint(parts(), area, chord, body)
	if err != nil {
		t.Fatal(err)
	}
	for _, point := range []float64{-1, 0, 0.45, x, 2} {
		moment := body
		for _, p := range parts() {
			moment += p.LiftSlope * p.PressureRatio * (1 - p.Downwash) * p.Area * (point - p.X) / (area * chord)
		}
		if want := MomentSlope(slope, StaticMargin(x, point, chord)); math.Abs(moment-want) > 1e-12 {
			t.Errorf("about %g: %g, want %g", point, moment, want)
		}
	}
}

func TestWhatMovesTheNeutralPoint(t *testing.T) {
	t.Parallel()
	at := func(change func([]LiftingPart), body float64) float64 {
		p := parts()
		change(p)
		x, _, err := NeutralPoint(p, 0.65, 0.33, body)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	base := at(func([]LiftingPart) {}, 0)
	if wing := at(func(p []LiftingPart) { p[1].Area = 0 }, 0); wing != 0.5 {
		t.Errorf("wing alone: %g", wing)
	}
	if larger := at(func(p []LiftingPart) { p[1].Area *= 1.2 }, 0); !(larger > base) {
		t.Errorf("larger tail: %g, before %g", larger, base)
	}
	if canard := at(func(p []LiftingPart) { p[1].X = -0.3 }, 0); !(canard < 0.5) {
		t.Errorf("tail first: %g", canard)
	}
	if more := at(func(p []LiftingPart) { p[1].Downwash = 0.6 }, 0); !(more < base) {
		t.Errorf("more downwash: %g, before %g", more, base)
	}
	if body := at(func([]LiftingPart) {}, 0.3); !(body < base) {
		t.Errorf("with a body: %g, before %g", body, base)
	}
}

// With the tail's own lift left out of the sum, both forms are the same.
func TestBothFormsOfTheNeutralPointAgree(t *testing.T) {
	t.Parallel()
	const wing, tail, volume, eta, downwash, body = 4.4, 3.6, 0.5, 0.9, 0.4, 0.15
	got := must(NeutralPointByVolume(0.25, wing, tail, volume, eta, downwash, body))
	const far = 1e7
	x, _, err := NeutralPoint([]LiftingPart{
		{LiftSlope: wing, Area: 1, X: 0.25, PressureRatio: 1},
		{LiftSlope: tail, Area: volume / far, X: far, PressureRatio: eta, Downwash: downwash},
	}, 1, 1, body)
	if err != nil || !near(got, x, 1e-6) {
		t.Errorf("%.8f against %.8f, %v", got, x, err)
	}
}

func TestImpossibleParts(t *testing.T) {
	t.Parallel()
	for field, call := range map[string]func() error{
		"area":               func() error { _, _, err := NeutralPoint(parts(), 0, 1, 0); return err },
		"chord":              func() error { _, _, err := NeutralPoint(parts(), 1, math.NaN(), 0); return err },
		"sum of lift slopes": func() error { _, _, err := NeutralPoint(nil, 1, 1, 0); return err },
		"wingSlope":          func() error { _, err := NeutralPointByVolume(0.25, 0, 4, 0.5, 1, 0.4, 0); return err },
		"aspect":             func() error { _, err := NeutralPointByAspect(-1, 4, 0.5); return err },
		"tailAspect":         func() error { _, err := NeutralPointByAspect(8, 0, 0.5); return err },
		"mass":               func() error { _, err := InertiaByGyration(EngineInNose, 0, 2, 2); return err },
		"length":             func() error { _, err := InertiaByGyration(EngineInNose, 1, 2, -2); return err },
		"item.mass":          func() error { _, _, _, _, err := InertiaOf([]Item{{X: 1}}); return err },
		"item.x":             func() error { _, _, _, _, err := InertiaOf([]Item{{Mass: 1, X: math.NaN()}}); return err },
		"items":              func() error { _, _, _, _, err := InertiaOf(nil); return err },
		"box.wall":           func() error { _, err := Box{0.1, 0.1, 0, 1e9}.TwistStiffness(1); return err },
		"halfSpan":           func() error { _, err := Box{0.1, 0.1, 0.001, 1e9}.TwistStiffness(0); return err },
		"damping":            func() error { s, _, _ := jet(); _, err := Rolling{0.1, 0.2, 0.3}.TimeConstant(s); return err },
		"roll rate":          func() error { s, _, _ := jet(); _, err := Rolling{0.1, -0.4, 0}.TimeToBank(1, s); return err },
		"bank":               func() error { s, _, _ := jet(); _, err := Rolling{0.1, -0.4, 0.3}.TimeToBank(-1, s); return err },
		"sum of lift slopes ": func() error {
			_, _, err := NeutralPoint([]LiftingPart{{LiftSlope: -4, Area: 1, PressureRatio: 1}}, 1, 1, 0)
			return err
		},
	} {
		if err := call(); !errors.Is(err, ErrInput) || !strings.Contains(err.Error(), strings.TrimSpace(field)) {
			t.Errorf("%s: %v", field, err)
		}
	}
}

func TestBalanceShift(t *testing.T) {
	t.Parallel()
	const neutral, balance, chord, mass, target = 0.60, 0.58, 0.33, 12.0, 0.10
	shift := BalanceShiftFor(target, neutral, balance, chord, mass)
	if margin := StaticMargin(neutral, balance-shift.Forward, chord); !near(margin, target, 1e-12) {
		t.Errorf("margin after the shift %g", margin)
	}
	if !near(shift.Moment, mass*shift.Forward, 1e-12) || shift.Forward <= 0 {
		t.Errorf("%+v", shift)
	}
	added, ok := MassToShift(mass, balance, balance-shift.Forward, 0.05)
	if moved := (mass*balance + added*0.05) / (mass + added); !ok || !near(moved, balance-shift.Forward, 1e-12) {
		t.Errorf("%g kg at the nose gives %g", added, moved)
	}
	for name, place := range map[string]float64{"behind": 0.9, "between": 0.575, "at the target": balance - shift.Forward} {
		if got, ok := MassToShift(mass, balance, balance-shift.Forward, place); ok {
			t.Errorf("%s: %g kg", name, got)
		}
	}
}

func TestBodyFactors(t *testing.T) {
	t.Parallel()
	last := 0.0
	for position := 0.1; position < 0.7; position += 0.01 {
		factor, inside := BodyFactor(position)
		if !inside || factor < last {
			t.Errorf("%.2f: %g after %g, inside %v", position, factor, last, inside)
		}
		last = factor
	}
	for _, outside := range []float64{-1, 0.05, 0.75, 9, math.NaN(), math.Inf(1)} {
		if factor, inside := BodyFactor(outside); inside || !(factor >= 0.115 && factor <= 1.146) {
			t.Errorf("%g: %g, inside %v", outside, factor, inside)
		}
	}
}

func TestWindowsOfEveryClass(t *testing.T) {
	t.Parallel()
	for class := Unstated; class <= Tailless; class++ {
		w := RecommendedMargin(class)
		if !(w.Low > 0 && w.High > w.Low) || w.Source == "" || (w.Status != "judgement" && w.Status != "from memory") {
			t.Errorf("class %d: %+v", class, w)
		}
		if widest := RecommendedMargin(Unstated); class == Sport && (w.Low < widest.Low || w.High > widest.High) {
			t.Errorf("sport %+v outside %+v", w, widest)
		}
	}
	if trainer, fast := RecommendedMargin(Trainer), RecommendedMargin(Fast); trainer.Low <= fast.Low || trainer.High <= fast.High {
		t.Errorf("trainer %+v, fast %+v", trainer, fast)
	}
	horizontal, vertical := TailVolumeWindow()
	if horizontal.Low >= horizontal.High || vertical.Low >= vertical.High || vertical.High > horizontal.Low {
		t.Errorf("%+v %+v", horizontal, vertical)
	}
	if wake, _ := PressureRatio(InTheWake); wake >= 1 {
		t.Errorf("tail in the wake sees %g", wake)
	}
	if free, _ := PressureRatio(OutOfWake); free != 1 {
		t.Errorf("tail out of the wake sees %g", free)
	}
}

func TestInertiaOfItems(t *testing.T) {
	t.Parallel()
	rod := Item{Mass: 2, Inertia: Inertia{Pitch: 2.0 / 12, Yaw: 2.0 / 12}}
	inertia, mass, x, z, err := InertiaOf([]Item{{Mass: 1, X: -0.5}, {Mass: 1, X: 0.5}, rod})
	if err != nil || mass != 4 || x != 0 || z != 0 {
		t.Fatalf("%g kg at %g, %g: %v", mass, x, z, err)
	}
	if want := 0.5 + 2.0/12; !near(inertia.Pitch, want, 1e-12) || !near(inertia.Yaw, want, 1e-12) || inertia.Roll != 0 {
		t.Errorf("%+v, want %g", inertia, want)
	}
	// A mass ahead and above against one behind and below: with x forward and z down both give 1 times -0.2.
	tilted, _, _, _, err := InertiaOf([]Item{{Mass: 1, X: -1, Z: 0.2}, {Mass: 1, X: 1, Z: -0.2}})
	if err != nil || !near(tilted.Product, 2*-0.2, 1e-12) {
		t.Errorf("product %g, %v", tilted.Product, err)
	}
	if !near(tilted.Pitch, 2*1.04, 1e-12) || !near(tilted.Yaw, 2, 1e-12) || !near(tilted.Roll, 2*0.04, 1e-12) {
		t.Errorf("%+v", tilted)
	}
}

// Shifting the datum changes nothing about the balance point.
func TestInertiaDoesNotKnowTheDatum(t *testing.T) {
	t.Parallel()
	items := []Item{{Mass: 3, X: 0.1, Y: 0.4, Z: 0.02}, {Mass: 3, X: 0.1, Y: -0.4, Z: 0.02}, {Mass: 2, X: -0.6, Z: -0.05}, {Mass: 1.5, X: 0.9, Z: 0.1}}
	want, _, x, z, err := InertiaOf(items)
	if err != nil {
		t.Fatal(err)
	}
	for i := range items {
		items[i].X += 3
		items[i].Z -= 2
	}
	got, _, movedX, movedZ, err := InertiaOf(items)
	if err != nil || !near(movedX, x+3, 1e-12) || !near(movedZ, z-2, 1e-12) {
		t.Fatalf("%g, %g: %v", movedX, movedZ, err)
	}
	if !near(got.Roll, want.Roll, 1e-10) || !near(got.Pitch, want.Pitch, 1e-10) || !near(got.Yaw, want.Yaw, 1e-10) || !near(got.Product, want.Product, 1e-9) {
		t.Errorf("%+v, want %+v", got, want)
	}
}

// The light aeroplane of the textbook (2750 lb, 33.4 ft, 27.5 ft long) must lie within the spread that is claimed.
func TestGyrationAgainstTheTextbook(t *testing.T) {
	t.Parallel()
	i := must(InertiaByGyration(EngineInNose, 85.4, 33.4, 27.5))
	for name, pair := range map[string][2]float64{"roll": {i.Roll, 1048}, "pitch": {i.Pitch, 3000}, "yaw": {i.Yaw, 3530}} {
		if off := math.Abs(pair[1]/pair[0] - 1); off > i.Spread {
			t.Errorf("%s: estimate %.0f, given %.0f, %.0f %% off", name, pair[0], pair[1], 100*off)
		}
	}
	if unknown := must(InertiaByGyration(Layout(99), 85.4, 33.4, 27.5)); unknown != i {
		t.Errorf("unknown layout %+v", unknown)
	}
	for layout := EngineInNose; layout <= FlyingWing; layout++ {
		if j := must(InertiaByGyration(layout, 10, 2, 2)); !(j.Roll > 0 && j.Pitch > 0 && j.Yaw > 0) {
			t.Errorf("layout %d: %+v", layout, j)
		}
	}
}
