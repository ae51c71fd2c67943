package assess

import "testing"

// BenchmarkRemedies is the search for the remedies of all open findings of the ramp launch, on a geometry that is kept and two workers.
func BenchmarkRemedies(b *testing.B) {
	in := demoDocument(b)
	whole, err := Prepare(in)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if found, err := whole.Remedies(in, RemedyOptions{Workers: 2}); err != nil || len(found) == 0 {
			b.Fatal(len(found), err)
		}
	}
}
