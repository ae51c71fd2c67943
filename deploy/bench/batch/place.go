package main

import (
	"context"
	"crypto/ed25519"
	"encoding/json"
	"errors"
	"fmt"
	"log/slog"
	"os"
	"strings"
	"time"

	"github.com/jackc/pgx/v5"

	"pitgate/server/api"
	"pitgate/server/club"
	"pitgate/server/document"
	"pitgate/server/jobs"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
	"pitgate/server/privatedb"
)

// place is a private database with a store on it.
type place struct {
	dir    string
	server *privatedb.Server
	store  *postgres.Store
	clubs  int
}

func openPlace(ctx context.Context) (*place, error) {
	dir, err := os.MkdirTemp("", "pitgate-batch")
	if err != nil {
		return nil, err
	}
	p := &place{dir: dir}
	if err := errors.Join(os.Chmod(dir, 0o755), p.open(ctx)); err != nil { // the database runs as another user when this runs as root
		return nil, errors.Join(err, p.close())
	}
	return p, nil
}

func (p *place) open(ctx context.Context) (err error) {
	if p.server, err = privatedb.Start(ctx, p.dir+"/db", slog.New(slog.DiscardHandler)); err != nil {
		return err
	}
	if err := postgres.Migrate(ctx, p.server.URL()); err != nil {
		return err
	}
	key := ed25519.NewKeyFromSeed([]byte("pitgate measures with this key.."))
	p.store, err = postgres.Open(ctx, p.server.URL(), postgres.WithSigningKey(key), postgres.WithMaxConnections(8))
	return err
}

func (p *place) close() error {
	if p.store != nil {
		p.store.Close()
	}
	var err error
	if p.server != nil {
		err = p.server.Stop()
	}
	return errors.Join(err, os.RemoveAll(p.dir))
}

// inserts is how many rows of 4 kB a bare connection commits in a second, one after the other.
func (p *place) inserts(ctx context.Context) (float64, error) {
	conn, err := pgx.Connect(ctx, p.server.URL())
	if err != nil {
		return 0, err
	}
	defer func() { _ = conn.Close(ctx) }()
	if _, err := conn.Exec(ctx, `CREATE TABLE bare (id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY, body text)`); err != nil {
		return 0, err
	}
	body, start, n := strings.Repeat("x", 4000), time.Now(), 0
	for ; time.Since(start) < loopTime; n++ {
		if _, err := conn.Exec(ctx, `INSERT INTO bare (body) VALUES ($1)`, body); err != nil {
			return 0, err
		}
	}
	return float64(n) / time.Since(start).Seconds(), nil
}

// small is how many clubs have few approvals, and one in few is theirs.
const small, few = 3, 10

// rows fills clubs with approvals whose answer is of the given core, works on them with 1, 2 and 4 workers, and prints a row each.
func (p *place) rows(ctx context.Context, in assess.Input, version string, approvals int, what string, reference float64, of string) error {
	var clubs []string
	for n := range small + 1 {
		count := approvals / few / small
		if n == small {
			count = approvals - small*count
		}
		id, err := p.furnish(ctx, in, version, count)
		if err != nil {
			return err
		}
		clubs = append(clubs, id)
	}
	for _, workers := range []int{1, 2, 4} {
		took, smallTook, err := p.work(ctx, clubs, workers)
		if err != nil {
			return err
		}
		rate := float64(approvals) / took.Seconds()
		fmt.Printf("| %d %s, %d clubs, %d workers | %.1f per second; the small clubs done after %v of %v | %.2g %s |\n", approvals, what, len(clubs), workers, rate,
			smallTook.Round(10*time.Millisecond), took.Round(10*time.Millisecond), rate/reference, of)
	}
	return nil
}

