package document

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"pitgate/server/physics/assess"
)

// decode fills target, a pointer to one of the document's structs.
func decode(data []byte, target any) error {
	var found faults
	root, ok := parse(data, &found)
	if !ok {
		return found.err()
	}
	if root.kind != kindObject {
		found.add("", "must be an object, got "+root.kind.String())
		return found.err()
	}
	filler{found: &found}.object(reflect.ValueOf(target).Elem(), root, "")
	if len(found.list) == 0 {
		checkMeaning(target, &found)
	}
	return found.err()
}

type filler struct{ found *faults }

// enumeration is a text that may only hold one of the listed names.
type enumeration interface{ Names() []string }

func (f filler) object(target reflect.Value, from node, path string) {
	filled := map[string]bool{}
	for _, m := range from.members {
		at := join(path, m.key)
		field, ok := fieldNamed(target.Type(), m.key)
		if !ok {
			f.found.add(at, "is not a field of this document")
			continue
		}
		name := jsonName(field)
		if filled[name] {
			f.found.add(at, "stands twice")
			continue
		}
		filled[name] = true
		if m.value.kind != kindNull {
			f.field(target.FieldByIndex(field.Index), field, m.value, join(path, name))
		}
	}
	f.required(target, path)
}

// required checks the lists and texts that must not be left out.
func (f filler) required(target reflect.Value, path string) {
	for i := range target.NumField() {
		field := target.Type().Field(i)
		value := target.Field(i)
		if value.Kind() == reflect.Pointer || !value.IsZero() {
			continue
		}
		at := join(path, jsonName(field))
		if bound, ok := leastCount(field); ok && bound > 0 && !f.found.names(at) {
			f.found.add(at, fmt.Sprintf("is required with at least %d", bound))
		}
	}
}

func (f filler) field(target reflect.Value, field reflect.StructField, from node, path string) {
	switch target.Kind() {
	case reflect.Pointer:
		fresh, before := reflect.New(target.Type().Elem()), len(f.found.list)
		f.field(fresh.Elem(), field, from, path)
		if target.Type().Elem().Kind() == reflect.Struct || len(f.found.list) == before {
			target.Set(fresh)
		}
	case reflect.Struct:
		if !f.expect(from, kindObject, path) {
			return
		}
		f.object(target, from, path)
		if quantity, ok := target.Addr().Interface().(*assess.Quantity); ok {
			f.quantity(quantity, field, path)
		}
	case reflect.Slice:
		if f.expect(from, kindArray, path) {
			f.list(target, field, from, path)
		}
	case reflect.String:
		if f.expect(from, kindString, path) {
			f.text(target, field, from.text, path)
		}
	case reflect.Bool:
		if f.expect(from, kindBool, path) {
			target.SetBool(from.truth)
		}
	default:
		if f.expect(from, kindNumber, path) {
			f.number(target, field, from.text, path)
		}
	}
}

func (f filler) expect(from node, want kind, path string) bool {
	if from.kind == want {
		return true
	}
	f.found.add(path, "must be "+want.String()+", got "+from.kind.String())
	return false
}

func (f filler) list(target reflect.Value, field reflect.StructField, from node, path string) {
	if message := countFault(field, len(from.items)); message != "" {
		f.found.add(path, message)
		return
	}
	if len(from.items) == 0 {
		return
	}
	list := reflect.MakeSlice(target.Type(), len(from.items), len(from.items))
	for i, item := range from.items {
		inner := reflect.StructField{Name: field.Name, Tag: reflect.StructTag(itemTag(field))}
		f.field(list.Index(i), inner, item, index(path, i))
	}
	target.Set(list)
}

// text accepts the zero name of an enumeration, which proto3 JSON may write, as nothing said.
func (f filler) text(target reflect.Value, field reflect.StructField, text, path string) {
	if choices, ok := target.Interface().(enumeration); ok {
		names := choices.Names()
		if !slices.Contains(names, text) && text != unspecified(names) {
			f.found.add(path, fmt.Sprintf("must be one of %s, got %q", strings.Join(names, ", "), text))
			return
		}
		if text == unspecified(names) {
			text = ""
		}
	} else if message := textFault(field, text); message != "" {
		f.found.add(path, message)
		return
	}
	target.SetString(text)
}

func (f filler) number(target reflect.Value, field reflect.StructField, text, path string) {
	value, err := strconv.ParseFloat(text, 64)
	if err != nil || math.IsInf(value, 0) {
		f.found.add(path, "must be a finite number, got "+text)
		return
	}
	if message := rangeFault(field, value); message != "" {
		f.found.add(path, message)
		return
	}
	if target.Kind() == reflect.Float64 {
		target.SetFloat(value)
		return
	}
	if value != math.Trunc(value) || math.Abs(value) > math.MaxInt32 {
		f.found.add(path, "must be a whole number, got "+text)
		return
	}
	target.SetInt(int64(value))
}

// unspecified is the zero name of an enumeration: the common beginning of all names and UNSPECIFIED.
func unspecified(names []string) string {
	prefix := names[0]
	for _, name := range names[1:] {
		for !strings.HasPrefix(name, prefix) {
			prefix = prefix[:len(prefix)-1]
		}
	}
	return prefix[:strings.LastIndexByte(prefix, '_')+1] + "UNSPECIFIED"
}

func jsonName(field reflect.StructField) string {
	name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
	return name
}

// fieldNamed finds a field by its lowerCamelCase or its snake_case name, as proto3 JSON allows.
func fieldNamed(t reflect.Type, key string) (reflect.StructField, bool) {
	for i := range t.NumField() {
		name := jsonName(t.Field(i))
		if key == name || key == snake(name) {
			return t.Field(i), true
		}
	}
	return reflect.StructField{}, false
}

func snake(name string) string {
	var b strings.Builder
	for _, r := range name {
		if r >= 'A' && r <= 'Z' {
			b.WriteByte('_')
			r += 'a' - 'A'
		}
		b.WriteRune(r)
	}
	return b.String()
}
