package api

import (
	"strings"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

const rolePrefix = "ROLE_"

// showPerson writes a person without anything secret.
func showPerson(c club.Club, p club.Person) *pb.Person {
	out := &pb.Person{Name: club.People.Name(c.ID, p.ID), DisplayName: p.DisplayName, Email: p.Email,
		ClubDisplayName: c.DisplayName, CreateTime: showTime(p.CreateTime)}
	for _, r := range p.Roles {
		out.Roles = append(out.Roles, pb.Role(pb.Role_value[rolePrefix+strings.ToUpper(string(r))]))
	}
	return out
}

// readRoles reads roles from the wire; the contract lets only known ones through.
func readRoles(roles []pb.Role) []club.Role {
	out := make([]club.Role, 0, len(roles))
	for _, r := range roles {
		out = append(out, club.Role(strings.ToLower(strings.TrimPrefix(r.String(), rolePrefix))))
	}
	return out
}
