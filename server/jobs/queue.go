package jobs

import (
	"context"
	"errors"
	"fmt"

	"github.com/jackc/pgx/v5"
	"github.com/riverqueue/river"
	"github.com/riverqueue/river/riverdriver/riverpgxv5"

	"pitgate/server/club"
	"pitgate/server/postgres"
)

// Queue adds jobs within the transactions of others. It may be used by many goroutines.
type Queue struct{ client *river.Client[pgx.Tx] }

// NewQueue makes a queue that adds and does not work.
func NewQueue() (*Queue, error) {
	client, err := river.NewClient(riverpgxv5.New(nil), &river.Config{Schema: postgres.JobsSchema})
	if err != nil {
		return nil, fmt.Errorf("queue of jobs: %w", err)
	}
	return &Queue{client}, nil
}

// Begin opens a run in the transaction and adds the job that follows it up. Uses Cause, Reason and CoreVersion of r.
func (q *Queue) Begin(ctx context.Context, tx *postgres.Tx, by club.Actor, r club.ReassessmentRun) (club.ReassessmentRun, error) {
	r.ByJobs = true
	run, err := tx.BeginRun(ctx, by, r)
	if err != nil {
		return run, err
	}
	return run, tx.Enqueue(func(raw pgx.Tx) error {
		_, err := q.client.InsertTx(ctx, raw, ReassessClub{Club: tx.ClubID(), Run: run.ID}, nil)
		return err
	})
}

// AddPreview adds the jobs of a preview in the transaction that keeps it.
func (q *Queue) AddPreview(ctx context.Context, tx *postgres.Tx, previewID string, approvals []string) error {
	return tx.Enqueue(func(raw pgx.Tx) error {
		return addInTurns(ctx, q.client, raw, approvals, func(id string) (river.JobArgs, river.InsertOpts) {
			args := PreviewApproval{Club: tx.ClubID(), Preview: previewID, Approval: id}
			return args, args.InsertOpts()
		})
	})
}

// BeginForCore opens a run in every club whose last run for the core was for another version, and tells in how many. Several processes may call it at
// once: one run comes of it.
func (q *Queue) BeginForCore(ctx context.Context, store *postgres.Store, version string) (begun int, err error) {
	clubs, err := store.EveryClub(ctx)
	if err != nil {
		return 0, err
	}
	for _, id := range clubs {
		made := false
		one := store.InTx(ctx, id, func(tx *postgres.Tx) error {
			made, err = q.beginForCore(ctx, tx, version)
			return err
		})
		if one != nil {
			return begun, errors.Join(fmt.Errorf("club %s: %w", id, one))
		}
		if made {
			begun++
		}
	}
	return begun, nil
}

func (q *Queue) beginForCore(ctx context.Context, tx *postgres.Tx, version string) (bool, error) {
	if err := tx.LockRuns(ctx); err != nil {
		return false, err
	}
	last, found, err := tx.LatestRun(ctx, club.CauseCore)
	if err != nil || found && last.CoreVersion == version {
		return false, err
	}
	_, err = q.Begin(ctx, tx, club.Actor{}, club.ReassessmentRun{Cause: club.CauseCore, CoreVersion: version, Reason: coreReason(last, found, version)})
	return err == nil, err
}

func coreReason(last club.ReassessmentRun, found bool, version string) string {
	if !found {
		return "The core " + version + " was taken into use"
	}
	return "The core " + version + " took the place of " + last.CoreVersion
}

// BeginAsked opens a run because somebody asked for it; one that is still going on serves as well.
func (q *Queue) BeginAsked(ctx context.Context, store *postgres.Store, clubID, version string) (run club.ReassessmentRun, err error) {
	err = store.InTx(ctx, clubID, func(tx *postgres.Tx) error {
		if err := tx.LockRuns(ctx); err != nil {
			return err
		}
		last, found, err := tx.LatestRun(ctx, club.CauseAsked)
		if err != nil {
			return err
		}
		if found && !last.Done() && last.CoreVersion == version {
			run = last
			return nil
		}
		run, err = q.Begin(ctx, tx, club.Actor{}, club.ReassessmentRun{Cause: club.CauseAsked, CoreVersion: version, Reason: "Somebody asked for it"})
		return err
	})
	return run, err
}
