package document

import (
	"reflect"
	"regexp"
	"testing"

	"pitgate/server/physics/assess"
)

// patternsOf collects the pattern tags of a type and of all below it.
func patternsOf(t reflect.Type, seen map[reflect.Type]bool, found map[string]bool) {
	for t.Kind() == reflect.Pointer || t.Kind() == reflect.Slice {
		t = t.Elem()
	}
	if t.Kind() != reflect.Struct || seen[t] {
		return
	}
	seen[t] = true
	for i := range t.NumField() {
		if pattern := t.Field(i).Tag.Get("pattern"); pattern != "" {
			found[pattern] = true
		}
		patternsOf(t.Field(i).Type, seen, found)
	}
}

// TestFormsAreThoseOfTheirPatterns holds every pattern of the document to what an engine for patterns says of texts that fit, nearly fit and do not.
func TestFormsAreThoseOfTheirPatterns(t *testing.T) {
	t.Parallel()
	found := map[string]bool{}
	patternsOf(reflect.TypeFor[assess.Input](), map[reflect.Type]bool{}, found)
	if len(found) < 3 {
		t.Fatalf("only %d patterns", len(found))
	}
	texts := []string{"", "0", "12", "2412", "24121", "241x", "12:30", "12:3", "1:230", "12-30", "12:300", "2026-11-25", "2026-11-2", "2026-11-255", "2026:11:25",
		"20261125", "abcd", "٠٩١٢", "12:30\n", " 2412", "2412 ", "[0-9]", "NACA", "a-b", "A1"}
	for pattern := range found {
		engine, fits := regexp.MustCompile(pattern), 0
		for _, text := range texts {
			want := engine.MatchString(text)
			if want {
				fits++
			}
			if got := hasForm(pattern, text); got != want {
				t.Errorf("%q has form %s: got %v, want %v", text, pattern, got, want)
			}
		}
		if fits < 2 {
			t.Errorf("no text but the empty one has the form %s: add one", pattern)
		}
	}
}

// TestSlugIsThatOfItsPattern holds the form of an id to its pattern.
func TestSlugIsThatOfItsPattern(t *testing.T) {
	t.Parallel()
	engine := regexp.MustCompile(`^[a-z0-9]([a-z0-9-]*[a-z0-9])?$`)
	for _, text := range []string{"", "a", "-", "-a", "a-", "a-b", "a--b", "A", "a_b", "larkmoor-2026", "é", "a b", "a\n", "9"} {
		if got, want := isSlug(text), engine.MatchString(text); got != want {
			t.Errorf("%q: got %v, want %v", text, got, want)
		}
	}
}
