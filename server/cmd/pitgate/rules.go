package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"slices"
	"strings"
	"time"

	"pitgate/server/report"
	"pitgate/server/rulepack"
)

// runRules lists the supplied rule packs, shows one, or makes the strictest of several for a document. A pack is named by its id, or by a file of one's
// own that has a dot or a slash in its name.
func runRules(_ context.Context, args []string, std streams) (int, error) {
	set := flag.NewFlagSet("pitgate rules", flag.ContinueOnError)
	set.SetOutput(std.err)
	asJSON := set.Bool("json", false, "write the pack, or the composed limits, as JSON")
	of := set.String("for", "", "make the strictest of the packs named, or of all, for this document; - reads standard input")
	date := set.String("on", time.Now().Format(time.DateOnly), "day on which the packs are looked at")
	names, err := filesAndFlags(set, args)
	if err != nil {
		return 0, err
	}
	if _, err := time.Parse(time.DateOnly, *date); err != nil {
		return 0, fmt.Errorf("on: must be a date such as 2026-05-16, got %q", *date)
	}
	packs, err := packsNamed(names, std)
	switch {
	case err != nil:
		return tellFaults(std.err, err)
	case *of != "":
		return strictest(*of, packs, *asJSON, std)
	case len(names) == 0 && !*asJSON:
		return report.ExitHolds, report.RulePacks(std.out, packs, *date)
	default:
		return report.ExitHolds, showPacks(packs, *asJSON, *date, std)
	}
}

// packsNamed are the packs of the names, or all supplied ones.
func packsNamed(names []string, std streams) ([]rulepack.Pack, error) {
	supplied, err := rulepack.Supplied()
	if err != nil || len(names) == 0 {
		return supplied, err
	}
	var packs []rulepack.Pack
	for _, name := range names {
		i := slices.IndexFunc(supplied, func(p rulepack.Pack) bool { return p.ID == name })
		if i >= 0 {
			packs = append(packs, supplied[i])
			continue
		}
		if !strings.ContainsAny(name, "./") {
			return nil, fmt.Errorf("no supplied pack is named %s: pitgate rules lists them", name)
		}
		text, err := readBounded(name, std.in)
		if err != nil {
			return nil, err
		}
		pack, err := rulepack.Decode(text)
		if err != nil {
			return nil, err
		}
		packs = append(packs, pack)
	}
	return packs, nil
}

// showPacks writes packs one after the other.
func showPacks(packs []rulepack.Pack, asJSON bool, date string, std streams) error {
	if asJSON {
		return writeJSON(std, packs)
	}
	for _, pack := range packs {
		if err := report.RulePack(std.out, pack, date); err != nil {
			return err
		}
	}
	return nil
}

// strictest makes the limits of a document from packs.
func strictest(name string, packs []rulepack.Pack, asJSON bool, std streams) (int, error) {
	in, err := readDocument(name, std.in)
	if err != nil {
		return tellFaults(std.err, err)
	}
	made, err := rulepack.Compose(packs, in)
	if err != nil {
		return tellFaults(std.err, err)
	}
	if asJSON {
		return report.ExitHolds, writeJSON(std, made.Limits)
	}
	if len(made.Figures) == 0 {
		return 0, errors.New("the packs named ask for no figure")
	}
	return report.ExitHolds, report.Strictest(std.out, made)
}

func writeJSON(std streams, value any) error {
	encoder := json.NewEncoder(std.out)
	encoder.SetIndent("", "  ")
	return encoder.Encode(value)
}
