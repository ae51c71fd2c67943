package assess_test

import (
	"slices"
	"testing"

	"pitgate/server/physics/assess"
)

// TestOptionsMoveNoAnswer wants every value, limit, margin, verdict and what is missing of a report without drawings to be bit for bit those of the whole
// report, with bands and without.
func TestOptionsMoveNoAnswer(t *testing.T) {
	t.Parallel()
	for _, row := range demoVerdicts {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, row.name)
			whole := runWith(t, in, assess.Options{Drawings: true, Bands: true})
			sameAnswers(t, whole, runWith(t, in, assess.Options{Bands: true}), true)
			sameAnswers(t, whole, runWith(t, in, assess.Options{Drawings: true}), false)
			bare := runWith(t, in, assess.Options{})
			sameAnswers(t, whole, bare, false)
			if len(bare.Paths)+len(bare.Curves)+len(bare.Quantities) > 0 {
				t.Errorf("without drawings: %d paths, %d curves, %d quantities", len(bare.Paths), len(bare.Curves), len(bare.Quantities))
			}
		})
	}
}

func runWith(t *testing.T, in assess.Input, o assess.Options) assess.Report {
	t.Helper()
	geometry, err := assess.Prepare(in)
	if err != nil {
		t.Fatal(err)
	}
	report, err := geometry.RunWith(in, o)
	if err != nil {
		t.Fatal(err)
	}
	return report
}

// sameAnswers compares two reports; without bands a tight finding of the whole report stands as holding.
func sameAnswers(t *testing.T, whole, other assess.Report, bands bool) {
	t.Helper()
	if len(whole.Findings) != len(other.Findings) {
		t.Fatalf("got %d findings, want %d", len(other.Findings), len(whole.Findings))
	}
	for _, want := range whole.Findings {
		got := findingOf(t, other, want.ID)
		verdict := want.Verdict
		if !bands && verdict == assess.VerdictTight {
			verdict = assess.VerdictHolds
		}
		if got.Verdict != verdict || got.OutsideValidity != want.OutsideValidity || !slices.Equal(got.Missing, want.Missing) {
			t.Errorf("%s: got %s %v, want %s %v", want.ID, got.Verdict, got.Missing, verdict, want.Missing)
		}
		pairs := [][2]*float64{{got.Value, want.Value}, {got.Limit, want.Limit}, {got.UpperLimit, want.UpperLimit}, {got.Margin, want.Margin}}
		if bands {
			pairs = append(pairs, [2]*float64{got.BandLow, want.BandLow}, [2]*float64{got.BandHigh, want.BandHigh})
		}
		for i, pair := range pairs {
			if (pair[0] == nil) != (pair[1] == nil) || pair[0] != nil && *pair[0] != *pair[1] {
				t.Errorf("%s, number %d: got %v, want %v", want.ID, i, pair[0], pair[1])
			}
		}
	}
}
