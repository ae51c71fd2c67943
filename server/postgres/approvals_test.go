package postgres_test

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"pitgate/server/club"
	"pitgate/server/postgres"
)

func TestApprovalsWholeLife(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	a := s.lead(club.Flown)
	var path []string
	for _, tr := range a.Transitions {
		path = append(path, fmt.Sprintf("%s:%s>%s", tr.ActorID, tr.From, tr.To))
	}
	want := "ada:>draft ada:draft>submitted ines:submitted>desk_review ines:desk_review>bench tomas:bench>ready ines:ready>signed ada:signed>flown"
	if got := strings.Join(path, " "); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if a.Counts != (club.Counts{Holds: 20, Tight: 3, Fails: 1, Unknown: 2}) || a.AssessmentID == "" || a.AssessmentDigest == "" {
		t.Errorf("assessment %q with %+v", a.AssessmentID, a.Counts)
	}
	if len(a.Signatures) != 1 || a.Signatures[0].SignerID != "ines" || a.Signatures[0].Lapsed || a.Signatures[0].Meaning != "go for first flight" {
		t.Errorf("signatures %+v", a.Signatures)
	}
	if a.ModelDisplayName != "Redshank" || a.FieldDisplayName != "Quarry Top" || a.OwnerDisplayName != "ADA" || a.Version != 7 {
		t.Errorf("got %+v", a)
	}
}

func TestApprovalNeedsItsOwnersModel(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	create := func(by club.Actor, model, field string) error {
		return s.try(func(ctx context.Context, tx *postgres.Tx) error {
			_, err := tx.CreateApproval(ctx, by, club.Approval{ModelID: model, FieldID: field})
			return err
		})
	}
	s.refused(create(bram, s.redshank.ID, s.quarry.ID), club.Forbidden)
	s.refused(create(ada, "nothing", s.quarry.ID), club.NotFound)
	s.refused(create(ada, s.redshank.ID, "nothing"), club.NotFound)
}

func TestDecisionsRefused(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	ready := s.lead(club.Ready)
	returned := s.decide(s.lead(club.DeskReview), club.VerbReturn, ines)
	for name, tt := range map[string]struct {
		of     club.Approval
		verb   club.Verb
		by     club.Actor
		change func(*postgres.Decision)
		want   club.Code
	}{
		"stale":                {ready, club.VerbSign, ines, func(d *postgres.Decision) { d.Etag = "v1" }, club.Stale},
		"no etag":              {ready, club.VerbSign, ines, func(d *postgres.Decision) { d.Etag = "" }, club.Invalid},
		"not an officer":       {ready, club.VerbSign, bram, nil, club.Forbidden},
		"forbidden and stale":  {ready, club.VerbSign, bram, func(d *postgres.Decision) { d.Etag = "v1" }, club.Forbidden},
		"no signature":         {ready, club.VerbSign, ines, func(d *postgres.Decision) { d.Signature = nil }, club.FailedPrecondition},
		"another digest":       {ready, club.VerbSign, ines, func(d *postgres.Decision) { d.Signature.Digest = strings.Repeat("0", 64) }, club.FailedPrecondition},
		"wrong state":          {ready, club.VerbPassDesk, ines, nil, club.FailedPrecondition},
		"no reason":            {ready, club.VerbRefuse, ines, func(d *postgres.Decision) { d.Reason = "" }, club.Invalid},
		"no assessment":        {returned, club.VerbSubmit, ada, func(d *postgres.Decision) { d.Submission = nil }, club.Invalid},
		"assessed too early":   {returned, club.VerbSubmit, ada, func(d *postgres.Decision) { d.Submission.ModelRevision = 7 }, club.Stale},
		"older field":          {returned, club.VerbSubmit, ada, func(d *postgres.Decision) { d.Submission.FieldVersion = 0 }, club.Stale},
		"unknown assessment":   {returned, club.VerbSubmit, ada, func(d *postgres.Decision) { d.Submission.AssessmentID = "nothing" }, club.Invalid},
		"not there":            {ready, club.VerbSign, ines, func(d *postgres.Decision) { d.ID = "nothing" }, club.NotFound},
		"the club's own lapse": {ready, club.VerbLapse, ines, nil, club.Invalid},
	} {
		d := s.decision(tt.of, tt.verb, tt.by)
		if tt.change != nil {
			tt.change(&d)
		}
		if _, err := s.tryDecide(d); club.CodeOf(err) != tt.want {
			t.Errorf("%s: got %v, want %s", name, err, tt.want)
		}
	}
	if after := s.again(ready.ID); after.Version != ready.Version || len(after.Transitions) != len(ready.Transitions) {
		t.Error("a refused decision left a trace")
	}
}

