package assess

import (
	"slices"
	"testing"
)

// TestChangedDocumentAnswersAsFromTheStart turns every knob of every demonstration document both ways and wants the pass that walks only what the change
// comes to, and the passes that move its errors, to find bit for bit what those of the changed document find that walk every section.
func TestChangedDocumentAnswersAsFromTheStart(t *testing.T) {
	t.Parallel()
	for _, name := range demoDocuments {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			in, whole := preparedDemo(t, name)
			r := &remedySearch{in: &in, whole: whole}
			if err := r.begin(); err != nil {
				t.Fatal(err)
			}
			for i := range knobs {
				places := r.placesOf(&knobs[i])
				for k := range places {
					if settings := places[k].settings(); len(settings) > 0 {
						sameAsFresh(t, r, settings[len(settings)-1])
					}
				}
			}
		})
	}
}

// sameAsFresh compares a change's candidate with the base pass of the changed document, and the passes that move every error of either.
func sameAsFresh(t *testing.T, r *remedySearch, c change) {
	t.Helper()
	name := c.spot.knob.id + " " + c.spot.title
	got := r.try([]change{c}, ^uint64(0)>>(64-len(sections)), true)
	in := r.changedBy([]change{c})
	want, err := r.geometryOf(in, []change{c}).begin(in, true, true)
	if (err == nil) != (got.pass.fault == nil) {
		t.Fatalf("%s: %v, want %v", name, got.pass.fault, err)
	}
	if err != nil {
		return
	}
	samePass(t, name, got.pass, want)
	sources := want.sources()
	now := got.pass.sources()
	if len(now) != len(sources) {
		t.Errorf("%s: %d errors, want %d", name, len(now), len(sources))
	}
	for i := range sources {
		k := slices.IndexFunc(now, func(s errorSource) bool { return s.input == sources[i].input })
		if k < 0 {
			t.Errorf("%s: no error %+v", name, sources[i].input)
			continue
		}
		if i%movedOf != len(name)%movedOf {
			continue
		}
		fresh, moved := want.movingSource(sources[i], 1), got.pass.movingSource(now[k], 1)
		fresh.walk()
		moved.walk()
		samePass(t, name+", "+sources[i].input.name, moved, fresh)
	}
}

// movedOf is of how many errors one is moved.
const movedOf = 6
