package rulepack_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/rulepack"
	"pitgate/testdata/demo"
)

func supplied(t testing.TB) map[string]rulepack.Pack {
	t.Helper()
	packs, err := rulepack.Supplied()
	if err != nil {
		t.Fatal(err)
	}
	by := map[string]rulepack.Pack{}
	for _, p := range packs {
		by[p.ID] = p
	}
	return by
}

func demoInput(t testing.TB, name string) assess.Input {
	t.Helper()
	data, err := demo.Files.ReadFile(name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	in, err := document.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	return in
}

// TestSuppliedFigures holds the figures of the data files against the printed ones, converted by the units' definitions.
func TestSuppliedFigures(t *testing.T) {
	t.Parallel()
	const foot, pound, mile, hour, standardGravity = 0.3048, 0.45359237, 1609.344, 3600, 9.80665
	rows := []struct {
		pack, rule       string
		want, tolerance  float64
		verified, expire bool
	}{
		{"eu-open-a3", "height", 120, 0, true, false},
		{"eu-open-a3", "mass", 25, 0, false, false},
		{"us-recreational", "height", 400 * foot, 1e-9, true, false},
		{"us-recreational", "mass", 55 * pound, 1e-4, true, false},
		{"us-association-turbine", "thrust-single", 45 * pound * standardGravity, 1e-3, true, false},
		{"us-association-turbine", "thrust-twin", 50 * pound * standardGravity, 1e-3, true, false},
		{"us-association-turbine", "speed", 200 * mile / hour, 1e-9, true, false},
		{"us-association-turbine", "fail-safe", 2, 0, true, false},
		{"uk-association", "people", 30, 0, false, false},
		{"uk-association", "height-heavy", 400 * foot, 1e-9, false, false},
		{"uk-association", "fail-safe", 3, 0, true, false},
		{"canada", "height", 122, 0, false, false},
		{"canada", "mass", 25, 0, true, true},
		{"australia", "height", 400 * foot, 1e-9, false, false},
		{"larkmoor-club", "strip-use", 0.35, 0, false, false},
	}
	packs := supplied(t)
	for _, row := range rows {
		rule := ruleOf(t, packs[row.pack], row.rule)
		if off := *rule.Value - row.want; off > row.tolerance || -off > row.tolerance {
			t.Errorf("%s.%s: %v, want %v", row.pack, row.rule, *rule.Value, row.want)
		}
		if *rule.Verified != row.verified || (rule.ExpiresDate != "") != row.expire {
			t.Errorf("%s.%s: verified %v, expires %q", row.pack, row.rule, *rule.Verified, rule.ExpiresDate)
		}
	}
}

func ruleOf(t testing.TB, p rulepack.Pack, id string) assess.AppliedRule {
	t.Helper()
	for _, rule := range rulepack.Rules(p) {
		if rule.ID == id {
			return rule
		}
	}
	t.Fatalf("pack %s has no rule %s", p.ID, id)
	return assess.AppliedRule{}
}

// TestClubPackKeepsDemoFigures wants the club's pack to say what the demonstration limits say.
func TestClubPackKeepsDemoFigures(t *testing.T) {
	t.Parallel()
	data, err := demo.Files.ReadFile("limits_larkmoor.json")
	if err != nil {
		t.Fatal(err)
	}
	limits, err := document.DecodeLimits(data)
	if err != nil {
		t.Fatal(err)
	}
	rule := ruleOf(t, supplied(t)["larkmoor-club"], "strip-use")
	if *rule.Value != *limits.MaximumStripUseRatio || rule.BearsOn() != limits.Rules[0].FindingID || rule.Citation != limits.Rules[0].Citation {
		t.Errorf("pack says %v on %s by %q", *rule.Value, rule.BearsOn(), rule.Citation)
	}
}

func TestEveryRuleIsComplete(t *testing.T) {
	t.Parallel()
	for id, pack := range supplied(t) {
		if id != pack.ID || pack.Version == "" {
			t.Errorf("pack %q", id)
		}
		for _, rule := range rulepack.Rules(pack) {
			if rule.Pack != id || rule.Authority == "" || rule.Citation == "" || rule.InForceDate == "" || rule.BearsOn() == "" || rule.Verified == nil {
				t.Errorf("%s lacks something: %+v", rule.Finding(), rule)
			}
			if strings.Contains(strings.ToLower(rule.Requirement), " safe") {
				t.Errorf("%s says %q", rule.Finding(), rule.Requirement)
			}
		}
	}
}

func TestDigestIsOfTheContent(t *testing.T) {
	t.Parallel()
	pack := supplied(t)["eu-open-a3"]
	first, err := rulepack.Digest(pack)
	if err != nil || len(first) != 64 {
		t.Fatalf("%q, %v", first, err)
	}
	form, err := rulepack.Canonical(pack)
	if err != nil {
		t.Fatal(err)
	}
	again, err := rulepack.Decode(form)
	if err != nil {
		t.Fatal(err)
	}
	if second, _ := rulepack.Digest(again); second != first {
		t.Error("decoding the canonical form changed the digest")
	}
	again.Rules[0].Value = ptr(119.0)
	if third, _ := rulepack.Digest(again); third == first {
		t.Error("another figure has the same digest")
	}
}

func ptr[T any](v T) *T { return &v }

// TestDecodeRefuses spoils one part at a time and wants the fault named by its path.
func TestDecodeRefuses(t *testing.T) {
	t.Parallel()
	rows := map[string]struct{ old, replaced, path string }{
		"unknown field":      {`"id":"eu-open-a3"`, `"id":"eu-open-a3","colour":"red"`, "colour"},
		"bad id":             {`"id":"eu-open-a3"`, `"id":"EU open"`, "id"},
		"no such date":       {`"inForceDate":"2021-01-01"`, `"inForceDate":"2021-02-30"`, "inForceDate"},
		"ends before begin":  {`"inForceDate":"2021-01-01"`, `"inForceDate":"2021-01-01","expiresDate":"2020-01-01"`, "expiresDate"},
		"no such limit":      {`"maximumHeightMeters"`, `"maximumColour"`, "rules[0].limit"},
		"value out of range": {`"value":120`, `"value":-3`, "rules[0].value"},
		"rule twice":         {`"id":"mass"`, `"id":"height"`, "rules[1].id"},
		"no kind":            {`"kind":"RULE_KIND_CONFIRMATION",`, ``, "rules[2].kind"},
		"filled by use":      {`"id":"mass"`, `"id":"mass","deciding":true`, "rules[1]"},
	}
	form, err := rulepack.Canonical(supplied(t)["eu-open-a3"])
	if err != nil {
		t.Fatal(err)
	}
	for name, row := range rows {
		if !bytes.Contains(form, []byte(row.old)) {
			t.Fatalf("%s: the pack has no %s", name, row.old)
		}
		_, err := rulepack.Decode(bytes.Replace(form, []byte(row.old), []byte(row.replaced), 1))
		var faults document.Errors
		if !errors.As(err, &faults) || faults[0].Path != row.path {
			t.Errorf("%s: %v, want a fault at %s", name, err, row.path)
		}
	}
}

// FuzzDecode wants no panic, and of what decodes one canonical form that decodes to itself.
func FuzzDecode(f *testing.F) {
	for _, pack := range supplied(f) {
		form, err := rulepack.Canonical(pack)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(form)
	}
	f.Add([]byte(`{"id":"x","rules":[{"kind":"RULE_KIND_LIMIT","value":1e400}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		pack, err := rulepack.Decode(data)
		if err != nil {
			return
		}
		form, err := rulepack.Canonical(pack)
		if err != nil {
			t.Fatal(err)
		}
		again, err := rulepack.Decode(form)
		if err != nil {
			t.Fatalf("canonical form is refused: %v", err)
		}
		if second, _ := rulepack.Canonical(again); !bytes.Equal(second, form) {
			t.Error("the canonical form is not its own")
		}
		if _, err := rulepack.Compose([]rulepack.Pack{pack}, assess.Input{}); err != nil {
			t.Errorf("a pack that decodes cannot be composed: %v", err)
		}
	})
}

func TestRemarks(t *testing.T) {
	t.Parallel()
	pack := supplied(t)["larkmoor-club"]
	pack.ExpiresDate = "2026-12-31"
	rows := map[string]struct {
		date, want string
		count      int
	}{
		"in force": {"2026-05-16", "4 of 4 rules are unverified", 1},
		"last day": {"2026-12-31", "4 of 4", 1},
		"run out":  {"2027-01-01", "ran out on 2026-12-31", 2},
		"not yet":  {"2026-02-28", "comes into force on 2026-03-01", 2},
	}
	for name, row := range rows {
		got := rulepack.Remarks(pack, row.date)
		if len(got) != row.count || !strings.Contains(strings.Join(got, "; "), row.want) {
			t.Errorf("%s: %v", name, got)
		}
	}
}
