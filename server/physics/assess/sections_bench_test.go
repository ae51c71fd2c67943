package assess

import (
	"reflect"
	"runtime"
	"strings"
	"testing"
	"time"
)

// BenchmarkSections tells what each section takes of a run of answers alone, in us: the least over all runs, which other work on the machine moves least.
func BenchmarkSections(b *testing.B) {
	in, whole := preparedDemo(b, "redshank_quarry_top")
	least := make([]time.Duration, len(sections))
	for b.Loop() {
		base := newPass(&in, whole)
		base.quiet = true
		for i, section := range sections {
			start := time.Now()
			section.run(base)
			if took := time.Since(start); least[i] == 0 || took < least[i] {
				least[i] = took
			}
		}
	}
	sum := 0.0
	for i := range sections {
		took := float64(least[i].Nanoseconds()) / 1e3
		sum += took
		b.ReportMetric(took, sectionName(i)+"-us")
	}
	b.ReportMetric(sum, "all-us")
}

// sectionName is the name of a section's method.
func sectionName(i int) string {
	name := runtime.FuncForPC(reflect.ValueOf(sections[i].run).Pointer()).Name()
	return name[strings.LastIndexByte(name, '.')+1:]
}
