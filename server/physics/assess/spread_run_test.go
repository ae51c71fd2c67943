package assess

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"pitgate/testdata/demo"
)

// demoInput reads one of the demo's documents.
func demoInput(t *testing.T, name string) Input {
	t.Helper()
	text, err := demo.Files.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var in Input
	if err := json.Unmarshal(text, &in); err != nil {
		t.Fatal(err)
	}
	return in
}

// spreadOf samples a document.
func spreadOf(t *testing.T, in Input, options SpreadOptions) Report {
	t.Helper()
	report, err := Spread(in, options)
	if err != nil {
		t.Fatal(err)
	}
	return report
}

// findingOf returns a finding by its id.
func findingOf(t *testing.T, r Report, id string) Finding {
	t.Helper()
	if i := indexOf(r.Findings, id); i >= 0 {
		return r.Findings[i]
	}
	t.Fatalf("no finding %s", id)
	return Finding{}
}

func TestSameBitsOnAnyNumberOfWorkers(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"redshank_quarry_top.json", "dabchick_long_acre.json"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, name)
			var texts []string
			for _, options := range []SpreadOptions{{Seed: 3}, {Seed: 3, Workers: 2}, {Seed: 3, Workers: 4}, {Seed: 4, Workers: 4}} {
				options.Samples = 48
				text, err := json.Marshal(spreadOf(t, in, options))
				if err != nil {
					t.Fatal(err)
				}
				texts = append(texts, string(text))
			}
			if texts[0] != texts[1] || texts[0] != texts[2] {
				t.Error("the report depends on the number of workers")
			}
			if texts[0] == texts[3] {
				t.Error("the report does not depend on the seed")
			}
		})
	}
}

// What is nearly straight has the band that the propagation of first order gives, to a twelfth of its width, and the same inputs decide it.
func TestSampledBandsAgreeWithPropagation(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"redshank_quarry_top.json", "sandmartin_long_acre.json"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, name)
			quick, err := Run(in)
			if err != nil {
				t.Fatal(err)
			}
			sampled := spreadOf(t, in, SpreadOptions{Seed: 1, Workers: 2})
			for _, id := range []string{"stall.speed", "thrust.ratio", "speed.top", "balance.margin_full", "balance.margin_empty", "stall.turn"} {
				compareBands(t, findingOf(t, quick, id), findingOf(t, sampled, id))
			}
		})
	}
}

func compareBands(t *testing.T, quick, sampled Finding) {
	t.Helper()
	if quick.BandLow == nil || sampled.BandLow == nil || sampled.Median == nil {
		t.Errorf("%s has no band", quick.ID)
		return
	}
	room := (*quick.BandHigh - *quick.BandLow) / 12
	if math.Abs(*quick.BandLow-*sampled.BandLow) > room || math.Abs(*quick.BandHigh-*sampled.BandHigh) > room {
		t.Errorf("%s: band %g to %g, by propagation %g to %g", quick.ID, *sampled.BandLow, *sampled.BandHigh, *quick.BandLow, *quick.BandHigh)
	}
	if math.Abs(*sampled.Median-*sampled.Value) > room {
		t.Errorf("%s: median %g, value %g", quick.ID, *sampled.Median, *sampled.Value)
	}
	if quick.SpreadShares[0].Input != sampled.SpreadShares[0].Input && quick.SpreadShares[0].ShareRatio > quick.SpreadShares[1].ShareRatio+0.1 {
		t.Errorf("%s: most from %v, by propagation %v", quick.ID, sampled.SpreadShares[0], quick.SpreadShares[0])
	}
	for _, share := range sampled.SpreadShares {
		for _, other := range quick.SpreadShares {
			if other.Input == share.Input && math.Abs(other.ShareRatio-share.ShareRatio) > 0.06 {
				t.Errorf("%s: %s has %.3f, by propagation %.3f", quick.ID, share.Input, share.ShareRatio, other.ShareRatio)
			}
		}
	}
}

// The band of a long run is met the closer the more samples there are.
func TestMoreSamplesConverge(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "redshank_quarry_top.json")
	in = withoutField(in) // what a pass takes longest for
	far := spreadOf(t, in, SpreadOptions{Samples: 2048, Seed: 99, Workers: 2})
	off := func(samples int) float64 {
		sum := 0.0
		for seed := range int32(4) {
			near := spreadOf(t, in, SpreadOptions{Samples: samples, Seed: seed, Workers: 2})
			for _, id := range []string{"stall.speed", "thrust.ratio", "speed.top", "balance.margin_full"} {
				want, got := findingOf(t, far, id), findingOf(t, near, id)
				width := *want.BandHigh - *want.BandLow
				sum += math.Abs(*got.BandLow-*want.BandLow)/width + math.Abs(*got.BandHigh-*want.BandHigh)/width
			}
		}
		return sum / 32
	}
	few, many := off(32), off(512)
	if !(many < few/2.5) || !(many < 0.02) {
		t.Errorf("ends are off by %.4f of the band with 32 samples and by %.4f with 512", few, many)
	}
}

