package main

import (
	"strings"
	"testing"
)

func TestAssessSpread(t *testing.T) {
	t.Parallel()
	dabchick := wholeDocument(t, "dabchick_long_acre.json")
	for _, c := range []struct {
		name string
		args []string
		out  string
		err  string
	}{
		{"number", []string{"--spread", "32"}, "Spread from 32 samples, seed 1", ""},
		{"joined", []string{"--spread=16", "--seed", "9"}, "Spread from 16 samples, seed 9", ""},
		{"default", []string{"--spread", "--seed=2"}, "Spread from 512 samples, seed 2", ""},
		{"probabilities", []string{"--spread", "16"}, "of the samples, of", ""},
		{"too few", []string{"--spread", "3"}, "", "16 to 16384"},
		{"no number", []string{"--spread=many"}, "", "16 to 16384"},
		{"large seed", []string{"--spread", "--seed", "4294967296"}, "", "32 bits"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			_, out, errors := try(t, dabchick, append([]string{"assess", "-"}, c.args...)...)
			if !strings.Contains(out, c.out) || !strings.Contains(errors, c.err) || c.err == "" && errors != "" {
				t.Errorf("out %q, errors %q", out, errors)
			}
			for line := range strings.Lines(out) {
				if len([]rune(strings.TrimRight(line, "\n"))) > 80 {
					t.Errorf("wider than 80 columns: %q", line)
				}
			}
		})
	}
}
