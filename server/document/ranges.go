package document

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"unicode/utf8"
)

// The tags that carry a field's bounds: `range:"gt=0,lte=5"` for numbers, `range:"min_len=1,max_len=60"` for texts,
// `range:"max_items=12"` for lists, `pattern:"..."` for texts of a fixed form and `items:"..."` for a list's items.
// Those of a Quantity bound its value. They repeat the contract's bounds, and
// testdata/ranges says why each is what it is; tests hold all three together.

// bound is one entry of a range tag.
type bound struct {
	name  string
	value float64
}

func bounds(field reflect.StructField) []bound {
	tag := field.Tag.Get("range")
	if tag == "" {
		return nil
	}
	var list []bound
	for entry := range strings.SplitSeq(tag, ",") {
		name, text, _ := strings.Cut(entry, "=")
		value, _ := strconv.ParseFloat(text, 64)
		list = append(list, bound{name: name, value: value})
	}
	return list
}

func itemTag(field reflect.StructField) string {
	items := field.Tag.Get("items")
	if items == "" {
		return ""
	}
	return fmt.Sprintf("range:%q", items)
}

var comparisons = map[string]struct {
	words string
	holds func(value, limit float64) bool
}{
	"gt":  {"greater than", func(v, l float64) bool { return v > l }},
	"gte": {"at least", func(v, l float64) bool { return v >= l }},
	"lt":  {"less than", func(v, l float64) bool { return v < l }},
	"lte": {"at most", func(v, l float64) bool { return v <= l }},
}

// rangeFault says what is wrong with a number, and which unit it may have been meant in, or nothing.
func rangeFault(field reflect.StructField, value float64) string {
	fault := boundFault(field, value)
	if fault == "" {
		return ""
	}
	return fault + ", got " + plain(value) + unitHint(field, value)
}

// boundFault says which bound a number breaks, or nothing.
func boundFault(field reflect.StructField, value float64) string {
	for _, b := range bounds(field) {
		comparison, ok := comparisons[b.name]
		switch {
		case !ok || comparison.holds(value, b.value):
		case b.name == "gte" && b.value == 0:
			return "must not be negative"
		default:
			return "must be " + comparison.words + " " + plain(b.value)
		}
	}
	return ""
}

// textFault says what is wrong with a text, or nothing.
func textFault(field reflect.StructField, text string) string {
	length := float64(utf8.RuneCountInString(text))
	if least, ok := leastCount(field); ok && least > 0 && length > 0 && strings.TrimSpace(text) == "" {
		return "must not be blank"
	}
	for _, b := range bounds(field) {
		switch {
		case b.name == "min_len" && length < b.value:
			return fmt.Sprintf("must have at least %s characters, got %s", plain(b.value), plain(length))
		case b.name == "max_len" && length > b.value:
			return fmt.Sprintf("must have at most %s characters, got %s", plain(b.value), plain(length))
		}
	}
	pattern := field.Tag.Get("pattern")
	if pattern != "" && !hasForm(pattern, text) {
		return fmt.Sprintf("must have the form %s, got %q", pattern, text)
	}
	return ""
}

// countFault says what is wrong with the length of a list, or nothing.
func countFault(field reflect.StructField, count int) string {
	for _, b := range bounds(field) {
		switch {
		case b.name == "max_items" && float64(count) > b.value:
			return fmt.Sprintf("must have at most %s entries, got %d", plain(b.value), count)
		case b.name == "min_items" && float64(count) < b.value:
			return fmt.Sprintf("must have at least %s entries, got %d", plain(b.value), count)
		}
	}
	return ""
}

// leastCount is the least length of a list or text that may not be left out.
func leastCount(field reflect.StructField) (int, bool) {
	for _, b := range bounds(field) {
		if b.name == "min_items" || b.name == "min_len" {
			return int(b.value), true
		}
	}
	return 0, false
}

func plain(value float64) string { return strconv.FormatFloat(value, 'g', -1, 64) }
