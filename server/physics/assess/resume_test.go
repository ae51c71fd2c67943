package assess

import (
	"encoding/json"
	"reflect"
	"testing"

	"pitgate/testdata/demo"
)

// TestResumedPassIsThatFromTheStart moves every error of every demonstration document and wants a pass that begins where its inputs are first read, and
// leaves out what they do not come to, to find, bit for bit, what one through every section finds.
func TestResumedPassIsThatFromTheStart(t *testing.T) {
	t.Parallel()
	for _, name := range demoDocuments {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			in, whole := preparedDemo(t, name)
			base := newPass(&in, whole)
			base.resumes = newResumes()
			base.walk()
			later := 0
			for _, source := range base.sources() {
				cut, all := base.drawn.empty(), base.drawn.empty()
				var resumed, fresh [2]*pass
				for i, by := range []float64{1, -1} {
					resumed[i], fresh[i] = base.movingSource(source, by), fromTheStart(base, source, by)
					if resumed[i].at > 0 {
						later++
					}
					resumed[i].walk()
					fresh[i].walk()
					samePass(t, source.input.name, resumed[i], fresh[i])
				}
				cut.add(&resumed[0].drawn, &resumed[1].drawn)
				all.add(&fresh[0].drawn, &fresh[1].drawn)
				if !reflect.DeepEqual(cut, all) {
					t.Errorf("%s moved: the bands of the lines differ", source.input.name)
				}
			}
			if count := len(base.sources()); later < count {
				t.Errorf("%d of %d errors are read first later than at the start", later, count)
			}
		})
	}
}

// demoDocuments are the whole documents of the demonstration.
var demoDocuments = []string{
	"dabchick_long_acre", "nightjar_long_acre", "sandmartin_long_acre", "sandmartin_long_acre_wet", "redshank_quarry_top", "redshank_quarry_top_headwind",
	"redshank_quarry_top_long_ramp",
}

// fromTheStart returns the pass of an error that leaves nothing out.
func fromTheStart(base *pass, source errorSource, by float64) *pass {
	cut, drawing := base.movingSource(source, by), *base.drawing
	return &pass{in: base.in, whole: base.whole, drawing: &drawing, moved: cut.moved, by: cut.by, together: cut.together}
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
		if a.ID != b.ID || (a.Value == nil) != (b.Value == nil) || a.Value != nil && *a.Value != *b.Value || a.Verdict != b.Verdict ||
			(a.Limit == nil) != (b.Limit == nil) || a.Limit != nil && *a.Limit != *b.Limit {
			t.Errorf("%s moved, %s: got %v, want %v", moved, b.ID, a.Value, b.Value)
		}
	}
}
