package report

import (
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// What was sampled is told: how often a finding holds, of how often it must, and what to measure.
func TestSpreadIsTold(t *testing.T) {
	t.Parallel()
	value, held, required, median := 13.6, 0.8125, 0.95, 13.5
	r := assess.Report{
		SpreadRun: &assess.SpreadRun{Seed: 4, SampleCount: 512, LostCount: 2},
		Findings: []assess.Finding{{
			ID: "stall.speed", Title: "Stall speed", Verdict: assess.VerdictTight, Value: &value, Unit: "m/s", Median: &median,
			HoldsProbability: &held, RequiredProbability: &required, FindingClass: assess.FindingClassModelLoss,
		}},
		MeasureNext: []assess.MeasurementAdvice{
			{Input: "model.mass.emptyMassKg", Title: "Mass, tanks empty", How: "Weigh it.", FindingIDs: []string{"stall.speed", "mass.class"}, ShareRatio: 0.62},
			{Input: "day.windSpeedMetersPerSecond", Title: "Wind, mean", How: "Hold a wind meter up.", ShareRatio: 0.4},
		},
	}
	var out strings.Builder
	if err := Text(&out, r); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"Spread from 512 samples, seed 4, 2 without an answer.", "holds in 81.2 % of the samples, of 95 % asked for", "loss of the model", "MEASURE NEXT",
		"1. Mass, tanks empty: settles 2 findings; up to 62 % of a spread", "settles: stall.speed, mass.class", "2. Wind, mean: settles nothing alone",
	} {
		if !strings.Contains(strings.Join(strings.Fields(out.String()), " "), want) {
			t.Errorf("%q is not told in\n%s", want, out.String())
		}
	}
	for line := range strings.Lines(out.String()) {
		if len(strings.TrimRight(line, "\n")) > Width {
			t.Errorf("wider than %d: %q", Width, line)
		}
	}
}
