package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"pitgate/server/document"
	"pitgate/server/rulepack"
)

func TestRules(t *testing.T) {
	t.Parallel()
	own := filepath.Join(t.TempDir(), "own.json")
	if err := os.WriteFile(own, []byte(`{"id":"own","title":"Own","authority":"Club","version":"1","inForceDate":"2026-01-01","source":"minutes",
		"rules":[{"id":"height","kind":"RULE_KIND_LIMIT","requirement":"Low.","limit":"maximumHeightMeters","value":60,"unit":"m"}]}`), 0o600); err != nil {
		t.Fatal(err)
	}
	broken := filepath.Join(t.TempDir(), "broken.json")
	if err := os.WriteFile(broken, []byte(`{"id":"own"}`), 0o600); err != nil {
		t.Fatal(err)
	}
	sandmartin := wholeDocument(t, "sandmartin_long_acre.json")
	for _, c := range []struct {
		name, stdin string
		args        []string
		status      int
		out, err    string
	}{
		{"list", "", []string{"rules", "--on", "2026-05-16"}, 0, "eu-open-a3 2024-05", ""},
		{"what is unverified", "", []string{"rules", "--on", "2026-05-16"}, 0, "! 4 of 4 rules are unverified", ""},
		{"one", "", []string{"rules", "us-association-turbine"}, 0, "static thrust at most 200.17 N", ""},
		{"its conditions", "", []string{"rules", "uk-association"}, 0, "Applies when take-off mass is at least 7.5 kg.", ""},
		{"cautions", "", []string{"rules", "uk-association"}, 0, "does not make it.", ""},
		{"strictest", sandmartin, []string{"rules", "--for", "-", "us-recreational", "eu-open-a3"}, 0, "> eu-open-a3.height 120 m", ""},
		{"who asks for less", sandmartin, []string{"rules", "--for", "-", "us-recreational", "eu-open-a3"}, 0, "- us-recreational.height 121.92 m", ""},
		{"a file", sandmartin, []string{"rules", "--for", "-", "eu-open-a3", own}, 0, "> own.height 60 m, unverified", ""},
		{"limits as JSON", sandmartin, []string{"rules", "--for", "-", "--json", own}, 0, `"maximumHeightMeters": 60`, ""},
		{"no such pack", "", []string{"rules", "moon"}, 2, "", "no supplied pack is named moon"},
		{"broken pack", "", []string{"rules", broken}, 2, "", "rules: "},
		{"no such day", "", []string{"rules", "--on", "2026-02-30"}, 2, "", "on: must be a date"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			status, out, errors := try(t, c.stdin, c.args...)
			if status != c.status || !strings.Contains(out, c.out) || !strings.Contains(errors, c.err) {
				t.Errorf("status %d, out %q, errors %q; want %d, %q, %q", status, out, errors, c.status, c.out, c.err)
			}
			for line := range strings.SplitSeq(out, "\n") {
				if utf8.RuneCountInString(line) > 80 && !strings.Contains(c.name, "JSON") {
					t.Errorf("%d columns: %q", utf8.RuneCountInString(line), line)
				}
			}
		})
	}
}

// TestRulesWritesWhatItReads wants the pack written as JSON to decode to itself.
func TestRulesWritesWhatItReads(t *testing.T) {
	t.Parallel()
	_, out, _ := try(t, "", "rules", "canada", "--json")
	pack, err := rulepack.Decode([]byte(strings.TrimSuffix(strings.TrimPrefix(strings.TrimSpace(out), "["), "]")))
	if err != nil || pack.ID != "canada" || len(pack.Rules) != 10 {
		t.Errorf("%v, %v", pack.ID, err)
	}
	_, limits, _ := try(t, wholeDocument(t, "sandmartin_long_acre.json"), "rules", "--for", "-", "--json")
	if _, err := document.DecodeLimits([]byte(limits)); err != nil {
		t.Error(err)
	}
}
