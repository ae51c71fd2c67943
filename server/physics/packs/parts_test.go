package packs

import (
	"errors"
	"math"
	"testing"
)

// all are the chemistries.
var all = []Chemistry{LithiumPolymer, LithiumIon, LithiumIronPhosphate, NickelMetalHydride}

func TestCurvesOfEveryChemistryRise(t *testing.T) {
	t.Parallel()
	for _, c := range all {
		volts, factor, ratio := 0.0, 0.0, math.Inf(1)
		for i := range 101 {
			if v := c.RestVolts(float64(i) / 100); v < volts {
				t.Errorf("%v: rest volts fall at %d %%", c, i)
			} else {
				volts = v
			}
			kelvin := Zero - 40 + float64(i)
			if f := c.TemperatureFactor(kelvin); f < factor || f > 1 {
				t.Errorf("%v: capacity %g at %g K after %g", c, f, kelvin, factor)
			} else {
				factor = f
			}
			if r := c.ColdRatio(kelvin); r > ratio {
				t.Errorf("%v: resistance rises with warmth at %g K", c, kelvin)
			} else {
				ratio = r
			}
		}
		if r := c.ColdRatio(RoomCells); math.Abs(r-1) > 1e-12 {
			t.Errorf("%v: ratio at room %g", c, r)
		}
	}
}

func TestRestVoltageTellsTheChargeOrIsRefused(t *testing.T) {
	t.Parallel()
	for _, s := range []float64{0.05, 0.3, 0.62, 0.9} {
		for _, c := range []Chemistry{LithiumPolymer, LithiumIon} {
			if got, within, ok := c.ChargeFromRest(c.RestVolts(s)); !ok || math.Abs(got-s) > 1e-9 || within <= 0 {
				t.Errorf("%v at %g: %g within %g, %v", c, s, got, within, ok)
			}
		}
	}
	for _, s := range []float64{0.5, 0.6, 0.65} {
		for _, c := range []Chemistry{LithiumIronPhosphate, NickelMetalHydride} {
			if got, within, ok := c.ChargeFromRest(c.RestVolts(s)); ok {
				t.Errorf("%v at %g: told %g within %g", c, s, got, within)
			}
		}
	}
	for _, volts := range []float64{math.NaN(), 0, 5} {
		if _, _, ok := LithiumPolymer.ChargeFromRest(volts); ok {
			t.Errorf("%g V tells a charge", volts)
		}
	}
}

func TestRateAndAge(t *testing.T) {
	t.Parallel()
	for _, c := range all {
		if c.RateFactor(0, 2) != 1 || c.RateFactor(0.1*2, 2) != 1 {
			t.Errorf("%v: slow discharge loses", c)
		}
		if !(c.RateFactor(20, 2) < c.RateFactor(6, 2) && c.RateFactor(20, 2) > 0.6) {
			t.Errorf("%v: %g %g", c, c.RateFactor(20, 2), c.RateFactor(6, 2))
		}
		if c.Loss(Age{}) != 0 || !(c.Loss(Age{Years: 1}) < c.Loss(Age{Years: 2})) || !(c.Loss(Age{Cycles: 1}) > 0) {
			t.Errorf("%v: %g %g", c, c.Loss(Age{Years: 1}), c.Loss(Age{Years: 2}))
		}
		if c.Loss(Age{Years: 1e9, Cycles: 1e9}) > mostLoss {
			t.Errorf("%v: more than all is lost", c)
		}
	}
	// What is published by days holds for years: the law grows with their 0.512th power.
	for _, years := range []float64{0.5, 1, 3} {
		want := CalendarLoss(298.15, 0.5, 365.25*years)
		if got := LithiumIon.Loss(Age{Years: years, StoreKelvin: 298.15, StoreCharge: 0.5}); math.Abs(got-want) > 1e-12 || !(got > 0.01) {
			t.Errorf("%g years: %g, want %g", years, got, want)
		}
	}
	if half, full := LithiumIon.Loss(Age{Years: 1}), LithiumIon.Loss(Age{Years: 1, StoreCharge: 1}); !(full > 1.5*half) {
		t.Errorf("stored full %g, half %g", full, half)
	}
	if AgeRatio(0.2) != 2 || AgeRatio(0) != 1 {
		t.Error("resistance doubles with a fifth lost")
	}
	if s := SelfDischarge(0.2, 2); math.Abs(s-0.36) > 1e-12 {
		t.Errorf("self-discharge %g", s)
	}
}

func TestFlightsAndReserve(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		usable, flight, reserve float64
		want                    int
	}{{2, 0.3, 0.3, 4}, {2, 0.3, 0, 6}, {0.1, 0.3, 0, 0}, {-1, 0.3, 0, 0}, {2, 0, 0.3, 1000}, {2, 0.3, 1, 0}} {
		if got := Flights(c.usable, c.flight, c.reserve); got != c.want {
			t.Errorf("%+v: %d", c, got)
		}
	}
	if e := Endurance(1, 2); math.Abs(e-1800) > 1e-9 {
		t.Errorf("endurance %g", e)
	}
	if Endurance(1, 0) != mostEndurance || Endurance(-1, 1) != 0 {
		t.Error("no current lasts long, no charge not at all")
	}
}

