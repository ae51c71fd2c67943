package main

import (
	"context"
	"errors"
	"flag"
	"os"
	"time"

	"pitgate/server/ledger"
)

// exitUnverified is the status of an export that does not verify.
const exitUnverified = 1

// runVerify checks a ledger export. It needs no database and no network.
func runVerify(_ context.Context, args []string, std streams) (int, error) {
	set := flag.NewFlagSet("pitgate verify", flag.ContinueOnError)
	set.SetOutput(std.err)
	files, err := filesAndFlags(set, args)
	switch {
	case err != nil:
		return 0, err
	case len(files) != 1:
		return 0, errors.New("give one export: pitgate verify EXPORT")
	}
	file, err := os.Open(files[0])
	if err != nil {
		return 0, err
	}
	defer func() { _ = file.Close() }() // it was only read
	result, err := ledger.VerifyExport(file)
	if err != nil {
		tell(std.err, "not verified: %v\n", err)
		return exitUnverified, nil
	}
	tell(std.out, "verified: club %s, %d entries, root %x, last signed %s, key %s\n", result.ClubID, result.Entries, result.RootHash,
		result.LastSigned.UTC().Format(time.RFC3339), result.Fingerprint)
	return 0, nil
}
