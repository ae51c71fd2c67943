package assess_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
	"pitgate/server/rulepack"
)

// ruled is a demonstration document under supplied packs, with every confirmation given and every rule taken for verified, so that what does not hold
// is the planted fault's.
func ruled(t *testing.T, name string, packs ...string) assess.Input {
	t.Helper()
	in := demoInput(t, name)
	in.Limits = nil
	composeInto(t, &in, packs...)
	yes := true
	for i := range in.Limits.Rules {
		rule := &in.Limits.Rules[i]
		rule.Verified = &yes
		if rule.Kind == assess.RuleKindConfirmation {
			in.Confirmations = append(in.Confirmations, assess.RuleConfirmation{Rule: rule.Key(), Confirmed: &yes, By: "Ines Valdez", Date: in.Day.Time[:10]})
		}
	}
	return in
}

// composeInto makes the limits of a document from supplied packs, as its model now is.
func composeInto(t *testing.T, in *assess.Input, ids ...string) {
	t.Helper()
	all, err := rulepack.Supplied()
	if err != nil {
		t.Fatal(err)
	}
	made, err := rulepack.Compose(slices.DeleteFunc(all, func(p rulepack.Pack) bool { return !slices.Contains(ids, p.ID) }), *in)
	if err != nil {
		t.Fatal(err)
	}
	in.Limits = &made.Limits
}

// verdictsOf names the verdict of every finding.
func verdictsOf(report assess.Report) map[string]assess.Verdict {
	out := map[string]assess.Verdict{}
	for _, f := range report.Findings {
		out[f.ID] = f.Verdict
	}
	return out
}

// turned lists the findings whose verdict a fault has made worse, and the new verdict.
func turned(before, after map[string]assess.Verdict) map[string]assess.Verdict {
	out := map[string]assess.Verdict{}
	for id, verdict := range after {
		if verdict != assess.VerdictHolds && verdict != before[id] {
			out[id] = verdict
		}
	}
	return out
}

