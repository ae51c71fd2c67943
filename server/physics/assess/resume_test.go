package assess

import (
	"encoding/json"
	"slices"
	"testing"

	"pitgate/testdata/demo"
)

// TestResumedPassIsThatFromTheStart moves every input of every demonstration document and wants a pass that begins where the input is first read to find,
// bit for bit, what one from the start finds.
func TestResumedPassIsThatFromTheStart(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"dabchick_long_acre", "nightjar_long_acre", "sandmartin_long_acre_wet", "redshank_quarry_top"} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			in, whole := preparedDemo(t, name)
			base := newPass(&in, whole)
			base.resumes = newResumes()
			base.walk()
			later := 0
			for _, input := range base.inputs {
				resumed, fresh := base.moving(input, 1), &pass{in: &in, whole: whole, drawing: base.drawing, moved: input.name, by: input.spread}
				if resumed.at > 0 {
					later++
				}
				resumed.walk()
				fresh.walk()
				samePass(t, input.name, resumed, fresh)
			}
			if later < len(base.inputs)/2 {
				t.Errorf("%d of %d inputs are read first later than at the start", later, len(base.inputs))
			}
		})
	}
}

func preparedDemo(t testing.TB, name string) (Input, *Geometry) {
	t.Helper()
	text, err := demo.Files.ReadFile(name + ".json")
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
	return in, whole
}

func samePass(t *testing.T, moved string, got, want *pass) {
	t.Helper()
	if len(got.results) != len(want.results) {
		t.Fatalf("%s: %d findings, want %d", moved, len(got.results), len(want.results))
	}
	for i := range want.results {
		a, b := &got.results[i], &want.results[i]
		if catalogue[place(b.ID)].still {
			continue
		}
		if a.ID != b.ID || (a.Value == nil) != (b.Value == nil) || a.Value != nil && *a.Value != *b.Value {
			t.Errorf("%s moved, %s: got %v, want %v", moved, b.ID, a.Value, b.Value)
		}
	}
	if !slices.Equal(got.drawn.heights, want.drawn.heights) || !slices.Equal(got.drawn.drags, want.drawn.drags) {
		t.Errorf("%s moved: the lines read off differ", moved)
	}
}

// TestAnswersAloneAllocateLittle guards what the deterministic run without drawings allocates.
func TestAnswersAloneAllocateLittle(t *testing.T) {
	in, whole := preparedDemo(t, "sandmartin_long_acre")
	count := testing.AllocsPerRun(5, func() {
		if _, err := whole.RunWith(in, Options{}); err != nil {
			t.Fatal(err)
		}
	})
	if count > mostAllocations {
		t.Errorf("%.0f allocations, want at most %d", count, mostAllocations)
	}
	t.Logf("%.0f allocations", count)
}

// mostAllocations is what a run of answers alone may allocate: half as much again as at the time of writing.
const mostAllocations = 7500
