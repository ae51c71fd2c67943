package postgres_test

import (
	"bytes"
	"context"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"pitgate/server/club"
	"pitgate/server/postgres"
)

func token(b byte) []byte { return bytes.Repeat([]byte{b}, 32) }

func TestPeople(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	create := func(p club.Person) (got club.Person, err error) {
		err = s.try(func(ctx context.Context, tx *postgres.Tx) (err error) {
			got, err = tx.CreatePerson(ctx, mei, p)
			return err
		})
		return got, err
	}
	got, err := create(club.Person{DisplayName: "Ada's cousin", Email: " Cousin@Larkmoor.example ", PasswordHash: "h", Roles: []club.Role{club.Member}})
	if err != nil || got.Email != "cousin@larkmoor.example" || !club.ValidID(got.ID) || len(got.ID) != 16 || got.Demo {
		t.Errorf("got %+v, %v", got, err)
	}
	_, err = create(club.Person{DisplayName: "Again", Email: "COUSIN@larkmoor.example", PasswordHash: "h"})
	s.refused(err, club.Conflict)
	if err == nil || strings.Contains(err.Error(), "SQLSTATE") || !strings.HasPrefix(err.Error(), "person.email: ") {
		t.Errorf("got %v", err)
	}
	_, err = create(club.Person{DisplayName: "Nobody", Email: "nobody@larkmoor.example", PasswordHash: "h", Roles: []club.Role{"king"}})
	s.refused(err, club.Invalid)
	s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
		found, err := tx.PersonByEmail(ctx, "ADA@larkmoor.example ")
		if err != nil || found.ID != "ada" || found.PasswordHash != "hash" {
			t.Errorf("got %+v, %v", found, err)
		}
		_, err = tx.PersonByEmail(ctx, "stranger@larkmoor.example")
		s.refused(err, club.NotFound)
		some, next, err := tx.People(ctx, club.Page{Size: 4})
		if err != nil || len(some) != 4 || some[0].ID != "ada" {
			t.Errorf("first page %+v, %v", some, err)
		}
		rest, end, err := tx.People(ctx, club.Page{Size: 4, After: next})
		if err != nil || len(rest) != 2 || end != "" {
			t.Errorf("second page %+v, %q, %v", rest, end, err)
		}
		demo, err := tx.DemoPeople(ctx)
		if len(demo) != 5 {
			t.Errorf("%d demo people", len(demo))
		}
		return err
	})
}

func TestSameClubTwice(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	err := s.try(func(ctx context.Context, tx *postgres.Tx) error {
		_, err := tx.CreateClub(ctx, "Larkmoor again")
		return err
	})
	s.refused(err, club.Conflict)
	s.read(func(ctx context.Context, tx *postgres.ReadTx) error {
		c, err := tx.Club(ctx)
		if c.ID != larkmoor || c.DisplayName != "Club larkmoor" {
			t.Errorf("got %+v", c)
		}
		return err
	})
}

func TestSessions(t *testing.T) {
	t.Parallel()
	start := time.Date(2026, 11, 25, 10, 0, 0, 0, time.UTC)
	var minutes atomic.Int64
	s := newScene(t, postgres.WithClock(func() time.Time { return start.Add(time.Duration(minutes.Load()) * time.Minute) }))
	signIn := func(person string, hash []byte, life time.Duration) {
		s.tx(func(ctx context.Context, tx *postgres.Tx) error {
			return tx.CreateSession(ctx, club.Session{PersonID: person, TokenHash: hash, ExpireTime: tx.Now().Add(life)})
		})
	}
	alive := func(hash []byte, want bool) {
		t.Helper()
		session, person, err := s.SessionByToken(t.Context(), hash)
		if want && (err != nil || session.ClubID != larkmoor || person.ID != session.PersonID || len(person.Roles) == 0) {
			t.Errorf("token %x: got %+v, %+v, %v", hash[0], session, person, err)
		}
		if !want {
			s.refused(err, club.Unauthenticated)
		}
	}
	for b, person := range map[byte]string{1: "ada", 2: "ada", 3: "ada", 4: "ines"} {
		signIn(person, token(b), time.Hour)
	}
	signIn("bram", token(5), time.Minute)
	alive(token(1), true)
	alive(token(5), true)
	alive(token(9), false)
	s.tx(func(ctx context.Context, tx *postgres.Tx) error { return tx.DeleteSession(ctx, token(1)) })
	alive(token(1), false)
	s.tx(func(ctx context.Context, tx *postgres.Tx) error {
		if err := tx.SetPassword(ctx, "ada", "new"); err != nil {
			return err
		}
		return tx.DeleteOtherSessions(ctx, "ada", token(2))
	})
	alive(token(2), true)
	alive(token(3), false)
	alive(token(4), true)
	minutes.Store(1)
	alive(token(5), false)
	if before := s.count(larkmoor, "sessions"); before != 3 {
		t.Errorf("%d sessions before the next sign-in, want 3", before)
	}
	signIn("mei", token(6), time.Hour)
	if after := s.count(larkmoor, "sessions"); after != 3 {
		t.Errorf("%d sessions after it, want 3: the expired one goes", after)
	}
	err := s.try(func(ctx context.Context, tx *postgres.Tx) error { return tx.SetPassword(ctx, "nobody", "x") })
	s.refused(err, club.NotFound)
}

func TestTokenShowsItsOwnSessionOnly(t *testing.T) {
	t.Parallel()
	s := newScene(t)
	s.tx(func(ctx context.Context, tx *postgres.Tx) error {
		for b, person := range map[byte]string{1: "ada", 2: "bram"} {
			err := tx.CreateSession(ctx, club.Session{PersonID: person, TokenHash: token(b), ExpireTime: tx.Now().Add(time.Hour)})
			if err != nil {
				return err
			}
		}
		return nil
	})
	conn := s.owner()
	var seen, people int
	_, err := conn.Exec(t.Context(), `BEGIN; SET LOCAL ROLE pitgate_app; SELECT set_config('app.token_hash', repeat('01', 32), true)`)
	s.must(err)
	s.must(conn.QueryRow(t.Context(), `SELECT (SELECT count(*) FROM sessions), (SELECT count(*) FROM people)`).Scan(&seen, &people))
	if seen != 1 || people != 0 {
		t.Errorf("the token shows %d sessions and %d people, want 1 and 0", seen, people)
	}
}
