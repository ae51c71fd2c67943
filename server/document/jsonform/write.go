// Package jsonform writes the structs of the document and of the report as JSON: the same bytes as encoding/json, of which the page's core needs so little
// that a phone need not fetch the rest.
package jsonform

import (
	"errors"
	"math"
	"reflect"
	"strconv"
)

// Marshal writes a value made of structs, pointers, lists, texts, truth values and numbers. A field is left out when its tag says omitempty and nothing is
// in it. An error comes for a number that JSON cannot write and for a value of another kind.
func Marshal(value any) ([]byte, error) { return style{}.appendValue(nil, reflect.ValueOf(value)) }

// Canonical writes the same in the form of RFC 8785: members in the order of their names, one spelling of every number and of every text.
func Canonical(value any) ([]byte, error) {
	return style{canonical: true}.appendValue(nil, reflect.ValueOf(value))
}

// style is how values are written: in the order of their fields and for a page, or in the form of RFC 8785.
type style struct{ canonical bool }

var (
	errNumber = errors.New("jsonform: a number is infinite or none")
	errKind   = errors.New("jsonform: a value is of a kind that is not written")
)

func (s style) appendValue(out []byte, v reflect.Value) ([]byte, error) {
	switch v.Kind() {
	case reflect.Struct:
		return s.appendObject(out, v)
	case reflect.Slice, reflect.Array:
		return s.appendList(out, v)
	case reflect.Pointer:
		if v.IsNil() {
			return append(out, "null"...), nil
		}
		return s.appendValue(out, v.Elem())
	case reflect.String:
		return s.appendText(out, v.String()), nil
	case reflect.Bool:
		return strconv.AppendBool(out, v.Bool()), nil
	case reflect.Int, reflect.Int32, reflect.Int64:
		return strconv.AppendInt(out, v.Int(), 10), nil
	case reflect.Float64:
		return s.appendNumber(out, v.Float())
	default:
		return out, errKind
	}
}

func (s style) appendObject(out []byte, v reflect.Value) ([]byte, error) {
	out = append(out, '{')
	first := len(out)
	for _, f := range s.membersOf(v.Type()) {
		value := v.Field(f.index)
		if f.omitEmpty && empty(value) {
			continue
		}
		if len(out) > first {
			out = append(out, ',')
		}
		var err error
		if out, err = s.appendValue(append(out, f.head...), value); err != nil {
			return out, err
		}
	}
	return append(out, '}'), nil
}

// empty tells whether omitempty leaves a value out: a list without entries, and the zero of all but structs.
func empty(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Struct:
		return false
	case reflect.Slice, reflect.Array:
		return v.Len() == 0
	default:
		return v.IsZero()
	}
}

func (s style) appendList(out []byte, v reflect.Value) ([]byte, error) {
	if v.Kind() == reflect.Slice && v.IsNil() {
		return append(out, "null"...), nil
	}
	out = append(out, '[')
	for i := range v.Len() {
		if i > 0 {
			out = append(out, ',')
		}
		var err error
		if out, err = s.appendValue(out, v.Index(i)); err != nil {
			return out, err
		}
	}
	return append(out, ']'), nil
}

// appendNumber writes the shortest digits that read as the same number, with an exponent where ECMAScript writes one.
func (s style) appendNumber(out []byte, number float64) ([]byte, error) {
	size := math.Abs(number)
	if !(size <= math.MaxFloat64) {
		return out, errNumber
	}
	if size == 0 && s.canonical {
		return append(out, '0'), nil // of either sign
	}
	if size == 0 || (size >= 1e-6 && size < 1e21) {
		return strconv.AppendFloat(out, number, 'f', -1, 64), nil
	}
	out = strconv.AppendFloat(out, number, 'e', -1, 64)
	// e-09 is written e-9.
	if n := len(out); out[n-4] == 'e' && out[n-3] == '-' && out[n-2] == '0' {
		out[n-2] = out[n-1]
		out = out[:n-1]
	}
	return out, nil
}
