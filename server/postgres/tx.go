package postgres

import (
	"context"
	"math/rand/v2"
	"time"

	"github.com/jackc/pgx/v5"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// ReadTx looks at one club as it stood at one moment. It has no method that changes anything.
type ReadTx struct {
	q      *pgdb.Queries
	raw    pgx.Tx
	clubID string
	now    time.Time
}

// Tx changes one club. Everything done in it happens, or nothing.
type Tx struct {
	ReadTx
	store *Store
}

// Now is the one time of the transaction, in UTC, to the microsecond that the database keeps.
func (r *ReadTx) Now() time.Time { return r.now }

// ClubID is the club's slug.
func (r *ReadTx) ClubID() string { return r.clubID }

// attempts is how often a transaction is tried that the database broke off for the sake of another one.
const attempts = 6

// InTx runs work in one transaction of the club and commits when work returns nil. When the database breaks it off for
// the sake of another transaction, work runs again: it must not do anything outside of the transaction.
func (s *Store) InTx(ctx context.Context, clubID string, work func(*Tx) error) error {
	for attempt := 1; ; attempt++ {
		err := s.transact(ctx, clubID, pgx.TxOptions{IsoLevel: pgx.ReadCommitted}, func(r ReadTx) error {
			return work(&Tx{ReadTx: r, store: s})
		})
		if attempt == attempts || !brokenOff(err) {
			return answer(err)
		}
		if err := pause(ctx, attempt); err != nil {
			return err
		}
	}
}

// Read runs work on one unchanging view of the club.
func (s *Store) Read(ctx context.Context, clubID string, work func(*ReadTx) error) error {
	options := pgx.TxOptions{IsoLevel: pgx.RepeatableRead, AccessMode: pgx.ReadOnly}
	return answer(s.transact(ctx, clubID, options, func(r ReadTx) error { return work(&r) }))
}

// transact is the only way to a connection: it names the club and gives up the owner's rights first.
func (s *Store) transact(ctx context.Context, clubID string, options pgx.TxOptions, work func(ReadTx) error) error {
	if !club.ValidID(clubID) {
		return club.RefuseField("club", "BAD_NAME", "not the name of a club")
	}
	return pgx.BeginTxFunc(ctx, s.pool, options, func(tx pgx.Tx) error {
		q := pgdb.New(tx)
		if err := q.SetClub(ctx, clubID); err != nil {
			return err
		}
		return work(ReadTx{q: q, raw: tx, clubID: clubID, now: s.now().UTC().Truncate(time.Microsecond)})
	})
}

// pause waits a random while that doubles with every attempt, from 5 ms.
func pause(ctx context.Context, attempt int) error {
	longest := 5 * time.Millisecond << attempt
	select {
	case <-ctx.Done():
		return ctx.Err()
	case <-time.After(longest/2 + rand.N(longest/2)):
		return nil
	}
}
