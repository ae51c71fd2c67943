package jobs

import (
	"context"
	"slices"

	"github.com/jackc/pgx/v5"
	"github.com/riverqueue/river"

	"pitgate/server/postgres"
)

// clubWorker works on ReassessClub.
type clubWorker struct {
	river.WorkerDefaults[ReassessClub]
	store *postgres.Store
}

// batch is how many jobs are added by one statement.
const batch = 500

// Work implements river.Worker: all jobs of the run are added in one transaction with their number, or none.
func (w *clubWorker) Work(ctx context.Context, job *river.Job[ReassessClub]) error {
	client, err := river.ClientFromContextSafely[pgx.Tx](ctx)
	if err != nil {
		return err
	}
	return w.store.InTx(ctx, job.Args.Club, func(tx *postgres.Tx) error {
		run, err := tx.Run(ctx, job.Args.Run)
		if err != nil || run.Listed {
			return err
		}
		approvals, err := tx.ApprovalsToReassess(ctx)
		if err != nil {
			return err
		}
		if err := tx.Enqueue(func(raw pgx.Tx) error { return addAll(ctx, client, raw, job.Args, approvals) }); err != nil {
			return err
		}
		return tx.ListRun(ctx, run.ID, len(approvals))
	})
}

// addAll adds a job for every approval, each in its turn.
func addAll(ctx context.Context, client *river.Client[pgx.Tx], raw pgx.Tx, of ReassessClub, approvals []string) error {
	return addInTurns(ctx, client, raw, approvals, func(id string) (river.JobArgs, river.InsertOpts) {
		args := ReassessApproval{Club: of.Club, Run: of.Run, Approval: id}
		return args, args.InsertOpts()
	})
}

// addInTurns adds the job that is made for every approval, each in its turn.
func addInTurns(ctx context.Context, client *river.Client[pgx.Tx], raw pgx.Tx, approvals []string, job func(id string) (river.JobArgs, river.InsertOpts)) error {
	n := 0
	for some := range slices.Chunk(approvals, batch) {
		var jobs []river.InsertManyParams
		for _, id := range some {
			args, options := job(id)
			options.ScheduledAt = turn(n)
			jobs = append(jobs, river.InsertManyParams{Args: args, InsertOpts: &options})
			n++
		}
		if _, err := client.InsertManyTx(ctx, raw, jobs); err != nil {
			return err
		}
	}
	return nil
}
