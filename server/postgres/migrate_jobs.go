package postgres

import (
	"context"
	"log/slog"

	"github.com/jackc/pgx/v5/pgxpool"
	"github.com/riverqueue/river/riverdriver/riverpgxv5"
	"github.com/riverqueue/river/rivermigrate"
)

// JobsSchema is where the queue keeps its tables.
const JobsSchema = "jobs"

// migratingJobs is the key of the lock under which one process brings the queue's tables up.
const migratingJobs = 7310245

// migrateJobs brings the queue's tables to the queue's newest schema, one process at a time.
func migrateJobs(ctx context.Context, pool *pgxpool.Pool) error {
	conn, err := pool.Acquire(ctx)
	if err != nil {
		return err
	}
	defer conn.Release()
	if _, err := conn.Exec(ctx, `SELECT pg_advisory_lock($1)`, migratingJobs); err != nil {
		return err
	}
	defer func() { _, _ = conn.Exec(context.WithoutCancel(ctx), `SELECT pg_advisory_unlock($1)`, migratingJobs) }()
	if _, err := conn.Exec(ctx, `CREATE SCHEMA IF NOT EXISTS `+JobsSchema); err != nil {
		return err
	}
	migrator, err := rivermigrate.New(riverpgxv5.New(pool), &rivermigrate.Config{Schema: JobsSchema, Logger: slog.New(slog.DiscardHandler)})
	if err != nil {
		return err
	}
	_, err = migrator.Migrate(ctx, rivermigrate.DirectionUp, nil)
	return err
}
