package main

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"pitgate/server/physics/assess"
)

// rangedField is a field whose tag may hold a range.
type rangedField = reflect.StructField

// bound is one end of a range.
type bound struct {
	name  string // gt, gte, lt or lte
	value float64
}

// rangeOf reads the ends of a number's range.
func rangeOf(field rangedField) []bound {
	var out []bound
	for entry := range strings.SplitSeq(field.Tag.Get("range"), ",") {
		name, text, _ := strings.Cut(entry, "=")
		value, err := strconv.ParseFloat(text, 64)
		if err == nil && (name[0] == 'g' || name == "lt" || name == "lte") {
			out = append(out, bound{name, value})
		}
	}
	return out
}

// knownValues are what the documents of testdata say by name of field, so that what is invented is likely.
type knownValues map[string][]any

func valuesOf(documents []map[string]any) knownValues {
	known := knownValues{}
	for _, root := range documents {
		for _, s := range spotsOf(root) {
			switch value := s.in[s.name].(type) {
			case float64, string:
				known[s.name] = append(known[s.name], value)
			case map[string]any:
				if bare(s.field.Type) == quantityType && value["value"] != nil {
					known[s.name] = append(known[s.name], value["value"])
				}
			}
		}
	}
	return known
}

// invented is a value for a field that has none, of what the documents of testdata say under that name where they do.
func (v variation) invented(of reflect.Type, field rangedField, name string) any {
	of = bare(of)
	switch {
	case of == quantityType:
		return v.quantity(field, name)
	case of.Kind() == reflect.Struct:
		return v.part(of)
	case of.Kind() == reflect.Slice:
		return v.entries(of, field, name)
	case namesOf(of) != nil:
		return namesOf(of)[v.by.IntN(len(namesOf(of)))]
	case of.Kind() == reflect.Bool:
		return v.by.IntN(2) == 0
	case of.Kind() == reflect.String:
		return v.word(name)
	case of.Kind() == reflect.Int32:
		return math.Round(v.within(field, float64(1+v.by.IntN(3))))
	}
	return v.within(field, v.likely(name))
}

// part is an object with most of its fields.
func (v variation) part(of reflect.Type) map[string]any {
	out := map[string]any{}
	for i := range of.NumField() {
		field := of.Field(i)
		if v.by.IntN(10) < 7 || nameOf(field) == "name" {
			out[nameOf(field)] = v.invented(field.Type, field, nameOf(field))
		}
	}
	return out
}

// entries is a list of one to three.
func (v variation) entries(of reflect.Type, field rangedField, name string) []any {
	var out []any
	for range 1 + v.by.IntN(3) {
		out = append(out, v.invented(of.Elem(), field, name))
	}
	return out
}

// quantity is a number with a basis, and a spread or none.
func (v variation) quantity(field rangedField, name string) map[string]any {
	value := v.within(field, v.likely(name))
	q := map[string]any{"value": value}
	bases := assess.Basis("").Names()
	if i := v.by.IntN(len(bases) + 1); i < len(bases) {
		q["basis"] = bases[i]
	}
	if v.by.IntN(2) == 0 {
		q["spread"] = math.Abs(value) * v.by.Float64() / 5
	}
	return q
}

// likely is a number known under the name, moved, or any at all.
func (v variation) likely(name string) float64 {
	for _, value := range v.draw(name) {
		if number, ok := value.(float64); ok {
			return v.number("value", number)
		}
	}
	return math.Pow(10, 3*v.by.Float64()-2)
}

// draw is one of the values known under a name; none where none is.
func (v variation) draw(name string) []any {
	values := v.known[name]
	if len(values) == 0 {
		return nil
	}
	return values[v.by.IntN(len(values)):][:1]
}

// word is a text known under the name, or any.
func (v variation) word(name string) string {
	for _, value := range v.draw(name) {
		if text, ok := value.(string); ok && name != "name" {
			return text
		}
	}
	switch {
	case strings.HasSuffix(name, "Date"), name == "date":
		return fmt.Sprintf("2026-%02d-%02d", 1+v.by.IntN(12), 1+v.by.IntN(28))
	case strings.HasPrefix(name, "quiet"):
		return fmt.Sprintf("%02d:30", v.by.IntN(24))
	case name == "designation":
		return fmt.Sprintf("%d4%02d", v.by.IntN(4), 8+v.by.IntN(10))
	}
	return v.name()
}

// name is one that no other part has.
func (v variation) name() string { return fmt.Sprintf("part %d", v.by.Uint32()) }

// within brings a number into the field's range.
func (v variation) within(field rangedField, number float64) float64 {
	for _, b := range rangeOf(field) {
		switch {
		case b.name[0] == 'g' && number <= b.value:
			number = b.value + v.by.Float64()
		case b.name[0] == 'l' && number >= b.value:
			number = b.value * v.by.Float64()
		}
	}
	return number
}
