package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// GetMe reads the signed-in person.
func (s *peopleService) GetMe(ctx context.Context, _ *pb.GetMeRequest) (*pb.Person, error) {
	c := callerOf(ctx)
	var home club.Club
	err := s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) (err error) {
		home, err = tx.Club(ctx)
		return err
	})
	return showPerson(home, c.person), err
}
