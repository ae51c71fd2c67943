package club

import "slices"

// Role is what a person may do in a club.
type Role string

// The roles.
const (
	Member        Role = "member"
	SafetyOfficer Role = "safety_officer"
	Committee     Role = "committee"
	FieldKeeper   Role = "field_keeper"
	Administrator Role = "administrator"
)

// Roles lists every role.
func Roles() []Role {
	return []Role{Member, SafetyOfficer, Committee, FieldKeeper, Administrator}
}

// Known tells whether r is one of the roles.
func (r Role) Known() bool {
	return slices.Contains(Roles(), r)
}

// Title is the role in the words that stand beside a signature.
func (r Role) Title() string {
	switch r {
	case SafetyOfficer:
		return "safety officer"
	case FieldKeeper:
		return "field keeper"
	default:
		return string(r)
	}
}

// Actor is the person who asks for a change.
type Actor struct {
	// PersonID is the last part of the person's name; empty for the club itself (a lesson, a lapse).
	PersonID string
	Roles    []Role
}

// Has tells whether the actor holds one of the roles.
func (a Actor) Has(roles ...Role) bool {
	return slices.ContainsFunc(roles, func(r Role) bool { return slices.Contains(a.Roles, r) })
}
