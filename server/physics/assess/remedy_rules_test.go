package assess_test

import (
	"slices"
	"testing"

	"pitgate/server/physics/assess"
)

// TestRemediesTellOfRules puts a rule on the mass, which added ballast breaks, and one on the clearance over obstacles, which most remedies of the launch
// mend, and wants every remedy to tell of both what the whole assessment of the changed document does.
func TestRemediesTellOfRules(t *testing.T) {
	t.Parallel()
	const mass, clearance = "rule.local.mass", "rule.local.clearance"
	in := demoInput(t, "redshank_quarry_top")
	plain := runWith(t, in, assess.Options{Bands: true})
	in.Limits.Rules = []assess.AppliedRule{
		{ID: "mass", Pack: "local", Kind: assess.RuleKindClass, Fact: assess.RuleFactTakeoffMass, Sense: assess.RuleSenseGreatest, Verified: yesPointer(),
			Value: number(*findingOf(t, plain, "mass.class").Value + 0.05)},
		{ID: "clearance", Pack: "local", Kind: assess.RuleKindLimit, Limit: "minimumClearanceMeters", Verified: yesPointer(),
			Value: findingOf(t, plain, "climb.clearance").Limit},
	}
	before := runWith(t, in, assess.Options{Bands: true})
	if held, fails := findingOf(t, before, mass), findingOf(t, before, clearance); held.Verdict != assess.VerdictHolds || fails.Verdict == assess.VerdictHolds {
		t.Fatalf("got %s and %s before", held.Verdict, fails.Verdict)
	}
	broken, mended := 0, 0
	for _, remedy := range remediesOf(t, in, assess.RemedyOptions{Workers: 2}) {
		changed, ok := remedy.Changed()
		if !ok {
			continue
		}
		after := runWith(t, changed, assess.Options{Bands: true})
		breaks, fixes := slices.Contains(remedy.Breaks, mass), slices.Contains(remedy.Fixes, clearance)
		if now := findingOf(t, after, mass); breaks != (now.Verdict != assess.VerdictHolds) {
			t.Errorf("%s by %s: the mass is %s, told broken %t", remedy.FindingID, remedy.Changes[0].Title, now.Verdict, breaks)
		}
		now := findingOf(t, after, "climb.clearance")
		if told := slices.Contains(remedy.Fixes, "climb.clearance"); fixes != told || fixes != (now.Verdict == assess.VerdictHolds) && !onEdge(&now) {
			t.Errorf("%s by %s: the clearance is %s, told fixed %t, its rule %t", remedy.FindingID, remedy.Changes[0].Title, now.Verdict, told, fixes)
		}
		if breaks {
			broken++
		}
		if fixes {
			mended++
		}
	}
	if broken == 0 || mended == 0 {
		t.Errorf("%d remedies break the one rule, %d mend the other", broken, mended)
	}
}
