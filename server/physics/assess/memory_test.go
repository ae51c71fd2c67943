package assess

import (
	"runtime"
	"testing"
)

// Memory that runs may take: a fifth more than at the time of writing.
const (
	mostAnswerAllocations, mostAnswerBytes = 2160, 420e3
	mostMovedAllocations, mostMovedBytes   = 930, 87e3
)

// TestAnswersAloneAllocateLittle guards what the deterministic run without drawings allocates, the lost link aside.
func TestAnswersAloneAllocateLittle(t *testing.T) {
	in, whole := preparedDemo(t, "redshank_quarry_top")
	count, bytes := allocated(t, func() {
		base := newPass(&in, whole)
		base.quiet = true
		for i := range sections {
			if sectionName(i) != "answerLinkLoss" {
				sections[i].run(base)
			}
		}
	})
	if count > mostAnswerAllocations || bytes > mostAnswerBytes {
		t.Errorf("%.0f allocations of %.0f bytes, want at most %d of %.0f", count, bytes, mostAnswerAllocations, mostAnswerBytes)
	}
}

// TestWholeAnswersKeepTheirMemory guards all that a run of answers alone allocates, the lost link and the report included.
func TestWholeAnswersKeepTheirMemory(t *testing.T) {
	in, whole := preparedDemo(t, "redshank_quarry_top")
	if _, bytes := allocated(t, func() {
		if _, err := whole.RunWith(in, Options{}); err != nil {
			t.Fatal(err)
		}
	}); bytes > 1e6 {
		t.Errorf("%.0f bytes, want at most a megabyte", bytes)
	}
}

// TestMovedPassAllocatesLittle guards what each pass that moves an error, and each sample, allocates.
func TestMovedPassAllocatesLittle(t *testing.T) {
	in, whole := preparedDemo(t, "redshank_quarry_top")
	base := newPass(&in, whole)
	base.walk()
	count, bytes := allocated(t, func() {
		p := base.moving(uncertain{name: "day.temperatureCelsius", spread: 0.5}, 1)
		p.walk()
		p.release()
	})
	if count > mostMovedAllocations || bytes > mostMovedBytes {
		t.Errorf("%.0f allocations of %.0f bytes, want at most %d of %.0f", count, bytes, mostMovedAllocations, mostMovedBytes)
	}
}

// allocated returns how many allocations of how many bytes in all a run makes, the mean of several after the first.
func allocated(t *testing.T, run func()) (count, bytes float64) {
	t.Helper()
	const runs = 8
	run()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	for range runs {
		run()
	}
	runtime.ReadMemStats(&after)
	count, bytes = float64(after.Mallocs-before.Mallocs)/runs, float64(after.TotalAlloc-before.TotalAlloc)/runs
	t.Logf("%.0f allocations of %.0f bytes", count, bytes)
	return count, bytes
}
