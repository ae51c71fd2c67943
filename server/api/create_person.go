package api

import (
	"context"
	"strings"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// CreatePerson adds a person with a first password.
func (s *peopleService) CreatePerson(ctx context.Context, req *pb.CreatePersonRequest) (*pb.Person, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	answer := &pb.Person{}
	if found, err := recall(ctx, s.backend, req, answer); err != nil || found {
		return answer, err
	}
	person, err := s.newPerson(ctx, req)
	if err != nil {
		return nil, err
	}
	return once(ctx, s.backend, req, answer, func(tx *postgres.Tx) (*pb.Person, error) {
		home, err := tx.Club(ctx)
		if err != nil {
			return nil, err
		}
		kept, err := tx.CreatePerson(ctx, c.person.Actor(), person)
		if err != nil {
			return nil, err
		}
		return showPerson(home, kept), nil
	})
}

// newPerson checks name, address, roles and password.
func (s *peopleService) newPerson(ctx context.Context, req *pb.CreatePersonRequest) (club.Person, error) {
	out := club.Person{Email: strings.TrimSpace(req.GetPerson().GetEmail()), Roles: readRoles(req.GetPerson().GetRoles())}
	var err error
	if out.DisplayName, err = displayName("person.displayName", req.GetPerson().GetDisplayName()); err != nil {
		return out, err
	}
	if !strings.Contains(out.Email, "@") {
		return out, club.RefuseField("person.email", "BAD_EMAIL", "must be a mail address")
	}
	if len(out.Roles) == 0 {
		out.Roles = []club.Role{club.Member}
	}
	out.PasswordHash, err = s.doors.hash(ctx, "firstPassword", req.GetFirstPassword())
	return out, err
}
