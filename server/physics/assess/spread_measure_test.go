package assess

import (
	"math"
	"slices"
	"testing"
)

// guess makes the mass of a model an estimate.
func guess(in Input, spread float64) Input {
	model, mass := *in.Model, *in.Model.Mass
	mass.EmptyMassKg = &Quantity{Value: in.Model.Mass.EmptyMassKg.Value, Basis: BasisEstimated, Spread: &spread}
	model.Mass, in.Model = &mass, &model
	return in
}

func width(f Finding) float64 { return *f.BandHigh - *f.BandLow }

// A weigh-in takes off the stall speed's band what the propagation law says: the square falls by the share of the mass times what its square loses.
func TestWeighInNarrowsTheStallSpeed(t *testing.T) {
	t.Parallel()
	in := withoutField(demoInput(t, "redshank_quarry_top.json"))
	const estimated, weighed = 1.0, 0.0365 // kg, of 7.3
	before := findingOf(t, spreadOf(t, guess(in, estimated), SpreadOptions{Samples: 2048, Workers: 2}), "stall.speed")
	after := findingOf(t, spreadOf(t, guess(in, weighed), SpreadOptions{Samples: 2048, Workers: 2}), "stall.speed")
	at := slices.IndexFunc(before.SpreadShares, func(s SpreadShare) bool { return s.Input == wholeMassPath })
	if at < 0 {
		t.Fatalf("the mass has no share: %v", before.SpreadShares)
	}
	share := before.SpreadShares[at].ShareRatio
	want := math.Sqrt(1 - share*(1-weighed*weighed/(estimated*estimated)))
	if got := width(after) / width(before); math.Abs(got-want) > 0.04*want || !(got < 0.9) {
		t.Errorf("the band narrows to %.4f of its width, by the law to %.4f (share %.3f)", got, want, share)
	}
	// The law itself by closed form: the speed goes with the root of the mass as flown, and the rest of the variance stays.
	value, full := *before.Value, 8.596
	closed := value / 2 / full * estimated * 2 * 1.6448536
	lost := closed * math.Sqrt(1-weighed*weighed/(estimated*estimated))
	// The root leaves out what a mass changes besides, balance and Reynolds number, and that 14 % are not little: 1.3 % less was measured.
	if rest := math.Sqrt(width(before)*width(before) - width(after)*width(after)); math.Abs(rest/lost-1) > 0.03 {
		t.Errorf("the weigh-in takes %.4f m/s off the band, by the root of the mass %.4f", rest, lost)
	}
}

// What the list promises is kept: measured as it says, the findings it names hold.
func TestMeasuringSettlesWhatIsPromised(t *testing.T) {
	t.Parallel()
	in := guess(withoutField(demoInput(t, "redshank_quarry_top.json")), 1.2)
	limits := *in.Limits
	speed := 14.9
	limits.MaximumStallSpeedMetersPerSecond = &speed
	in.Limits = &limits
	options := SpreadOptions{Samples: 1024, Workers: 2}
	report := spreadOf(t, in, options)
	if f := findingOf(t, report, "stall.speed"); f.Verdict != VerdictTight {
		t.Fatalf("stall.speed is %s at %v", f.Verdict, *f.HoldsProbability)
	}
	if len(report.MeasureNext) == 0 || report.MeasureNext[0].Input != wholeMassPath || !slices.Contains(report.MeasureNext[0].FindingIDs, "stall.speed") {
		t.Fatalf("measure next: %+v", report.MeasureNext)
	}
	first := report.MeasureNext[0]
	if first.How == "" || first.Title == "" || !(first.ShareRatio > 0.3) {
		t.Errorf("told as %+v", first)
	}
	weighed := spreadOf(t, guess(in, spreadMass**in.Model.Mass.EmptyMassKg.Value), options)
	for _, id := range first.FindingIDs {
		if f := findingOf(t, weighed, id); f.Verdict != VerdictHolds {
			t.Errorf("%s is %s after the measurement that settles it", id, f.Verdict)
		}
	}
	for _, m := range weighed.MeasureNext {
		if m.Input == wholeMassPath {
			t.Errorf("what is weighed is to be weighed again: %+v", m)
		}
	}
}

