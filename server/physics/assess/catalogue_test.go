package assess

import (
	"strings"
	"testing"
)

// TestCataloguesNameWhatExists wants every source in the catalogues to be a quantity of the catalogue, a path or a method, and every
// id to stand once.
func TestCataloguesNameWhatExists(t *testing.T) {
	t.Parallel()
	seen := map[string]bool{}
	for _, k := range figureKinds {
		if seen[k.id] {
			t.Errorf("quantity %s stands twice", k.id)
		}
		seen[k.id] = true
		for _, name := range k.from {
			wantKnown(t, k.id, name)
		}
	}
	for _, k := range catalogue {
		for _, name := range k.from {
			wantKnown(t, k.id, name)
		}
		for _, text := range []string{k.title, k.unit, k.method, k.source, k.validity} {
			if text == "" || strings.Contains(strings.ToLower(text), " safe") {
				t.Errorf("finding %s says %q", k.id, text)
			}
		}
		if len(k.from) == 0 {
			t.Errorf("finding %s comes from nothing", k.id)
		}
	}
}

func wantKnown(t *testing.T, id, name string) {
	t.Helper()
	if !isInput(name) && kindOf(name).title == "" {
		t.Errorf("%s comes from %q, which no catalogue lists", id, name)
	}
}
