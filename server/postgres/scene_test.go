package postgres_test

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/jackc/pgx/v5"

	"pitgate/server/club"
	"pitgate/server/postgres"
	"pitgate/server/postgres/pgtest"
)

const larkmoor = "larkmoor"

var (
	ada   = club.Actor{PersonID: "ada", Roles: []club.Role{club.Member}}
	bram  = club.Actor{PersonID: "bram", Roles: []club.Role{club.Member}}
	ines  = club.Actor{PersonID: "ines", Roles: []club.Role{club.Member, club.SafetyOfficer}}
	tomas = club.Actor{PersonID: "tomas", Roles: []club.Role{club.Member, club.SafetyOfficer, club.Committee}}
	mei   = club.Actor{PersonID: "mei", Roles: []club.Role{club.Member, club.Committee}}
)

// scene is a club with five people, Ada's Redshank and the field Quarry Top.
type scene struct {
	*postgres.Store
	t        *testing.T
	url      string
	redshank club.Model
	quarry   club.Field
}

func newScene(t *testing.T, options ...postgres.Option) *scene {
	t.Helper()
	url := pgtest.URL(t)
	s := &scene{Store: pgtest.Open(t, url, options...), t: t, url: url}
	s.furnish()
	return s
}

// furnish creates Larkmoor with its people, model and field.
func (s *scene) furnish() {
	s.t.Helper()
	s.open(larkmoor)
	s.tx(func(ctx context.Context, tx *postgres.Tx) (err error) {
		if s.redshank, err = tx.CreateModel(ctx, ada, club.Model{DisplayName: "Redshank", Description: description(8.6)}); err != nil {
			return err
		}
		s.quarry, err = tx.CreateField(ctx, mei, club.Field{DisplayName: "Quarry Top", Description: json.RawMessage(`{"displayName":"Quarry Top"}`)})
		return err
	})
}

// open creates a club with its people.
func (s *scene) open(clubID string) {
	s.t.Helper()
	err := s.InTx(s.t.Context(), clubID, func(tx *postgres.Tx) error {
		if _, err := tx.CreateClub(s.t.Context(), "Club "+clubID); err != nil {
			return err
		}
		for _, who := range []club.Actor{ada, bram, ines, tomas, mei} {
			p := club.Person{ID: who.PersonID, DisplayName: strings.ToUpper(who.PersonID), Email: who.PersonID + "@larkmoor.example",
				PasswordHash: "hash", Roles: who.Roles, Demo: true}
			if _, err := tx.CreatePerson(s.t.Context(), club.Actor{}, p); err != nil {
				return err
			}
		}
		return nil
	})
	s.must(err)
}

func (s *scene) must(err error) {
	s.t.Helper()
	if err != nil {
		s.t.Fatal(err)
	}
}

// tx runs work in Larkmoor; it must succeed.
func (s *scene) tx(work func(context.Context, *postgres.Tx) error) {
	s.t.Helper()
	s.must(s.try(work))
}

// try runs work in Larkmoor.
func (s *scene) try(work func(context.Context, *postgres.Tx) error) error {
	return s.InTx(s.t.Context(), larkmoor, func(tx *postgres.Tx) error { return work(s.t.Context(), tx) })
}

// read runs work in Larkmoor, read-only; it must succeed.
func (s *scene) read(work func(context.Context, *postgres.ReadTx) error) {
	s.t.Helper()
	s.must(s.Read(s.t.Context(), larkmoor, func(tx *postgres.ReadTx) error { return work(s.t.Context(), tx) }))
}

// refused fails unless err has the code.
func (s *scene) refused(err error, code club.Code) {
	s.t.Helper()
	if club.CodeOf(err) != code {
		s.t.Errorf("got %v, want %s", err, code)
	}
}

// owner connects as the owner of the tables.
func (s *scene) owner() *pgx.Conn {
	s.t.Helper()
	conn, err := pgx.Connect(s.t.Context(), s.url)
	s.must(err)
	s.t.Cleanup(func() { conn.Close(context.Background()) })
	return conn
}

func description(mass float64) json.RawMessage {
	return json.RawMessage(fmt.Sprintf(`{"mass":{"itemsMassKg":%g},"fuelSystem":{"airTrap":false}}`, mass))
}

// assess keeps an assessment of Redshank.
func (s *scene) assess() (id string) {
	s.t.Helper()
	s.tx(func(ctx context.Context, tx *postgres.Tx) error {
		a, err := tx.CreateAssessment(ctx, ada, club.Assessment{
			Input: description(8.6), Report: json.RawMessage(`{"findings":[]}`), InputDigest: strings.Repeat("ab", 32),
			CoreVersion: "1", Counts: club.Counts{Holds: 20, Tight: 3, Fails: 1, Unknown: 2},
		})
		id = a.ID
		return err
	})
	return id
}

// draft opens an approval for Redshank at Quarry Top.
func (s *scene) draft() (a club.Approval) {
	s.t.Helper()
	s.tx(func(ctx context.Context, tx *postgres.Tx) (err error) {
		a, err = tx.CreateApproval(ctx, ada, club.Approval{
			ModelID: s.redshank.ID, FieldID: s.quarry.ID, LaunchPlan: json.RawMessage(`{"method":"LAUNCH_METHOD_RAMP"}`),
			Day: json.RawMessage(`{"time":"2026-11-25T10:00:00Z"}`), OwnerNote: "first of its kind",
		})
		return err
	})
	return a
}

// decide does a verb to the approval as it stands.
func (s *scene) decide(a club.Approval, verb club.Verb, by club.Actor) club.Approval {
	s.t.Helper()
	after, err := s.tryDecide(s.decision(a, verb, by))
	s.must(err)
	return after
}

func (s *scene) tryDecide(d postgres.Decision) (after club.Approval, err error) {
	err = s.try(func(ctx context.Context, tx *postgres.Tx) (err error) {
		after, err = tx.Decide(ctx, d)
		return err
	})
	return after, err
}

// decision is a complete request for a verb.
func (s *scene) decision(a club.Approval, verb club.Verb, by club.Actor) postgres.Decision {
	s.t.Helper()
	d := postgres.Decision{ID: a.ID, Etag: club.Etag(a.Version), Verb: verb, By: by, Reason: "because " + string(verb)}
	if verb == club.VerbSubmit {
		d.Submission = &postgres.Submission{ModelRevision: a.ModelRevision, FieldVersion: a.FieldVersion, AssessmentID: s.assess()}
	}
	if verb == club.VerbSign {
		digest, err := club.SigningDigest(larkmoor, a)
		s.must(err)
		d.Signature = &club.Signature{Digest: digest}
	}
	return d
}

// lead takes a fresh approval as far as the state.
func (s *scene) lead(to club.State) club.Approval {
	s.t.Helper()
	a := s.draft()
	for _, next := range []struct {
		verb club.Verb
		by   club.Actor
	}{
		{club.VerbSubmit, ada}, {club.VerbBeginReview, ines}, {club.VerbPassDesk, ines}, {club.VerbPassBench, tomas},
		{club.VerbSign, ines}, {club.VerbRecordFlight, ada},
	} {
		if a.State == to {
			break
		}
		a = s.decide(a, next.verb, next.by)
	}
	if a.State != to {
		s.t.Fatalf("led to %s, want %s", a.State, to)
	}
	return a
}

// again reads an approval.
func (s *scene) again(id string) (a club.Approval) {
	s.t.Helper()
	s.read(func(ctx context.Context, tx *postgres.ReadTx) (err error) {
		a, err = tx.Approval(ctx, id)
		return err
	})
	return a
}
