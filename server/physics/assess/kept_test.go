package assess

import (
	"encoding/json"
	"testing"

	"pitgate/server/physics/landing"
	"pitgate/testdata/demo"
)

// TestKeptAnswersAreThoseComputedAnew moves every input and wants the landing and the abort that a pass took over from the base pass to be
// those that it would have computed itself.
func TestKeptAnswersAreThoseComputedAnew(t *testing.T) {
	t.Parallel()
	text, err := demo.Files.ReadFile("sandmartin_long_acre.json")
	if err != nil {
		t.Fatal(err)
	}
	var in Input
	if err := json.Unmarshal(text, &in); err != nil {
		t.Fatal(err)
	}
	whole, err := Prepare(in)
	if err != nil {
		t.Fatal(err)
	}
	base := newPass(&in, whole)
	base.walk()
	for _, input := range base.inputs {
		if !(input.spread > 0) {
			continue
		}
		p := base.moving(input, 1)
		p.walk()
		anew, err := landing.Fly(p.landing.model, p.landing.air, p.landing.plan)
		if err != nil || anew.Total != p.landing.result.Total {
			t.Errorf("%s: landing of %g m, anew %g m, %v", input.name, p.landing.result.Total, anew.Total, err)
		}
		kept := p.abort()
		p.drawing = &drawing{}
		if own := p.abort(); kept.value != own.value {
			t.Errorf("%s: %g m left on the strip, anew %g m", input.name, kept.value, own.value)
		}
	}
}
