//go:build linux

package privatedb

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net/url"
	"os"
	"sync"
	"syscall"
	"time"
)

const (
	// roleName is the owner of the private cluster; its password never leaves the data directory.
	roleName = "pitgate"
	// databaseName is made on the first start.
	databaseName = "pitgate"
	// startLimit bounds one start, crash recovery included.
	startLimit = 10 * time.Minute
	// fastStopLimit is how long open transactions may take to roll back before a harder signal.
	fastStopLimit = 20 * time.Second
)

// Server is a running private PostgreSQL. Its methods may be called from any goroutine.
type Server struct {
	place   place
	account account
	bin     string
	secret  string
	log     *slog.Logger
	lock    *os.File

	mu       sync.Mutex
	process  *os.Process
	stopping bool
	failure  error

	stop     chan struct{}
	done     chan struct{}
	stopOnce sync.Once
}

// Start starts the cluster kept in dir, making it on first use, and returns when it answers.
// ctx bounds the start only; the server lives until Stop. A nil log discards the cluster's own messages.
// It returns an error when another process holds dir, when no PostgreSQL programs are found, or when
// the cluster's account cannot reach dir.
func Start(ctx context.Context, dir string, log *slog.Logger) (*Server, error) {
	if log == nil {
		log = slog.New(slog.DiscardHandler)
	}
	s, err := prepare(ctx, dir, log)
	if err != nil {
		return nil, fmt.Errorf("private database: %w", err)
	}
	go s.supervise() //nolint:contextcheck // the database outlives the start that ctx bounds
	if err := s.awaitReady(ctx); err != nil {
		return nil, fmt.Errorf("private database: %w", errors.Join(err, s.Stop()))
	}
	log.Info("private database is up", "dir", s.place.dir, "pid", s.PID())
	return s, nil
}

// prepare takes the lock, makes the cluster if there is none and clears what a crash left behind.
func prepare(ctx context.Context, dir string, log *slog.Logger) (*Server, error) {
	p, err := locate(dir)
	if err != nil {
		return nil, err
	}
	lock, err := takeLock(p.lockFile())
	if err != nil {
		return nil, err
	}
	s := &Server{place: p, log: log, lock: lock, stop: make(chan struct{}), done: make(chan struct{})}
	if err := s.settle(ctx); err != nil {
		return nil, errors.Join(err, lock.Close())
	}
	return s, nil
}

// settle brings the directory into the state from which postgres can be started. The lock is held.
func (s *Server) settle(ctx context.Context) (err error) {
	if s.account, err = chooseAccount(s.place.data()); err != nil {
		return err
	}
	if err = s.place.openTo(s.account); err != nil {
		return err
	}
	if err = s.place.makeSocketDir(s.account); err != nil {
		return err
	}
	if s.bin, err = programs(s.place.data()); err != nil {
		return err
	}
	if s.secret, err = s.place.password(); err != nil {
		return err
	}
	if err = s.makeCluster(ctx); err != nil {
		return err
	}
	return clearLeftovers(ctx, s.place, s.log)
}

// URL returns the connection address of the cluster's owner over the private socket. It contains the password:
// do not log it. The owner bypasses row security, so the service must change to its own role in each transaction.
func (s *Server) URL() string { return s.databaseURL(databaseName) }

func (s *Server) databaseURL(database string) string {
	u := url.URL{Scheme: "postgres", User: url.UserPassword(roleName, s.secret), Path: "/" + database}
	q := url.Values{"host": {s.place.socketDir}, "port": {socketPort}, "sslmode": {"disable"}}
	u.RawQuery = q.Encode()
	return u.String()
}

// PID returns the process id of the postmaster, or zero when none is running at the moment.
func (s *Server) PID() int {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.process == nil {
		return 0
	}
	return s.process.Pid
}

// Done is closed when the cluster has stopped for good: after Stop, or when it could not be kept running.
func (s *Server) Done() <-chan struct{} { return s.done }

// Err returns why the cluster stopped for good, nil while it runs and nil after an ordinary Stop.
func (s *Server) Err() error {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.failure
}

// Stop rolls back open transactions, stops the cluster and gives the directory free. Later calls do nothing.
func (s *Server) Stop() error {
	var err error
	s.stopOnce.Do(func() {
		s.mu.Lock()
		s.stopping = true
		s.mu.Unlock()
		close(s.stop)
		err = errors.Join(s.endProcess(), s.lock.Close())
	})
	return err
}

// endProcess asks ever harder until the supervisor reports the end: fast stop, immediate stop, kill.
func (s *Server) endProcess() error {
	for _, step := range []syscall.Signal{syscall.SIGINT, syscall.SIGQUIT, syscall.SIGKILL} {
		s.signal(step)
		select {
		case <-s.done:
			return nil
		case <-time.After(fastStopLimit):
			s.log.Warn("private database did not stop in time", "signal", step.String())
		}
	}
	return errors.New("private database does not stop, not even when killed")
}

func (s *Server) signal(sig syscall.Signal) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.process != nil {
		_ = s.process.Signal(sig) // an error means that it has ended already
	}
}
