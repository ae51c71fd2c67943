package postgres_test

import (
	"testing"

	"pitgate/server/postgres"
	"pitgate/server/postgres/pgtest"
)

func TestStoreOpensOnAMigratedDatabase(t *testing.T) {
	t.Parallel()
	url := pgtest.URL(t)
	if err := postgres.Migrate(t.Context(), url); err != nil {
		t.Fatalf("migrating twice: %v", err)
	}
	if err := pgtest.Open(t, url).Ping(t.Context()); err != nil {
		t.Fatal(err)
	}
}
