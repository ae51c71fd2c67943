package jobs_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"

	"pitgate/server/club"
	"pitgate/server/jobs"
	"pitgate/server/postgres"
	"pitgate/server/postgres/pgtest"
)

var ada = club.Actor{PersonID: "ada", Roles: []club.Role{club.Member}}

// scene is a database with clubs and submitted approvals, and a queue.
type scene struct {
	*postgres.Store
	t     *testing.T
	url   string
	queue *jobs.Queue
}

func newScene(t *testing.T) *scene {
	t.Helper()
	url := pgtest.URL(t)
	s := &scene{Store: pgtest.Open(t, url), t: t, url: url}
	var err error
	s.queue, err = jobs.NewQueue()
	s.must(err)
	return s
}

func (s *scene) must(err error) {
	s.t.Helper()
	if err != nil {
		s.t.Fatal(err)
	}
}

// furnish creates a club with ada's model, a field and so many submitted approvals.
func (s *scene) furnish(clubID string, approvals int) {
	s.t.Helper()
	ctx := s.t.Context()
	s.must(s.InTx(ctx, clubID, func(tx *postgres.Tx) error {
		if _, err := tx.CreateClub(ctx, "Club "+clubID); err != nil {
			return err
		}
		if _, err := tx.CreatePerson(ctx, club.Actor{}, club.Person{ID: ada.PersonID, DisplayName: "Ada", Email: "ada@larkmoor.example", PasswordHash: "x", Roles: ada.Roles}); err != nil {
			return err
		}
		model, err := tx.CreateModel(ctx, ada, club.Model{DisplayName: "Redshank", Description: json.RawMessage(`{}`)})
		if err != nil {
			return err
		}
		field, err := tx.CreateField(ctx, club.Actor{PersonID: ada.PersonID, Roles: club.Roles()}, club.Field{DisplayName: "Quarry Top", Description: json.RawMessage(`{}`)})
		if err != nil {
			return err
		}
		for range approvals {
			if err := submitted(ctx, tx, model.ID, field.ID); err != nil {
				return err
			}
		}
		return nil
	}))
}

// submitted opens an approval with an answer and submits it.
func submitted(ctx context.Context, tx *postgres.Tx, modelID, fieldID string) error {
	a, err := tx.CreateApproval(ctx, ada, club.Approval{ModelID: modelID, FieldID: fieldID})
	if err != nil {
		return err
	}
	kept, err := tx.CreateAssessment(ctx, ada, club.Assessment{Input: json.RawMessage(`{}`), Report: json.RawMessage(`{"findings":[]}`),
		InputDigest: strings.Repeat("ab", 32), CoreVersion: "1", ApprovalID: a.ID})
	if err != nil {
		return err
	}
	_, err = tx.Decide(ctx, postgres.Decision{ID: a.ID, Etag: club.Etag(a.Version), Verb: club.VerbSubmit, By: ada,
		Submission: &postgres.Submission{ModelRevision: 1, FieldVersion: 1, AssessmentID: kept.ID}})
	return err
}

// begin opens a run of a club.
func (s *scene) begin(clubID string) (run club.ReassessmentRun) {
	s.t.Helper()
	s.must(s.InTx(s.t.Context(), clubID, func(tx *postgres.Tx) (err error) {
		run, err = s.queue.Begin(s.t.Context(), tx, club.Actor{}, club.ReassessmentRun{Cause: club.CauseAsked, CoreVersion: "2", Reason: "a test"})
		return err
	}))
	return run
}

// run reads how far a run is.
func (s *scene) run(clubID, id string) (run club.ReassessmentRun) {
	s.t.Helper()
	s.must(s.Read(s.t.Context(), clubID, func(tx *postgres.ReadTx) (err error) {
		run, err = tx.Run(s.t.Context(), id)
		return err
	}))
	return run
}

// wait waits until something is so.
func (s *scene) wait(what string, so func() bool) {
	s.t.Helper()
	for end := time.Now().Add(30 * time.Second); !so(); time.Sleep(20 * time.Millisecond) {
		if time.Now().After(end) {
			s.t.Fatalf("waited in vain for %s", what)
		}
	}
}

// count asks the owner of the tables for one number.
func (s *scene) count(sql string) (n int) {
	s.t.Helper()
	conn, err := pgx.Connect(s.t.Context(), s.url)
	s.must(err)
	defer conn.Close(context.Background())
	s.must(conn.QueryRow(s.t.Context(), sql).Scan(&n))
	return n
}

// jobsSeenBy counts the jobs that a transaction of the club sees.
func (s *scene) jobsSeenBy(clubID string) (n int) {
	s.t.Helper()
	s.must(s.InTx(s.t.Context(), clubID, func(tx *postgres.Tx) error {
		return tx.Enqueue(func(raw pgx.Tx) error {
			return raw.QueryRow(s.t.Context(), `SELECT count(*) FROM jobs.river_job`).Scan(&n)
		})
	}))
	return n
}

// work starts workers and stops them at the end of the test.
func (s *scene) work(a jobs.Assessor, count int) *jobs.Workers {
	s.t.Helper()
	w, err := jobs.Start(s.t.Context(), jobs.Config{Store: s.Store, Assessor: a, Count: count})
	s.must(err)
	stop := sync.OnceFunc(func() {
		ctx, cancel := context.WithTimeout(context.Background(), 10*time.Second)
		defer cancel()
		if err := w.Stop(ctx); err != nil {
			s.t.Error(err)
		}
	})
	s.t.Cleanup(stop)
	return w
}

// plain keeps that nothing changed, and the order in which it was asked. before may break off.
type plain struct {
	store  *postgres.Store
	before func(context.Context, jobs.ReassessApproval) error

	mutex sync.Mutex
	order []jobs.ReassessApproval
}

func (p *plain) Reassess(ctx context.Context, job jobs.ReassessApproval) error {
	p.mutex.Lock()
	p.order = append(p.order, job)
	p.mutex.Unlock()
	if p.before != nil {
		if err := p.before(ctx, job); err != nil {
			return err
		}
	}
	return p.keep(ctx, job, club.Reassessment{Outcome: club.OutcomeSame})
}

func (p *plain) KeepFailure(ctx context.Context, job jobs.ReassessApproval, reason string) error {
	return p.keep(ctx, job, club.Reassessment{Outcome: club.OutcomeFailed, Failure: reason})
}

// Preview is no matter of these tests.
func (p *plain) Preview(context.Context, jobs.PreviewApproval) error {
	return errors.New("no previews here")
}

// KeepPreviewFailure is none either.
func (p *plain) KeepPreviewFailure(context.Context, jobs.PreviewApproval, string) error { return nil }

func (p *plain) keep(ctx context.Context, job jobs.ReassessApproval, r club.Reassessment) error {
	r.RunID, r.ApprovalID, r.CoreVersion, r.State = job.Run, job.Approval, "2", club.Submitted
	return p.store.InTx(ctx, job.Club, func(tx *postgres.Tx) error {
		_, err := tx.KeepReassessment(ctx, r)
		return err
	})
}

// turnsOf is the order in which clubs were served.
func (p *plain) turnsOf() (clubs []string) {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	for _, job := range p.order {
		clubs = append(clubs, job.Club)
	}
	return clubs
}

// name is a club's name by number.
func name(n int) string { return fmt.Sprintf("club-%d", n) }

// approvals are those that were worked on.
func (p *plain) approvals() (ids []string) {
	p.mutex.Lock()
	defer p.mutex.Unlock()
	for _, job := range p.order {
		ids = append(ids, job.Approval)
	}
	return ids
}
