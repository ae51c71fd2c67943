package jobs

import (
	"context"
	"crypto/rand"
	"errors"
	"log/slog"
	"os"
	"sync"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"

	"pitgate/server/postgres"
)

// beatPause is how often a process looks after the jobs of those that died. A dead one's jobs are taken up by others after two of these at the latest.
const beatPause = 5 * time.Second

// alive vouches for one process as long as it lives, and gives back the jobs of processes that nothing vouches for. What vouches is a lock of a session
// of the database and no time: a job that is slow is never taken for one whose process died.
type alive struct {
	pool   *pgxpool.Pool
	worker string
	beat   time.Duration
	log    *slog.Logger
	// conn holds the lock; nil while it is broken.
	conn *pgxpool.Conn
	stop context.CancelFunc
	over sync.WaitGroup
}

// errTaken says that the names of several workers are taken, which chance alone does not do.
var errTaken = errors.New("no free name for a worker of the queue")

// vouch finds a name of its own for this process, takes its lock and begins to look after the dead.
func vouch(ctx context.Context, pool *pgxpool.Pool, beat time.Duration, log *slog.Logger) (*alive, error) {
	a := &alive{pool: pool, beat: beat, log: log}
	for range 5 {
		a.worker = workerName()
		held, err := a.hold(ctx)
		if err != nil {
			return nil, err
		}
		if held {
			ctx, a.stop = context.WithCancel(context.WithoutCancel(ctx))
			a.over.Go(func() { a.look(ctx) })
			return a, nil
		}
	}
	return nil, errTaken
}

// workerName is the machine and 130 random bits.
func workerName() string {
	host, err := os.Hostname()
	if err != nil {
		host = "somewhere"
	}
	return host[:min(len(host), 60)] + "_" + rand.Text()
}

// hold takes the lock on a connection of its own.
func (a *alive) hold(ctx context.Context) (bool, error) {
	conn, err := a.pool.Acquire(ctx)
	if err != nil {
		return false, err
	}
	held, err := postgres.HoldWorkerLock(ctx, conn.Conn(), a.worker)
	if err != nil || !held {
		conn.Release()
		return false, err
	}
	a.conn = conn
	return true, nil
}

// look gives back jobs at every beat until it is stopped.
func (a *alive) look(ctx context.Context) {
	for {
		if err := a.once(ctx); err != nil && ctx.Err() == nil {
			a.log.WarnContext(ctx, "jobs of processes that died are looked after later", "error", err)
		}
		select {
		case <-ctx.Done():
			return
		case <-time.After(a.beat):
		}
	}
}

// once takes the lock anew where its connection broke, and gives back the jobs of the dead.
func (a *alive) once(ctx context.Context) error {
	if a.conn == nil {
		if held, err := a.hold(ctx); err != nil || !held {
			return err // the broken session may live on for a moment: its lock vouches as well
		}
	}
	freed, err := postgres.FreeJobsOfDeadWorkers(ctx, a.conn.Conn(), a.beat)
	if err != nil && a.conn.Conn().IsClosed() {
		a.conn.Release()
		a.conn = nil
	}
	if freed > 0 {
		a.log.WarnContext(ctx, "jobs of a process that died are taken up", "jobs", freed)
	}
	return err
}

// end stops looking and gives the lock back with its connection, even when ctx has ended.
func (a *alive) end(ctx context.Context) {
	a.stop()
	a.over.Wait()
	if a.conn != nil {
		_ = a.conn.Hijack().Close(context.WithoutCancel(ctx)) // the lock must not go on in the pool
		a.conn = nil
	}
}
