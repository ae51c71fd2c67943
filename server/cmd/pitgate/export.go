package main

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"io"

	"pitgate/server/ledger"
	"pitgate/server/postgres"
)

// exportPage is how many entries are read at a time.
const exportPage = 1000

// runExport writes a club's whole ledger with its signed head, for pitgate verify.
func runExport(ctx context.Context, args []string, std streams) (status int, err error) {
	var s settings
	set := flag.NewFlagSet("pitgate export", flag.ContinueOnError)
	set.SetOutput(std.err)
	databaseFlags(set, &s)
	clubs, err := filesAndFlags(set, args)
	if err != nil {
		return 0, err
	}
	if len(clubs) != 1 {
		return 0, errors.New("give one club: pitgate export CLUB > ledger.json")
	}
	base, err := openDatabase(ctx, s, newLog(std.err, false))
	if err != nil {
		return 0, err
	}
	defer func() { err = errors.Join(err, base.close()) }()
	return 0, writeExport(ctx, base.store, clubs[0], std.out)
}

// writeExport reads entries and head on one unchanging view.
func writeExport(ctx context.Context, store *postgres.Store, clubID string, w io.Writer) error {
	export := ledger.Export{Format: ledger.ExportFormat, ClubID: clubID, PublicKey: store.PublicKey()}
	err := store.Read(ctx, clubID, func(tx *postgres.ReadTx) error {
		head, err := tx.LedgerHead(ctx)
		if err != nil {
			return err
		}
		export.Heads = []ledger.SignedHead{{TreeSize: uint64(head.Size), RootHash: head.Root, Time: head.Time, Signature: head.Signature}}
		for int64(len(export.Entries)) < head.Size {
			entries, err := tx.LedgerEntries(ctx, int64(len(export.Entries)), exportPage)
			if err != nil {
				return err
			}
			if len(entries) == 0 {
				return errors.New("ledger: entries are missing that its head covers")
			}
			for _, e := range entries {
				export.Entries = append(export.Entries, json.RawMessage(e.Entry))
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	return json.NewEncoder(w).Encode(export)
}
