package postgres_test

import (
	"context"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/jackc/pgx/v5"

	"pitgate/server/club"
	"pitgate/server/postgres"
)

// pack drafts a rule pack of no particular content.
func (s *scene) pack(id, digest string) club.RulePack {
	s.t.Helper()
	var p club.RulePack
	s.tx(func(ctx context.Context, tx *postgres.Tx) (err error) {
		p, err = tx.CreateRulePack(ctx, mei, club.RulePack{Pack: id, Content: json.RawMessage(`{"id":"` + id + `"}`), Digest: strings.Repeat(digest, 64)})
		return err
	})
	return p
}

// word gives a word to publish.
func (s *scene) word(by club.Actor, p club.RulePack) (out club.RulePack, err error) {
	err = s.try(func(ctx context.Context, tx *postgres.Tx) error {
		out, err = tx.VotePublish(ctx, by, p.ID, club.Etag(p.Version))
		return err
	})
	return out, err
}

func TestRulePackNeedsTwoOfTheCommittee(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	p := s.pack("club", "a")
	_, err := s.word(ada, p)
	s.refused(err, club.Forbidden)
	one, err := s.word(mei, p)
	s.must(err)
	_, err = s.word(mei, one)
	s.refused(err, club.Conflict)
	two, err := s.word(tomas, one)
	s.must(err)
	if one.State != club.PackProposed || two.State != club.PackPublished || two.PublishTime.IsZero() || len(two.PublisherIDs) != 2 {
		t.Errorf("%s, then %s by %v", one.State, two.State, two.PublisherIDs)
	}
	s.verified()
}

func TestNewVersionReplacesTheFormer(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	var last club.RulePack
	for _, digest := range []string{"a", "b"} {
		one, err := s.word(mei, s.pack("club", digest))
		s.must(err)
		last, err = s.word(tomas, one)
		s.must(err)
	}
	s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
		inForce, err := tx.RulePacksInForce(ctx)
		if len(inForce) != 1 || inForce[0].ID != last.ID {
			t.Errorf("in force are %v", inForce)
		}
		all, _, err2 := tx.RulePacks(ctx, club.Page{})
		if len(all) != 2 || err2 != nil {
			t.Errorf("%d versions, %v", len(all), err2)
		}
		return err
	})
}

// dated drafts and publishes a version that begins on a day.
func (s *scene) dated(first, digest string) club.RulePack {
	s.t.Helper()
	var p club.RulePack
	s.tx(func(ctx context.Context, tx *postgres.Tx) (err error) {
		p, err = tx.CreateRulePack(ctx, mei, club.RulePack{Pack: "club", Content: json.RawMessage(`{"inForceDate":"` + first + `"}`), Digest: strings.Repeat(digest, 64)})
		return err
	})
	p, err := s.word(mei, p)
	s.must(err)
	p, err = s.word(tomas, p)
	s.must(err)
	return p
}

// published lists the first days of the published versions.
func (s *scene) published() (days []string) {
	s.t.Helper()
	s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
		packs, err := tx.RulePacksInForce(ctx)
		for _, p := range packs {
			days = append(days, p.FirstDay)
		}
		return err
	})
	return days
}

// TestVersionsStandSideBySide publishes versions with later, earlier and equal first days and retires some.
func TestVersionsStandSideBySide(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	want := func(step string, days ...string) {
		t.Helper()
		if got := s.published(); !slices.Equal(got, days) {
			t.Errorf("%s: published are %v, want %v", step, got, days)
		}
	}
	s.dated("2020-01-01", "a")
	s.dated("2999-06-01", "b")
	s.dated("2024-01-01", "c") // what was to come begins after it and goes
	want("an earlier one than the one to come", "2020-01-01", "2024-01-01")
	s.dated("2024-01-01", "d")
	want("one for the same day", "2020-01-01", "2024-01-01")
	coming := s.dated("2999-06-01", "e")
	s.retired(coming)
	want("the one to come retired", "2020-01-01", "2024-01-01")
	now := s.dated("2025-01-01", "f")
	s.dated("2999-06-01", "1")
	s.retired(now)
	want("the present one retired with those whose place it had taken", "2999-06-01")
	s.verified()
}

