package compare

import (
	"strings"

	"pitgate/server/physics/assess"
)

// chain finds the inputs of the document that a finding was computed from.
type chain struct{ from map[string][]string }

// newChain reads what the quantities and findings of a report were computed from. A finding reached by its id gives what it was computed from too.
func newChain(r assess.Report) chain {
	c := chain{from: make(map[string][]string, len(r.Quantities)+len(r.Findings))}
	for i := range r.Findings {
		c.from[r.Findings[i].ID] = r.Findings[i].From
	}
	for i := range r.Quantities {
		c.from[r.Quantities[i].ID] = r.Quantities[i].From
	}
	return c
}

// inputs are the paths of the document at the ends of a finding's chain. What is missing, and what its spread came from, is read too.
func (c chain) inputs(f *assess.Finding) map[string]bool {
	ends := map[string]bool{}
	if f == nil {
		return ends
	}
	seen := map[string]bool{}
	for _, source := range f.From {
		c.follow(source, seen, ends)
	}
	for _, path := range f.Missing {
		ends[path] = true
	}
	for _, share := range f.SpreadShares {
		if !assess.IsMethod(share.Input) {
			ends[share.Input] = true
		}
	}
	return ends
}

func (c chain) follow(source string, seen, ends map[string]bool) {
	if seen[source] {
		return
	}
	seen[source] = true
	if isInput(source) {
		ends[source] = true
	}
	for _, next := range c.from[source] {
		c.follow(next, seen, ends)
	}
}

// isInput tells a path of the document from the id of a quantity, which may begin with the same word, and from a method's own spread.
func isInput(source string) bool {
	head, _, _ := strings.Cut(source, ".")
	switch head {
	case "model", "field", "launchPlan", "day", "limits", "confirmations":
		return true
	}
	return false
}

// readOf lists the paths of the differences that either chain reads.
func readOf(differences []Difference, before, after map[string]bool) []string {
	var out []string
	for _, d := range differences {
		if reads(before, d.FromPath) || reads(after, d.ToPath) {
			out = append(out, d.Path())
		}
	}
	return out
}

// reads tells whether one of the inputs is the path, a part of it, or what it is a part of.
func reads(inputs map[string]bool, path string) bool {
	if path == "" {
		return false
	}
	if inputs[path] {
		return true
	}
	for input := range inputs {
		if within(path, input) || within(input, path) {
			return true
		}
	}
	return false
}

// within tells whether a path lies inside another.
func within(inner, outer string) bool {
	rest, ok := strings.CutPrefix(inner, outer)
	return ok && rest != "" && (rest[0] == '.' || rest[0] == '[')
}
