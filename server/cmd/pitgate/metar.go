package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"io"
	"strings"
	"time"

	"pitgate/server/document"
	"pitgate/server/metar"
	"pitgate/server/report"
)

// runMetar reads an aerodrome report and writes what it says of the day, as text or as the JSON of the document's part.
func runMetar(_ context.Context, args []string, std streams) (int, error) {
	set := flag.NewFlagSet("pitgate metar", flag.ContinueOnError)
	set.SetOutput(std.err)
	asJSON := set.Bool("json", false, "write the conditions of the day as JSON")
	near := set.String("near", "", "time that decides the month, RFC 3339; now when absent")
	words, flags := groupsAndFlags(args)
	if err := set.Parse(flags); err != nil {
		return 0, err
	}
	text, err := reportText(words, std.in)
	if err != nil {
		return 0, err
	}
	moment := time.Now()
	if *near != "" {
		if moment, err = time.Parse(time.RFC3339, *near); err != nil {
			return 0, errors.New("near: has to be a time with its offset, such as 2026-11-25T14:30:00+01:00")
		}
	}
	decoded, err := metar.Decode(text)
	if err != nil {
		return 0, err
	}
	day, notes := document.DayOf(decoded, text, moment)
	if !*asJSON {
		return report.ExitHolds, report.Weather(std.out, decoded, day, notes)
	}
	encoder := json.NewEncoder(std.out)
	encoder.SetIndent("", "  ")
	return report.ExitHolds, encoder.Encode(day)
}

// groupsAndFlags takes apart the groups of a report, which may begin with a minus as -RA does, and the flags, which begin with two.
func groupsAndFlags(args []string) (groups, flags []string) {
	for i := 0; i < len(args); i++ {
		switch {
		case args[i] == "--near" && i+1 < len(args):
			flags = append(flags, args[i], args[i+1])
			i++
		case strings.HasPrefix(args[i], "--"), args[i] == "-h":
			flags = append(flags, args[i])
		default:
			groups = append(groups, args[i])
		}
	}
	return groups, flags
}

// reportText joins the words of the command line to one text, or reads standard input for "-".
func reportText(words []string, in io.Reader) (string, error) {
	if len(words) == 0 {
		return "", errors.New("give one report: pitgate metar TEXT [--json]; - reads standard input")
	}
	if len(words) > 1 || words[0] != "-" {
		return strings.Join(words, " "), nil
	}
	text, err := io.ReadAll(io.LimitReader(in, metar.MaximumLength+1))
	return strings.TrimSpace(string(text)), err
}
