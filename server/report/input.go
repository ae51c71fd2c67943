package report

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"

	"pitgate/server/physics/assess"
)

// notGiven stands where the document is silent and the core has its own.
const notGiven = "not given: the core's own"

// bases are the words for how a number is known.
var bases = map[assess.Basis]string{
	assess.BasisMeasured: "measured", assess.BasisMakersFigure: "maker's figure", assess.BasisCalculated: "calculated",
	assess.BasisEstimated: "estimated", "": "basis not said",
}

// tree returns a document as the values that JSON knows.
func tree(in assess.Input) any {
	var root any
	text, err := json.Marshal(in)
	if err != nil || json.Unmarshal(text, &root) != nil {
		return nil
	}
	return root
}

// input writes what the document holds at a path.
func (e *explanation) input(path string) string {
	value, ok := find(e.document, path)
	if !ok {
		return notGiven
	}
	switch v := value.(type) {
	case float64:
		return strconv.FormatFloat(v, 'g', 6, 64)
	case string:
		return v
	case bool:
		return map[bool]string{true: "yes", false: "no"}[v]
	case []any:
		return fmt.Sprintf("%d given", len(v))
	case map[string]any:
		return described(v, path)
	}
	return notGiven
}

// described writes a quantity with basis and spread, or says that an object is described.
func described(object map[string]any, path string) string {
	var q assess.Quantity
	if _, ok := object["value"]; ok {
		text, err := json.Marshal(object)
		if err == nil && json.Unmarshal(text, &q) == nil && q.Value != nil {
			return fmt.Sprintf("%.6g, %s, spread %.2g", *q.Value, bases[q.Basis], q.Deviation(path))
		}
	}
	if name, ok := object["name"].(string); ok {
		return name
	}
	return "described"
}

// find walks a path such as "model.surfaces[0].name" through decoded JSON.
func find(value any, path string) (any, bool) {
	for part := range strings.SplitSeq(path, ".") {
		name, index, listed := strings.Cut(part, "[")
		object, ok := value.(map[string]any)
		if !ok {
			return nil, false
		}
		if value, ok = object[name]; !ok {
			return nil, false
		}
		if !listed {
			continue
		}
		items, ok := value.([]any)
		i, err := strconv.Atoi(strings.TrimSuffix(index, "]"))
		if !ok || err != nil || i < 0 || i >= len(items) {
			return nil, false
		}
		value = items[i]
	}
	return value, true
}
