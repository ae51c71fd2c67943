package main

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"pitgate/server/physics/assess"
)

// inputType is the document's.
var inputType = reflect.TypeFor[assess.Input]()

// quantityType is a number with basis and spread.
var quantityType = reflect.TypeFor[assess.Quantity]()

var float64Type = reflect.TypeFor[float64]()

// spot is a field of the document in one place: the object that holds it, or should.
type spot struct {
	// path is its place without the numbers of entries: "model.surfaces[].role".
	path  string
	field reflect.StructField
	name  string
	in    map[string]any
}

// given reports whether the object has the field.
func (s spot) given() bool { return s.in[s.name] != nil }

// spotsOf lists all fields of a document in the order of the contract, those left out too.
func spotsOf(root map[string]any) []spot { return spotsBelow(nil, "", inputType, root) }

func spotsBelow(list []spot, path string, of reflect.Type, in map[string]any) []spot {
	for i := range of.NumField() {
		s := spot{field: of.Field(i), name: nameOf(of.Field(i)), in: in}
		s.path = strings.TrimPrefix(path+"."+s.name, ".")
		list = append(list, s)
		switch value := in[s.name].(type) {
		case map[string]any:
			list = spotsIn(list, s.path, bare(s.field.Type), value)
		case []any:
			for _, entry := range value {
				list = spotsIn(list, s.path+"[]", bare(s.field.Type.Elem()), entry)
			}
		}
	}
	return list
}

// spotsIn lists the fields of what should be an object.
func spotsIn(list []spot, path string, of reflect.Type, value any) []spot {
	if in, ok := value.(map[string]any); ok && of.Kind() == reflect.Struct {
		return spotsBelow(list, path, of, in)
	}
	return list
}

// bare takes the pointer off a type.
func bare(t reflect.Type) reflect.Type {
	if t.Kind() == reflect.Pointer {
		return t.Elem()
	}
	return t
}

func nameOf(field reflect.StructField) string {
	name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
	return name
}

// namesOf are the values of an enumeration; none for any other type.
func namesOf(t reflect.Type) []string {
	if named, ok := reflect.Zero(t).Interface().(interface{ Names() []string }); ok && t.Kind() == reflect.String {
		return named.Names()
	}
	return nil
}

// eachPath visits every path of the contract once, however deep.
func eachPath(path string, of reflect.Type, visit func(path string, field reflect.StructField)) {
	for i := range of.NumField() {
		field := of.Field(i)
		inner := strings.TrimPrefix(path+"."+nameOf(field), ".")
		visit(inner, field)
		t := bare(field.Type)
		if t.Kind() == reflect.Slice {
			t, inner = bare(t.Elem()), inner+"[]"
		}
		if t.Kind() == reflect.Struct {
			eachPath(inner, t, visit)
		}
	}
}

// at are the spots of one path.
func at(spots []spot, path string) []spot {
	return slices.DeleteFunc(slices.Clone(spots), func(s spot) bool { return s.path != path })
}

// drop takes what stands at a path such as "model.surfaces[0].name" out of a document; an entry of a list cannot be dropped alone.
func drop(root map[string]any, path string) bool {
	var here any = root
	names := strings.Split(strings.NewReplacer("[", ".", "]", "").Replace(path), ".")
	for i, name := range names {
		switch value := here.(type) {
		case map[string]any:
			if i == len(names)-1 {
				_, known := value[name]
				delete(value, name)
				return known
			}
			here = value[name]
		case []any:
			var n int
			if _, err := fmt.Sscan(name, &n); err != nil || n >= len(value) {
				return false
			}
			here = value[n]
		default:
			return false
		}
	}
	return false
}