// furnish opens a club with so many submitted approvals.
func (p *place) furnish(ctx context.Context, in assess.Input, version string, approvals int) (string, error) {
	p.clubs++
	id, owner := fmt.Sprintf("club-%d", p.clubs), club.Actor{PersonID: "ada", Roles: club.Roles()}
	report, err := document.Assess(in)
	if err != nil {
		return "", err
	}
	input, err := document.Canonical(in)
	if err != nil {
		return "", err
	}
	answer, err := json.Marshal(report)
	if err != nil {
		return "", err
	}
	kept := club.Assessment{Input: input, Report: answer, InputDigest: report.InputDigest, CoreVersion: version}
	limits, err := json.Marshal(in.Limits)
	if err != nil {
		return "", err
	}
	draft := club.Approval{}
	if in.Limits != nil {
		draft.Limits = limits
	}
	err = p.store.InTx(ctx, id, func(tx *postgres.Tx) error { return found(ctx, tx, owner, &draft) })
	for n := 0; n < approvals && err == nil; n++ {
		err = p.store.InTx(ctx, id, func(tx *postgres.Tx) error { return submit(ctx, tx, owner, draft, kept) })
	}
	return id, err
}

// found opens the club with one person, one model and one field.
func found(ctx context.Context, tx *postgres.Tx, owner club.Actor, draft *club.Approval) error {
	if _, err := tx.CreateClub(ctx, "Club"); err != nil {
		return err
	}
	_, err := tx.CreatePerson(ctx, club.Actor{}, club.Person{ID: owner.PersonID, DisplayName: "Ada", Email: "ada@larkmoor.example", PasswordHash: "x", Roles: owner.Roles})
	if err != nil {
		return err
	}
	model, err := tx.CreateModel(ctx, owner, club.Model{DisplayName: "Redshank", Description: json.RawMessage(`{}`)})
	if err != nil {
		return err
	}
	field, err := tx.CreateField(ctx, owner, club.Field{DisplayName: "Quarry Top", Description: json.RawMessage(`{}`)})
	draft.ModelID, draft.FieldID = model.ID, field.ID
	return err
}

func submit(ctx context.Context, tx *postgres.Tx, owner club.Actor, draft club.Approval, kept club.Assessment) error {
	a, err := tx.CreateApproval(ctx, owner, draft)
	if err != nil {
		return err
	}
	kept.ApprovalID = a.ID
	answer, err := tx.CreateAssessment(ctx, owner, kept)
	if err != nil {
		return err
	}
	_, err = tx.Decide(ctx, postgres.Decision{ID: a.ID, Etag: club.Etag(a.Version), Verb: club.VerbSubmit, By: owner,
		Submission: &postgres.Submission{ModelRevision: 1, FieldVersion: 1, AssessmentID: answer.ID}})
	return err
}

// work has the clubs computed again, the one with most first, and tells when all were done and when the small ones.
func (p *place) work(ctx context.Context, clubs []string, count int) (all, small time.Duration, err error) {
	server, err := api.New(api.Config{Store: p.store})
	if err != nil {
		return 0, 0, err
	}
	queue, err := jobs.NewQueue()
	if err != nil {
		return 0, 0, err
	}
	runs := map[string]string{}
	for n := len(clubs) - 1; n >= 0; n-- {
		run, err := queue.BeginAsked(ctx, p.store, clubs[n], assess.Version)
		if err != nil {
			return 0, 0, err
		}
		runs[clubs[n]] = run.ID
	}
	start := time.Now()
	workers, err := jobs.Start(ctx, jobs.Config{Store: p.store, Assessor: server.Assessor, Count: count})
	if err != nil {
		return 0, 0, err
	}
	for n, id := range clubs {
		if err = p.wait(ctx, id, runs[id]); err != nil {
			break
		}
		if n < len(clubs)-1 {
			small = time.Since(start)
		}
	}
	all = time.Since(start)
	return all, small, errors.Join(err, workers.Stop(ctx))
}

// wait waits for a run and wants nothing to have failed or changed.
func (p *place) wait(ctx context.Context, clubID, runID string) error {
	for {
		var run club.ReassessmentRun
		err := p.store.Read(ctx, clubID, func(tx *postgres.ReadTx) (err error) {
			run, err = tx.Run(ctx, runID)
			return err
		})
		if err != nil {
			return err
		}
		if run.Done() {
			if run.FailCount > 0 || run.ChangedCount > 0 {
				return fmt.Errorf("club %s: %d failed, %d changed", clubID, run.FailCount, run.ChangedCount)
			}
			return nil
		}
		time.Sleep(50 * time.Millisecond)
	}
}
