package document

import (
	"testing"

	"pitgate/server/physics/assess"
)

// TestValuesAreThoseOfTheReport wants value and limit of every finding to be the same bits, no bands, and the same digest.
func TestValuesAreThoseOfTheReport(t *testing.T) {
	t.Parallel()
	for name, data := range wholeDocuments(t) {
		in, err := Decode(data)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		whole, err := Answers(in)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		early, err := Values(in)
		if err != nil || early.InputDigest != whole.InputDigest || len(early.Findings) != len(whole.Findings) {
			t.Fatalf("%s: %d findings of %d, %v", name, len(early.Findings), len(whole.Findings), err)
		}
		byID := map[string]assess.Finding{}
		for _, f := range whole.Findings {
			byID[f.ID] = f
		}
		for _, f := range early.Findings {
			want := byID[f.ID]
			if !sameNumber(f.Value, want.Value) || !sameNumber(f.Limit, want.Limit) || f.BandLow != nil || f.BandHigh != nil {
				t.Errorf("%s: %s differs", name, f.ID)
			}
		}
	}
}

func sameNumber(a, b *float64) bool { return a == b || (a != nil && b != nil && *a == *b) }
