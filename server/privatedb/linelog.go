//go:build linux

package privatedb

import (
	"bytes"
	"context"
	"log/slog"
	"strings"
	"sync"
)

const (
	// tailLines of the cluster's messages go into the error when it cannot be started.
	tailLines = 6
	// lineLimit cuts a message that never ends its line, in bytes.
	lineLimit = 16 << 10
)

// lineLog passes the cluster's messages on, one line a record, and remembers the last few.
type lineLog struct {
	log *slog.Logger

	mu      sync.Mutex
	pending []byte
	last    []string
}

// Write takes any part of the stream. It never fails.
func (l *lineLog) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.pending = append(l.pending, p...)
	for {
		line, rest, found := bytes.Cut(l.pending, []byte("\n"))
		if !found && len(l.pending) < lineLimit {
			return len(p), nil
		}
		l.emit(string(line))
		l.pending = append([]byte(nil), rest...)
	}
}

func (l *lineLog) emit(line string) {
	l.last = append(l.last, line)
	if len(l.last) > tailLines {
		l.last = l.last[1:]
	}
	l.log.Log(context.Background(), levelOf(line), "postgres", "line", line)
}

// levelOf maps PostgreSQL's severities. Statement errors are the service's business and are told by it.
func levelOf(line string) slog.Level {
	for _, severe := range []string{"FATAL:", "PANIC:"} {
		if strings.HasPrefix(line, severe) {
			return slog.LevelWarn
		}
	}
	return slog.LevelDebug
}

func (l *lineLog) tail() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return strings.Join(l.last, " | ")
}
