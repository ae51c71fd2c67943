package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// ListDemoPeople lists whom one may be in the demo.
func (s *peopleService) ListDemoPeople(ctx context.Context, _ *pb.ListDemoPeopleRequest) (*pb.ListPeopleResponse, error) {
	out := &pb.ListPeopleResponse{}
	return out, s.store.Read(ctx, s.demoClub, func(tx *postgres.ReadTx) error {
		home, err := tx.Club(ctx)
		if err != nil {
			return err
		}
		people, err := tx.DemoPeople(ctx)
		out.People = append(out.People, showPeople(home, people)...)
		return err
	})
}

// SignInDemo signs in as a person of the demo, who needs no password.
func (s *peopleService) SignInDemo(ctx context.Context, req *pb.SignInDemoRequest) (*pb.SignInResponse, error) {
	clubID, id, err := club.People.Parse("person", req.GetPerson())
	if err != nil {
		return nil, err
	}
	if clubID != s.demoClub {
		return nil, notFound("person")
	}
	var person club.Person
	err = s.store.Read(ctx, clubID, func(tx *postgres.ReadTx) error {
		person, err = tx.Person(ctx, id)
		return err
	})
	if err != nil {
		return nil, err
	}
	if !person.Demo {
		return nil, notFound("person")
	}
	return s.openSession(ctx, clubID, person, req.GetReturnToken())
}
