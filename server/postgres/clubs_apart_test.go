package postgres_test

import (
	"context"
	"errors"
	"fmt"
	"sync"
	"testing"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"

	"pitgate/server/club"
	"pitgate/server/postgres"
)

// asProgram runs work as the program's role, with the club set when it is not empty.
func (s *scene) asProgram(clubID string, work func(pgx.Tx) error) error {
	s.t.Helper()
	return pgx.BeginFunc(s.t.Context(), s.owner(), func(tx pgx.Tx) error {
		if _, err := tx.Exec(s.t.Context(), `SET LOCAL ROLE pitgate_app`); err != nil {
			return err
		}
		if clubID != "" {
			if _, err := tx.Exec(s.t.Context(), `SELECT set_config('app.club_id', $1, true)`, clubID); err != nil {
				return err
			}
		}
		return work(tx)
	})
}

func (s *scene) count(clubID, table string) (n int) {
	s.t.Helper()
	s.must(s.asProgram(clubID, func(tx pgx.Tx) error {
		return tx.QueryRow(s.t.Context(), `SELECT count(*) FROM `+table).Scan(&n)
	}))
	return n
}

func sqlState(err error) string {
	var pg *pgconn.PgError
	if errors.As(err, &pg) {
		return pg.Code
	}
	return fmt.Sprint(err)
}

func TestRowsOfOneClubOnly(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.open("otherclub")
	for _, tt := range []struct {
		club string
		want int
	}{{larkmoor, 1}, {"otherclub", 0}, {"nowhere", 0}, {"", 0}} {
		if got := s.count(tt.club, "models"); got != tt.want {
			t.Errorf("club %q sees %d models, want %d", tt.club, got, tt.want)
		}
	}
	if got := s.count("otherclub", "people"); got != 5 {
		t.Errorf("the other club sees %d people, want 5", got)
	}
}

func TestRowOfAnotherClubCannotBeWritten(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.open("otherclub")
	for name, statement := range map[string]string{
		"insert": `INSERT INTO fields VALUES ('otherclub', 'f', 'Theirs', 1, 1, now(), now())`,
		"unset":  `INSERT INTO clubs VALUES ('third', 'Third', now())`,
	} {
		err := s.asProgram(larkmoor, func(tx pgx.Tx) error {
			_, err := tx.Exec(t.Context(), statement)
			return err
		})
		if got := sqlState(err); got != "42501" {
			t.Errorf("%s: got %s, want 42501", name, got)
		}
	}
}

func TestRecordOfAnotherClubIsNotFound(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.open("otherclub")
	err := s.InTx(t.Context(), "otherclub", func(tx *postgres.Tx) error {
		_, err := tx.UpdateModel(t.Context(), ada, postgres.ModelChange{ID: s.redshank.ID, Description: description(1)})
		return err
	})
	s.refused(err, club.NotFound)
	err = s.Read(t.Context(), "otherclub", func(tx *postgres.ReadTx) error {
		_, err := tx.Field(t.Context(), s.quarry.ID)
		return err
	})
	s.refused(err, club.NotFound)
}

func TestClubsStayApartOnOneConnection(t *testing.T) {
	t.Parallel()
	s := newScene(t, postgres.WithMaxConnections(1))
	s.open("otherclub")
	var group sync.WaitGroup
	for n := range 40 {
		id, want := larkmoor, 1
		if n%2 == 1 {
			id, want = "otherclub", 0
		}
		group.Go(func() {
			err := s.Read(t.Context(), id, func(tx *postgres.ReadTx) error {
				models, _, err := tx.Models(t.Context(), "", club.Page{})
				if err == nil && len(models) != want {
					err = fmt.Errorf("%s sees %d models, want %d", id, len(models), want)
				}
				return err
			})
			if err != nil {
				t.Error(err)
			}
		})
	}
	group.Wait()
}

func TestReadingCannotChange(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	err := s.asProgram(larkmoor, func(tx pgx.Tx) error {
		if _, err := tx.Exec(t.Context(), `SET TRANSACTION READ ONLY`); err != nil {
			return err
		}
		_, err := tx.Exec(t.Context(), `INSERT INTO lesson_votes VALUES ('larkmoor', 'l', 'p', now())`)
		return err
	})
	if got := sqlState(err); got != "25006" {
		t.Errorf("got %s, want 25006", got)
	}
}

func TestBadClubNameIsRefused(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	for _, id := range []string{"", "Larkmoor", "lark'moor", "a b"} {
		err := s.Read(t.Context(), id, func(*postgres.ReadTx) error { return nil })
		s.refused(err, club.Invalid)
	}
}

func TestCancelledContextIsTold(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if err := s.Read(ctx, larkmoor, func(*postgres.ReadTx) error { return nil }); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
}

// TestStoreGivesUpTheOwnersRights takes rights from the program's role: a store that worked as the owner would not notice.
func TestStoreGivesUpTheOwnersRights(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	if _, err := s.owner().Exec(t.Context(), `REVOKE SELECT ON fields, sessions FROM pitgate_app`); err != nil {
		t.Fatal(err)
	}
	read := func(tx *postgres.ReadTx) error {
		_, err := tx.Field(t.Context(), s.quarry.ID)
		return err
	}
	s.refused(s.Read(t.Context(), larkmoor, read), club.Forbidden)
	s.refused(s.InTx(t.Context(), larkmoor, func(tx *postgres.Tx) error { return read(&tx.ReadTx) }), club.Forbidden)
	_, _, err := s.SessionByToken(t.Context(), token(1))
	s.refused(err, club.Forbidden)
}
