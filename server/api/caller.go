package api

import (
	"context"

	"pitgate/server/club"
)

// caller is the signed-in person behind a call.
type caller struct {
	// club is the id of the club the session belongs to.
	club   string
	person club.Person
	// session is the hash of the session's token.
	session []byte
}

type callerContext struct{}

// callerOf returns the caller; the zero caller on an open RPC without a session.
func callerOf(ctx context.Context) caller {
	c, _ := ctx.Value(callerContext{}).(caller)
	return c
}

// readers may read every record of their club; others read their own.
var readers = []club.Role{club.SafetyOfficer, club.Committee}

// readsAll tells whether the caller may read other members' models and approvals.
func (c caller) readsAll() bool { return c.person.Actor().Has(readers...) }

// mayRead tells whether the caller may read a record of the owner.
func (c caller) mayRead(ownerID string) bool { return ownerID == c.person.ID || c.readsAll() }

// ownerFilter is the owner whose records a list shows: the caller, or everybody ("") for readers who do not ask for their own.
func (c caller) ownerFilter(mine bool) string {
	if mine || !c.readsAll() {
		return c.person.ID
	}
	return ""
}

// notFound is the one answer for what does not exist and for what the caller must not know of.
func notFound(what string) error {
	return club.Refuse(club.NotFound, "NOT_FOUND", "there is no such %s", what)
}

// enter checks that a parent ("clubs/{club}") is the caller's club.
func enter(ctx context.Context, parent string) (caller, error) {
	c := callerOf(ctx)
	clubID, err := club.ParseClub("parent", parent)
	if err == nil && clubID != c.club {
		err = notFound("club")
	}
	return c, err
}

// locate reads a record's name and checks that it is of the caller's club.
func locate(ctx context.Context, in club.Collection, field, name string) (caller, string, error) {
	c := callerOf(ctx)
	clubID, id, err := in.Parse(field, name)
	if err == nil && clubID != c.club {
		err = notFound("record")
	}
	return c, id, err
}
