package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// GetModel reads one model, the caller's own or, for officers and committee, anyone's.
func (s *modelsService) GetModel(ctx context.Context, req *pb.GetModelRequest) (*pb.Model, error) {
	c, id, err := locate(ctx, club.Models, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	var m club.Model
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		m, err = readableModel(ctx, tx, c, id)
		return err
	})
	if err != nil {
		return nil, err
	}
	return showModel(c.club, m)
}

// readableModel reads a model that the caller may know of.
func readableModel(ctx context.Context, tx *postgres.ReadTx, c caller, id string) (club.Model, error) {
	m, err := tx.Model(ctx, id)
	if err == nil && !c.mayRead(m.OwnerID) {
		return club.Model{}, notFound("model")
	}
	return m, err
}
