package main

import (
	"fmt"
	"runtime"
	"slices"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
)

// remedies looks for the least changes that let the open findings of a document hold, or one of its findings; with samples it confirms each by them.
func remedies(input assess.Input, computed assess.Report, finding string, count, seed int) ([]assess.Remedy, error) {
	known := func(f assess.Finding) bool { return f.ID == finding }
	if finding != "" && !slices.ContainsFunc(computed.Findings, known) {
		return nil, fmt.Errorf("finding %q: the report has none of this name", finding)
	}
	return document.Remedies(input, assess.RemedyOptions{
		FindingID: finding, Workers: min(runtime.NumCPU(), 64), Samples: count, Seed: int32(seed), Strict: count > 0,
	})
}
