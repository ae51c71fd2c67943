package postgres

import (
	"context"
	"fmt"
	"time"

	"github.com/jackc/pgx/v5"
)

// aliveClass sets the locks of working processes apart from all other locks of the database.
const aliveClass = 7310246

// HoldWorkerLock takes the lock that tells every other process that this worker lives, for as long as the connection does: when the process dies, however
// it dies, the database ends its session and the lock is gone. held is false while another session has the lock.
func HoldWorkerLock(ctx context.Context, conn *pgx.Conn, worker string) (held bool, err error) {
	if err := conn.QueryRow(ctx, `SELECT pg_try_advisory_lock($1, hashtext($2))`, aliveClass, worker).Scan(&held); err != nil {
		return false, fmt.Errorf("lock of the living: %w", err)
	}
	return held, nil
}

// freeJobs gives back the jobs of workers that no living session vouches for. A job keeps its turn. One whose attempts are used up is left to the
// queue's own keeping, which ends it.
const freeJobs = `UPDATE ` + JobsSchema + `.river_job j
SET state = 'available', errors = array_append(j.errors, jsonb_build_object('at', now(), 'attempt', j.attempt, 'error', 'the process that worked on it died', 'trace', ''))
WHERE j.state = 'running' AND j.attempt < j.max_attempts AND j.attempted_at < now() - make_interval(secs => $2)
  AND NOT EXISTS (SELECT FROM pg_locks l
                  WHERE l.locktype = 'advisory' AND l.granted AND l.database = (SELECT oid FROM pg_database WHERE datname = current_database())
                    AND l.classid = $1::integer::oid AND l.objid = hashtext(j.attempted_by[array_upper(j.attempted_by, 1)])::oid AND l.objsubid = 2)`

// FreeJobsOfDeadWorkers lets others take up the jobs of processes that died, and tells how many those are. A job that was begun less than quiet ago is left
// alone, so that a worker whose connection broke has time to take its lock anew.
func FreeJobsOfDeadWorkers(ctx context.Context, conn *pgx.Conn, quiet time.Duration) (int64, error) {
	tag, err := conn.Exec(ctx, freeJobs, aliveClass, quiet.Seconds())
	if err != nil {
		return 0, fmt.Errorf("jobs of the dead: %w", err)
	}
	return tag.RowsAffected(), nil
}
