//go:build linux

package privatedb

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"syscall"
	"time"

	"github.com/jackc/pgx/v5"
)

const (
	// quickEnd separates a cluster that cannot run from one that ran and crashed.
	quickEnd = 30 * time.Second
	// quickEndsAllowed is how many quick ends in a row are tolerated before giving up.
	quickEndsAllowed = 4
	// readyPoll is the time between two attempts to connect while starting.
	readyPoll = 40 * time.Millisecond
)

// supervise keeps the postmaster running until Stop. The kernel's parent-death signal follows the thread that
// forked, so this goroutine owns its thread for as long as any postmaster lives.
func (s *Server) supervise() {
	runtime.LockOSThread()
	defer close(s.done)
	for quick := 0; ; {
		begun := time.Now()
		err := s.runOnce()
		if s.isStopping() {
			return
		}
		if quick++; time.Since(begun) > quickEnd {
			quick = 1
		}
		if quick > quickEndsAllowed {
			s.fail(err)
			return
		}
		s.log.Error("private database ended by itself; starting it again", "cause", err)
		s.tidy(time.Duration(quick) * 250 * time.Millisecond)
	}
}

// tidy waits a moment and clears what the ended postmaster left.
func (s *Server) tidy(pause time.Duration) {
	select {
	case <-s.stop:
		return
	case <-time.After(pause):
	}
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	if err := clearLeftovers(ctx, s.place, s.log); err != nil {
		s.log.Error("private database: leftovers remain", "cause", err)
	}
}

// runOnce runs one postmaster to its end.
func (s *Server) runOnce() error {
	messages := &lineLog{log: s.log}
	cmd := s.command()
	cmd.Stderr = messages
	if err := s.begin(cmd); err != nil {
		return err
	}
	err := cmd.Wait()
	s.mu.Lock()
	s.process = nil
	s.mu.Unlock()
	if err == nil {
		err = errors.New("it ended without an error")
	}
	return fmt.Errorf("postgres: %w: %s", err, messages.tail())
}

// begin forks the postmaster unless Stop came first; both sides hold the same mutex, so none is overlooked.
func (s *Server) begin(cmd *exec.Cmd) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.stopping {
		return errors.New("stopped before it was started")
	}
	if err := cmd.Start(); err != nil {
		return fmt.Errorf("start %s: %w", cmd.Path, err)
	}
	s.process = cmd.Process
	return nil
}

// command is the postmaster's command line. What must never be otherwise stands here, where it overrides any
// configuration file: no network port, a private socket, and every commit on disk before it is answered.
func (s *Server) command() *exec.Cmd {
	//nolint:noctx // the postmaster is stopped in order by Stop, never killed by a context
	cmd := exec.Command(s.bin+"/postgres", "-D", s.place.data(), "-k", s.place.socketDir, "-p", socketPort,
		"-c", "listen_addresses=", "-c", "unix_socket_permissions=0700",
		"-c", "fsync=on", "-c", "synchronous_commit=on", "-c", "full_page_writes=on",
		"-c", "logging_collector=off", "-c", "log_destination=stderr", "-c", "log_line_prefix=")
	cmd.Dir = s.place.data()
	cmd.Env = childEnvironment()
	cmd.WaitDelay = 5 * time.Second
	cmd.SysProcAttr = s.account.attributes()
	cmd.SysProcAttr.Setpgid = true // a Ctrl-C at the terminal reaches pitgate alone, which then stops in order
	cmd.SysProcAttr.Pdeathsig = syscall.SIGINT
	return cmd
}

// childEnvironment keeps the caller's secrets out of the cluster's environment.
func childEnvironment() []string {
	return []string{"PATH=" + os.Getenv("PATH"), "LANG=C", "LC_ALL=C", "TZ=UTC"}
}

func (s *Server) isStopping() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.stopping
}

func (s *Server) fail(err error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.failure = err
	s.log.Error("private database cannot be kept running", "cause", err)
}

// awaitReady polls until the cluster answers, has given up, or ctx ends.
func (s *Server) awaitReady(ctx context.Context) error {
	ctx, cancel := context.WithTimeout(ctx, startLimit)
	defer cancel()
	for {
		err := s.tryReady(ctx)
		if err == nil {
			return nil
		}
		select {
		case <-s.done:
			return s.Err()
		case <-ctx.Done():
			return fmt.Errorf("not ready in time: %w; last answer: %w", ctx.Err(), err)
		case <-time.After(readyPoll):
		}
	}
}

// tryReady connects once and makes the database if it is missing.
func (s *Server) tryReady(ctx context.Context) error {
	conn, err := pgx.Connect(ctx, s.databaseURL("postgres"))
	if err != nil {
		return err
	}
	defer conn.Close(context.WithoutCancel(ctx))
	var exists bool
	err = conn.QueryRow(ctx, `SELECT EXISTS (SELECT FROM pg_database WHERE datname = $1)`, databaseName).Scan(&exists)
	if err != nil || exists {
		return err
	}
	_, err = conn.Exec(ctx, "CREATE DATABASE "+pgx.Identifier{databaseName}.Sanitize())
	return err
}
