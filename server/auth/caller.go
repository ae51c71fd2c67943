package auth

import (
	"context"
	"slices"

	"pitgate/server/club"
)

// Role is what a person may do in a club; the club's own word for it.
type Role = club.Role

// The roles.
const (
	Member        = club.Member
	SafetyOfficer = club.SafetyOfficer
	Committee     = club.Committee
	FieldKeeper   = club.FieldKeeper
	Administrator = club.Administrator
)

// Caller is the signed-in person that a request acts for, in the one club of the session.
type Caller struct {
	ClubID      string
	PersonID    string
	DisplayName string
	Roles       []Role
}

// Has tells whether the caller holds at least one of the roles.
func (c Caller) Has(roles ...Role) bool {
	return slices.ContainsFunc(roles, func(r Role) bool { return slices.Contains(c.Roles, r) })
}

// Actor returns the caller as the records know it.
func (c Caller) Actor() club.Actor {
	return club.Actor{PersonID: c.PersonID, Roles: c.Roles}
}

// callerKey is the context key of the caller.
type callerKey struct{}

// WithCaller returns a context that carries the caller.
func WithCaller(ctx context.Context, c Caller) context.Context {
	return context.WithValue(ctx, callerKey{}, c)
}

// CallerFrom returns the caller that ctx carries; false when nobody is signed in.
func CallerFrom(ctx context.Context) (Caller, bool) {
	c, ok := ctx.Value(callerKey{}).(Caller)
	return c, ok
}
