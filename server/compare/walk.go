package compare

import (
	"reflect"
	"strings"

	"pitgate/server/document/jsonform"
	"pitgate/server/physics/assess"
)

// Differences lists where two documents differ, in the order in which their parts stand in the document. Entries of lists that carry a name are
// matched by it wherever they stand; other lists are compared entry by entry when they are equally long, and told as a whole otherwise.
func Differences(a, b assess.Input) []Difference {
	var w walk
	w.parts(reflect.ValueOf(a), reflect.ValueOf(b), place{})
	return w.found
}

// walk collects the differences of two documents.
type walk struct{ found []Difference }

// parts compares two structs of one type, field by field.
func (w *walk) parts(a, b reflect.Value, at place) {
	for i := range a.NumField() {
		name, _, _ := strings.Cut(a.Type().Field(i).Tag.Get("json"), ",")
		w.field(a.Field(i), b.Field(i), at.field(name))
	}
}

// field compares what may be absent on either side: a nil pointer, an empty text, an empty list.
func (w *walk) field(a, b reflect.Value, at place) {
	switch {
	case a.IsZero() && b.IsZero():
	case a.Kind() == reflect.Slice:
		w.lists(a, b, at)
	case a.IsZero() && mayBeAbsent(a):
		w.added(b, at)
	case b.IsZero() && mayBeAbsent(b):
		w.removed(a, at)
	case a.Kind() == reflect.Pointer:
		w.both(a.Elem(), b.Elem(), at)
	default:
		w.both(a, b, at)
	}
}

// mayBeAbsent tells the kinds whose zero value stands for nothing said.
func mayBeAbsent(v reflect.Value) bool {
	return v.Kind() == reflect.Pointer || v.Kind() == reflect.String || v.Kind() == reflect.Slice
}

// both compares two values that stand in both documents.
func (w *walk) both(a, b reflect.Value, at place) {
	switch {
	case a.Type() == quantityType:
		w.quantities(a.Interface().(assess.Quantity), b.Interface().(assess.Quantity), at)
	case a.Kind() == reflect.Struct:
		w.parts(a, b, at)
	case a.Interface() != b.Interface():
		w.changed(a, b, at)
	}
}

var quantityType = reflect.TypeFor[assess.Quantity]()

// quantities compares value, basis and spread, each for itself.
func (w *walk) quantities(a, b assess.Quantity, at place) {
	var parts []string
	if !sameNumber(a.Value, b.Value) {
		parts = append(parts, "value")
	}
	if a.Basis != b.Basis {
		parts = append(parts, "basis")
	}
	if !sameNumber(a.Spread, b.Spread) {
		parts = append(parts, "spread")
	}
	if len(parts) > 0 {
		w.changed(reflect.ValueOf(a), reflect.ValueOf(b), at)
		w.found[len(w.found)-1].QuantityParts = parts
	}
}

func sameNumber(a, b *float64) bool {
	if a == nil || b == nil {
		return a == b
	}
	return *a == *b
}

func (w *walk) changed(a, b reflect.Value, at place) {
	w.found = append(w.found, Difference{Kind: ChangeKindChanged, FromPath: at.from, ToPath: at.to, PartName: at.name, From: valueOf(a), To: valueOf(b)})
}

func (w *walk) added(b reflect.Value, at place) {
	w.found = append(w.found, Difference{Kind: ChangeKindAdded, ToPath: at.to, PartName: at.name, To: valueOf(b)})
}

func (w *walk) removed(a reflect.Value, at place) {
	w.found = append(w.found, Difference{Kind: ChangeKindRemoved, FromPath: at.from, PartName: at.name, From: valueOf(a)})
}

// valueOf writes a value of a document.
func valueOf(v reflect.Value) *ComparedValue {
	if v.Kind() == reflect.Pointer {
		v = v.Elem()
	}
	switch {
	case v.Type() == quantityType:
		quantity := v.Interface().(assess.Quantity)
		return &ComparedValue{Quantity: &quantity}
	case v.CanFloat():
		number := v.Float()
		return &ComparedValue{Number: &number}
	case v.CanInt():
		number := float64(v.Int())
		return &ComparedValue{Number: &number}
	case v.Kind() == reflect.Bool:
		truth := v.Bool()
		return &ComparedValue{Truth: &truth}
	case v.Kind() == reflect.String:
		return &ComparedValue{Text: v.String()}
	}
	return wholePart(v)
}

// same tells whether two parts or lists are written the same.
func same(a, b reflect.Value) bool { return written(a) == written(b) }

// written is a part or a list as JSON. Decoded documents hold no number that JSON cannot write.
func written(v reflect.Value) string {
	text, _ := jsonform.Marshal(v.Interface())
	return string(text)
}

// wholePart writes a part or a list.
func wholePart(v reflect.Value) *ComparedValue {
	out := &ComparedValue{PartJSON: written(v)}
	if v.Kind() == reflect.Slice {
		out.EntryCount = int32(v.Len()) //nolint:gosec // a document's lists are bounded far below
	}
	return out
}
