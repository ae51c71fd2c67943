package club

import (
	"strings"
	"testing"
)

// The pairs and the rule about F-POST are those of the usage notes of the occurrence categories (CAST/ICAO Common
// Taxonomy Team; ECCAIRS value list 430).
func TestCategoryWarnings(t *testing.T) {
	t.Parallel()
	for _, tt := range []struct {
		codes    string
		warnings int
		names    string
	}{
		{"", 0, ""},
		{"FUEL", 0, ""},
		{"SCF-PP LOC-I", 0, ""},
		{"LALT LOC-I", 0, ""},
		{"RE SCF-NP", 0, ""},
		{"LOC-I F-POST", 0, ""},
		{"FUEL SCF-PP", 1, "want of fuel"},
		{"SCF-PP FUEL", 1, "want of fuel"},
		{"LALT CFIT", 1, "low pass"},
		{"USOS ARC", 1, "short of"},
		{"LOC-I ARC", 1, "after control was lost"},
		{"CTOL SCF-PP", 1, "engine had failed"},
		{"F-POST", 1, "alone"},
		{"CTOL CFIT LOC-I", 3, ""},
	} {
		codes := strings.Fields(tt.codes)
		if err := CheckCategories(codes); err != nil {
			t.Errorf("%s: %v", tt.codes, err)
		}
		got := CategoryWarnings(codes)
		if len(got) != tt.warnings || !strings.Contains(strings.Join(got, "\n"), tt.names) {
			t.Errorf("%s: got %q, want %d with %q", tt.codes, got, tt.warnings, tt.names)
		}
	}
}

func TestUnknownCategoryIsRefused(t *testing.T) {
	t.Parallel()
	for _, code := range []string{"", "scf-pp", "CRASH", "SCF"} {
		if err := CheckCategories([]string{"FUEL", code}); CodeOf(err) != Invalid {
			t.Errorf("%q: got %v, want invalid", code, err)
		}
	}
	if len(categoryNames) != 36 {
		t.Errorf("%d categories, the value list has 36", len(categoryNames))
	}
}