// A finding is tight when its middle holds but too few samples do, and the class decides what is too few.
func TestVerdictsFollowTheProbability(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "redshank_quarry_top.json")
	base := spreadOf(t, in, SpreadOptions{Samples: 256, Workers: 2})
	tight := 0
	for _, f := range base.Findings {
		if f.HoldsProbability == nil {
			continue
		}
		middle := f.Margin == nil || *f.Margin >= 0
		if want := *f.HoldsProbability < *f.RequiredProbability && middle && f.Verdict != VerdictFails; want != (f.Verdict == VerdictTight) {
			t.Errorf("%s: %s with probability %.3f of %.2f", f.ID, f.Verdict, *f.HoldsProbability, *f.RequiredProbability)
		}
		if f.Verdict == VerdictTight {
			tight++
		}
		required := map[FindingClass]float64{FindingClassThirdParty: 0.99, FindingClassModelLoss: 0.95, FindingClassHandling: 0.8}[f.FindingClass]
		if *f.RequiredProbability != required {
			t.Errorf("%s: asks for %g as %s", f.ID, *f.RequiredProbability, f.FindingClass)
		}
	}
	if base.SpreadRun == nil || base.SpreadRun.SampleCount != 256 || tight == 0 {
		t.Fatalf("run %+v with %d tight findings", base.SpreadRun, tight)
	}
	zero := 0.001
	in.Limits.RequiredThirdPartyProbability, in.Limits.RequiredModelLossProbability, in.Limits.RequiredHandlingProbability = &zero, &zero, &zero
	for _, f := range spreadOf(t, in, SpreadOptions{Samples: 256, Workers: 2}).Findings {
		if f.Verdict == VerdictTight && *f.HoldsProbability > zero {
			t.Errorf("%s is tight though next to nothing is asked for", f.ID)
		}
	}
}

func TestSpreadOptions(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "nightjar_long_acre.json")
	for _, options := range []SpreadOptions{{Samples: 15}, {Samples: 16385}, {Samples: -1}, {Workers: -1}, {Workers: 65}} {
		if _, err := Spread(in, options); err == nil {
			t.Errorf("%+v is taken", options)
		}
	}
	last, calls := 0, 0
	watch := func(done, total int) bool {
		calls++
		last = total
		return done < 20
	}
	for _, workers := range []int{1, 3} {
		if _, err := Spread(in, SpreadOptions{Samples: 64, Workers: workers, Watch: watch}); !errors.Is(err, ErrStopped) {
			t.Errorf("a stopped run ends with %v", err)
		}
	}
	if last <= 64 || calls < 40 || calls > 50 {
		t.Errorf("%d calls, %d passes in all", calls, last)
	}
}

// Documents with little in them are answered as far as they go.
func TestSpreadOfLittle(t *testing.T) {
	t.Parallel()
	whole := demoInput(t, "redshank_quarry_top.json")
	for name, in := range map[string]Input{
		"nothing": {}, "model": {Model: whole.Model}, "day": {Day: whole.Day}, "field": {Field: whole.Field, LaunchPlan: whole.LaunchPlan},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			report := spreadOf(t, in, SpreadOptions{Samples: 16})
			for _, f := range report.Findings {
				for _, v := range []*float64{f.BandLow, f.BandHigh, f.Median, f.HoldsProbability} {
					if v != nil && !finite(*v) {
						t.Errorf("%s is told as %g", f.ID, *v)
					}
				}
				if f.Verdict == VerdictUnknown && (f.HoldsProbability != nil || f.BandLow != nil) {
					t.Errorf("%s is unknown and has a probability or a band", f.ID)
				}
			}
		})
	}
}

// Answers that follow slopes keep the band of the propagation, say so, and rest on what they rest on.
func TestSlopesAreFollowed(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre.json")
	quick, err := Run(in)
	if err != nil {
		t.Fatal(err)
	}
	sampled := spreadOf(t, in, SpreadOptions{Workers: 2})
	for i := range sampled.Findings {
		s, q := &sampled.Findings[i], findingOf(t, quick, sampled.Findings[i].ID)
		if s.RestsOnEstimate != q.RestsOnEstimate {
			t.Errorf("%s: rests on an estimate %v, by propagation %v", s.ID, s.RestsOnEstimate, q.RestsOnEstimate)
		}
		if _, follows := followsSlopes.find(s.ID); !follows || q.BandLow == nil || s.BandLow == nil {
			continue
		}
		if len(s.Method) != len(q.Method)+len(slopesNote) {
			t.Errorf("%s does not say that it follows slopes", s.ID)
		}
		room := (*q.BandHigh-*q.BandLow)/10 + 1e-9
		if math.Abs(*q.BandHigh-*s.BandHigh) > room && s.ID != "engine_out.reach" {
			t.Errorf("%s: band up to %g, by propagation %g", s.ID, *s.BandHigh, *q.BandHigh)
		}
	}
}

// withoutField leaves the model and its day: passes over it are quick.
func withoutField(in Input) Input {
	model := *in.Model
	model.Structure, model.Gear = nil, nil
	in.Model, in.LaunchPlan, in.Field = &model, nil, &FieldDescription{ElevationMeters: in.Field.ElevationMeters}
	return in
}
