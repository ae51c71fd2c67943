package assess

import "testing"

// BenchmarkSpread is one assessment with 512 samples on a geometry that is kept, on two workers.
func BenchmarkSpread(b *testing.B) {
	in := demoDocument(b)
	whole, err := Prepare(in)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := whole.Spread(in, SpreadOptions{Workers: 2}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSampledPass is one walk with all inputs moved, as every sample takes it.
func BenchmarkSampledPass(b *testing.B) {
	in := demoDocument(b)
	whole, err := Prepare(in)
	if err != nil {
		b.Fatal(err)
	}
	base := newPass(&in, whole)
	base.walk()
	r, err := base.newSampling(SpreadOptions{Samples: 512})
	if err != nil {
		b.Fatal(err)
	}
	j := 0
	b.ReportAllocs()
	for b.Loop() {
		p := r.passOf(j % 512)
		p.walk()
		p.release()
		j++
	}
}
