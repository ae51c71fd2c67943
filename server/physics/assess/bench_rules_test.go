package assess_test

import (
	"testing"

	"pitgate/server/document"
	"pitgate/server/rulepack"
)

// BenchmarkAssessUnderRules computes a whole document under every supplied pack, composing included; beside the one without it tells what rules cost.
func BenchmarkAssessUnderRules(b *testing.B) {
	packs, err := rulepack.Supplied()
	if err != nil {
		b.Fatal(err)
	}
	in := demoInput(b, "sandmartin_long_acre")
	b.ReportAllocs()
	for b.Loop() {
		made, err := rulepack.Compose(packs, in)
		if err != nil {
			b.Fatal(err)
		}
		under := in
		under.Limits = &made.Limits
		if _, err := document.Assess(under); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkAssessWithoutRules computes the same document as it is.
func BenchmarkAssessWithoutRules(b *testing.B) {
	in := demoInput(b, "sandmartin_long_acre")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := document.Assess(in); err != nil {
			b.Fatal(err)
		}
	}
}
