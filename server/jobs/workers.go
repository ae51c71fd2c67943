package jobs

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"log/slog"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgxpool"
	"github.com/riverqueue/river"
	"github.com/riverqueue/river/riverdriver/riverpgxv5"

	"pitgate/server/postgres"
)

// Assessor computes one approval again and keeps what became of it. It must keep nothing twice, and be able to begin anew.
type Assessor interface {
	Reassess(ctx context.Context, job ReassessApproval) error
	// KeepFailure keeps that an approval could not be computed, where everybody who may read it sees it.
	KeepFailure(ctx context.Context, job ReassessApproval, reason string) error
	// Preview computes one approval by rules that are not in force and keeps what would become of it, under the same conditions.
	Preview(ctx context.Context, job PreviewApproval) error
	// KeepPreviewFailure keeps that this cannot be computed.
	KeepPreviewFailure(ctx context.Context, job PreviewApproval, reason string) error
}

// Config is what workers need.
type Config struct {
	// Store is the database. Required.
	Store *postgres.Store
	// Assessor does the work. Required.
	Assessor Assessor
	// Log takes what goes wrong. Nil discards.
	Log *slog.Logger
	// Count is how many jobs are worked on at a time; at least 1.
	Count int
	// Stuck is after how long a job counts as stuck although its process lives; 0 is three minutes.
	Stuck time.Duration
	// Beat is how often the jobs of processes that died are looked for; they are taken up after two beats at the latest. 0 is five seconds.
	Beat time.Duration
}

const (
	// jobTime is how long one job may take.
	jobTime = time.Minute
	// stuckAfter is how long a job may count as being worked on.
	stuckAfter = 3 * time.Minute
	// fetchPause is the least time between two looks for jobs.
	fetchPause = 10 * time.Millisecond
	// queueConnections are for the queue's own keeping: listening, leading, fetching, completing and vouching for the process.
	queueConnections = 7
)

// Workers work on jobs until they are stopped.
type Workers struct {
	client *river.Client[pgx.Tx]
	pool   *pgxpool.Pool
	alive  *alive
}

// Start begins to work.
func Start(ctx context.Context, config Config) (*Workers, error) {
	if config.Store == nil || config.Assessor == nil || config.Count < 1 {
		return nil, errors.New("jobs: store, assessor and a count of 1 or more are needed")
	}
	if config.Log == nil {
		config.Log = slog.New(slog.DiscardHandler)
	}
	pool, err := config.Store.QueuePool(ctx, queueConnections)
	if err != nil {
		return nil, err
	}
	w := &Workers{pool: pool}
	if err := w.start(ctx, config); err != nil {
		pool.Close()
		return nil, fmt.Errorf("jobs: %w", err)
	}
	return w, nil
}

// start vouches for this process before it takes a job.
func (w *Workers) start(ctx context.Context, config Config) (err error) {
	if w.alive, err = vouch(ctx, w.pool, cmp.Or(config.Beat, beatPause), config.Log); err != nil {
		return err
	}
	if w.client, err = river.NewClient(riverpgxv5.New(w.pool), riverConfig(config, w.alive.worker)); err == nil {
		err = w.client.Start(context.WithoutCancel(ctx))
	}
	if err != nil {
		w.alive.end(ctx)
	}
	return err
}

func riverConfig(c Config, worker string) *river.Config {
	workers := river.NewWorkers()
	river.AddWorker(workers, &approvalWorker{assessor: c.Assessor})
	river.AddWorker(workers, &previewWorker{assessor: c.Assessor})
	river.AddWorker(workers, &clubWorker{store: c.Store})
	c.Stuck = cmp.Or(c.Stuck, stuckAfter)
	return &river.Config{
		ID: worker, Schema: postgres.JobsSchema, Workers: workers, Queues: map[string]river.QueueConfig{queueName: {MaxWorkers: c.Count}},
		Logger: slog.New(warnings{c.Log.Handler()}), JobTimeout: min(jobTime, c.Stuck/2), RescueStuckJobsAfter: c.Stuck, FetchCooldown: fetchPause,
		ErrorHandler: &failures{assessor: c.Assessor, log: c.Log},
	}
}

// Stop fetches no more jobs and lets the present ones end; when ctx ends before, they are cancelled and tried again later, by whoever works then.
func (w *Workers) Stop(ctx context.Context) error {
	defer w.pool.Close()
	defer w.alive.end(ctx)
	err := w.client.Stop(ctx)
	if err == nil {
		return nil
	}
	hard, cancel := context.WithTimeout(context.WithoutCancel(ctx), cancelTime)
	defer cancel()
	return w.client.StopAndCancel(hard)
}

// cancelTime is how long cancelled jobs may take to notice.
const cancelTime = 5 * time.Second

// warnings lets through what needs somebody's eye: the queue tells much about itself.
type warnings struct{ slog.Handler }

// Enabled implements slog.Handler.
func (w warnings) Enabled(ctx context.Context, level slog.Level) bool {
	return level >= slog.LevelWarn && w.Handler.Enabled(ctx, level)
}
