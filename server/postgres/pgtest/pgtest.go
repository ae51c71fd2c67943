// Package pgtest gives every test a database of its own on one PostgreSQL per test process: the one at
// TEST_DATABASE_URL, or a private one in a temporary directory. Without a PostgreSQL the tests fail; they are never
// skipped.
package pgtest

import (
	"context"
	"crypto/ed25519"
	"crypto/rand"
	"encoding/hex"
	"fmt"
	"net/url"
	"os"
	"sync"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"

	"pitgate/server/postgres"
	"pitgate/server/privatedb"
)

// Key signs the ledger heads of every test's store.
var Key = ed25519.NewKeyFromSeed([]byte("pitgate tests sign with this key"))

// New returns a store on an empty, migrated database that ends with the test. Options come after the test's own.
func New(t testing.TB, options ...postgres.Option) *postgres.Store {
	t.Helper()
	return Open(t, URL(t), options...)
}

// Open opens a store on a database of URL; it is closed at the end of the test.
func Open(t testing.TB, database string, options ...postgres.Option) *postgres.Store {
	t.Helper()
	own := []postgres.Option{postgres.WithSigningKey(Key), postgres.WithMaxConnections(4)}
	store, err := postgres.Open(t.Context(), database, append(own, options...)...)
	if err != nil {
		t.Fatalf("open the test's database: %v", err)
	}
	t.Cleanup(store.Close)
	return store
}

// URL returns the address of an empty, migrated database, as its owner. On a server that outlives the tests it is dropped
// after the test; a private one goes as a whole, since every drop waits for a checkpoint.
func URL(t testing.TB) string {
	t.Helper()
	server, err := template()
	if err != nil {
		t.Fatalf("no PostgreSQL for the tests: %v", err)
	}
	name := "test_" + randomName()
	if err := run(server, "CREATE DATABASE "+name+" TEMPLATE "+templateName); err != nil {
		t.Fatalf("make the test's database: %v", err)
	}
	if private == nil {
		t.Cleanup(func() { drop(t, server, name) })
	}
	return withDatabase(server, name)
}

func drop(t testing.TB, server, name string) {
	t.Helper()
	if err := run(server, "DROP DATABASE "+name+" WITH (FORCE)"); err != nil {
		t.Errorf("drop the test's database: %v", err)
	}
}

// Main runs the tests of a package and stops the private PostgreSQL after them: func TestMain(m *testing.M) { pgtest.Main(m) }.
func Main(m *testing.M) {
	code := m.Run()
	if err := stop(); err != nil {
		fmt.Fprintln(os.Stderr, "stop the tests' PostgreSQL:", err)
		code = 1
	}
	os.Exit(code)
}

var (
	templateName = "template_" + randomName()
	private      *privatedb.Server
	privateDir   string
)

// template returns the server's address with the template database migrated, once per process.
var template = sync.OnceValues(func() (string, error) {
	server := os.Getenv("TEST_DATABASE_URL")
	if server == "" {
		var err error
		if server, err = startPrivate(); err != nil {
			return "", err
		}
	}
	if err := run(server, "CREATE DATABASE "+templateName); err != nil {
		return "", err
	}
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	return server, postgres.Migrate(ctx, withDatabase(server, templateName))
})

func startPrivate() (string, error) {
	dir, err := os.MkdirTemp("", "pitgate-test-")
	if err != nil {
		return "", err
	}
	privateDir = dir
	if err := os.Chmod(dir, 0o711); err != nil { // the cluster's account must pass when root runs the tests
		return "", err
	}
	private, err = privatedb.Start(context.Background(), dir, nil)
	if err != nil {
		return "", err
	}
	return private.URL(), nil
}

func stop() error {
	if private != nil {
		if err := private.Stop(); err != nil {
			return err
		}
		return os.RemoveAll(privateDir)
	}
	server := os.Getenv("TEST_DATABASE_URL")
	if server == "" {
		return nil
	}
	return run(server, "DROP DATABASE IF EXISTS "+templateName)
}

// run runs one statement on a connection of its own: databases are made outside of transactions.
func run(server, statement string) error {
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	conn, err := pgx.Connect(ctx, server)
	if err != nil {
		return err
	}
	defer conn.Close(ctx)
	_, err = conn.Exec(ctx, statement)
	return err
}

// withDatabase is the server's address with another database.
func withDatabase(server, name string) string {
	u, err := url.Parse(server)
	if err != nil {
		return server
	}
	u.Path = "/" + name
	return u.String()
}

func randomName() string {
	var raw [6]byte
	rand.Read(raw[:])
	return hex.EncodeToString(raw[:])
}
