package demo

import (
	"context"

	"pitgate/server/auth"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// ClubID is the demo's club.
const ClubID = "larkmoor"

// clubName is its name.
const clubName = "Larkmoor Model Flying Club"

// Password is that of every person of the demo, for signing an approval. The demo serves this machine only.
const Password = "larkmoor demo password"

// Ids of the people.
const (
	Ada   = "ada-thorne"
	Bram  = "bram-okafor"
	Ines  = "ines-valdez"
	Tomas = "tomas-lind"
	Mei   = "mei-castellan"
)

// people of Larkmoor.
var people = []club.Person{
	{ID: Ada, DisplayName: "Ada Thorne", Email: "ada@larkmoor.example", Roles: []club.Role{club.Member}},
	{ID: Bram, DisplayName: "Bram Okafor", Email: "bram@larkmoor.example", Roles: []club.Role{club.Member}},
	{ID: Ines, DisplayName: "Ines Valdez", Email: "ines@larkmoor.example", Roles: []club.Role{club.Member, club.SafetyOfficer}},
	{ID: Tomas, DisplayName: "Tomas Lind", Email: "tomas@larkmoor.example", Roles: []club.Role{club.Member, club.SafetyOfficer, club.Committee}},
	{ID: Mei, DisplayName: "Mei Castellan", Email: "mei@larkmoor.example", Roles: []club.Role{club.Member, club.Committee, club.FieldKeeper, club.Administrator}},
}

// loadPeople creates the club and its people in one transaction, unless the club exists.
func loadPeople(ctx context.Context, store *postgres.Store) error {
	exists, err := clubExists(ctx, store)
	if err != nil || exists {
		return err
	}
	hashed, err := withPasswords(ctx)
	if err != nil {
		return err
	}
	return store.InTx(ctx, ClubID, func(tx *postgres.Tx) error {
		if _, err := tx.CreateClub(ctx, clubName); err != nil {
			return err
		}
		for _, p := range hashed {
			if _, err := tx.CreatePerson(ctx, club.Actor{}, p); err != nil {
				return err
			}
		}
		return nil
	})
}

// clubExists tells whether an earlier start got that far.
func clubExists(ctx context.Context, store *postgres.Store) (bool, error) {
	err := store.Read(ctx, ClubID, func(tx *postgres.ReadTx) error {
		_, err := tx.Club(ctx)
		return err
	})
	if club.CodeOf(err) == club.NotFound {
		return false, nil
	}
	return err == nil, err
}

// withPasswords gives everybody the demo's password; it is no secret, so that one hash does for all.
func withPasswords(ctx context.Context) ([]club.Person, error) {
	passwords, err := auth.NewPasswords(0)
	if err != nil {
		return nil, err
	}
	hash, err := passwords.Hash(ctx, Password)
	if err != nil {
		return nil, err
	}
	hashed := make([]club.Person, 0, len(people))
	for _, p := range people {
		p.PasswordHash, p.Demo = hash, true
		hashed = append(hashed, p)
	}
	return hashed, nil
}
