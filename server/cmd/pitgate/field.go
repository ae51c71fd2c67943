package main

import (
	"context"
	"errors"
	"flag"
	"io"
	"os"

	"pitgate/server/document"
	"pitgate/server/report"
	"pitgate/server/site"
)

// runField checks the description of a flying site. Its status is 0 when nothing stands out, 1 when something is worth a second look and 2 when
// the description cannot be kept.
func runField(_ context.Context, args []string, std streams) (int, error) {
	set := flag.NewFlagSet("pitgate field", flag.ContinueOnError)
	set.SetOutput(std.err)
	files, err := filesAndFlags(set, args)
	switch {
	case err != nil:
		return 0, err
	case len(files) != 1:
		return 0, errors.New("give one description: pitgate field FILE; - reads standard input")
	}
	text, err := readBounded(files[0], std.in)
	if err != nil {
		return 0, err
	}
	field, err := document.DecodeField(text)
	if err != nil {
		return tellFaults(std.err, err)
	}
	remarks := site.Remarks(field)
	for _, r := range remarks {
		tell(std.out, "%s\n", remarkLine(r))
	}
	if len(remarks) > 0 {
		return report.ExitDecision, nil
	}
	tell(std.out, "nothing stands out\n")
	return report.ExitHolds, nil
}

// remarkLine is one remark: where it is, the part's name where it has one, and what stands out.
func remarkLine(r site.Remark) string {
	if r.Part == "" {
		return r.Path + ": " + r.Text
	}
	return r.Path + " (" + r.Part + "): " + r.Text
}

// readBounded reads a document of any size up to one byte more than is decoded, so that a larger one is refused by its size.
func readBounded(name string, in io.Reader) ([]byte, error) {
	if name != "-" {
		file, err := os.Open(name)
		if err != nil {
			return nil, err
		}
		defer func() { _ = file.Close() }() // it was only read
		in = file
	}
	return io.ReadAll(io.LimitReader(in, document.MaximumBytes+1))
}
