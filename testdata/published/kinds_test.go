package published

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// testsIn returns the text of all tests of a package below server.
func testsIn(t *testing.T, place string) string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(server, place, "*_test.go"))
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		all.Write(text)
	}
	return all.String()
}

// named reports whether a test names what a row is of: the part of its id before the stroke, or the one after.
func named(tests, id string) bool {
	return !strings.Contains(id, "/") || slices.ContainsFunc(strings.Split(id, "/"), func(part string) bool {
		return strings.Contains(tests, `"`+part+`"`) || strings.Contains(tests, part+"/")
	})
}

// TestEveryKindOfRowIsRead wants a test that names the kind of each row, so that no row lies in a folder that is read for others alone.
func TestEveryKindOfRowIsRead(t *testing.T) {
	t.Parallel()
	for _, s := range sources(t) {
		tests := ""
		for _, reader := range s.readers {
			tests += testsIn(t, reader)
		}
		for _, row := range s.rows {
			if !named(tests, row[0]) {
				t.Errorf("%s: no test names what %s is of", s.name, row[0])
			}
		}
	}
}

func TestKindsNobodyReadsAreFound(t *testing.T) {
	t.Parallel()
	tests := `"tube-inertia": func(in inputs) float64 {}; rows(t, source, "gust/")`
	for id, want := range map[string]bool{"tube-inertia/1": true, "gust/2": true, "solid-stress/1": false, "annex3/tube-inertia": true, "whole": true} {
		if named(tests, id) != want {
			t.Errorf("%s: %v", id, !want)
		}
	}
}
