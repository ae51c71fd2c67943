package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// GetField reads one flying site.
func (s *fieldsService) GetField(ctx context.Context, req *pb.GetFieldRequest) (*pb.Field, error) {
	c, id, err := locate(ctx, club.Fields, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	var f club.Field
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		f, err = tx.Field(ctx, id)
		return err
	})
	if err != nil {
		return nil, err
	}
	return showField(c.club, f)
}
