package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"pitgate/server/compare"
)

// kept writes one of the demo's documents to a file.
func kept(t *testing.T, name string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(file, []byte(wholeDocument(t, name)), 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

func TestCompare(t *testing.T) {
	t.Parallel()
	dabchick := wholeDocument(t, "dabchick_long_acre.json")
	redshank, longRamp := kept(t, "redshank_quarry_top.json"), kept(t, "redshank_quarry_top_long_ramp.json")
	for _, c := range []struct {
		name, stdin string
		args        []string
		status      int
		out, err    string
	}{
		{"longer ramp", "", []string{"compare", redshank, longRamp}, 1, "launchPlan.ramp.lengthMeters", ""},
		{"the same", dabchick, []string{"compare", "-", kept(t, "dabchick_long_acre.json")}, 0, "0 inputs differ, 0 of ", ""},
		{"broken second", `{"day": {"frost": "SOME"}}`, []string{"compare", redshank, "-"}, 2, "", "-: day.frost: must be one of"},
		{"one file", "", []string{"compare", redshank}, 2, "", "give two documents"},
		{"both from standard input", dabchick, []string{"compare", "-", "-"}, 2, "", "give two documents"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			status, out, errors := try(t, c.stdin, c.args...)
			if status != c.status || !strings.Contains(out, c.out) || !strings.Contains(errors, c.err) {
				t.Errorf("status %d, out %q, errors %q; want %d, %q, %q", status, out, errors, c.status, c.out, c.err)
			}
			for _, line := range strings.Split(out, "\n") {
				if utf8.RuneCountInString(line) > 80 {
					t.Errorf("line of %d columns: %q", utf8.RuneCountInString(line), line)
				}
			}
		})
	}
}

func TestComparedJSON(t *testing.T) {
	t.Parallel()
	_, out, _ := try(t, "", "compare", kept(t, "sandmartin_long_acre.json"), kept(t, "sandmartin_long_acre_wet.json"), "--json")
	var got compare.Comparison
	if err := json.Unmarshal([]byte(out), &got); err != nil || len(got.Cautions) == 0 || got.MovedCount == 0 || len(got.Differences) == 0 {
		t.Errorf("%d cautions, %d moved, %d differences, %v", len(got.Cautions), got.MovedCount, len(got.Differences), err)
	}
}
