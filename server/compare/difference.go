package compare

import (
	"fmt"

	"pitgate/server/physics/assess"
)

// ChangeKind says: what became of one place of the document.
type ChangeKind string

// Values of ChangeKind.
const (
	// It stands in both, with another value.
	ChangeKindChanged ChangeKind = "CHANGE_KIND_CHANGED"
	// It stands in the second document only.
	ChangeKindAdded ChangeKind = "CHANGE_KIND_ADDED"
	// It stands in the first document only.
	ChangeKindRemoved ChangeKind = "CHANGE_KIND_REMOVED"
	// The entries of a list that stand in both follow in another order.
	ChangeKindReordered ChangeKind = "CHANGE_KIND_REORDERED"
)

// Names lists every value that may stand in a comparison.
func (ChangeKind) Names() []string {
	return []string{string(ChangeKindChanged), string(ChangeKindAdded), string(ChangeKindRemoved), string(ChangeKindReordered)}
}

// Difference is one place at which two documents differ.
type Difference struct {
	Kind ChangeKind `json:"kind,omitempty"`
	// Path in the first document; empty when it was added.
	FromPath string `json:"fromPath,omitempty"`
	// Path in the second document; empty when it was removed.
	ToPath string `json:"toPath,omitempty"`
	// Name of the innermost part of a list it belongs to, where that has one.
	PartName string `json:"partName,omitempty"`
	// What stands there in each; absent where nothing does.
	From *ComparedValue `json:"from,omitempty"`
	To   *ComparedValue `json:"to,omitempty"`
	// Of a quantity in both: which of "value", "basis" and "spread" differ.
	QuantityParts []string `json:"quantityParts,omitempty"`
}

// Path is where it stands in the second document, or where it stood in the first when it was removed.
func (d Difference) Path() string {
	if d.ToPath != "" {
		return d.ToPath
	}
	return d.FromPath
}

// ComparedValue is what stands at one place of a document: exactly one of number, text, truth, quantity and part.
type ComparedValue struct {
	// A bare number, in the unit that the path ends with.
	Number   *float64         `json:"number,omitempty"`
	Text     string           `json:"text,omitempty"`
	Truth    *bool            `json:"truth,omitempty"`
	Quantity *assess.Quantity `json:"quantity,omitempty"`
	// A whole part or list, as proto3 JSON; of a changed order, the names in their order.
	PartJSON string `json:"partJson,omitempty"`
	// Entries of a list.
	EntryCount int32 `json:"entryCount"`
}

// place is where two documents are compared.
type place struct{ from, to, name string }

func (p place) field(name string) place {
	return place{joined(p.from, name), joined(p.to, name), p.name}
}

// entry is the place of two entries of a list, which may stand at different positions.
func (p place) entry(from, to int, name string) place {
	if name == "" {
		name = p.name
	}
	return place{fmt.Sprintf("%s[%d]", p.from, from), fmt.Sprintf("%s[%d]", p.to, to), name}
}

func joined(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}
