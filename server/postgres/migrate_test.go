package postgres_test

import (
	"context"
	"database/sql"
	"net/url"
	"testing"

	_ "github.com/jackc/pgx/v5/stdlib"
	"github.com/pressly/goose/v3"

	"pitgate/migrations"
	"pitgate/server/club"
	"pitgate/server/postgres"
	"pitgate/server/postgres/pgtest"
)

func TestMigratingAgainChangesNothing(t *testing.T) {
	t.Parallel()
	url := pgtest.URL(t)
	for range 2 {
		if err := postgres.Migrate(t.Context(), url); err != nil {
			t.Fatal(err)
		}
	}
	if err := pgtest.Open(t, url).Ping(t.Context()); err != nil {
		t.Fatal(err)
	}
}

func TestMigrationsCanBeTakenBack(t *testing.T) {
	t.Parallel()
	address := pgtest.URL(t)
	db, err := sql.Open("pgx", address)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	provider, err := goose.NewProvider(goose.DialectPostgres, db, migrations.FS)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := provider.DownTo(t.Context(), 0); err != nil {
		t.Fatal(err)
	}
	var left int
	err = db.QueryRowContext(t.Context(), `SELECT (SELECT count(*) FROM `+ours+` o) + (SELECT count(*) FROM pg_proc WHERE pronamespace = 'public'::regnamespace)`).Scan(&left)
	if err != nil || left != 0 {
		t.Errorf("%d tables and functions are left, %v", left, err)
	}
	if err := postgres.Migrate(t.Context(), address); err != nil {
		t.Errorf("up again: %v", err)
	}
}

// TestOwnerWhoIsNoSuperuser migrates and works as one who may only create roles, as on a rented server.
func TestOwnerWhoIsNoSuperuser(t *testing.T) {
	t.Parallel()
	address := pgtest.URL(t)
	super, err := sql.Open("pgx", address)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { super.Close() })
	u, err := url.Parse(address)
	if err != nil {
		t.Fatal(err)
	}
	name := "plain_" + u.Path[1:]
	for _, statement := range []string{
		`CREATE ROLE ` + name + ` LOGIN CREATEROLE PASSWORD 'larkmoor'`, `CREATE DATABASE ` + name + ` OWNER ` + name,
	} {
		if _, err := super.ExecContext(t.Context(), statement); err != nil {
			t.Fatal(err)
		}
	}
	t.Cleanup(func() {
		for _, statement := range []string{`DROP DATABASE ` + name + ` WITH (FORCE)`, `DROP ROLE ` + name} {
			if _, err := super.ExecContext(context.Background(), statement); err != nil {
				t.Error(err)
			}
		}
	})
	u.User, u.Path = url.UserPassword(name, "larkmoor"), "/"+name
	if err := postgres.Migrate(t.Context(), u.String()); err != nil {
		t.Fatal(err)
	}
	s := &scene{Store: pgtest.Open(t, u.String()), t: t, url: u.String()}
	s.furnish()
	s.lead(club.Signed)
	s.verified()
}

func TestServerThatMayLoseCommitsIsRefused(t *testing.T) {
	t.Parallel()
	url := pgtest.URL(t) + "&options=-c%20synchronous_commit%3Doff"
	if err := postgres.Migrate(t.Context(), url); err == nil {
		t.Error("migrated a server with synchronous_commit off")
	}
	if store, err := postgres.Open(t.Context(), url, postgres.WithSigningKey(pgtest.Key)); err == nil {
		store.Close()
		t.Error("opened a server with synchronous_commit off")
	}
}

func TestStoreNeedsAKey(t *testing.T) {
	t.Parallel()
	if store, err := postgres.Open(t.Context(), pgtest.URL(t)); err == nil {
		store.Close()
		t.Error("opened without a signing key")
	}
}
