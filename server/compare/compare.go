// Package compare says what differs between two documents and which findings moved by it.
//
// It is pure: two decoded documents and their two reports in, one Comparison out, so that the server, the command line and the page's core give the
// same answer.
package compare

import "pitgate/server/physics/assess"

// Comparison is what changed from one document to another, and which findings moved.
type Comparison struct {
	// Version of the core that computed both.
	CoreVersion string `json:"coreVersion,omitempty"`
	// SHA-256 over the canonical JSON of each document, in hex.
	FromDigest string `json:"fromDigest,omitempty"`
	ToDigest   string `json:"toDigest,omitempty"`
	// What differs, in the order of the document.
	Differences []Difference `json:"differences,omitempty"`
	// Every finding of either report, worst change first; those that did not move come last, in the order of the second report.
	Moves []Move `json:"moves,omitempty"`
	// How many of them moved.
	MovedCount int32 `json:"movedCount"`
	// Findings by verdict in each.
	FromCounts *assess.VerdictCounts `json:"fromCounts,omitempty"`
	ToCounts   *assess.VerdictCounts `json:"toCounts,omitempty"`
	// True when either rests on an estimated input.
	RestsOnEstimates bool `json:"restsOnEstimates,omitempty"`
	// What to bear in mind with every verdict.
	Cautions []string `json:"cautions,omitempty"`
}

// Of compares two documents by their reports. Nothing is computed here: ra is the report of a, rb that of b.
func Of(a, b assess.Input, ra, rb assess.Report) Comparison {
	differences := Differences(a, b)
	out := Comparison{
		CoreVersion: rb.CoreVersion, FromDigest: ra.InputDigest, ToDigest: rb.InputDigest,
		Differences: differences, Moves: Moves(ra, rb, differences),
		FromCounts: ra.Counts, ToCounts: rb.Counts,
		RestsOnEstimates: ra.RestsOnEstimates || rb.RestsOnEstimates, Cautions: cautions(ra.Cautions, rb.Cautions),
	}
	for i := range out.Moves {
		if out.Moves[i].Moved {
			out.MovedCount++
		}
	}
	return out
}

// cautions joins those of both reports, each once.
func cautions(a, b []string) []string {
	var out []string
	seen := map[string]bool{}
	for _, list := range [][]string{a, b} {
		for _, text := range list {
			if !seen[text] {
				seen[text] = true
				out = append(out, text)
			}
		}
	}
	return out
}
