package document

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strconv"

	"pitgate/server/physics/assess"
)

// Edits lists what turns one input into another, number by number, in the order of the paths. Lists are compared place by place. An error only comes for a
// number that JSON cannot write.
func Edits(from, to assess.Input) ([]assess.InputEdit, error) {
	before, err := plainOf(from)
	if err != nil {
		return nil, err
	}
	after, err := plainOf(to)
	if err != nil {
		return nil, err
	}
	return editsAt("", before, after), nil
}

// plainOf is an input as plain JSON.
func plainOf(in assess.Input) (any, error) {
	text, err := json.Marshal(in)
	if err != nil {
		return nil, fmt.Errorf("edits: %w", err)
	}
	var plain any
	return plain, json.Unmarshal(text, &plain)
}

// editsAt compares two values at a path; nil stands for none.
func editsAt(path string, before, after any) []assess.InputEdit {
	was, wasBranch := branches(before)
	is, isBranch := branches(after)
	switch {
	case !wasBranch && !isBranch && before == after:
		return nil
	case !wasBranch && !isBranch:
		return []assess.InputEdit{editTo(path, after)}
	case before != nil && after != nil && wasBranch != isBranch:
		return []assess.InputEdit{editTo(path, after)}
	}
	var list []assess.InputEdit
	names := map[string]bool{}
	for name := range was {
		names[name] = true
	}
	for name := range is {
		names[name] = true
	}
	for _, name := range slices.Sorted(maps.Keys(names)) {
		list = append(list, editsAt(below(path, name, before, after), was[name], is[name])...)
	}
	return list
}

// branches are the entries of an object or of a list, by name or by place; false for a leaf.
func branches(value any) (map[string]any, bool) {
	switch v := value.(type) {
	case map[string]any:
		return v, true
	case []any:
		out := make(map[string]any, len(v))
		for i := range v {
			out[strconv.Itoa(i)] = v[i]
		}
		return out, true
	}
	return nil, false
}

// below is the path of an entry.
func below(path, name string, sides ...any) string {
	for _, side := range sides {
		if _, list := side.([]any); list {
			return path + "[" + name + "]"
		}
	}
	if path == "" {
		return name
	}
	return path + "." + name
}

// editTo writes a leaf.
func editTo(path string, value any) assess.InputEdit {
	edit := assess.InputEdit{Input: path}
	switch v := value.(type) {
	case float64:
		edit.Number = &v
	case string:
		edit.Text = &v
	case bool:
		edit.Flag = &v
	}
	return edit
}
