package assess_test

import (
	"math"
	"slices"
	"testing"

	"pitgate/server/physics/assess"
)

// TestRemediesAreCheckedInFull puts every remedy of two documents into the document and wants what it fixes and breaks to be what the whole assessment of
// the changed document, with the band of every finding there, says of those that held or did not before.
func TestRemediesAreCheckedInFull(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"redshank_quarry_top", "sandmartin_long_acre_wet"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, name)
			before := runWith(t, in, assess.Options{Bands: true})
			for _, remedy := range remediesOf(t, in, assess.RemedyOptions{Workers: 2}) {
				changed, ok := remedy.Changed()
				if !ok {
					continue
				}
				after := runWith(t, changed, assess.Options{Bands: true})
				checkShare(t, &remedy, after)
				for _, was := range before.Findings {
					checkMoved(t, &remedy, &was, after)
				}
			}
		})
	}
}

// checkShare holds the share in which a remedy is told to hold against that of the band, over all errors, of the changed document.
func checkShare(t *testing.T, remedy *assess.Remedy, after assess.Report) {
	t.Helper()
	f := findingOf(t, after, remedy.FindingID)
	if f.BandHigh == nil || f.Margin == nil || f.LimitSense == assess.LimitSenseWithin {
		return
	}
	spread := (*f.BandHigh - *f.Value) / 1.6448536269514722
	if share := math.Erfc(-*f.Margin/spread/math.Sqrt2) / 2; math.Abs(share-*remedy.HoldsProbability) > 0.001 {
		t.Errorf("%s by %s: told %.5f, holds in %.5f by its band there", remedy.FindingID, remedy.Changes[0].Title, *remedy.HoldsProbability, share)
	}
}

// checkMoved holds what a remedy says of a finding against the assessment of the changed document. A finding within a hundredth of its band of what is
// asked for may be told either way, and so may one held to another share than that of the band.
func checkMoved(t *testing.T, remedy *assess.Remedy, was *assess.Finding, after assess.Report) {
	t.Helper()
	now := findingOf(t, after, was.ID)
	if was.Verdict == assess.VerdictUnknown || was.FindingClass != assess.FindingClassModelLoss || onEdge(was) || onEdge(&now) {
		return
	}
	held, holds := was.Verdict == assess.VerdictHolds, now.Verdict == assess.VerdictHolds
	fixed, broken := slices.Contains(remedy.Fixes, was.ID), slices.Contains(remedy.Breaks, was.ID)
	if was.ID == remedy.FindingID {
		return
	}
	if fixed != (!held && holds) || broken != (held && !holds) {
		t.Errorf("%s by %s: %s was %s and is %s; told fixed %t, broken %t", remedy.FindingID, remedy.Changes[0].Title, was.ID, was.Verdict, now.Verdict, fixed, broken)
	}
}

// onEdge reports whether the end of a finding's band is as good as on its limit.
func onEdge(f *assess.Finding) bool {
	if f.BandLow == nil || f.Limit == nil || f.LimitSense == assess.LimitSenseWithin {
		return f.LimitSense == assess.LimitSenseWithin
	}
	edge := 0.01 * (*f.BandHigh - *f.BandLow)
	end := *f.BandLow
	if f.LimitSense == assess.LimitSenseAtMost {
		end = *f.BandHigh
	}
	return end > *f.Limit-edge && end < *f.Limit+edge
}
