package main

import (
	"path/filepath"
	"strings"
	"testing"
)

func TestField(t *testing.T) {
	t.Parallel()
	longAcre := wholeDocument(t, "long_acre.json")
	for _, c := range []struct {
		name, stdin string
		args        []string
		status      int
		out, err    string
	}{
		{"nothing stands out", longAcre, []string{"field", "-"}, 0, "nothing stands out", ""},
		{"a second look", strings.Replace(longAcre, `"06/24"`, `"24/06"`, 1), []string{"field", "-"}, 1, "strips[0].start (24/06): is named 24 first", ""},
		{"the field as a whole", "{}", []string{"field", "-"}, 1, "flyingArea: no flying area", ""},
		{"cannot be kept", strings.Replace(longAcre, `204.74`, `99999`, 1), []string{"field", "-"}, 2, "", "obstacles[0].points[0].xMeters: must be at most"},
		{"not JSON", "hello", []string{"field", "-"}, 2, "", "document: "},
		{"no file", "", []string{"field", filepath.Join(t.TempDir(), "none.json")}, 2, "", "none.json"},
		{"no argument", "", []string{"field"}, 2, "", "give one description"},
		{"no such flag", "", []string{"field", "--colour"}, 2, "", "colour"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			status, out, errors := try(t, c.stdin, c.args...)
			if status != c.status || !strings.Contains(out, c.out) || !strings.Contains(errors, c.err) {
				t.Errorf("status %d, out %q, errors %q; want %d, %q, %q", status, out, errors, c.status, c.out, c.err)
			}
		})
	}
}
