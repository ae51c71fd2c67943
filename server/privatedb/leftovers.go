//go:build linux

package privatedb

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"log/slog"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"time"
)

// clearLeftovers stops processes of a cluster whose pitgate is gone and removes its stale files. It may only be
// called while the lock is held: then no process of the cluster has a living owner.
//
// PostgreSQL's own check asks whether the process number in postmaster.pid exists. It does, when the dead
// postmaster was never reaped and stays a zombie, or when the number was given to another process; so the file is
// removed here after looking for living processes of this very cluster.
func clearLeftovers(ctx context.Context, p place, log *slog.Logger) error {
	for _, step := range []syscall.Signal{syscall.SIGINT, syscall.SIGQUIT, syscall.SIGKILL} {
		gone, err := endOrphans(ctx, p.data(), step, log)
		if err != nil {
			return err
		}
		if gone {
			return removeStale(p)
		}
	}
	return errors.New("processes of an earlier run do not end, not even when killed")
}

// endOrphans signals the cluster's living processes and waits a while for them to go.
func endOrphans(ctx context.Context, data string, sig syscall.Signal, log *slog.Logger) (gone bool, err error) {
	orphans := livingProcesses(data)
	for _, pid := range orphans {
		log.Warn("stopping a process of an earlier run", "pid", pid, "signal", sig.String())
		if err := syscall.Kill(pid, sig); err != nil && !errors.Is(err, syscall.ESRCH) {
			return false, fmt.Errorf("stop process %d of an earlier run: %w", pid, err)
		}
	}
	deadline := time.Now().Add(fastStopLimit / 2)
	for len(orphans) > 0 && time.Now().Before(deadline) {
		select {
		case <-ctx.Done():
			return false, ctx.Err()
		case <-time.After(20 * time.Millisecond):
		}
		orphans = livingProcesses(data)
	}
	return len(orphans) == 0, nil
}

// livingProcesses returns the postgres processes of the cluster in data that are not zombies. A postmaster is
// known by its command line, which anyone may read; its children by their working directory, where that may be read.
func livingProcesses(data string) []int {
	entries, _ := os.ReadDir("/proc") // without /proc nothing can be found, and PostgreSQL's own check remains
	var found []int
	for _, entry := range entries {
		pid, err := strconv.Atoi(entry.Name())
		if err == nil && isPostgres(pid) && (hasDataArgument(pid, data) || worksIn(pid, data)) {
			found = append(found, pid)
		}
	}
	return found
}

// isPostgres reads /proc/PID/stat: "pid (name) state ...".
func isPostgres(pid int) bool {
	raw, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
	if err != nil {
		return false
	}
	_, rest, _ := strings.Cut(string(raw), "(")
	end := strings.LastIndex(rest, ") ")
	if end < 0 || end+2 >= len(rest) {
		return false
	}
	state := rest[end+2]
	return strings.HasPrefix(rest[:end], "postgres") && state != 'Z' && state != 'X'
}

func hasDataArgument(pid int, data string) bool {
	raw, err := os.ReadFile(fmt.Sprintf("/proc/%d/cmdline", pid))
	if err != nil {
		return false
	}
	words := strings.Split(string(raw), "\x00")
	at := slices.Index(words, "-D")
	return at >= 0 && at+1 < len(words) && words[at+1] == data
}

func worksIn(pid int, data string) bool {
	cwd, err := os.Readlink(fmt.Sprintf("/proc/%d/cwd", pid))
	return err == nil && cwd == data
}

func removeStale(p place) error {
	for _, path := range []string{filepath.Join(p.data(), "postmaster.pid"), p.socket(), p.socket() + ".lock"} {
		if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("remove a stale file: %w", err)
		}
	}
	return nil
}
