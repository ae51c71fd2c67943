package postgres_test

import (
	"strings"
	"testing"
)

// TestDatabaseGuardsRuleWords goes around the program: who must not answer a rule, and what must not be done to an answer, the database refuses.
func TestDatabaseGuardsRuleWords(t *testing.T) {
	t.Parallel()
	conn := owner(t)
	word := func(index, person, reason string) string {
		return `INSERT INTO rule_words VALUES ('moor', 'a', ` + index + `, 'club.helper', true, '2026-05-16', '` + person + `', '` + reason + `', 's', now())`
	}
	person := func(id, role string) string {
		return `INSERT INTO people VALUES ('moor', '` + id + `', 'N', '` + id + `@x.example', 'h', '{member,` + role + `}', false, now())`
	}
	digest := strings.Repeat("a", 64)
	for _, step := range []struct{ sql, refusal string }{
		{`SELECT set_config('app.club_id', 'moor', false)`, ""},
		{`INSERT INTO clubs VALUES ('moor', 'Moor', now())`, ""},
		{person("owner", "safety_officer"), ""}, {person("officer", "safety_officer"), ""}, {person("other", "committee"), ""},
		{`INSERT INTO models VALUES ('moor', 'm', 'owner', 'M', 1, 1, now(), now(), NULL)`, ""},
		{`INSERT INTO model_revisions VALUES ('moor', 'm', 1, '{}', '` + digest + `', now())`, ""},
		{`INSERT INTO fields VALUES ('moor', 'f', 'F', 1, 1, now(), now())`, ""},
		{`INSERT INTO field_versions VALUES ('moor', 'f', 1, '{}', '` + digest + `', now())`, ""},
		{`INSERT INTO assessments VALUES ('moor', 's', 'owner', NULL, '{}', '{}', '` + digest + `', '1', 0, 0, 0, 0, now())`, ""},
		{`INSERT INTO approvals (club_id, approval_id, owner_id, state, model_id, model_revision, field_id, field_version, launch_plan, day, assessment_id, version, create_time, update_time)
			VALUES ('moor', 'a', 'owner', 'bench', 'm', 1, 'f', 1, '{}', '{}', 's', 1, now(), now())`, ""},
		{`INSERT INTO ledger_entries VALUES ('moor', 0, '{}', sha256('0')), ('moor', 1, '{}', sha256('1'))`, ""},
		{word("0", "owner", "w"), "owns the approval"},
		{word("0", "other", "w"), "only a safety officer"},
		{word("0", "officer", ""), "rule_words_reason_check"},
		{word("7", "officer", "w"), "violates foreign key"},
		{word("0", "officer", "w"), ""},
		{word("0", "officer", "w"), "rule_words_pkey"},
		{`UPDATE rule_words SET confirmed = false`, "never changed or removed"},
		{`DELETE FROM rule_words`, "never changed or removed"},
		{`UPDATE people SET roles = '{member}' WHERE person_id = 'officer'`, ""},
		{word("1", "officer", "w"), "only a safety officer"},
	} {
		_, err := conn.Exec(t.Context(), step.sql)
		if (err == nil) != (step.refusal == "") || err != nil && !strings.Contains(err.Error(), step.refusal) {
			t.Fatalf("%s: %v, want %q", step.sql, err, step.refusal)
		}
	}
}
