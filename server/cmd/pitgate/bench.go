package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/report"
)

// benchPart is the part of a report that the bench needs, as JSON.
type benchPart struct {
	Items    []assess.BenchItem  `json:"benchItems"`
	Cards    []assess.ReportCard `json:"cards"`
	Cautions []string            `json:"cautions"`
}

// runBench writes what is to be inspected on a model, or the cards for its runs and its first flight. Its status is 0 when that was written, since a
// list decides nothing.
func runBench(_ context.Context, args []string, std streams) (int, error) {
	set := flag.NewFlagSet("pitgate bench", flag.ContinueOnError)
	set.SetOutput(std.err)
	cards := set.Bool("cards", false, "write the cards of static run, taxi, range check and first flight instead")
	asJSON := set.Bool("json", false, "write list and cards as JSON")
	files, err := filesAndFlags(set, args)
	if err != nil {
		return 0, err
	}
	if len(files) != 1 {
		return 0, errors.New("give one document: pitgate bench FILE [--cards | --json]; - reads standard input")
	}
	input, _, err := weighInput(files[0], std.in)
	if err != nil {
		return tellFaults(std.err, err)
	}
	computed, err := document.Assess(input)
	switch {
	case err != nil:
		return 0, err
	case *asJSON:
		encoder := json.NewEncoder(std.out)
		encoder.SetIndent("", "  ")
		return report.ExitHolds, encoder.Encode(benchPart{computed.BenchItems, computed.Cards, computed.Cautions})
	case *cards:
		return report.ExitHolds, report.Cards(std.out, computed)
	default:
		return report.ExitHolds, report.Bench(std.out, computed)
	}
}
