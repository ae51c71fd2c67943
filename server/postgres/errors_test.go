package postgres

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/jackc/pgx/v5/pgconn"

	"pitgate/server/club"
)

func TestAnswer(t *testing.T) {
	t.Parallel()
	for _, tt := range []struct {
		state, constraint string
		want              club.Code
	}{
		{"23505", "people_email_key", club.Conflict},
		{"23505", "anything", club.Conflict},
		{"23503", "approvals_club_id_owner_id_fkey", club.Invalid},
		{"23514", "signer_is_never_owner", club.Forbidden},
		{"23514", "approvals_state_check", club.Invalid},
		{"23001", "", club.FailedPrecondition},
		{"42501", "", club.Forbidden},
		{"40001", "", club.Conflict},
		{"40P01", "", club.Conflict},
		{"22021", "", club.Invalid},
		{"57014", "", ""},
		{"XX000", "", ""},
	} {
		cause := &pgconn.PgError{Code: tt.state, ConstraintName: tt.constraint, Message: "secret words of the driver", Severity: "ERROR"}
		got := answer(fmt.Errorf("while writing: %w", cause))
		if club.CodeOf(got) != tt.want {
			t.Errorf("%s %s: got %v, want %q", tt.state, tt.constraint, got, tt.want)
		}
		if strings.Contains(got.Error(), "secret") || strings.Contains(got.Error(), tt.state) {
			t.Errorf("%s: the driver's words get out: %v", tt.state, got)
		}
		if tt.want == "" && !errors.Is(got, cause) {
			t.Errorf("%s: the cause is lost", tt.state)
		}
	}
}

func TestAnswerLeavesOthersAlone(t *testing.T) {
	t.Parallel()
	refusal := fmt.Errorf("while deciding: %w", club.Refuse(club.Stale, "X", "x"))
	for _, err := range []error{nil, refusal, context.Canceled, context.DeadlineExceeded} {
		if got := answer(err); !errors.Is(got, err) || fmt.Sprint(got) != fmt.Sprint(err) {
			t.Errorf("got %v, want %v", got, err)
		}
	}
}

func TestBrokenOff(t *testing.T) {
	t.Parallel()
	for state, want := range map[string]bool{"40001": true, "40P01": true, "23505": false, "57014": false} {
		if got := brokenOff(fmt.Errorf("x: %w", &pgconn.PgError{Code: state})); got != want {
			t.Errorf("%s: got %v", state, got)
		}
	}
}
