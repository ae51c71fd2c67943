package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// ListModels lists the caller's models, or the club's for officers and committee.
func (s *modelsService) ListModels(ctx context.Context, req *pb.ListModelsRequest) (*pb.ListModelsResponse, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	var list []club.Model
	out := &pb.ListModelsResponse{}
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		list, out.NextPageToken, err = tx.Models(ctx, c.ownerFilter(false), pageOf(req))
		return err
	})
	if err != nil {
		return nil, err
	}
	out.Models, err = showAll(list, func(m club.Model) (*pb.Model, error) { return showModel(c.club, m) })
	return out, err
}
