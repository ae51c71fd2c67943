package assess_test

import (
	"math"
	"testing"

	"pitgate/server/physics/assess"
)

// TestRulesHaveOdds draws samples under rules: a figure at the middle of its value is kept in half of them, one far off in all or none, and the verdict
// follows what the class asks for.
func TestRulesHaveOdds(t *testing.T) {
	t.Parallel()
	in := ruled(t, "sandmartin_long_acre", "us-association-turbine", "eu-open-a3")
	options := assess.SpreadOptions{Samples: 64, Workers: 2}
	base, err := assess.Spread(in, options)
	if err != nil {
		t.Fatal(err)
	}
	for _, rule := range []string{"thrust-single", "mass", "height"} {
		id := ruleIn(&in, rule).Finding()
		middle := *findingOf(t, base, id).Value
		for _, row := range []struct {
			factor    float64
			low, high float64
			verdict   assess.Verdict
		}{
			{1.6, 1, 1, assess.VerdictHolds}, {1 + 1e-9, 0.4, 0.6, assess.VerdictTight}, {0.4, 0, 0, assess.VerdictFails},
		} {
			changed := ruled(t, "sandmartin_long_acre", "us-association-turbine", "eu-open-a3")
			ruleIn(&changed, rule).Value = number(middle * row.factor)
			report, err := assess.Spread(changed, options)
			if err != nil {
				t.Fatal(err)
			}
			f := findingOf(t, report, id)
			if f.HoldsProbability == nil || f.RequiredProbability == nil || f.FindingClass == "" {
				t.Fatalf("%s has no probability or class: %+v", id, f)
			}
			if p := *f.HoldsProbability; math.IsNaN(p) || p < row.low || p > row.high || f.Verdict != row.verdict {
				t.Errorf("%s at %g of its value: %s in %g of the samples, want %s in %g to %g", id, row.factor, f.Verdict, p, row.verdict, row.low, row.high)
			}
		}
	}
}

// TestConfirmationsHaveNoOdds wants a word given by a person to stay what it is: there is nothing to draw.
func TestConfirmationsHaveNoOdds(t *testing.T) {
	t.Parallel()
	in := ruled(t, "dabchick_long_acre", "us-recreational")
	report, err := assess.Spread(in, assess.SpreadOptions{Samples: 16})
	if err != nil {
		t.Fatal(err)
	}
	words := 0
	for i := range in.Limits.Rules {
		f := findingOf(t, report, in.Limits.Rules[i].Finding())
		if f.FindingClass == "" {
			t.Errorf("%s has no class", f.ID)
		}
		if in.Limits.Rules[i].Kind != assess.RuleKindConfirmation {
			continue
		}
		words++
		if f.HoldsProbability != nil || f.Verdict != assess.VerdictHolds {
			t.Errorf("%s: %s with probability %v", f.ID, f.Verdict, f.HoldsProbability)
		}
	}
	if words == 0 {
		t.Error("no confirmation among the rules")
	}
}
