package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"io"

	"pitgate/server/compare"
	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/report"
)

// runCompare computes two documents and writes what differs and which findings moved. Its status is that of the second document, as assess gives it.
func runCompare(_ context.Context, args []string, std streams) (int, error) {
	set := flag.NewFlagSet("pitgate compare", flag.ContinueOnError)
	set.SetOutput(std.err)
	asJSON := set.Bool("json", false, "write the whole comparison as JSON")
	files, err := filesAndFlags(set, args)
	if err != nil {
		return 0, err
	}
	if len(files) != 2 || (files[0] == "-" && files[1] == "-") {
		return 0, errors.New("give two documents: pitgate compare FROM TO [--json]; - reads one of them from standard input")
	}
	var inputs [2]assess.Input
	for i, name := range files {
		if inputs[i], err = readDocument(name, std.in); err != nil {
			return tellFaultsOf(std.err, name, err)
		}
	}
	before, err := document.Assess(inputs[0])
	if err != nil {
		return 0, err
	}
	after, err := document.Assess(inputs[1])
	if err != nil {
		return 0, err
	}
	found := compare.Of(inputs[0], inputs[1], before, after)
	status := report.ExitStatus(after)
	if !*asJSON {
		return status, report.Compared(std.out, found, files[0], files[1])
	}
	encoder := json.NewEncoder(std.out)
	encoder.SetIndent("", "  ")
	return status, encoder.Encode(found)
}

// tellFaultsOf names each fault of one of several documents.
func tellFaultsOf(w io.Writer, name string, err error) (int, error) {
	var faults document.Errors
	if !errors.As(err, &faults) {
		return 0, err
	}
	for _, f := range faults {
		tell(w, "%s: %s: %s\n", name, f.Path, f.Message)
	}
	return exitUsage, nil
}
