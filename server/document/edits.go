package document

import (
	"reflect"
	"strconv"
	"strings"

	"pitgate/server/physics/assess"
)

// Edits lists what turns one input into another, number by number, in the order of the fields. Lists are compared place by place; places that the second
// lacks are taken away.
func Edits(from, to assess.Input) []assess.InputEdit {
	return editsOf(nil, "", reflect.ValueOf(from), reflect.ValueOf(to))
}

// editsOf compares two values of one type at a path; an invalid value stands for none.
func editsOf(list []assess.InputEdit, path string, before, after reflect.Value) []assess.InputEdit {
	before, after = bare(before), bare(after)
	switch kindOf(before, after) {
	case reflect.Invalid:
		return list
	case reflect.Struct:
		return editsOfFields(list, path, before, after)
	case reflect.Slice:
		return editsOfPlaces(list, path, before, after)
	default:
		if before.IsValid() && after.IsValid() && before.Interface() == after.Interface() {
			return list
		}
		return append(list, editTo(path, after))
	}
}

// bare follows a pointer; none is an invalid value, as are an empty text and an empty list, which no document holds.
func bare(v reflect.Value) reflect.Value {
	if v.IsValid() && v.Kind() == reflect.Pointer {
		v = v.Elem()
	}
	if v.IsValid() && (v.Kind() == reflect.String || v.Kind() == reflect.Slice) && v.Len() == 0 {
		return reflect.Value{}
	}
	return v
}

func kindOf(before, after reflect.Value) reflect.Kind {
	if before.IsValid() {
		return before.Kind()
	}
	return after.Kind()
}

func editsOfFields(list []assess.InputEdit, path string, before, after reflect.Value) []assess.InputEdit {
	of := before
	if !before.IsValid() {
		of = after
	}
	for i := range of.NumField() {
		name, _, _ := strings.Cut(of.Type().Field(i).Tag.Get("json"), ",")
		list = editsOf(list, joined(path, name), fieldOf(before, i), fieldOf(after, i))
	}
	return list
}

func fieldOf(v reflect.Value, i int) reflect.Value {
	if !v.IsValid() {
		return v
	}
	return v.Field(i)
}

func editsOfPlaces(list []assess.InputEdit, path string, before, after reflect.Value) []assess.InputEdit {
	was, is := lengthOf(before), lengthOf(after)
	for i := range is {
		list = editsOf(list, path+"["+strconv.Itoa(i)+"]", placeOf(before, i), after.Index(i))
	}
	for i := was - 1; i >= is; i-- {
		list = append(list, assess.InputEdit{Input: path + "[" + strconv.Itoa(i) + "]"})
	}
	return list
}

func lengthOf(v reflect.Value) int {
	if !v.IsValid() {
		return 0
	}
	return v.Len()
}

func placeOf(v reflect.Value, i int) reflect.Value {
	if i < lengthOf(v) {
		return v.Index(i)
	}
	return reflect.Value{}
}

func joined(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

// editTo writes what stands at a path; an invalid value takes it away.
func editTo(path string, value reflect.Value) assess.InputEdit {
	edit := assess.InputEdit{Input: path}
	if !value.IsValid() {
		return edit
	}
	switch value.Kind() {
	case reflect.String:
		text := value.String()
		edit.Text = &text
	case reflect.Bool:
		flag := value.Bool()
		edit.Flag = &flag
	default:
		number := numberOf(value)
		edit.Number = &number
	}
	return edit
}

// numberOf reads a number of either kind that a document holds.
func numberOf(value reflect.Value) float64 {
	if value.CanInt() {
		return float64(value.Int())
	}
	return value.Float()
}
