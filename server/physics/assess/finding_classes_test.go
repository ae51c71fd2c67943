package assess

import "testing"

func TestEveryFindingHasItsClass(t *testing.T) {
	t.Parallel()
	known := map[string]bool{}
	for _, k := range catalogue {
		known[k.id] = true
		if _, ok := classOf(k.id); !ok {
			t.Errorf("finding %s: say in finding_classes.go whom it hurts", k.id)
		}
	}
	count := 0
	for _, row := range findingClasses {
		class, ids := row.key, row.value
		count += len(ids)
		for _, id := range ids {
			if !known[id] {
				t.Errorf("%s of %s is no finding", id, class)
			}
		}
	}
	if count != len(classById) {
		t.Errorf("%d rows, %d findings: one stands in two classes", count, len(classById))
	}
	if class, ok := classOf("nobody.knows"); ok || class != FindingClassThirdParty {
		t.Errorf("a finding without class is %s", class)
	}
}
