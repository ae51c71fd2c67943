package main

import (
	"strings"
	"testing"
	"unicode/utf8"
)

// pulls is a model alone with two pull tests of 7 kg.
const pulls = `{"mass": {}, "gear": {"rollingTests": [
	{"name": "morning, short grass", "massKg": {"value": 7, "basis": "BASIS_MEASURED"}, "pullNewtons": {"value": 6.9, "basis": "BASIS_MEASURED", "spread": 0.3}},
	{"massKg": {"value": 7, "basis": "BASIS_MEASURED"}, "pullNewtons": {"value": 7.5, "basis": "BASIS_MEASURED", "spread": 0.3}}]}}`

func TestRoll(t *testing.T) {
	t.Parallel()
	half := strings.Replace(pulls, `"pullNewtons": {"value": 7.5, "basis": "BASIS_MEASURED", "spread": 0.3}`, `"speedMetersPerSecond": {"value": 3}`, 1)
	for _, c := range []struct {
		name, stdin string
		args        []string
		status      int
		out, err    string
	}{
		// (6.9+7.5)/2/(7*9.80665) = 0.10488; the scatter, 0.3/(7*9.80665) each side of the mean, is more than the scale's share.
		{"mean", pulls, []string{"roll", "-"}, 0, "0.1049     0.0044", ""},
		{"as JSON", pulls, []string{"roll", "-", "--json"}, 0, `"way": "steady pull"`, ""},
		{"half described", half, []string{"roll", "-"}, 1, "missing: model.gear.rollingTests[1].distanceMeters", ""},
		{"cautions", pulls, []string{"roll", "-"}, 0, "does not make it", ""},
		{"no test", wholeDocument(t, "nightjar_long_acre.json"), []string{"roll", "-"}, 2, "", "no rolling test"},
		{"impossible", strings.Replace(pulls, "7.5", "0", 1), []string{"roll", "-"}, 2, "", "model.gear.rollingTests[1]: pull"},
		{"bad number", strings.Replace(pulls, `"name": "morning, short grass"`, `"slopeDegrees": 60`, 1), []string{"roll", "-"}, 2, "", "slopeDegrees"},
		{"no argument", "", []string{"roll"}, 2, "", "give one document"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			status, out, errors := try(t, c.stdin, c.args...)
			if status != c.status || !strings.Contains(out, c.out) || !strings.Contains(errors, c.err) {
				t.Errorf("status %d, out %q, errors %q; want %d, %q, %q", status, out, errors, c.status, c.out, c.err)
			}
			if strings.Contains(strings.Join(c.args, " "), "json") {
				return
			}
			for line := range strings.Lines(out) {
				if utf8.RuneCountInString(strings.TrimRight(line, "\n")) > 80 {
					t.Errorf("wider than 80 columns: %s", line)
				}
			}
		})
	}
}
