package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// CreateField keeps a flying site with its first version.
func (s *fieldsService) CreateField(ctx context.Context, req *pb.CreateFieldRequest) (*pb.Field, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	description, err := fieldDocument(req.GetField().GetDescription())
	if err != nil {
		return nil, err
	}
	name, err := displayName("field.displayName", req.GetField().GetDisplayName(), req.GetField().GetDescription().GetDisplayName())
	if err != nil {
		return nil, err
	}
	return once(ctx, s.backend, req, &pb.Field{}, func(tx *postgres.Tx) (*pb.Field, error) {
		f, err := tx.CreateField(ctx, c.person.Actor(), club.Field{DisplayName: name, Description: description})
		if err != nil {
			return nil, err
		}
		return showField(c.club, f)
	})
}