// TestPlantedRuleFaults plants one fault at a time in a sound document and wants its finding, and no other, to turn.
func TestPlantedRuleFaults(t *testing.T) {
	t.Parallel()
	const fails, tight, unknown = assess.VerdictFails, assess.VerdictTight, assess.VerdictUnknown
	rows := []struct {
		name, document string
		packs          []string
		plant          func(*assess.Input)
		want           map[string]assess.Verdict
		note           string // in the first finding of want
	}{
		{"engine over the association's limit", "sandmartin_long_acre", []string{"us-association-turbine"},
			func(in *assess.Input) { ruleIn(in, "thrust-single").Value = number(110) },
			map[string]assess.Verdict{"rule.us-association-turbine.thrust-single": fails}, "110 N is asked"},
		{"engine within its spread of the limit", "sandmartin_long_acre", []string{"us-association-turbine"},
			func(in *assess.Input) { ruleIn(in, "thrust-single").Value = number(121) },
			map[string]assess.Verdict{"rule.us-association-turbine.thrust-single": tight}, "121 N is asked"},
		{"model in the wrong mass class", "sandmartin_long_acre", []string{"eu-open-a3"},
			func(in *assess.Input) {
				in.Limits.MaximumMassKg = number(10)
				ruleIn(in, "mass").Value = number(10)
			},
			map[string]assess.Verdict{"rule.eu-open-a3.mass": fails, "mass.class": fails}, "10 kg asked"},
		{"expired permission", "dabchick_long_acre", []string{"eu-open-a3"},
			func(in *assess.Input) { in.Field.Permission.ValidToDate = "2026-05-15" },
			map[string]assess.Verdict{"field.permission": fails}, "ended 1 day ago"},
		{"expired rule", "dabchick_long_acre", []string{"eu-open-a3"},
			func(in *assess.Input) { ruleIn(in, "height").ExpiresDate = "2026-05-15" },
			map[string]assess.Verdict{"rule.eu-open-a3.height": unknown}, "ran out on 2026-05-15"},
		{"expired rule whose old figure is not met", "dabchick_long_acre", []string{"eu-open-a3"},
			func(in *assess.Input) {
				ruleIn(in, "height").ExpiresDate = "2026-05-15"
				ruleIn(in, "height").Value = number(20)
			},
			map[string]assess.Verdict{"rule.eu-open-a3.height": fails}, "ran out on 2026-05-15"},
		{"unverified rule", "dabchick_long_acre", []string{"eu-open-a3"},
			func(in *assess.Input) { ruleIn(in, "height").Verified = nil },
			map[string]assess.Verdict{"rule.eu-open-a3.height": tight}, "Nobody has verified"},
		{"unverified confirmation", "dabchick_long_acre", []string{"us-recreational"},
			func(in *assess.Input) { ruleIn(in, "registration").Verified = nil },
			map[string]assess.Verdict{"rule.us-recreational.registration": tight}, "Confirmed by Ines Valdez"},
		{"an officer's word is wanted and the owner gave it", "dabchick_long_acre", []string{"us-recreational"},
			func(in *assess.Input) { yes := true; ruleIn(in, "registration").Officer = &yes },
			map[string]assess.Verdict{"rule.us-recreational.registration": unknown}, "Ines Valdez says so. It takes a safety officer's word."},
		{"an officer says no", "dabchick_long_acre", []string{"us-recreational"},
			func(in *assess.Input) {
				yes, no := true, false
				ruleIn(in, "registration").Officer = &yes
				for i := range in.Confirmations {
					if in.Confirmations[i].Rule == "us-recreational.registration" {
						in.Confirmations[i].Confirmed, in.Confirmations[i].Officer = &no, &yes
					}
				}
			},
			map[string]assess.Verdict{"rule.us-recreational.registration": fails}, "Ines Valdez says that it is not so."},
		{"nobody confirmed", "dabchick_long_acre", []string{"us-recreational"},
			func(in *assess.Input) { drop(in, "us-recreational.registration") },
			map[string]assess.Verdict{"rule.us-recreational.registration": unknown}, "Nobody has confirmed it."},
		{"somebody said no", "dabchick_long_acre", []string{"us-recreational"},
			func(in *assess.Input) { no := false; wordIn(in, "us-recreational.registration").Confirmed = &no },
			map[string]assess.Verdict{"rule.us-recreational.registration": fails}, "says that it is not so"},
		{"no name", "dabchick_long_acre", []string{"us-recreational"},
			func(in *assess.Input) { wordIn(in, "us-recreational.registration").By = "" },
			map[string]assess.Verdict{"rule.us-recreational.registration": unknown}, "lacks a name or a date"},
		{"confirmed after the flight", "dabchick_long_acre", []string{"us-recreational"},
			func(in *assess.Input) { wordIn(in, "us-recreational.registration").Date = "2026-05-17" },
			map[string]assess.Verdict{"rule.us-recreational.registration": unknown}, "after the day of the flight"},
		{"confirmed on another day", "dabchick_long_acre", []string{"us-recreational"},
			func(in *assess.Input) { wordIn(in, "us-recreational.in-sight").Date = "2026-05-15" },
			map[string]assess.Verdict{"rule.us-recreational.in-sight": unknown}, "1 day before the flight"},
		{"fail-safe slower than the association's", "sandmartin_long_acre", []string{"canada"},
			func(in *assess.Input) { ruleIn(in, "turbine-fail-safe").Value = number(0.1) },
			map[string]assess.Verdict{"rule.canada.turbine-fail-safe": fails}, "0.1 s is asked"},
		{"heavier than the rule's step, which now applies", "dabchick_long_acre", []string{"uk-association"},
			func(in *assess.Input) {
				*ruleIn(in, "observer-heavy").Conditions[0].AtLeast = 1
				drop(in, "uk-association.observer-heavy")
			},
			map[string]assess.Verdict{"rule.uk-association.observer-heavy": unknown}, "Nobody has confirmed it."},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			sound, faulty := ruled(t, row.document, row.packs...), ruled(t, row.document, row.packs...)
			row.plant(&faulty)
			report := assessed(t, faulty)
			got := turned(verdictsOf(assessed(t, sound)), verdictsOf(report))
			if !maps.Equal(got, row.want) {
				t.Errorf("turned %v, want %v", got, row.want)
			}
			for _, id := range slices.Sorted(maps.Keys(row.want)) {
				if f := findingOf(t, report, id); strings.Contains(f.Note, row.note) {
					return
				}
			}
			t.Errorf("no finding says %q", row.note)
		})
	}
}

func ruleIn(in *assess.Input, id string) *assess.AppliedRule {
	i := slices.IndexFunc(in.Limits.Rules, func(r assess.AppliedRule) bool { return r.ID == id })
	return &in.Limits.Rules[i]
}

func wordIn(in *assess.Input, key string) *assess.RuleConfirmation {
	i := slices.IndexFunc(in.Confirmations, func(c assess.RuleConfirmation) bool { return c.Rule == key })
	return &in.Confirmations[i]
}

func drop(in *assess.Input, key string) {
	in.Confirmations = slices.DeleteFunc(in.Confirmations, func(c assess.RuleConfirmation) bool { return c.Rule == key })
}

