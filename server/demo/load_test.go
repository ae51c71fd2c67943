package demo_test

import (
	"testing"

	"pitgate/server/club"
	"pitgate/server/demo"
	"pitgate/server/postgres"
	"pitgate/server/postgres/pgtest"
)

func TestMain(m *testing.M) { pgtest.Main(m) }

// seen is what a load left behind.
type seen struct {
	entries           int64
	models, incidents int
	states            map[string]club.State
	counts            map[string]club.Counts
	lesson            club.LessonState
}

// look reads it.
func look(t *testing.T, store *postgres.Store) seen {
	t.Helper()
	out := seen{states: map[string]club.State{}, counts: map[string]club.Counts{}}
	err := store.Read(t.Context(), demo.ClubID, func(tx *postgres.ReadTx) error {
		head, err := tx.LedgerHead(t.Context())
		if err != nil {
			return err
		}
		out.entries = head.Size
		models, _, err := tx.Models(t.Context(), "", club.Page{})
		if err != nil {
			return err
		}
		incidents, _, err := tx.Incidents(t.Context(), club.Page{})
		if err != nil {
			return err
		}
		out.models, out.incidents = len(models), len(incidents)
		approvals, _, err := tx.Approvals(t.Context(), postgres.ApprovalFilter{}, club.Page{})
		for _, a := range approvals {
			out.states[a.ModelDisplayName], out.counts[a.ModelDisplayName] = a.State, a.Counts
		}
		if err != nil {
			return err
		}
		lessons, _, err := tx.Lessons(t.Context(), club.Page{})
		if len(lessons) == 1 {
			out.lesson = lessons[0].State
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestLoadTwice loads the club, and once more, which must change nothing.
func TestLoadTwice(t *testing.T) {
	t.Parallel()
	store := pgtest.New(t)
	if err := demo.Load(t.Context(), store); err != nil {
		t.Fatal(err)
	}
	first := look(t, store)
	if first.models != 4 || first.incidents != 3 || first.lesson != club.Proposed {
		t.Errorf("%d models, %d incidents, lesson %q", first.models, first.incidents, first.lesson)
	}
	for model, want := range map[string]club.State{"Dabchick": club.Ready, "Sandmartin": club.DeskReview, "Redshank": club.Submitted, "Nightjar": club.Draft} {
		if first.states[model] != want {
			t.Errorf("approval of %s is %q, want %q", model, first.states[model], want)
		}
	}
	if first.counts["Redshank"].Fails == 0 || first.counts["Sandmartin"].Tight == 0 || first.counts["Dabchick"].Fails != 0 || first.counts["Dabchick"].Unknown != 0 {
		t.Errorf("the findings do not tell the demo's story: %v", first.counts)
	}
	if err := demo.Load(t.Context(), store); err != nil {
		t.Fatal(err)
	}
	if second := look(t, store); second.entries != first.entries {
		t.Errorf("the second load wrote %d ledger entries", second.entries-first.entries)
	}
}
