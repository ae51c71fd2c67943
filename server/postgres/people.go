package postgres

import (
	"context"
	"errors"
	"strings"

	"github.com/jackc/pgx/v5"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// Club reads the club itself. NotFound when it was never created.
func (r *ReadTx) Club(ctx context.Context) (club.Club, error) {
	row, err := r.q.Club(ctx, r.clubID)
	if err != nil {
		return club.Club{}, found(err, "club", r.clubID)
	}
	return club.Club{ID: row.ClubID, DisplayName: row.DisplayName, CreateTime: row.CreateTime}, nil
}

// CreateClub creates the club that the transaction is of. Conflict when it exists.
func (t *Tx) CreateClub(ctx context.Context, displayName string) (club.Club, error) {
	if err := t.q.InsertClub(ctx, t.clubID, displayName, t.now); err != nil {
		return club.Club{}, err
	}
	if _, err := t.record(ctx, "club.created", club.Actor{}, event{}); err != nil {
		return club.Club{}, err
	}
	return t.Club(ctx)
}

// Person reads one person. NotFound when there is none.
func (r *ReadTx) Person(ctx context.Context, id string) (club.Person, error) {
	row, err := r.q.Person(ctx, r.clubID, id)
	return personOf(row), found(err, "person", id)
}

// PersonByEmail finds a person by address, in any case. NotFound when there is none.
func (r *ReadTx) PersonByEmail(ctx context.Context, email string) (club.Person, error) {
	row, err := r.q.PersonByEmail(ctx, r.clubID, strings.TrimSpace(email))
	return personOf(row), found(err, "person", email)
}

// People lists the club's people, oldest first, and the token of the next page.
func (r *ReadTx) People(ctx context.Context, page club.Page) ([]club.Person, string, error) {
	after, err := readPlace(page.After, first)
	if err != nil {
		return nil, "", err
	}
	rows, err := r.q.ListPeople(ctx, pgdb.ListPeopleParams{
		ClubID: r.clubID, AfterTime: after.time, AfterID: after.id, Most: page.Limit() + 1,
	})
	people, next := cut(rows, page.Limit(), func(row pgdb.Person) (club.Person, place) {
		return personOf(row), place{row.CreateTime, row.PersonID}
	})
	return people, next, err
}

// DemoPeople lists those who may be chosen in the demonstration.
func (r *ReadTx) DemoPeople(ctx context.Context) ([]club.Person, error) {
	rows, err := r.q.DemoPeople(ctx, r.clubID)
	people, _ := cut(rows, int32(len(rows)), func(row pgdb.Person) (club.Person, place) { return personOf(row), place{} })
	return people, err
}

func personOf(row pgdb.Person) club.Person {
	p := club.Person{
		ID: row.PersonID, DisplayName: row.DisplayName, Email: row.Email, PasswordHash: row.PasswordHash,
		Demo: row.Demo, CreateTime: row.CreateTime,
	}
	for _, role := range row.Roles {
		p.Roles = append(p.Roles, club.Role(role))
	}
	return p
}

// CreatePerson keeps p; an empty p.ID gets a new one. Conflict when the address is taken. The ledger learns id and roles,
// no name and no address.
func (t *Tx) CreatePerson(ctx context.Context, by club.Actor, p club.Person) (club.Person, error) {
	if p.ID == "" {
		p.ID = t.store.id()
	}
	roles := []string{}
	for _, role := range p.Roles {
		roles = append(roles, string(role))
	}
	err := t.q.InsertPerson(ctx, pgdb.InsertPersonParams{
		ClubID: t.clubID, PersonID: p.ID, DisplayName: p.DisplayName, Email: strings.TrimSpace(p.Email),
		PasswordHash: p.PasswordHash, Roles: roles, Demo: p.Demo, CreateTime: t.now,
	})
	if err != nil {
		return club.Person{}, err
	}
	_, err = t.record(ctx, "person.created", by, event{"person": club.People.Name(t.clubID, p.ID), "roles": roles})
	if err != nil {
		return club.Person{}, err
	}
	return t.Person(ctx, p.ID)
}

// SetPassword replaces a person's password hash. NotFound when there is no such person.
func (t *Tx) SetPassword(ctx context.Context, personID, passwordHash string) error {
	changed, err := t.q.SetPassword(ctx, passwordHash, t.clubID, personID)
	if err == nil && changed == 0 {
		err = found(pgx.ErrNoRows, "person", personID)
	}
	return err
}

// SessionByToken finds a session that has not expired by the hash of its token alone, and its person. Unauthenticated
// when there is none.
func (s *Store) SessionByToken(ctx context.Context, tokenHash []byte) (club.Session, club.Person, error) {
	var session club.Session
	var person club.Person
	err := pgx.BeginTxFunc(ctx, s.pool, pgx.TxOptions{AccessMode: pgx.ReadOnly}, func(tx pgx.Tx) error {
		q := pgdb.New(tx)
		if err := q.SetToken(ctx, tokenHash); err != nil {
			return err
		}
		row, err := q.SessionByToken(ctx, tokenHash, s.now())
		if err != nil {
			return err
		}
		session = club.Session{ClubID: row.ClubID, PersonID: row.PersonID, TokenHash: row.TokenHash, ExpireTime: row.ExpireTime}
		if err := q.SetClub(ctx, row.ClubID); err != nil {
			return err
		}
		found, err := q.Person(ctx, row.ClubID, row.PersonID)
		person = personOf(found)
		return err
	})
	if errors.Is(err, pgx.ErrNoRows) {
		err = club.Refuse(club.Unauthenticated, "NO_SESSION", "sign in")
	}
	return session, person, answer(err)
}

// CreateSession keeps a session of the transaction's club, and removes those that have expired.
func (t *Tx) CreateSession(ctx context.Context, s club.Session) error {
	if _, err := t.SweepSessions(ctx); err != nil {
		return err
	}
	return t.q.InsertSession(ctx, pgdb.InsertSessionParams{
		ClubID: t.clubID, TokenHash: s.TokenHash, PersonID: s.PersonID, ExpireTime: s.ExpireTime,
	})
}

// DeleteSession signs out; a session that is not there is no error.
func (t *Tx) DeleteSession(ctx context.Context, tokenHash []byte) error {
	return t.q.DeleteSession(ctx, t.clubID, tokenHash)
}

// DeleteOtherSessions signs a person out everywhere but in the session to keep.
func (t *Tx) DeleteOtherSessions(ctx context.Context, personID string, keepTokenHash []byte) error {
	return t.q.DeleteOtherSessions(ctx, t.clubID, personID, keepTokenHash)
}

// SweepSessions removes the club's expired sessions and tells how many.
func (t *Tx) SweepSessions(ctx context.Context) (int64, error) {
	return t.q.SweepSessions(ctx, t.clubID, t.now)
}
