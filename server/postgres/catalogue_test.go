package postgres_test

import (
	"context"
	"slices"
	"testing"

	"github.com/jackc/pgx/v5"

	"pitgate/server/postgres/pgtest"
)

// owner connects to a fresh database as the owner of its tables.
func owner(t *testing.T) *pgx.Conn {
	t.Helper()
	conn, err := pgx.Connect(t.Context(), pgtest.URL(t))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { conn.Close(context.Background()) })
	return conn
}

// query reads one column of text.
func query(t *testing.T, conn *pgx.Conn, sql string) []string {
	t.Helper()
	rows, err := conn.Query(t.Context(), sql)
	if err != nil {
		t.Fatal(err)
	}
	found, err := pgx.CollectRows(rows, pgx.RowTo[string])
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// ours are the tables of the schema, without the migrator's own. Those of the queue stand in a schema of their own and are of the whole system, not of a
// club: one worker takes the next job of any club, so that no key can hold a club_id. TestQueueIsClosed says what the program's role may do to them.
const ours = `(SELECT c.oid, c.relname, c.relrowsecurity, c.relforcerowsecurity FROM pg_class c
	WHERE c.relkind IN ('r', 'p') AND c.relnamespace = 'public'::regnamespace AND c.relname <> 'goose_db_version')`

func TestSchemaHasItsTables(t *testing.T) {
	t.Parallel()
	if got := query(t, owner(t), `SELECT relname::text FROM `+ours+` o`); len(got) != 27 {
		t.Errorf("%d tables, want 27: %v", len(got), got)
	}
}

func TestCatalogue(t *testing.T) {
	t.Parallel()
	conn := owner(t)
	for rule, offenders := range map[string]string{
		"has club_id, not null": `SELECT relname::text FROM ` + ours + ` o WHERE NOT EXISTS (
			SELECT FROM pg_attribute a WHERE a.attrelid = o.oid AND a.attname = 'club_id' AND a.attnotnull)`,
		"has row security, forced": `SELECT relname::text FROM ` + ours + ` o WHERE NOT (relrowsecurity AND relforcerowsecurity)`,
		"has the policy of its own club": `SELECT relname::text FROM ` + ours + ` o WHERE NOT EXISTS (
			SELECT FROM pg_policy p WHERE p.polrelid = o.oid AND p.polname = 'own_club' AND p.polcmd = '*' AND p.polpermissive
			AND pg_get_expr(p.polqual, p.polrelid) = '(club_id = NULLIF(current_setting(''app.club_id''::text, true), ''''::text))')`,
		"has no other policy but the token's and the list of clubs'": `SELECT o.relname || '.' || p.polname FROM pg_policy p JOIN ` + ours + ` o ON o.oid = p.polrelid
			WHERE p.polname <> 'own_club' AND (o.relname, p.polname, p.polcmd) NOT IN (('sessions', 'own_token', 'r'), ('clubs', 'every_club', 'r'))`,
		"has a primary key": `SELECT relname::text FROM ` + ours + ` o WHERE NOT EXISTS (
			SELECT FROM pg_constraint k WHERE k.conrelid = o.oid AND k.contype = 'p')`,
		"has club_id in every unique index": `SELECT i.indexrelid::regclass::text FROM pg_index i JOIN ` + ours + ` o ON o.oid = i.indrelid
			WHERE i.indisunique AND NOT EXISTS (SELECT FROM pg_attribute a WHERE a.attrelid = o.oid AND a.attname = 'club_id' AND a.attnum = ANY(i.indkey::int2[]))`,
		"has club_id on both sides of every foreign key": `SELECT o.relname || '.' || k.conname FROM pg_constraint k JOIN ` + ours + ` o ON o.oid = k.conrelid
			WHERE k.contype = 'f' AND NOT EXISTS (
				SELECT FROM unnest(k.conkey, k.confkey) AS pair(here, there)
				JOIN pg_attribute a ON a.attrelid = k.conrelid AND a.attnum = pair.here AND a.attname = 'club_id'
				JOIN pg_attribute b ON b.attrelid = k.confrelid AND b.attnum = pair.there AND b.attname = 'club_id')`,
		"is not owned by the program's role": `SELECT relname::text FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relowner = 'pitgate_app'::regrole`,
	} {
		if found := query(t, conn, offenders); len(found) > 0 {
			t.Errorf("every table %s; not so %v", rule, found)
		}
	}
}

func TestProgramsRole(t *testing.T) {
	t.Parallel()
	got := query(t, owner(t), `SELECT rolname || ' ' || rolsuper || rolbypassrls || rolcanlogin || rolcreaterole || rolcreatedb || rolinherit
		FROM pg_roles WHERE rolname = 'pitgate_app'`)
	if !slices.Equal(got, []string{"pitgate_app falsefalsefalsefalsefalsetrue"}) {
		t.Errorf("got %v", got)
	}
}

// TestQueueIsClosed wants the program's role to add jobs of its club and to see those, and nothing else in the queue's schema.
func TestQueueIsClosed(t *testing.T) {
	t.Parallel()
	conn := owner(t)
	got := query(t, conn, `SELECT DISTINCT table_name || ' ' || privilege_type || ' ' || coalesce(column_name, '') FROM (
		SELECT table_name, privilege_type, NULL AS column_name FROM information_schema.table_privileges WHERE grantee = 'pitgate_app' AND table_schema = 'jobs'
		UNION SELECT table_name, privilege_type, column_name FROM information_schema.column_privileges
		WHERE grantee = 'pitgate_app' AND table_schema = 'jobs' AND privilege_type = 'UPDATE') p ORDER BY 1`)
	if want := []string{"river_job INSERT ", "river_job SELECT ", "river_job UPDATE kind"}; !slices.Equal(got, want) {
		t.Errorf("rights %v, want %v", got, want)
	}
	got = query(t, conn, `SELECT polname || ' ' || pg_get_expr(polqual, polrelid) FROM pg_policy JOIN pg_class c ON c.oid = polrelid
		WHERE polrelid = 'jobs.river_job'::regclass AND c.relrowsecurity`)
	if want := []string{"own_club ((args ->> 'club'::text) = NULLIF(current_setting('app.club_id'::text, true), ''::text))"}; !slices.Equal(got, want) {
		t.Errorf("policies %v, want %v", got, want)
	}
}

func TestFrozenTablesTakeRowsAndGiveThem(t *testing.T) {
	t.Parallel()
	conn := owner(t)
	for _, table := range []string{"ledger_entries", "ledger_heads", "assessments", "model_revisions", "field_versions", "transitions", "reassessments", "reassessment_readings", "rule_words"} {
		got := query(t, conn, `SELECT DISTINCT privilege_type::text FROM (
			SELECT privilege_type FROM information_schema.table_privileges WHERE grantee = 'pitgate_app' AND table_name = '`+table+`'
			UNION SELECT privilege_type FROM information_schema.column_privileges WHERE grantee = 'pitgate_app' AND table_name = '`+table+`') p ORDER BY 1`)
		if !slices.Equal(got, []string{"INSERT", "SELECT"}) {
			t.Errorf("%s: %v", table, got)
		}
	}
}
