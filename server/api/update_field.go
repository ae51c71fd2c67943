package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// UpdateField changes what the mask names. A changed description becomes the next version and lapses approvals at this field.
func (s *fieldsService) UpdateField(ctx context.Context, req *pb.UpdateFieldRequest) (*pb.Field, error) {
	c, id, err := locate(ctx, club.Fields, "field.name", req.GetField().GetName())
	if err != nil {
		return nil, err
	}
	return once(ctx, s.backend, req, &pb.Field{}, func(tx *postgres.Tx) (*pb.Field, error) {
		change, err := s.mergedField(ctx, tx, c, id, req)
		if err != nil {
			return nil, err
		}
		f, err := tx.UpdateField(ctx, c.person.Actor(), change)
		if err != nil {
			return nil, err
		}
		return showField(c.club, f)
	})
}

// mergedField puts the request into the field as it stands and checks the whole.
func (s *fieldsService) mergedField(ctx context.Context, tx *postgres.Tx, c caller, id string, req *pb.UpdateFieldRequest) (postgres.FieldChange, error) {
	change := postgres.FieldChange{ID: id, Etag: req.GetField().GetEtag()}
	before, err := tx.Field(ctx, id)
	if err != nil {
		return change, err
	}
	whole, err := showField(c.club, before)
	if err != nil {
		return change, err
	}
	if err := merge(whole, req.GetField(), req.GetUpdateMask(), "display_name", "description"); err != nil {
		return change, err
	}
	if err := validateMessage(s.validator, &pb.UpdateFieldRequest{Field: whole}); err != nil {
		return change, err
	}
	name, err := displayName("field.displayName", whole.GetDisplayName())
	if err != nil {
		return change, err
	}
	change.DisplayName = &name
	change.Description, err = fieldDocument(whole.GetDescription())
	return change, err
}
