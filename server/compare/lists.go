package compare

import (
	"reflect"
	"slices"
	"strings"

	"pitgate/server/document/jsonform"
)

// manyPoints is how many points of an outline may differ before the outline is told as a whole.
const manyPoints = 3

// lists compares two lists, of which one may be empty.
func (w *walk) lists(a, b reflect.Value, at place) {
	namesA, keyed := namesOf(a)
	namesB, keyedToo := namesOf(b)
	switch {
	case same(a, b):
	case keyed && keyedToo:
		w.named(a, b, namesA, namesB, at)
	case a.Len() == b.Len() && !outlineMoved(a, b):
		for i := range a.Len() {
			w.field(a.Index(i), b.Index(i), at.entry(i, i, ""))
		}
	case a.Len() == 0:
		w.added(b, at)
	case b.Len() == 0:
		w.removed(a, at)
	default:
		w.changed(a, b, at)
	}
}

// keys are the fields by which an entry of a list is known, by their JSON names.
var keys = []string{"name", "id", "rule", "quantityId"}

// namesOf returns the names of all entries, and whether each has one of its own.
func namesOf(list reflect.Value) ([]string, bool) {
	field := keyField(list.Type().Elem())
	if field < 0 {
		return nil, false
	}
	names := make([]string, list.Len())
	seen := map[string]bool{}
	for i := range names {
		names[i] = list.Index(i).Field(field).String()
		if names[i] == "" || seen[names[i]] {
			return nil, false
		}
		seen[names[i]] = true
	}
	return names, true
}

// keyField is the index of the field that names an entry, or -1.
func keyField(entry reflect.Type) int {
	if entry.Kind() != reflect.Struct {
		return -1
	}
	for _, key := range keys {
		for i := range entry.NumField() {
			name, _, _ := strings.Cut(entry.Field(i).Tag.Get("json"), ",")
			if name == key && entry.Field(i).Type.Kind() == reflect.String {
				return i
			}
		}
	}
	return -1
}

// named compares lists whose entries have names: those of the second list in its order, then those that were removed, then the order.
func (w *walk) named(a, b reflect.Value, namesA, namesB []string, at place) {
	var keptInB []string
	for i, name := range namesB {
		before := slices.Index(namesA, name)
		if before < 0 {
			w.added(b.Index(i), at.entry(0, i, name))
			continue
		}
		keptInB = append(keptInB, name)
		w.both(a.Index(before), b.Index(i), at.entry(before, i, name))
	}
	var keptInA []string
	for i, name := range namesA {
		if slices.Contains(namesB, name) {
			keptInA = append(keptInA, name)
			continue
		}
		w.removed(a.Index(i), at.entry(i, 0, name))
	}
	if !slices.Equal(keptInA, keptInB) {
		w.found = append(w.found, Difference{Kind: ChangeKindReordered, FromPath: at.from, ToPath: at.to, PartName: at.name,
			From: inOrder(keptInA), To: inOrder(keptInB)})
	}
}

// inOrder writes names in their order.
func inOrder(names []string) *ComparedValue {
	text, _ := jsonform.Marshal(names)                                           // texts can always be written
	return &ComparedValue{PartJSON: string(text), EntryCount: int32(len(names))} //nolint:gosec // a document's lists are bounded far below
}

// outlineMoved tells whether so many points of an outline differ that it reads better as a whole. Lists of parts are no outlines.
func outlineMoved(a, b reflect.Value) bool {
	entry := a.Type().Elem()
	if entry.Kind() != reflect.Struct {
		return true
	}
	for i := range entry.NumField() {
		if entry.Field(i).Type != reflect.TypeFor[*float64]() {
			return false
		}
	}
	moved := 0
	for i := range a.Len() {
		if !same(a.Index(i), b.Index(i)) {
			moved++
		}
	}
	return moved > manyPoints
}
