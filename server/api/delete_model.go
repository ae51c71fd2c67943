package api

import (
	"context"

	"google.golang.org/protobuf/types/known/emptypb"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// DeleteModel removes a model of the caller that no approval names.
func (s *modelsService) DeleteModel(ctx context.Context, req *pb.DeleteModelRequest) (*emptypb.Empty, error) {
	c, id, err := locate(ctx, club.Models, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	err = s.store.InTx(ctx, c.club, func(tx *postgres.Tx) error {
		if _, err := ownModel(ctx, &tx.ReadTx, c, id); err != nil {
			return err
		}
		return tx.DeleteModel(ctx, c.person.Actor(), id, req.GetEtag())
	})
	return &emptypb.Empty{}, err
}
