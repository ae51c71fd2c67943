package main

import (
	"strings"
	"testing"
	"unicode/utf8"
)

func TestBench(t *testing.T) {
	t.Parallel()
	jet, ramp := wholeDocument(t, "sandmartin_long_acre.json"), wholeDocument(t, "redshank_quarry_top.json")
	for _, c := range []struct {
		name, stdin string
		args        []string
		status      int
		out         []string
		err         string
	}{
		{"list", jet, []string{"bench", "-"}, 0, []string{"MASS AND BALANCE", "[ ] Air trap\n", "Wanted: at least 9.000, load factor held", "Wanted: at most 1.299 mm, 2 % of a chord of 65 mm", "does not make it"}, ""},
		{"cards", jet, []string{"bench", "-", "--cards"}, 0, []string{"STATIC RUN", "TAXI RUNS", "RANGE CHECK", "FIRST FLIGHT", "10:53 min", "governed by: fuel"}, ""},
		{"not yet", ramp, []string{"bench", "-", "--cards"}, 0, []string{"This card is no", "do not\n"}, ""},
		{"as JSON", jet, []string{"bench", "-", "--json"}, 0, []string{`"id": "bench.fuel.trap"`, `"id": "card.taxi"`, `"cautions": [`}, ""},
		{"model alone", pulls, []string{"bench", "-"}, 0, []string{"[ ] Mass with tanks empty"}, ""},
		{"no argument", "", []string{"bench"}, 2, nil, "give one document"},
		{"bad number", strings.Replace(pulls, `"name": "morning, short grass"`, `"slopeDegrees": 60`, 1), []string{"bench", "-"}, 2, nil, "slopeDegrees"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			status, out, errors := try(t, c.stdin, c.args...)
			if status != c.status || !strings.Contains(errors, c.err) {
				t.Errorf("status %d, errors %q; want %d, %q", status, errors, c.status, c.err)
			}
			for _, want := range c.out {
				if !strings.Contains(out, want) {
					t.Errorf("%q is not in\n%s", want, out)
				}
			}
			for line := range strings.Lines(out) {
				if utf8.RuneCountInString(strings.TrimRight(line, "\n")) > 80 && c.name != "as JSON" {
					t.Errorf("wider than 80 columns: %s", line)
				}
			}
		})
	}
}
