package rulepack_test

import (
	"encoding/json"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/rulepack"
)

func compose(t testing.TB, in assess.Input, packs ...rulepack.Pack) rulepack.Composition {
	t.Helper()
	made, err := rulepack.Compose(packs, in)
	if err != nil {
		t.Fatal(err)
	}
	return made
}

func figureOf(t testing.TB, c rulepack.Composition, limit string) rulepack.Figure {
	t.Helper()
	for _, f := range c.Figures {
		if f.Limit == limit {
			return f
		}
	}
	t.Fatalf("nobody asks for %s", limit)
	return rulepack.Figure{}
}

// TestStrictestCounts composes packs of known figures.
func TestStrictestCounts(t *testing.T) {
	t.Parallel()
	by := supplied(t)
	rows := map[string]struct {
		document, limit string
		packs           []string
		want            float64 // none where negative
		deciding        string
	}{
		"least height of three":           {"sandmartin_long_acre", "maximumHeightMeters", []string{"us-recreational", "canada", "eu-open-a3"}, 120, "rule.eu-open-a3.height"},
		"order does not matter":           {"sandmartin_long_acre", "maximumHeightMeters", []string{"eu-open-a3", "canada", "us-recreational"}, 120, "rule.eu-open-a3.height"},
		"heavy model alone":               {"sandmartin_long_acre", "maximumHeightMeters", []string{"uk-association"}, 121.92, "rule.uk-association.height-heavy"},
		"light model":                     {"dabchick_long_acre", "maximumHeightMeters", []string{"uk-association"}, -1, ""},
		"least mass":                      {"sandmartin_long_acre", "maximumMassKg", []string{"eu-open-a3", "us-recreational"}, 24.9476, "rule.us-recreational.mass"},
		"first of equals":                 {"sandmartin_long_acre", "minimumPeopleDistanceMeters", []string{"eu-open-a3", "uk-association"}, 30, "rule.eu-open-a3.people"},
		"turbine rule on a turbine":       {"sandmartin_long_acre", "maximumFailSafeSeconds", []string{"canada"}, 2, "rule.canada.turbine-fail-safe"},
		"turbine rule on an electric one": {"dabchick_long_acre", "maximumFailSafeSeconds", []string{"canada"}, -1, ""},
	}
	for name, row := range rows {
		var packs []rulepack.Pack
		for _, id := range row.packs {
			packs = append(packs, by[id])
		}
		in := demoInput(t, row.document)
		in.Limits = nil
		made := compose(t, in, packs...)
		f := figureOf(t, made, row.limit)
		got := limitOf(t, made.Limits, row.limit)
		if row.want < 0 {
			if f.Value != nil || got != nil {
				t.Errorf("%s: got %v", name, got)
			}
			continue
		}
		if f.Value == nil || *f.Value != row.want || f.Deciding != row.deciding || got == nil || *got != row.want {
			t.Errorf("%s: got %+v and %v", name, f, got)
		}
		wantOneDeciding(t, name, made, row.limit, row.deciding)
	}
}

// wantOneDeciding wants the one rule of the composed limits that decides a figure to be marked.
func wantOneDeciding(t *testing.T, name string, made rulepack.Composition, limit, deciding string) {
	t.Helper()
	var marked []string
	for i := range made.Limits.Rules {
		rule := &made.Limits.Rules[i]
		if rule.Limit == limit && rule.Deciding != nil && *rule.Deciding {
			marked = append(marked, rule.Finding())
		}
	}
	if !slices.Equal(marked, []string{deciding}) {
		t.Errorf("%s: marked %v", name, marked)
	}
}

// limitOf reads a figure of limits by its JSON name.
func limitOf(t testing.TB, l assess.Limits, name string) *float64 {
	t.Helper()
	text, err := json.Marshal(l)
	if err != nil {
		t.Fatal(err)
	}
	var all map[string]any
	if err := json.Unmarshal(text, &all); err != nil {
		t.Fatal(err)
	}
	if v, ok := all[name].(float64); ok {
		return &v
	}
	return nil
}

// TestOwnerTightens lets the owner ask for more than the packs, and never for less.
func TestOwnerTightens(t *testing.T) {
	t.Parallel()
	pack := supplied(t)["eu-open-a3"]
	for _, row := range []struct {
		own, want float64
		deciding  string
	}{{60, 60, rulepack.Owner}, {200, 120, "rule.eu-open-a3.height"}} {
		in := demoInput(t, "dabchick_long_acre")
		in.Limits = &assess.Limits{MaximumHeightMeters: ptr(row.own)}
		made := compose(t, in, pack)
		if f := figureOf(t, made, "maximumHeightMeters"); *made.Limits.MaximumHeightMeters != row.want || f.Deciding != row.deciding {
			t.Errorf("owner asks %v: got %v by %s", row.own, *made.Limits.MaximumHeightMeters, f.Deciding)
		}
	}
}

