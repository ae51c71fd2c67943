package main

import (
	"context"
	"fmt"
	"log/slog"
	"os"
	"path/filepath"

	"pitgate/server/ledger"
	"pitgate/server/postgres"
	"pitgate/server/privatedb"
)

// database is an open store, with the private server under it when there is one.
type database struct {
	store   *postgres.Store
	private *privatedb.Server
}

// openDatabase uses DATABASE_URL, or starts this machine's own PostgreSQL, and migrates it.
func openDatabase(ctx context.Context, s settings, log *slog.Logger) (*database, error) {
	d := &database{}
	url, err := d.address(ctx, s, log)
	if err != nil {
		return nil, err
	}
	if err := d.open(ctx, url, s); err != nil {
		if stopErr := d.close(); stopErr != nil {
			log.Error("private database did not stop", "error", stopErr)
		}
		return nil, err
	}
	return d, nil
}

// address is DATABASE_URL or that of the private server.
func (d *database) address(ctx context.Context, s settings, log *slog.Logger) (string, error) {
	if err := os.MkdirAll(s.data, 0o755); err != nil {
		return "", fmt.Errorf("data: %w", err)
	}
	if s.database != "" {
		return s.database, nil
	}
	var err error
	if d.private, err = privatedb.Start(ctx, filepath.Join(s.data, "database"), log); err != nil {
		return "", err
	}
	return d.private.URL(), nil
}

// open migrates and opens the store with the ledger's key.
func (d *database) open(ctx context.Context, url string, s settings) error {
	if err := postgres.Migrate(ctx, url); err != nil {
		return fmt.Errorf("migrate: %w", err)
	}
	key, err := ledger.LoadOrCreateKey(s.keyFile())
	if err != nil {
		return fmt.Errorf("signing key: %w", err)
	}
	d.store, err = postgres.Open(ctx, url, postgres.WithSigningKey(key))
	return err
}

// lost is closed when the private server ended for good; it never is when the database is somebody else's.
func (d *database) lost() <-chan struct{} {
	if d.private == nil {
		return nil
	}
	return d.private.Done()
}

// close ends connections first, then the private server.
func (d *database) close() error {
	if d.store != nil {
		d.store.Close()
	}
	if d.private == nil {
		return nil
	}
	return d.private.Stop()
}
