package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"

	"pitgate/server/physics/assess"
	"pitgate/server/report"
)

// runRoll works out the rolling tests of a whole document or of a model alone. Its status is 0 when they give a friction, 1 when something is missing.
func runRoll(_ context.Context, args []string, std streams) (int, error) {
	set := flag.NewFlagSet("pitgate roll", flag.ContinueOnError)
	set.SetOutput(std.err)
	asJSON := set.Bool("json", false, "write the tests as JSON")
	files, err := filesAndFlags(set, args)
	if err != nil {
		return 0, err
	}
	if len(files) != 1 {
		return 0, errors.New("give one document: pitgate roll FILE [--json]; - reads standard input")
	}
	input, _, err := weighInput(files[0], std.in)
	if err != nil {
		return tellFaults(std.err, err)
	}
	done, err := assess.Rolling(input)
	if err != nil {
		return 0, err
	}
	status := report.ExitHolds
	if done.FrictionRatio == nil {
		status = report.ExitDecision
	}
	if !*asJSON {
		return status, report.Rolling(std.out, done)
	}
	encoder := json.NewEncoder(std.out)
	encoder.SetIndent("", "  ")
	return status, encoder.Encode(done)
}