// TestComposingTwiceChangesNothing composes what was composed, and then fewer packs.
func TestComposingTwiceChangesNothing(t *testing.T) {
	t.Parallel()
	by := supplied(t)
	in := demoInput(t, "sandmartin_long_acre")
	once := compose(t, in, by["eu-open-a3"], by["us-association-turbine"], by["larkmoor-club"])
	again := in
	again.Limits = &once.Limits
	twice := compose(t, again, by["eu-open-a3"], by["us-association-turbine"], by["larkmoor-club"])
	if !reflect.DeepEqual(once.Limits, twice.Limits) {
		t.Error("composing twice changes the limits")
	}
	none := compose(t, again)
	if none.Limits.MaximumHeightMeters != nil || none.Limits.RulePack != "" && strings.Contains(none.Limits.RulePack, "eu-open-a3") {
		t.Errorf("without packs their figures stay: %+v", none.Limits)
	}
}

// TestDatesOfRules moves the day of the flight over a rule's days.
func TestDatesOfRules(t *testing.T) {
	t.Parallel()
	pack := supplied(t)["eu-open-a3"]
	pack.InForceDate, pack.ExpiresDate = "2026-05-01", "2026-05-31"
	for _, row := range []struct {
		time            string
		counts, expired bool
	}{
		{"2026-04-30T10:00:00Z", false, false}, {"2026-05-01T10:00:00Z", true, false}, {"2026-05-31T10:00:00Z", true, false},
		{"2026-06-01T10:00:00Z", true, true}, {"", true, false},
	} {
		in := demoInput(t, "dabchick_long_acre")
		in.Day.Time = row.time
		asked := figureOf(t, compose(t, in, pack), "maximumHeightMeters").Asked[0]
		if asked.Applies != row.counts || asked.Expired != row.expired {
			t.Errorf("%s: %+v", row.time, asked)
		}
	}
}

// TestStrictestProperty composes packs of random figures: none that applies asks for more than what came out, and another pack never loosens.
func TestStrictestProperty(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(7, 11))
	in := demoInput(t, "dabchick_long_acre")
	in.Limits = nil
	var packs []rulepack.Pack
	last := map[string]float64{}
	for n := range 12 {
		packs = append(packs, randomPack(random, n))
		made := compose(t, in, packs...)
		for _, f := range made.Figures {
			for _, asked := range f.Asked {
				if f.Sense == assess.RuleSenseLeast && asked.Value > *f.Value || f.Sense == assess.RuleSenseGreatest && asked.Value < *f.Value {
					t.Fatalf("%s: %v came out, %v is asked", f.Limit, *f.Value, asked.Value)
				}
			}
			before, had := last[f.Limit]
			if had && (f.Sense == assess.RuleSenseLeast && *f.Value < before || f.Sense == assess.RuleSenseGreatest && *f.Value > before) {
				t.Fatalf("%s: another pack loosens %v to %v", f.Limit, before, *f.Value)
			}
			last[f.Limit] = *f.Value
		}
	}
}

func randomPack(random *rand.Rand, n int) rulepack.Pack {
	pack := rulepack.Pack{ID: "p" + string(rune('a'+n)), Title: "x", Authority: "x", Version: "1", InForceDate: "2020-01-01", Source: "x"}
	for _, limit := range []string{"maximumHeightMeters", "minimumClearanceMeters", "maximumMassKg", "minimumPeopleDistanceMeters"} {
		pack.Rules = append(pack.Rules, assess.AppliedRule{ID: strings.ToLower(limit), Kind: assess.RuleKindLimit, Requirement: "x", Limit: limit,
			Value: ptr(1 + 99*random.Float64())})
	}
	return pack
}

// TestComposedLimitsDecode wants what is composed from all packs to be limits that the document takes.
func TestComposedLimitsDecode(t *testing.T) {
	t.Parallel()
	packs, err := rulepack.Supplied()
	if err != nil {
		t.Fatal(err)
	}
	made := compose(t, demoInput(t, "nightjar_long_acre"), packs...)
	form, err := document.Canonical(made.Limits)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := document.DecodeLimits(form); err != nil {
		t.Error(err)
	}
}
