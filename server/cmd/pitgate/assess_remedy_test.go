package main

import (
	"strings"
	"testing"
)

// TestAssessRemedy wants the story of the demo: the headwind of another day before the longer ramp, 80 columns, and the caution with it.
func TestAssessRemedy(t *testing.T) {
	t.Parallel()
	redshank := wholeDocument(t, "redshank_quarry_top.json")
	for _, c := range []struct {
		name     string
		args     []string
		out, err string
		without  string
	}{
		{"all", []string{"--remedy"}, "equipment: Length of the ramp from 8.500 m to", "", ""},
		{"one", []string{"--remedy", "--finding", "launch.end_speed"}, "another day: Headwind at the launch", "", "Sink after the launcher (launch.sink)"},
		{"caution", []string{"--finding=heat.skin", "--remedy"}, "A remedy is a proposal to measure and to check", "", ""},
		{"unknown", []string{"--remedy", "--finding", "launch.ending"}, "", `finding "launch.ending"`, "REMEDIES"},
		{"none asked", nil, "ASSESSMENT", "", "REMEDIES"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			_, out, errors := try(t, redshank, append([]string{"assess", "-"}, c.args...)...)
			if !strings.Contains(out, c.out) || !strings.Contains(errors, c.err) || c.err == "" && errors != "" {
				t.Errorf("out %q, errors %q", out, errors)
			}
			if c.without != "" && strings.Contains(out, c.without) {
				t.Errorf("out holds %q", c.without)
			}
			for line := range strings.Lines(out) {
				if len([]rune(strings.TrimRight(line, "\n"))) > 80 {
					t.Errorf("wider than 80 columns: %q", line)
				}
			}
		})
	}
}
