package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"io"
	"os"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/report"
)

// runAssess computes one document and writes the report as text or as JSON, or the chain behind one of its numbers.
func runAssess(_ context.Context, args []string, std streams) (int, error) {
	set := flag.NewFlagSet("pitgate assess", flag.ContinueOnError)
	set.SetOutput(std.err)
	asJSON := set.Bool("json", false, "write the whole report as JSON")
	var parts report.Options
	set.BoolVar(&parts.Quantities, "quantities", false, "add every computed intermediate")
	set.BoolVar(&parts.Methods, "methods", false, "add method, source and validity of every finding")
	window := set.Bool("window", false, "write which winds launch and circuit hold in instead")
	explain := set.String("explain", "", "write the chain behind one finding or quantity, e.g. stall.speed")
	var spread samples
	set.Var(&spread, "spread", "sample the spread of every input at once; `N` samples, 512 when none are given")
	seed := set.Int("seed", 1, "seed of the samples")
	remedy := set.Bool("remedy", false, "add the least changes that let open findings hold")
	finding := set.String("finding", "", "with --remedy: mend this finding alone, e.g. launch.end_speed")
	files, err := filesAndFlags(set, withCount(args))
	if err != nil {
		return 0, err
	}
	if len(files) != 1 {
		return 0, errors.New("give one document: pitgate assess FILE [--json | --window | --spread [N] [--seed S] | --explain ID] [--remedy [--finding ID]]; - reads standard input")
	}
	input, err := readDocument(files[0], std.in)
	var faults document.Errors
	if errors.As(err, &faults) {
		for _, f := range faults {
			tell(std.err, "%s: %s\n", f.Path, f.Message)
		}
		return exitUsage, nil
	}
	if err != nil {
		return 0, err
	}
	if *window {
		return writeWindow(std.out, input, *asJSON)
	}
	computed, err := assessed(input, int(spread), *seed, std.err)
	if err != nil {
		return 0, err
	}
	if *remedy || *finding != "" {
		if computed.Remedies, err = remedies(input, computed, *finding, int(spread), *seed); err != nil {
			return 0, err
		}
	}
	if *explain != "" {
		return 0, report.Explain(std.out, input, computed, *explain)
	}
	return report.ExitStatus(computed), write(std.out, computed, *asJSON, parts)
}

// writeWindow finds the winds that hold and writes them as text or as JSON.
func writeWindow(w io.Writer, input assess.Input, asJSON bool) (int, error) {
	found, err := document.Window(input)
	if err != nil {
		return 0, err
	}
	if !asJSON {
		return report.WindowStatus(found), report.Window(w, found)
	}
	encoder := json.NewEncoder(w)
	encoder.SetIndent("", "  ")
	return report.WindowStatus(found), encoder.Encode(found)
}

// filesAndFlags lets flags stand before or after the file.
func filesAndFlags(set *flag.FlagSet, args []string) (files []string, err error) {
	for {
		if err := set.Parse(args); err != nil {
			return nil, err
		}
		if set.NArg() == 0 {
			return files, nil
		}
		files, args = append(files, set.Arg(0)), set.Args()[1:]
	}
}

// readDocument reads one document; it reads no more than a document may have.
func readDocument(name string, in io.Reader) (assess.Input, error) {
	if name != "-" {
		file, err := os.Open(name)
		if err != nil {
			return assess.Input{}, err
		}
		defer func() { _ = file.Close() }() // it was only read
		in = file
	}
	text, err := io.ReadAll(io.LimitReader(in, document.MaximumBytes+1))
	if err != nil {
		return assess.Input{}, err
	}
	return document.Decode(text)
}

// write writes a report as text with the parts asked for, or whole as JSON.
func write(w io.Writer, r assess.Report, asJSON bool, parts report.Options) error {
	if !asJSON {
		return report.Write(w, r, parts)
	}
	encoder := json.NewEncoder(w)
	encoder.SetIndent("", "  ")
	return encoder.Encode(r)
}
