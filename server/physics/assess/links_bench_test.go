package assess

import "testing"

// BenchmarkLinksPass is what radio link and packs add to a moved pass.
func BenchmarkLinksPass(b *testing.B) {
	in, whole := preparedDemo(b, "nightjar_long_acre")
	base := newPass(&in, whole)
	base.walk()
	moved := *base
	moved.moved, moved.by = "day.temperatureCelsius", 0.5
	results := make([]Finding, 0, len(catalogue))
	b.ReportAllocs()
	for b.Loop() {
		part := moved
		part.results = results
		part.answerRadio()
		part.answerPacks()
		if len(part.results) != len(radioKinds)+len(packKinds) {
			b.Fatalf("%d findings", len(part.results))
		}
	}
}
