package postgres_test

import (
	"bytes"
	"context"
	"encoding/json"
	"strings"
	"testing"
	"time"

	"pitgate/server/club"
	"pitgate/server/postgres"
)

// flameOut reports an incident of Redshank.
func (s *scene) flameOut() (i club.Incident) {
	s.t.Helper()
	s.tx(func(ctx context.Context, tx *postgres.Tx) (err error) {
		i, err = tx.CreateIncident(ctx, bram, club.Incident{
			Title: "Flame-out in a turn", Narrative: "The engine stopped in the second turn.", OccurTime: time.Unix(1_790_000_000, 0).UTC(),
			FieldID: s.quarry.ID, ModelID: s.redshank.ID, Injury: club.InjuryNone,
		})
		return err
	})
	return i
}

func TestIncidentIsReportedAndReviewed(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	i := s.flameOut()
	if i.State != club.Reported || i.ReporterDisplayName != "BRAM" || i.Version != 1 || i.FieldID != s.quarry.ID {
		t.Errorf("got %+v", i)
	}
	review := i
	review.State, review.Categories, review.Causes = club.UnderReview, []string{"FUEL"}, []string{"air in the line"}
	review.Actions = []club.Action{{Text: "fit a trap", OwnerID: "ada", DueDate: "2026-12-31"}}
	update := func(etag string) error {
		return s.try(func(ctx context.Context, tx *postgres.Tx) (err error) {
			_, err = tx.UpdateIncident(ctx, mei, review, etag)
			return err
		})
	}
	s.must(update("v1"))
	s.refused(update("v1"), club.Stale)
	review.State = "forgotten"
	s.refused(update("v2"), club.Invalid)
	review.State, review.ModelID = club.Closed, "nothing"
	s.refused(update("v2"), club.Invalid)
	review.ID = "nothing"
	s.refused(update("v2"), club.NotFound)
	s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
		got, next, err := tx.Incidents(ctx, club.Page{})
		if err != nil || len(got) != 1 || next != "" {
			t.Fatalf("%d incidents, %q, %v", len(got), next, err)
		}
		if got[0].State != club.UnderReview || len(got[0].Actions) != 1 || got[0].Actions[0].Text != "fit a trap" || got[0].Narrative != i.Narrative {
			t.Errorf("got %+v", got[0])
		}
		return nil
	})
	for _, e := range s.verified() {
		if strings.Contains(e.Entry, "second turn") {
			t.Errorf("the report's words stand in the ledger: %s", e.Entry)
		}
	}
}

func TestIncidentPhotos(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	i := s.flameOut()
	content := []byte{0xff, 0xd8, 0xff, 0x00, 0x01}
	var photo club.Photo
	s.tx(func(ctx context.Context, tx *postgres.Tx) (err error) {
		photo, err = tx.AddPhoto(ctx, bram, club.Photo{IncidentID: i.ID, WidthPixels: 640, HeightPixels: 480, Content: content})
		return err
	})
	s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
		got, err := tx.Photo(ctx, i.ID, photo.ID)
		if err != nil || !bytes.Equal(got.Content, content) {
			t.Errorf("got %v, %v", got.Content, err)
		}
		_, err = tx.Photo(ctx, "another", photo.ID)
		s.refused(err, club.NotFound)
		whole, err := tx.Incident(ctx, i.ID)
		if err != nil || len(whole.Photos) != 1 || whole.Photos[0].WidthPixels != 640 || whole.Photos[0].Content != nil {
			t.Errorf("got %+v, %v", whole.Photos, err)
		}
		return nil
	})
	err := s.try(func(ctx context.Context, tx *postgres.Tx) error {
		_, err := tx.AddPhoto(ctx, bram, club.Photo{IncidentID: "nothing", WidthPixels: 1, HeightPixels: 1, Content: content})
		return err
	})
	s.refused(err, club.NotFound)
}

// propose proposes a lesson.
func (s *scene) propose(predicate, incidentID string) (l club.Lesson, err error) {
	err = s.try(func(ctx context.Context, tx *postgres.Tx) (err error) {
		l, err = tx.CreateLesson(ctx, mei, club.Lesson{Text: "fit an air trap", PredicateText: predicate, Remedy: "a trap", IncidentID: incidentID})
		return err
	})
	return l, err
}