// One scale's error moves all that was weighed on it: the sum of items is off by the straight sum, by the root of squares with a scale for each.
func TestOneScaleMovesAllItsMasses(t *testing.T) {
	t.Parallel()
	items := func(scales ...string) Input {
		in := withoutField(demoInput(t, "redshank_quarry_top.json"))
		model := *in.Model
		model.Mass = &MassProperties{}
		x := 0.9
		for _, scale := range scales {
			kilograms := 2.0
			model.Mass.Items = append(model.Mass.Items, MassItem{
				Name: "part", XMeters: &x, Scale: scale, MassKg: &Quantity{Value: &kilograms, Basis: BasisMeasured},
			})
		}
		in.Model = &model
		return in
	}
	for _, c := range []struct {
		in      Input
		sources int
		want    float64
	}{
		{items("", "", "", ""), 1, 4 * 0.01},
		{items("shop", "shop", "shop", "shop"), 1, 4 * 0.01},
		{items("a", "b", "c", "d"), 4, 2 * 0.01},
		{items("a", "a", "b", "b"), 2, math.Sqrt2 * 2 * 0.01},
	} {
		whole, err := Prepare(c.in)
		if err != nil {
			t.Fatal(err)
		}
		base := newPass(&c.in, whole)
		base.walk()
		square, count := 0.0, 0
		for _, s := range base.sources() {
			if len(s.members) > 1 || s.input.source != "" {
				moved := base.movingSource(s, 1)
				moved.walk()
				off := moved.mass.takeoff - base.mass.takeoff
				square, count = square+off*off, count+1
			}
		}
		if count != c.sources || math.Abs(math.Sqrt(square)-c.want) > 1e-9 {
			t.Errorf("%d scales move the mass by %.4f kg, want %d and %.4f", count, math.Sqrt(square), c.sources, c.want)
		}
		if got := sampledMassSpread(t, base); math.Abs(got/c.want-1) > 0.05 {
			t.Errorf("%d scales move the mass by %.4f kg over the samples, want %.4f", count, got, c.want)
		}
	}
}

// sampledMassSpread is the standard deviation of the take-off mass over the samples of a pass.
func sampledMassSpread(t *testing.T, base *pass) float64 {
	t.Helper()
	r, err := base.newSampling(SpreadOptions{Samples: 128, Workers: 2})
	if err != nil {
		t.Fatal(err)
	}
	if !r.walkAll() {
		t.Fatal("stopped")
	}
	square := 0.0
	for j := range r.samples {
		off := r.samples[j].takeoff - base.mass.takeoff
		square += off * off
	}
	return math.Sqrt(square / float64(len(r.samples)))
}

// Every input that a demo document reads can be told how to measure it, in words and with a full stop.
func TestEveryInputIsToldHowToMeasure(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"redshank_quarry_top.json", "dabchick_long_acre.json", "sandmartin_long_acre.json", "nightjar_long_acre.json"} {
		in := demoInput(t, name)
		whole, err := Prepare(in)
		if err != nil {
			t.Fatal(err)
		}
		base := newPass(&in, whole)
		base.walk()
		for _, input := range base.inputs {
			title, how := base.measuring(input.name)
			if !input.method && (len(title) < 4 || how == "" || how[len(how)-1] != '.') {
				t.Errorf("%s: %q, %q", input.name, title, how)
			}
		}
	}
	if got := spoken("strutFrontalAreaSquareMeters"); got != "Strut frontal area" {
		t.Errorf("spoken as %q", got)
	}
}

// A finding that rests on one measured input has that input's share and no other, whatever the seed: columns of an even sample in more than a hundred
// inputs lie along each other by their pattern.
func TestNoInputIsCreditedWithAnothersShare(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre.json")
	for _, samples := range []int{128, 512} {
		for seed := range int32(3) {
			f := findingOf(t, spreadOf(t, in, SpreadOptions{Samples: samples, Seed: seed, Workers: 2}), "radio.range_check")
			sum := 0.0
			for _, share := range f.SpreadShares {
				sum += share.ShareRatio
			}
			if f.SpreadShares[0].Input != "model.radio.rangeCheckMeters" || f.SpreadShares[0].ShareRatio < 0.98 || sum > 1.02 {
				t.Errorf("%d samples, seed %d: %+v", samples, seed, f.SpreadShares)
			}
		}
	}
}
