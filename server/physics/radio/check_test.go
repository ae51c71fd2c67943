package radio

import (
	"errors"
	"math"
	"slices"
	"testing"
)

func TestRangeCheckDemonstratesAtItsOwnDistanceOnly(t *testing.T) {
	t.Parallel()
	link := clearLink()
	installation := Install(link.Antennas)
	r, err := CheckRange(link, &installation, RangeCheck{30, 30, 1, 1.5}, 500, 20)
	if err != nil {
		t.Fatal(err)
	}
	if r.Demonstrated != 30 || r.At != 30 {
		t.Errorf("demonstrated %g dB at %g m", r.Demonstrated, r.At)
	}
	if math.Abs(r.CarriedFree-5.56) > 0.01 || math.Abs(r.Needed-158.1) > 0.1 {
		t.Errorf("carried %g dB, needed %g m", r.CarriedFree, r.Needed)
	}
	if r.Carried > r.CarriedFree || r.Carried > r.CarriedGround || !r.InNulls || r.Disagrees {
		t.Errorf("%+v", r)
	}
	weak := link
	weak.RadiatedPower = -20
	if r, err := CheckRange(weak, &installation, RangeCheck{60, 30, 1, 1.5}, 500, 20); err != nil || !r.Disagrees {
		t.Errorf("a check that the budget says cannot work: %+v, %v", r, err)
	}
	for _, c := range []RangeCheck{{0, 30, 1, 1.5}, {30, -1, 1, 1.5}, {30, 30, math.NaN(), 1.5}, {30, 30, 1, 0}} {
		if _, err := CheckRange(link, &installation, c, 500, 20); !errors.Is(err, ErrInput) {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

func TestCarriedMarginAndItsInverse(t *testing.T) {
	t.Parallel()
	for _, reduction := range []float64{10, 20, 30} {
		for _, wanted := range []float64{100, 500, 2000} {
			d := RequiredCheckDistance(wanted, 12, reduction)
			if got := CarriedMargin(reduction, d, wanted); math.Abs(got-12) > 1e-9 {
				t.Errorf("%g dB %g m: %g", reduction, wanted, got)
			}
		}
		if f, g := FreeSpaceFactor(reduction), GroundLawFactor(reduction); math.Abs(f-g*g) > 1e-9*f {
			t.Errorf("%g dB: %g is not the square of %g", reduction, f, g)
		}
	}
}

func TestFailSafes(t *testing.T) {
	t.Parallel()
	limit := FailSafeLimit{Time: 2, MustStop: true}
	for name, c := range map[string]struct {
		set    FailSafe
		holds  bool
		remedy string
		short  float64
	}{
		"sound":         {FailSafe{CutSpiral, 1, 2}, true, "", 0},
		"at the limit":  {FailSafe{CutNeutral, 2, 0}, true, "", 0},
		"hold":          {FailSafe{Hold, 1, 0}, false, "set the fail-safe to cut the engine", 0},
		"idle":          {FailSafe{IdleNeutral, 1, 0}, false, "set the fail-safe to cut the engine", 0},
		"never set":     {FailSafe{None, 0, 0}, false, "set the fail-safe to cut the engine", 0},
		"five seconds":  {FailSafe{CutNeutral, 5, 2}, false, "shorten the delay", 3},
		"hold and slow": {FailSafe{Hold, 5, 2}, false, "set the fail-safe to cut the engine and shorten the delay", 3},
	} {
		r, err := CheckFailSafe(c.set, limit, 60)
		if err != nil || r.Holds != c.holds || r.Remedy != c.remedy || math.Abs(r.Shorten-c.short) > 1e-12 {
			t.Errorf("%s: %+v, %v", name, r, err)
		}
	}
	if r, err := CheckFailSafe(FailSafe{IdleNeutral, 1, 0}, FailSafeLimit{Time: 2}, 0); err != nil || !r.Holds {
		t.Errorf("idle where idle is enough: %+v, %v", r, err)
	}
	if _, err := CheckFailSafe(FailSafe{CutNeutral, math.NaN(), 0}, limit, 1); !errors.Is(err, ErrInput) {
		t.Errorf("delay that is no number: %v", err)
	}
}

func TestSingleFailures(t *testing.T) {
	t.Parallel()
	doubled := Equipment{Receivers: 2, Antennas: 4, Packs: 2, Switches: 2, Buses: 2, CrossFeed: true}
	if got := doubled.SingleFailures(); len(got) != 0 {
		t.Errorf("doubled: %v", got)
	}
	doubled.Receivers = 1
	if got := doubled.SingleFailures(); !slices.Equal(got, []string{"receiver"}) {
		t.Errorf("one receiver: %v", got)
	}
	doubled.CrossFeed = false
	if got := doubled.SingleFailures(); !slices.Contains(got, "pack and its receiver") {
		t.Errorf("one receiver on one pack: %v", got)
	}
	if got := (Equipment{}).SingleFailures(); len(got) != 5 {
		t.Errorf("nothing doubled: %v", got)
	}
}

func TestAllFail(t *testing.T) {
	t.Parallel()
	if got := AllFail(0.01, 2, 0.1); math.Abs(got-(0.001+0.9*0.0001)) > 1e-15 {
		t.Errorf("%g", got)
	}
	if AllFail(0.01, 1, 0.1) != 0.01 || AllFail(0.01, 3, 1) != 0.01 {
		t.Error("one part, and parts that fail together, are one part")
	}
	if !(AllFail(0.01, 3, 0) < AllFail(0.01, 2, 0)) {
		t.Error("more parts must fail together less")
	}
}

func TestTelemetryIsLostFirstWhenItIsWeaker(t *testing.T) {
	t.Parallel()
	link := clearLink()
	weak, err := TelemetryLoss(link, 20, WayBack{RadiatedPower: 10, Sensitivity: -99, AntennaGain: HalfWaveGain})
	if err != nil || !weak.FirstLost || math.Abs(weak.Lead-10) > 1e-9 || math.Abs(weak.Margin-10) > 1e-9 {
		t.Errorf("%+v, %v", weak, err)
	}
	if math.Abs(weak.RangeLost-math.Sqrt(10)) > 1e-9 {
		t.Errorf("lost at %g times the distance", weak.RangeLost)
	}
	strong, err := TelemetryLoss(link, 20, WayBack{RadiatedPower: 26, Sensitivity: -99, AntennaGain: HalfWaveGain})
	if err != nil || strong.FirstLost {
		t.Errorf("%+v, %v", strong, err)
	}
}

func TestFadingLimits(t *testing.T) {
	t.Parallel()
	for margin := -10.0; margin <= 50; margin += 2.5 {
		want := RayleighOutage(margin)
		if got := RiceOutage(margin, 0); math.Abs(got-want) > 1e-9*math.Max(want, 1e-6) {
			t.Errorf("no direct ray at %g dB: %g, Rayleigh %g", margin, got, want)
		}
		last := 2.0
		for _, k := range []float64{0, 1, 4, 10, 40, 100} {
			got := RiceOutage(margin, k)
			if margin >= 5 && got > last+1e-15 {
				t.Errorf("%g dB, factor %g: %g after %g", margin, k, got, last)
			}
			last = got
		}
	}
	for _, p := range []float64{1e-9, 1e-6, 0.01, 0.5} {
		if got := RayleighOutage(RayleighMargin(p)); math.Abs(got-p) > 1e-9*p {
			t.Errorf("inverse of %g: %g", p, got)
		}
	}
}

// besselZero is I0 times exp(-x), by its integral over the angle.
func besselZero(x float64) float64 {
	const steps = 4000
	sum := 0.0
	for i := range steps {
		sum += math.Exp(x * (math.Cos(math.Pi*(float64(i)+0.5)/steps) - 1))
	}
	return sum / steps
}

func TestRiceAgainstItsDensity(t *testing.T) {
	t.Parallel()
	for _, k := range []float64{0.5, 3, 10} {
		for _, margin := range []float64{0, 3, 10} {
			const steps = 2000
			most, sum := math.Pow(10, -margin/10), 0.0
			for i := range steps {
				p := most * (float64(i) + 0.5) / steps
				root := 2 * math.Sqrt(k*(1+k)*p)
				sum += (1 + k) * math.Exp(-k-(1+k)*p+root) * besselZero(root) * most / steps
			}
			if got := RiceOutage(margin, k); math.Abs(got-sum) > 1e-6 {
				t.Errorf("factor %g, %g dB: %g, integral %g", k, margin, got, sum)
			}
		}
	}
}

func TestChangesReachWhatIsWanted(t *testing.T) {
	t.Parallel()
	link := clearLink()
	link.Antennas = link.Antennas[:1]
	place := Place{"corner", 900, 40}
	now := usual(t, link, place).Usual
	changes, err := Changes(link, place, now+6)
	if err != nil || len(changes) == 0 {
		t.Fatal(changes, err)
	}
	for _, c := range changes {
		if c.Holds != (c.Margin >= now+6) {
			t.Errorf("%+v", c)
		}
		if c.Knob == KnobDistance && !(c.Holds && c.To < c.From) {
			t.Errorf("nearer must help: %+v", c)
		}
		if c.Knob == KnobPower && math.Abs(c.To-c.From-6) > 1e-9 {
			t.Errorf("6 dB are missing: %+v", c)
		}
		if c.Knob == KnobSecondAntenna && !c.Holds {
			t.Errorf("a crossed antenna must help by more: %+v", c)
		}
	}
	if none, err := Changes(link, place, now-1); err != nil || none != nil {
		t.Errorf("a margin that holds: %+v, %v", none, err)
	}
	low := Place{"grass", 600, 0.3}
	lowNow := usual(t, clearLink(), low).Usual
	changes, err = Changes(clearLink(), low, lowNow+3)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range changes {
		if c.Knob == KnobTransmitterHeight && !(c.Holds && c.To > 2 && c.To < 2.3) {
			t.Errorf("3 dB more need %g m, want about 1.5 times the root of two: %+v", c.To, c)
		}
	}
}

func FuzzRiceOutage(f *testing.F) {
	f.Add(10.0, 3.0)
	f.Add(-20.0, 100.0)
	f.Add(math.Inf(1), math.NaN())
	f.Fuzz(func(t *testing.T, margin, factor float64) {
		if p := RiceOutage(margin, factor); !(p >= 0 && p <= 1) {
			t.Fatalf("%g dB, factor %g: %g", margin, factor, p)
		}
	})
}

func TestOneMoreAntennaStandsApart(t *testing.T) {
	t.Parallel()
	for _, axes := range [][]Vector{nil, {{X: 1}}, {{Z: 1}}, {{X: 1}, {X: -1}}, {{X: 1}, {Z: 1}}, {{X: 1}, {X: 1, Y: 1}}} {
		more := apart(axes)
		if math.Abs(more.dot(more)-1) > 1e-12 {
			t.Errorf("%v: length of %v", axes, more)
		}
		for _, axis := range axes {
			if math.Abs(more.dot(axis)) > 1e-12 {
				t.Errorf("%v: %v is not at right angles to %v", axes, more, axis)
			}
		}
	}
}
