package assess_test

import (
	"errors"
	"reflect"
	"testing"

	"pitgate/server/physics/assess"
)

// TestWatchedRun gives the report of a run that nobody watches, with the count going up to the number of inputs.
func TestWatchedRun(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "redshank_quarry_top")
	geometry, err := assess.Prepare(in)
	if err != nil {
		t.Fatal(err)
	}
	want, err := geometry.Run(in)
	if err != nil {
		t.Fatal(err)
	}
	last, total := -1, 0
	got, err := geometry.RunWatched(in, func(done, of int) bool {
		if done < last || done > of {
			t.Errorf("count goes from %d to %d of %d", last, done, of)
		}
		last, total = done, of
		return true
	})
	if err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("a watched run gives another report, error %v", err)
	}
	if total == 0 || last < total-1 {
		t.Errorf("asked last at %d of %d", last, total)
	}
}

// TestStoppedRun ends with its error at whatever pass it is stopped, and not one pass later.
func TestStoppedRun(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "redshank_quarry_top")
	geometry, err := assess.Prepare(in)
	if err != nil {
		t.Fatal(err)
	}
	for _, at := range []int{0, 1, 7} {
		asked := 0
		report, err := geometry.RunWatched(in, func(int, int) bool { asked++; return asked <= at })
		if !errors.Is(err, assess.ErrStopped) || asked != at+1 || len(report.Findings) > 0 {
			t.Errorf("stopped at %d: asked %d times, error %v, %d findings", at, asked, err, len(report.Findings))
		}
	}
}
