package postgres

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"

	"pitgate/server/club"
	"pitgate/server/ledger"
	"pitgate/server/postgres/pgdb"
)

// event is what a ledger entry says beside its kind, club, time and actor: names, numbers and digests, and nothing about
// a person but the name of the record.
type event map[string]any

// record writes an entry of the given kind to the ledger and returns its index.
func (t *Tx) record(ctx context.Context, kind string, by club.Actor, what event) (int64, error) {
	what["kind"], what["club"], what["time"] = kind, club.ClubName(t.clubID), t.now.Format(time.RFC3339Nano)
	if by.PersonID != "" {
		what["actor"] = club.People.Name(t.clubID, by.PersonID)
	}
	return t.AppendLedger(ctx, what)
}

// AppendLedger writes one entry, as canonical JSON, to the end of the club's ledger, signs the head that results, and
// returns the entry's index. Entries of one club are written one after the other: a transaction that has written keeps
// the others waiting until it ends, so it should do so late.
func (t *Tx) AppendLedger(ctx context.Context, entry any) (int64, error) {
	raw, err := json.Marshal(entry)
	if err != nil {
		return 0, fmt.Errorf("ledger entry: %w", err)
	}
	canonical, err := ledger.Canonical(raw)
	if err != nil {
		return 0, fmt.Errorf("ledger entry: %w", err)
	}
	if err := t.q.LockClub(ctx, "ledger/"+t.clubID); err != nil {
		return 0, err
	}
	head, at, err := t.lastHead(ctx)
	if err != nil {
		return 0, err
	}
	leaf := ledger.Leaf(canonical)
	index := int64(head.Size)
	err = t.q.InsertLedgerEntry(ctx, pgdb.InsertLedgerEntryParams{
		ClubID: t.clubID, EntryIndex: index, Entry: string(canonical), LeafHash: leaf,
	})
	if err != nil {
		return 0, err
	}
	return index, t.keepHead(ctx, head, leaf, at)
}

// lastHead is the head to append to, and the time its successor carries: now, but never before the last one.
func (t *Tx) lastHead(ctx context.Context) (ledger.Head, time.Time, error) {
	row, err := t.q.LedgerHead(ctx, t.clubID)
	if errors.Is(err, pgx.ErrNoRows) {
		return ledger.Head{}, t.now, nil
	}
	if err != nil {
		return ledger.Head{}, time.Time{}, err
	}
	head, err := ledger.OpenHead(uint64(row.Size), row.Hashes)
	if row.Time.After(t.now) {
		return head, row.Time, err
	}
	return head, t.now, err
}

func (t *Tx) keepHead(ctx context.Context, head ledger.Head, leaf []byte, at time.Time) error {
	next, root := head.Append(leaf)
	return t.q.InsertLedgerHead(ctx, pgdb.InsertLedgerHeadParams{
		ClubID: t.clubID, Size: int64(next.Size), Root: root, Hashes: next.Hashes, Now: at,
		Signature: ledger.SignHead(t.store.key, t.clubID, next.Size, root, at),
	})
}

// LedgerHead is the club's latest signed tree head.
type LedgerHead struct {
	Size            int64
	Root, Signature []byte
	Time            time.Time
}

// LedgerHead reads the latest signed head. NotFound while nothing was written.
func (r *ReadTx) LedgerHead(ctx context.Context) (LedgerHead, error) {
	row, err := r.q.LedgerHead(ctx, r.clubID)
	if errors.Is(err, pgx.ErrNoRows) {
		return LedgerHead{}, club.Refuse(club.NotFound, "LEDGER_EMPTY", "nothing has been written to this club's ledger")
	}
	return LedgerHead{Size: row.Size, Root: row.Root, Signature: row.Signature, Time: row.Time}, err
}

// LedgerEntries lists at most limit entries from index from on.
func (r *ReadTx) LedgerEntries(ctx context.Context, from int64, limit int32) ([]club.LedgerEntry, error) {
	rows, err := r.q.LedgerEntries(ctx, r.clubID, from, limit)
	var entries []club.LedgerEntry
	for _, row := range rows {
		entries = append(entries, club.LedgerEntry{Index: row.EntryIndex, Entry: row.Entry, LeafHash: row.LeafHash})
	}
	return entries, err
}

// LeafHashes lists the leaf hashes of the first size entries: what proofs are made of.
func (r *ReadTx) LeafHashes(ctx context.Context, size int64) ([][]byte, error) {
	return r.q.LeafHashes(ctx, r.clubID, size)
}
