package document

import (
	"os"
	"path/filepath"
	"testing"

	"pitgate/server/physics/assess"
)

// BenchmarkAssess is one whole assessment with bands, from decoded document to report.
func BenchmarkAssess(b *testing.B) {
	for _, name := range []string{"dabchick_long_acre", "sandmartin_long_acre_wet", "redshank_quarry_top", "nightjar_long_acre"} {
		in := benchDocument(b, name)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Assess(in); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkMended is the same with the remedies of all open findings, by one worker as in the page.
func BenchmarkMended(b *testing.B) {
	const name = "redshank_quarry_top"
	in := benchDocument(b, name)
	b.Run(name, func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if report, err := Mended(in, assess.SpreadOptions{}, assess.RemedyOptions{}); err != nil || len(report.Remedies) == 0 {
				b.Fatal(len(report.Remedies), err)
			}
		}
	})
}

// benchDocument is a document of the demonstration.
func benchDocument(b *testing.B, name string) assess.Input {
	b.Helper()
	data, err := os.ReadFile(filepath.Join(demoFolder, name+".json"))
	if err != nil {
		b.Fatal(err)
	}
	in, err := Decode(data)
	if err != nil {
		b.Fatal(err)
	}
	return in
}