func TestTwoOfficersSignAtOnce(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	a := s.lead(club.Ready)
	decisions := []postgres.Decision{s.decision(a, club.VerbSign, ines), s.decision(a, club.VerbSign, tomas), s.decision(a, club.VerbRefuse, tomas)}
	errs := make([]error, len(decisions))
	var group sync.WaitGroup
	for n, d := range decisions {
		group.Go(func() { _, errs[n] = s.tryDecide(d) })
	}
	group.Wait()
	won := 0
	for _, err := range errs {
		if err == nil {
			won++
		} else {
			s.refused(err, club.Stale)
		}
	}
	if after := s.again(a.ID); won != 1 || len(after.Transitions) != len(a.Transitions)+1 {
		t.Errorf("%d decisions went through, %d transitions", won, len(after.Transitions))
	}
}

func TestSubmissionTakesWhatChanged(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	a := s.draft()
	d := s.decision(a, club.VerbSubmit, ada)
	note, at := "now with a trap", time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
	d.Submission.Day, d.Submission.OwnerNote = json.RawMessage(`{"time":"2026-11-26T10:00:00Z"}`), &note
	a, err := s.tryDecide(d)
	if err != nil || a.OwnerNote != note || !strings.Contains(string(a.Day), "11-26") || !strings.Contains(string(a.LaunchPlan), "RAMP") {
		t.Errorf("got %+v, %v", a, err)
	}
	a = s.decide(a, club.VerbBeginReview, ines)
	pass := s.decision(a, club.VerbPassDesk, ines)
	pass.Conditions = []string{"wind below 6 m/s"}
	if a, err = s.tryDecide(pass); err != nil || fmt.Sprint(a.Conditions) != "[wind below 6 m/s]" {
		t.Errorf("conditions %v, %v", a.Conditions, err)
	}
	a = s.decide(a, club.VerbPassBench, ines)
	sign := s.decision(a, club.VerbSign, ines)
	sign.Signature.DeviceTime = at
	if a, err = s.tryDecide(sign); err != nil || !a.Signatures[0].DeviceTime.Equal(at) || len(a.Conditions) != 1 {
		t.Errorf("signatures %+v, %v", a.Signatures, err)
	}
}

func TestChangeLapsesWhatRestedOnIt(t *testing.T) {
	t.Parallel()
	changes := map[string]func(*scene){
		"model": func(s *scene) {
			_, err := s.change("", nil, description(9.1))
			s.must(err)
		},
		"field": func(s *scene) {
			s.tx(func(ctx context.Context, tx *postgres.Tx) error {
				_, err := tx.UpdateField(ctx, mei, postgres.FieldChange{ID: s.quarry.ID, Description: json.RawMessage(`{}`)})
				return err
			})
		},
	}
	for what, change := range changes {
		t.Run(what, func(t *testing.T) {
			t.Parallel()
			s := newScene(t)
			want := map[string]club.State{}
			for from, to := range map[club.State]club.State{
				club.Draft: club.Draft, club.Submitted: club.Lapsed, club.DeskReview: club.Lapsed, club.Bench: club.Lapsed,
				club.Ready: club.Lapsed, club.Signed: club.Lapsed, club.Flown: club.Flown,
			} {
				want[s.lead(from).ID] = to
			}
			change(s)
			for id, to := range want {
				a := s.again(id)
				if a.State != to {
					t.Errorf("got %s, want %s", a.State, to)
				}
				for _, sig := range a.Signatures {
					if sig.Lapsed != (to == club.Lapsed) {
						t.Errorf("%s: signature lapsed is %v", to, sig.Lapsed)
					}
				}
				last := a.Transitions[len(a.Transitions)-1]
				if to == club.Lapsed && (last.Verb != club.VerbLapse || last.ActorID != "" || !strings.Contains(last.Reason, what)) {
					t.Errorf("last transition %+v", last)
				}
			}
			s.verified()
		})
	}
}

