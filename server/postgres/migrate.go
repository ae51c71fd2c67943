package postgres

import (
	"context"
	"fmt"

	"github.com/jackc/pgx/v5/pgxpool"
	"github.com/jackc/pgx/v5/stdlib"
	"github.com/pressly/goose/v3"
	"github.com/pressly/goose/v3/lock"

	"pitgate/migrations"
)

// oldestVersion of PostgreSQL that the schema runs on, as server_version_num counts.
const oldestVersion = 150000

// Migrate brings the database to the newest schema. Several processes may call it at once: one does the work. It needs a
// user that owns the database and may create roles.
func Migrate(ctx context.Context, url string) error {
	pool, err := openPool(ctx, url, 2, nil)
	if err != nil {
		return err
	}
	defer pool.Close()
	if err := checkServer(ctx, pool); err != nil {
		return err
	}
	locker, err := lock.NewPostgresSessionLocker()
	if err != nil {
		return fmt.Errorf("migrate: %w", err)
	}
	if err := migrateJobs(ctx, pool); err != nil {
		return fmt.Errorf("migrate the queue of jobs: %w", err)
	}
	db := stdlib.OpenDBFromPool(pool)
	defer db.Close()
	provider, err := goose.NewProvider(goose.DialectPostgres, db, migrations.FS, goose.WithSessionLocker(locker))
	if err != nil {
		return fmt.Errorf("migrate: %w", err)
	}
	if _, err := provider.Up(ctx); err != nil {
		return fmt.Errorf("migrate: %w", err)
	}
	return nil
}

// checkServer refuses a server older than 15, or one that may lose what it has acknowledged.
func checkServer(ctx context.Context, pool *pgxpool.Pool) error {
	var version int
	var fsync, commit string
	err := pool.QueryRow(ctx, `SELECT current_setting('server_version_num')::int, current_setting('fsync'),
		current_setting('synchronous_commit')`).Scan(&version, &fsync, &commit)
	switch {
	case err != nil:
		return fmt.Errorf("ask the database server for its settings: %w", err)
	case version < oldestVersion:
		return fmt.Errorf("database server: version %d is too old, 15 or newer is needed", version/10000)
	case fsync != "on":
		return fmt.Errorf("database server: fsync is %s; it must be on, or a power cut loses decisions", fsync)
	case commit == "off":
		return fmt.Errorf("database server: synchronous_commit is off; it must be on, or a crash loses decisions")
	}
	return nil
}
