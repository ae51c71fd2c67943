package document

import (
	"os"
	"path/filepath"
	"testing"
)

// BenchmarkAssess is one whole assessment with bands, from decoded document to report.
func BenchmarkAssess(b *testing.B) {
	for _, name := range []string{"dabchick_long_acre", "sandmartin_long_acre_wet", "redshank_quarry_top", "nightjar_long_acre"} {
		data, err := os.ReadFile(filepath.Join(demoFolder, name+".json"))
		if err != nil {
			b.Fatal(err)
		}
		in, err := Decode(data)
		if err != nil {
			b.Fatal(err)
		}
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