func TestLapsedIsSubmittedAgainOnTheLatest(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	a := s.lead(club.Signed)
	_, err := s.change("", nil, description(9.1))
	s.must(err)
	a = s.again(a.ID)
	_, err = s.tryDecide(s.decision(a, club.VerbSubmit, ada)) // on the revision it named before
	s.refused(err, club.Stale)
	d := s.decision(a, club.VerbSubmit, ada)
	d.Submission.ModelRevision = 2
	if a, err = s.tryDecide(d); err != nil || a.State != club.Submitted || a.ModelRevision != 2 {
		t.Fatalf("got %s on revision %d, %v", a.State, a.ModelRevision, err)
	}
	for _, verb := range []club.Verb{club.VerbBeginReview, club.VerbPassDesk, club.VerbPassBench, club.VerbSign} {
		a = s.decide(a, verb, ines)
	}
	if len(a.Signatures) != 2 || !a.Signatures[0].Lapsed || a.Signatures[1].Lapsed {
		t.Errorf("signatures %+v", a.Signatures)
	}
}

func TestHoldAndRelease(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	a := s.decide(s.lead(club.Ready), club.VerbHold, ines)
	a = s.decide(a, club.VerbHold, tomas)
	if a.State != club.Held || a.HeldFrom != club.Ready || len(a.Holds) != 2 {
		t.Fatalf("%s from %s with %d holds", a.State, a.HeldFrom, len(a.Holds))
	}
	a = s.decide(a, club.VerbRelease, tomas)
	if a.State != club.Ready || a.HeldFrom != "" {
		t.Errorf("released to %s, held from %q", a.State, a.HeldFrom)
	}
	for _, h := range a.Holds {
		if !h.Released || h.ReleasedByID != "tomas" || h.ReleasedByDisplayName != "TOMAS" || h.ReleaseReason != "because release" {
			t.Errorf("hold %+v", h)
		}
	}
}

func TestHeldApprovalLapsesUnderneath(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	a := s.decide(s.lead(club.Signed), club.VerbHold, ines)
	_, err := s.change("", nil, description(9.1))
	s.must(err)
	a = s.again(a.ID)
	if a.State != club.Held || a.HeldFrom != club.Lapsed || !a.Signatures[0].Lapsed {
		t.Fatalf("%s from %s, signature lapsed %v", a.State, a.HeldFrom, a.Signatures[0].Lapsed)
	}
	if a = s.decide(a, club.VerbRelease, ines); a.State != club.Lapsed {
		t.Errorf("released to %s", a.State)
	}
}

func TestApprovalsListed(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.draft()
	ready := s.lead(club.Ready)
	for name, tt := range map[string]struct {
		filter postgres.ApprovalFilter
		want   int
	}{
		"all": {postgres.ApprovalFilter{}, 2}, "hers": {postgres.ApprovalFilter{OwnerID: "ada"}, 2},
		"his": {postgres.ApprovalFilter{OwnerID: "bram"}, 0}, "ready": {postgres.ApprovalFilter{States: []club.State{club.Ready, club.Signed}}, 1},
	} {
		s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
			got, _, err := tx.Approvals(ctx, tt.filter, club.Page{})
			if len(got) != tt.want {
				t.Errorf("%s: %d approvals, want %d", name, len(got), tt.want)
			}
			if name == "ready" && (got[0].ID != ready.ID || got[0].Counts.Holds != 20 || got[0].Transitions != nil) {
				t.Errorf("got %+v", got[0])
			}
			return err
		})
	}
}

func TestAssessmentsAreKept(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	id := s.assess()
	s.assess()
	s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
		a, err := tx.Assessment(ctx, id)
		if err != nil || a.CreatorID != "ada" || a.Counts.Tight != 3 || !json.Valid(a.Report) || !json.Valid(a.Input) {
			t.Errorf("got %+v, %v", a, err)
		}
		some, next, err := tx.Assessments(ctx, "ada", club.Page{Size: 1})
		if err != nil || len(some) != 1 || some[0].ID == id || some[0].Input != nil || next == "" {
			t.Errorf("first page %+v, %q, %v", some, next, err)
		}
		rest, end, err := tx.Assessments(ctx, "", club.Page{Size: 1, After: next})
		if err != nil || len(rest) != 1 || rest[0].ID != id || end != "" {
			t.Errorf("second page %+v, %q, %v", rest, end, err)
		}
		_, err = tx.Assessment(ctx, "nothing")
		s.refused(err, club.NotFound)
		return nil
	})
}
