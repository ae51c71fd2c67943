package postgres_test

import (
	"testing"

	"github.com/jackc/pgx/v5"

	"pitgate/server/club"
)

// TestFrozenRows tries to change what is kept for good: as the program's role, which has no such right, and as the owner
// of the tables, whom the triggers stop.
func TestFrozenRows(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.lead(club.Signed)
	for _, table := range []string{"ledger_entries", "ledger_heads", "assessments", "model_revisions", "field_versions", "transitions", "signatures"} {
		if s.count(larkmoor, table) == 0 {
			t.Fatalf("%s is empty: nothing is proved", table)
		}
		change := "UPDATE " + table + " SET club_id = club_id"
		if table == "signatures" {
			change = "UPDATE signatures SET signer_id = 'tomas'"
		}
		for _, statement := range []string{change, "DELETE FROM " + table, "TRUNCATE " + table + " CASCADE"} {
			err := s.asProgram(larkmoor, func(tx pgx.Tx) error {
				_, err := tx.Exec(t.Context(), statement)
				return err
			})
			if got := sqlState(err); got != "42501" {
				t.Errorf("the program, %s: got %s, want 42501", statement, got)
			}
			_, err = s.owner().Exec(t.Context(), statement)
			if got := sqlState(err); got != "23001" {
				t.Errorf("the owner, %s: got %s, want 23001", statement, got)
			}
		}
	}
}

func TestLapsedSignatureStaysLapsed(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.lead(club.Signed)
	owner := s.owner()
	if _, err := owner.Exec(t.Context(), `UPDATE signatures SET lapsed = true`); err != nil {
		t.Fatal(err)
	}
	_, err := owner.Exec(t.Context(), `UPDATE signatures SET lapsed = false`)
	if got := sqlState(err); got != "23001" {
		t.Errorf("got %s, want 23001", got)
	}
}

// TestSignerIsNeverTheOwner goes past the program and asks the database alone.
func TestSignerIsNeverTheOwner(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	a := s.lead(club.Ready)
	sign := func(signer string) error {
		return s.asProgram(larkmoor, func(tx pgx.Tx) error {
			_, err := tx.Exec(t.Context(), `INSERT INTO signatures (club_id, signature_id, approval_id, signer_id, role, meaning, digest, server_time)
				VALUES ('larkmoor', 'by-' || $1, $2, $1, 'safety_officer', 'go', repeat('0', 64), now())`, signer, a.ID)
			return err
		})
	}
	if got := sqlState(sign("ada")); got != "23514" {
		t.Errorf("the owner: got %s, want 23514", got)
	}
	if err := sign("ines"); err != nil {
		t.Errorf("an officer: %v", err)
	}
	if _, err := s.owner().Exec(t.Context(), `UPDATE models SET owner_id = 'tomas'`); err != nil {
		t.Fatal(err)
	}
	if got := sqlState(sign("tomas")); got != "23514" {
		t.Errorf("the model's new owner: got %s, want 23514", got)
	}
	if got := sqlState(sign("ines")); got != "23505" {
		t.Errorf("the same signature twice: got %s, want 23505", got)
	}
}

func TestProgramCannotChangeOwners(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.draft()
	for _, statement := range []string{
		`UPDATE models SET owner_id = 'bram'`, `UPDATE approvals SET owner_id = 'bram'`, `UPDATE approvals SET model_id = 'other'`,
		`UPDATE people SET roles = '{administrator}'`, `DELETE FROM approvals`, `UPDATE lessons SET predicate = 'true'`,
	} {
		err := s.asProgram(larkmoor, func(tx pgx.Tx) error {
			_, err := tx.Exec(t.Context(), statement)
			return err
		})
		if got := sqlState(err); got != "42501" {
			t.Errorf("%s: got %s, want 42501", statement, got)
		}
	}
}
