package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// ListPeople lists the club's people.
func (s *peopleService) ListPeople(ctx context.Context, req *pb.ListPeopleRequest) (*pb.ListPeopleResponse, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	out := &pb.ListPeopleResponse{}
	return out, s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		home, err := tx.Club(ctx)
		if err != nil {
			return err
		}
		people, next, err := tx.People(ctx, pageOf(req))
		out.NextPageToken = next
		out.People = append(out.People, showPeople(home, people)...)
		return err
	})
}

// showPeople writes several.
func showPeople(home club.Club, people []club.Person) []*pb.Person {
	out := make([]*pb.Person, 0, len(people))
	for _, p := range people {
		out = append(out, showPerson(home, p))
	}
	return out
}