// TestSoundDocumentUnderRules wants every rule of a sound, verified and confirmed document to hold, and to have one finding.
func TestSoundDocumentUnderRules(t *testing.T) {
	t.Parallel()
	in := ruled(t, "dabchick_long_acre", "us-recreational", "us-association-turbine", "uk-association", "larkmoor-club")
	report := assessed(t, in)
	for i := range in.Limits.Rules {
		f := findingOf(t, report, in.Limits.Rules[i].Finding())
		if f.Verdict != assess.VerdictHolds || f.Rule == "" || f.Title == "" || f.Source == "" || len(f.From) == 0 {
			t.Errorf("%s: %s, %q, %+v", f.ID, f.Verdict, f.Note, f)
		}
	}
	wantChain(t, report)
}

// TestRuleThatDoesNotApplySaysWhy wants the turbine's rules to pass an electric model by, and to say so.
func TestRuleThatDoesNotApplySaysWhy(t *testing.T) {
	t.Parallel()
	report := assessed(t, ruled(t, "dabchick_long_acre", "us-association-turbine", "uk-association"))
	for id, want := range map[string]string{
		"rule.us-association-turbine.fire": "Does not apply: no engine is a turbine.", "rule.uk-association.height-heavy": "is below 7.5 kg",
	} {
		if f := findingOf(t, report, id); f.Verdict != assess.VerdictHolds || !strings.Contains(f.Note, want) {
			t.Errorf("%s: %s, %q", id, f.Verdict, f.Note)
		}
	}
}

// TestRuleOfAnotherLaunchDoesNotApply wants a limit on the use of a strip to pass a ramp by, and to say so.
func TestRuleOfAnotherLaunchDoesNotApply(t *testing.T) {
	t.Parallel()
	in := ruled(t, "redshank_quarry_top", "larkmoor-club")
	report, err := assess.Run(in)
	if err != nil {
		t.Fatal(err)
	}
	for i := range in.Limits.Rules {
		if rule := &in.Limits.Rules[i]; rule.Limit == "maximumStripUseRatio" {
			f := findingOf(t, report, rule.Finding())
			if f.Verdict != assess.VerdictHolds || !strings.Contains(f.Note, "Does not apply: launch.distance") {
				t.Errorf("the strip's share on a ramp: %s, %q", f.Verdict, f.Note)
			}
			return
		}
	}
	t.Fatal("the club's pack has no rule for the strip's share")
}

// TestConditionThatCannotBeTold takes the mass away: whether a rule by mass applies is unknown then, not no.
func TestConditionThatCannotBeTold(t *testing.T) {
	t.Parallel()
	in := ruled(t, "dabchick_long_acre", "uk-association")
	in.Model.Mass = nil
	f := findingOf(t, assessed(t, in), "rule.uk-association.observer-heavy")
	if f.Verdict != assess.VerdictUnknown || len(f.Missing) == 0 || !strings.HasPrefix(f.Missing[0], "model.mass") {
		t.Errorf("%s, missing %v", f.Verdict, f.Missing)
	}
}

// TestDecidingRuleIsCited wants a finding to cite the rule that gave its limit, not another that asked for less.
func TestDecidingRuleIsCited(t *testing.T) {
	t.Parallel()
	in := ruled(t, "sandmartin_long_acre", "us-recreational", "eu-open-a3")
	report := assessed(t, in)
	if f := findingOf(t, report, "height.limit"); *f.Limit == 120 && !strings.HasPrefix(f.Rule, "European Union") {
		t.Errorf("limit %v by %q", *f.Limit, f.Rule)
	}
	if f := findingOf(t, report, "mass.class"); *f.Limit != 24.9476 || !strings.HasPrefix(f.Rule, "United States") {
		t.Errorf("limit %v by %q", *f.Limit, f.Rule)
	}
}

// TestRuleVerdictFollowsItsFigure moves a rule's figure through the value: once it fails it does not hold again for a stricter one.
func TestRuleVerdictFollowsItsFigure(t *testing.T) {
	t.Parallel()
	worst := map[assess.Verdict]int{assess.VerdictHolds: 0, assess.VerdictTight: 1, assess.VerdictFails: 2}
	last := 0
	for figure := 160.0; figure > 80; figure -= 4 {
		in := ruled(t, "sandmartin_long_acre", "us-association-turbine")
		ruleIn(&in, "thrust-single").Value = number(figure)
		now := worst[findingOf(t, assessed(t, in), "rule.us-association-turbine.thrust-single").Verdict]
		if now < last {
			t.Errorf("at %v N the verdict gets better", figure)
		}
		last = now
	}
	if last != 2 {
		t.Error("the engine never fails")
	}
}
