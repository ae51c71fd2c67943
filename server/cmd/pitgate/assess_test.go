package main

import (
	"strings"
	"testing"
)

func TestAssessExplain(t *testing.T) {
	t.Parallel()
	dabchick := wholeDocument(t, "dabchick_long_acre.json")
	for _, c := range []struct {
		name, id string
		status   int
		out, err string
	}{
		{"finding", "stall.speed", 0, "Vs = sqrt(2 m g/(rho S CLmax))", ""},
		{"quantity", "lift.slope", 0, "model.surfaces", ""},
		{"near", "stall.sped", 2, "", "near it: stall.speed"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			status, out, errors := try(t, dabchick, "assess", "-", "--explain", c.id)
			if status != c.status || !strings.Contains(out, c.out) || !strings.Contains(errors, c.err) {
				t.Errorf("status %d, out %q, errors %q", status, out, errors)
			}
		})
	}
}