func (s *scene) vote(by club.Actor, id, etag string) (l club.Lesson, err error) {
	err = s.try(func(ctx context.Context, tx *postgres.Tx) (err error) {
		l, err = tx.VoteLesson(ctx, by, id, etag)
		return err
	})
	return l, err
}

func TestLessonIsAdoptedByTwo(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	i := s.flameOut()
	l, err := s.propose("!model.fuel_system.air_trap", i.ID)
	s.must(err)
	_, err = s.vote(ines, l.ID, "v1")
	s.refused(err, club.Forbidden)
	if l, err = s.vote(mei, l.ID, "v1"); err != nil || l.State != club.Proposed || l.Version != 2 {
		t.Fatalf("one vote: %+v, %v", l, err)
	}
	_, err = s.vote(mei, l.ID, "v2")
	s.refused(err, club.Conflict)
	_, err = s.vote(tomas, l.ID, "v1")
	s.refused(err, club.Stale)
	l, err = s.vote(tomas, l.ID, "v2")
	if err != nil || l.State != club.Adopted || l.AdoptTime.IsZero() || strings.Join(l.AdopterDisplayNames, " ") != "MEI TOMAS" {
		t.Errorf("two votes: %+v, %v", l, err)
	}
	_, err = s.vote(tomas, l.ID, "")
	s.refused(err, club.FailedPrecondition)
	s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
		adopted, err := tx.AdoptedLessons(ctx)
		if err != nil || len(adopted) != 1 || len(adopted[0].AdopterIDs) != 2 {
			t.Errorf("adopted: %+v, %v", adopted, err)
		}
		whole, err := tx.Incident(ctx, i.ID)
		if err != nil || strings.Join(whole.LessonIDs, " ") != l.ID {
			t.Errorf("lessons of the incident: %v, %v", whole.LessonIDs, err)
		}
		return nil
	})
}

func TestLessonsPredicateMustCompile(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	_, err := s.propose("model.fuel_system.air_trapp", "")
	s.refused(err, club.Invalid)
	_, err = s.propose("true", "nothing")
	s.refused(err, club.Invalid)
}

func TestLessonHoldsOpenApprovals(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	ready, flown, draft := s.lead(club.Ready), s.lead(club.Flown), s.draft()
	l, err := s.propose("!model.fuel_system.air_trap", "")
	s.must(err)
	hold := func() {
		s.tx(func(ctx context.Context, tx *postgres.Tx) error {
			open, err := tx.OpenApprovals(ctx)
			if err != nil {
				return err
			}
			if len(open) != 2 || !json.Valid(open[0].Description) || open[0].ModelID != s.redshank.ID {
				t.Errorf("open: %+v", open)
			}
			for _, a := range append(open, club.OpenApproval{ID: flown.ID}) {
				if err := tx.HoldByLesson(ctx, mei, l.ID, a.ID); err != nil {
					return err
				}
			}
			return nil
		})
	}
	hold()
	hold()
	for id, want := range map[string]club.State{ready.ID: club.Held, draft.ID: club.Held, flown.ID: club.Flown} {
		a := s.again(id)
		if a.State != want || (want == club.Held) != (len(a.Holds) == 1) {
			t.Errorf("%s with holds %+v, want %s", a.State, a.Holds, want)
		}
	}
	held := s.again(ready.ID)
	if h := held.Holds[0]; h.LessonID != l.ID || h.Reason != "fit an air trap" || held.HeldFrom != club.Ready {
		t.Errorf("hold %+v from %s", h, held.HeldFrom)
	}
	s.decide(held, club.VerbRelease, ines)
	s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
		lessons, _, err := tx.Lessons(ctx, club.Page{})
		if len(lessons) != 1 || lessons[0].HoldCount != 2 {
			t.Errorf("lessons %+v", lessons)
		}
		return err
	})
	s.verified()
}

func TestOpenApprovalRestsOnItsRevision(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	draft := s.draft()
	held := s.decide(s.lead(club.Ready), club.VerbHold, ines)
	_, err := s.change("", nil, description(9.1))
	s.must(err)
	s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
		open, err := tx.OpenApprovals(ctx)
		for _, a := range open {
			if want := map[string]int32{draft.ID: 2, held.ID: 1}[a.ID]; a.ModelRevision != want {
				t.Errorf("%s: revision %d, want %d", a.State, a.ModelRevision, want)
			}
		}
		if len(open) != 2 {
			t.Errorf("%d open", len(open))
		}
		return err
	})
}
