package postgres_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"pitgate/server/club"
	"pitgate/server/ledger"
	"pitgate/server/postgres"
)

// wholeLedger reads head, entries and leaf hashes.
func (s *scene) wholeLedger() (head postgres.LedgerHead, entries []club.LedgerEntry, leaves [][]byte) {
	s.t.Helper()
	s.read(func(ctx context.Context, tx *postgres.ReadTx) (err error) {
		if head, err = tx.LedgerHead(ctx); err != nil {
			return err
		}
		if entries, err = tx.LedgerEntries(ctx, 0, 100_000); err != nil {
			return err
		}
		leaves, err = tx.LeafHashes(ctx, head.Size)
		return err
	})
	return head, entries, leaves
}

// verified reads the ledger and checks everything an outsider would.
func (s *scene) verified() []club.LedgerEntry {
	s.t.Helper()
	head, entries, leaves := s.wholeLedger()
	if int64(len(entries)) != head.Size || int64(len(leaves)) != head.Size {
		s.t.Fatalf("head of %d, %d entries, %d leaves", head.Size, len(entries), len(leaves))
	}
	for i, e := range entries {
		canonical, err := ledger.Canonical([]byte(e.Entry))
		if e.Index != int64(i) || err != nil || string(canonical) != e.Entry {
			s.t.Errorf("entry %d has index %d and is not canonical: %s (%v)", i, e.Index, e.Entry, err)
		}
		if !bytes.Equal(ledger.Leaf([]byte(e.Entry)), e.LeafHash) || !bytes.Equal(leaves[i], e.LeafHash) {
			s.t.Errorf("leaf hash of entry %d does not fit", i)
		}
	}
	if root := ledger.HeadOf(leaves).Root(); !bytes.Equal(root, head.Root) {
		s.t.Errorf("root %x, want %x", head.Root, root)
	}
	if !ledger.VerifyHead(s.PublicKey(), larkmoor, uint64(head.Size), head.Root, head.Time, head.Signature) {
		s.t.Error("the head's signature does not fit")
	}
	return entries
}

func TestLedgerGrowsUnderManyWriters(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	before := len(s.verified())
	const writers, each = 8, 5
	indexes := make(chan int64, writers*each)
	var group sync.WaitGroup
	for w := range writers {
		group.Go(func() {
			for n := range each {
				err := s.try(func(ctx context.Context, tx *postgres.Tx) error {
					index, err := tx.AppendLedger(ctx, map[string]any{"writer": w, "n": n, "text": "a<b & ü"})
					if err == nil {
						indexes <- index
					}
					return err
				})
				if err != nil {
					t.Error(err)
				}
			}
		})
	}
	group.Wait()
	close(indexes)
	seen := map[int64]bool{}
	for index := range indexes {
		if seen[index] {
			t.Errorf("index %d was given twice", index)
		}
		seen[index] = true
	}
	if entries := s.verified(); len(entries) != before+writers*each || len(seen) != writers*each {
		t.Errorf("%d entries and %d indexes after %d", len(entries), len(seen), before)
	}
}

func TestLedgerForgetsWhatWasRolledBack(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	before := len(s.verified())
	abandoned := errors.New("changed my mind")
	err := s.try(func(ctx context.Context, tx *postgres.Tx) error {
		if _, err := tx.AppendLedger(ctx, "never"); err != nil {
			return err
		}
		return abandoned
	})
	if !errors.Is(err, abandoned) {
		t.Errorf("got %v", err)
	}
	if after := len(s.verified()); after != before {
		t.Errorf("%d entries, want %d", after, before)
	}
}

func TestLedgerTimeNeverRunsBack(t *testing.T) {
	t.Parallel()
	at := time.Date(2026, 11, 25, 10, 0, 0, 0, time.UTC)
	s := newScene(t, postgres.WithClock(func() time.Time {
		at = at.Add(-time.Minute)
		return at
	}))
	first, _, _ := s.wholeLedger()
	s.tx(func(ctx context.Context, tx *postgres.Tx) error {
		_, err := tx.AppendLedger(ctx, "later, by a clock that runs back")
		return err
	})
	s.verified()
	if last, _, _ := s.wholeLedger(); last.Time.Before(first.Time) {
		t.Errorf("%s after %s", last.Time, first.Time)
	}
}

func TestLedgersOfClubsAreApart(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	err := s.Read(t.Context(), "otherclub", func(tx *postgres.ReadTx) error {
		_, err := tx.LedgerHead(t.Context())
		return err
	})
	s.refused(err, club.NotFound)
	s.open("otherclub")
	err = s.Read(t.Context(), "otherclub", func(tx *postgres.ReadTx) error {
		entries, err := tx.LedgerEntries(t.Context(), 0, 100)
		if err == nil && len(entries) != 6 {
			err = fmt.Errorf("%d entries, want club and five people", len(entries))
		}
		return err
	})
	s.must(err)
}

func TestLedgerHasEveryDecisionAndNoNames(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	a := s.lead(club.Flown)
	kinds := map[string]int{}
	for _, e := range s.verified() {
		var said struct{ Kind, Verb string }
		s.must(json.Unmarshal([]byte(e.Entry), &said))
		kinds[said.Kind]++
		for _, private := range []string{"ADA", "@larkmoor.example", "hash\""} {
			if strings.Contains(e.Entry, private) {
				t.Errorf("%q stands in the ledger: %s", private, e.Entry)
			}
		}
	}
	want := map[string]int{"club.created": 1, "person.created": 5, "model.revision": 1, "field.version": 1, "assessment.kept": 1, "approval.transition": 7}
	if fmt.Sprint(kinds) != fmt.Sprint(want) {
		t.Errorf("got %v, want %v", kinds, want)
	}
	_, entries, _ := s.wholeLedger()
	for _, tr := range a.Transitions {
		if !strings.Contains(entries[tr.LedgerIndex].Entry, `"verb":"`+string(tr.Verb)+`"`) {
			t.Errorf("%s points at entry %d: %s", tr.Verb, tr.LedgerIndex, entries[tr.LedgerIndex].Entry)
		}
	}
}