func TestDemandGrowsWithServos(t *testing.T) {
	t.Parallel()
	last := Demand{}
	for n := 1; n <= 12; n++ {
		d, err := DemandOf([]Group{{Classes()[1], n}, {Retract, 3}}, Duty, Electronics)
		if err != nil || !(d.Mean > last.Mean && d.Peak >= last.Peak && d.Blocked > last.Blocked) {
			t.Fatalf("%d servos: %+v after %+v, %v", n, d, last, err)
		}
		if !(d.Mean <= d.Peak && d.Peak <= d.Blocked) {
			t.Errorf("%d servos: %+v", n, d)
		}
		last = d
	}
	for _, g := range []Group{{Classes()[0], -1}, {Classes()[0], 65}, {Class{Name: "odd", Stall: math.NaN()}, 1}} {
		if _, err := DemandOf([]Group{g}, Duty, 0); !errors.Is(err, ErrInput) {
			t.Errorf("%+v: %v", g, err)
		}
	}
	if _, err := DemandOf(nil, 2, 0); !errors.Is(err, ErrInput) {
		t.Errorf("duty 2: %v", err)
	}
}

func TestServoClasses(t *testing.T) {
	t.Parallel()
	for torque, want := range map[float64]string{0.1: "micro servo", 0.5: "standard servo", 1.5: "strong digital servo", 3: "large servo", 99: "large servo"} {
		if got := ClassByTorque(torque).Name; got != want {
			t.Errorf("%g N m: %s", torque, got)
		}
	}
	standard := Classes()[1]
	if high := standard.At(6); math.Abs(high.Stall-2.4) > 1e-12 || math.Abs(high.Moving-0.25*1.175) > 1e-12 {
		t.Errorf("%+v", high)
	}
	if low := standard.At(4); math.Abs(low.Stall-1.6) > 1e-12 || math.Abs(low.Moving-0.25*0.825) > 1e-12 {
		t.Errorf("%+v", low)
	}
	if high := standard.At(7.4); math.Abs(high.Moving-0.25*1.42) > 1e-12 {
		t.Errorf("%+v", high)
	}
	if got := standard.CurrentAtTorque(-2, 1); math.Abs(got-standard.Stall) > 1e-12 {
		t.Errorf("beyond its torque %g", got)
	}
	if got := standard.CurrentAtTorque(0, 1); got != standard.Idle {
		t.Errorf("no torque %g", got)
	}
}

func TestGaugesAndAreas(t *testing.T) {
	t.Parallel()
	for n := 10.0; n <= 30; n++ {
		if got := GaugeOf(GaugeArea(n)); math.Abs(got-n) > 1e-9 {
			t.Errorf("gauge %g came back as %g", n, got)
		}
	}
	if _, ok := GaugeLimit(9); ok {
		t.Error("a limit outside the table")
	}
	if hot, cold := WireResistance(1, 1e-6, Zero+80, 1), WireResistance(1, 1e-6, Zero, 1); !(hot > cold) {
		t.Errorf("hot %g cold %g", hot, cold)
	}
	if r := (Lead{}).Resistance(); r != 0 {
		t.Errorf("nothing has %g ohm", r)
	}
}

func TestSoak(t *testing.T) {
	t.Parallel()
	tau := SoakTime(0.15, LithiumHeat, StillAir, 0.012)
	if math.Abs(tau-1562.5) > 1e-9 {
		t.Errorf("time constant %g", tau)
	}
	start, air := Zero+20, Zero-6
	if at := Soaked(start, air, tau, tau); math.Abs(at-(air+26/math.E)) > 1e-9 {
		t.Errorf("after one constant %g", at)
	}
	seconds, ok := SoakUntil(start, air, Zero+5, tau)
	if !ok || math.Abs(Soaked(start, air, seconds, tau)-(Zero+5)) > 1e-9 {
		t.Errorf("until 5 C %g, %v", seconds, ok)
	}
	for _, limit := range []float64{air, air - 1, start + 1} {
		if s, ok := SoakUntil(start, air, limit, tau); ok {
			t.Errorf("reached %g K in %g s", limit, s)
		}
	}
	if h := SelfHeating(5, 0.05, MovingAir, 0.012); math.Abs(h-1.25/0.3) > 1e-9 {
		t.Errorf("self-heating %g", h)
	}
}

func TestRegulators(t *testing.T) {
	t.Parallel()
	switched := Regulator{Kind: Switching, Set: 6, DropOut: 0.6, Efficiency: 0.9}
	volts, drawn := switched.inputUnder(12, 0.1, 5)
	if math.Abs(volts*drawn*0.9-30) > 1e-9 || math.Abs(12-0.1*drawn-volts) > 1e-9 {
		t.Errorf("power in %g, volts %g", volts*drawn, volts)
	}
	if volts, drawn := switched.inputUnder(6, 1, 5); volts != 1 || drawn != 5 {
		t.Errorf("collapsed supply: %g V %g A", volts, drawn)
	}
	if out := switched.output(6.3); math.Abs(out-5.7) > 1e-12 {
		t.Errorf("below drop-out %g", out)
	}
	if out := (Regulator{Kind: Linear, Set: 6, DropOut: LowDropOut}).output(0.5); out != 0 {
		t.Errorf("nearly nothing in, %g out", out)
	}
}
