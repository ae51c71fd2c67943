package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// ListFields lists the club's flying sites.
func (s *fieldsService) ListFields(ctx context.Context, req *pb.ListFieldsRequest) (*pb.ListFieldsResponse, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	var list []club.Field
	out := &pb.ListFieldsResponse{}
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		list, out.NextPageToken, err = tx.Fields(ctx, pageOf(req))
		return err
	})
	if err != nil {
		return nil, err
	}
	out.Fields, err = showAll(list, func(f club.Field) (*pb.Field, error) { return showField(c.club, f) })
	return out, err
}