// retired takes a published version out of force by two words.
func (s *scene) retired(p club.RulePack) {
	s.t.Helper()
	for _, by := range []club.Actor{mei, tomas} {
		s.tx(func(ctx context.Context, tx *postgres.Tx) (err error) {
			p, err = tx.VoteRetire(ctx, by, p.ID, club.Etag(p.Version))
			return err
		})
	}
}

// TestDatabaseGuardsRulePacks goes around the program: what it must not do, the database refuses.
func TestDatabaseGuardsRulePacks(t *testing.T) {
	t.Parallel()
	conn := owner(t)
	exec := func(sql string) error {
		_, err := conn.Exec(t.Context(), sql)
		return err
	}
	a, b := strings.Repeat("a", 64), strings.Repeat("b", 64)
	draft := func(id, digest string) string {
		return `INSERT INTO rule_packs (club_id, rule_pack_id, pack, state, content, digest, version, create_time, update_time)
			VALUES ('moor', '` + id + `', 'p', 'draft', '{}', '` + digest + `', 1, now(), now())`
	}
	vote := func(id, purpose, digest, person string) string {
		return `INSERT INTO rule_pack_votes VALUES ('moor', '` + id + `', '` + purpose + `', '` + digest + `', '` + person + `', now())`
	}
	publish := func(id string) string {
		return `UPDATE rule_packs SET state = 'published', publish_time = now() WHERE rule_pack_id = '` + id + `'`
	}
	retire := `UPDATE rule_packs SET state = 'retired', retire_time = now() WHERE rule_pack_id = 'x'`
	person := func(id, role string) string {
		return `INSERT INTO people VALUES ('moor', '` + id + `', 'N', '` + id + `@x.example', 'h', '{` + role + `}', false, now())`
	}
	for _, step := range []struct {
		sql, refusal string
	}{
		{`SELECT set_config('app.club_id', 'moor', false)`, ""},
		{`INSERT INTO clubs VALUES ('moor', 'Moor', now())`, ""},
		{person("one", "committee"), ""}, {person("two", "committee"), ""}, {person("three", "member"), ""},
		{strings.Replace(draft("y", a), "'draft'", "'published'", 1), "begins as a draft"},
		{draft("x", a), ""},
		{publish("x"), "two committee members publish"},
		{vote("x", "publish", a, "three"), "only a committee member"},
		{vote("x", "publish", a, "one"), ""},
		{vote("x", "publish", a, "one"), "rule_pack_votes_pkey"},
		{publish("x"), "two committee members publish"},
		{vote("x", "publish", b, "two"), ""}, // for another content
		{publish("x"), "two committee members publish"},
		{vote("x", "publish", a, "two"), ""},
		{publish("x"), ""},
		{`UPDATE rule_packs SET content = '{"looser": true}' WHERE rule_pack_id = 'x'`, "stays as it is"},
		{`UPDATE rule_packs SET state = 'draft' WHERE rule_pack_id = 'x'`, "stays as it is"},
		{`DELETE FROM rule_packs`, "never changed or removed"},
		{`UPDATE rule_pack_votes SET person_id = 'two'`, "never changed or removed"},
		{retire, "two committee members retire"},
		{draft("z", b), ""},
		{retire, "two committee members retire"},
		{publish("z"), "two committee members publish"},
		{vote("x", "retire", a, "one"), ""}, {vote("x", "retire", a, "two"), ""},
		{retire, ""},
		{publish("x"), "stays as it is"},
	} {
		err := exec(step.sql)
		if (err == nil) != (step.refusal == "") || err != nil && !strings.Contains(err.Error(), step.refusal) {
			t.Errorf("%s: %v, want %q", step.sql, err, step.refusal)
		}
	}
}

// TestProgramCannotRewriteVotes acts as the program's role.
func TestProgramCannotRewriteVotes(t *testing.T) {
	t.Parallel()
	conn := owner(t)
	if _, err := conn.Exec(t.Context(), `SET ROLE pitgate_app`); err != nil {
		t.Fatal(err)
	}
	for _, sql := range []string{`DELETE FROM rule_packs`, `DELETE FROM rule_pack_votes`, `UPDATE rule_pack_votes SET digest = ''`,
		`UPDATE rule_packs SET create_time = now()`} {
		if _, err := conn.Exec(t.Context(), sql, pgx.QueryExecModeExec); err == nil || !strings.Contains(err.Error(), "permission denied") {
			t.Errorf("%s: %v", sql, err)
		}
	}
}
