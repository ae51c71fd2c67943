//go:build !linux

package privatedb

import (
	"context"
	"errors"
	"log/slog"
)

// Server is a running private PostgreSQL. It exists on Linux only.
type Server struct{}

// Start returns an error: the private database needs Linux.
func Start(context.Context, string, *slog.Logger) (*Server, error) {
	return nil, errors.New("private database: it needs Linux; set DATABASE_URL to a PostgreSQL server instead")
}

// URL returns the empty string.
func (*Server) URL() string { return "" }

// PID returns zero.
func (*Server) PID() int { return 0 }

// Done returns nil: nothing runs, so nothing ends.
func (*Server) Done() <-chan struct{} { return nil }

// Err returns nil.
func (*Server) Err() error { return nil }

// Stop does nothing.
func (*Server) Stop() error { return nil }
