package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// UpdateModel changes what the mask names. A changed description becomes the next revision and lapses the approvals that rest on the
// former one.
func (s *modelsService) UpdateModel(ctx context.Context, req *pb.UpdateModelRequest) (*pb.Model, error) {
	c, id, err := locate(ctx, club.Models, "model.name", req.GetModel().GetName())
	if err != nil {
		return nil, err
	}
	return once(ctx, s.backend, req, &pb.Model{}, func(tx *postgres.Tx) (*pb.Model, error) {
		if _, err := ownModel(ctx, &tx.ReadTx, c, id); err != nil {
			return nil, err
		}
		change, err := s.mergedModel(ctx, tx, c, id, req)
		if err != nil {
			return nil, err
		}
		m, err := tx.UpdateModel(ctx, c.person.Actor(), change)
		if err != nil {
			return nil, err
		}
		return showModel(c.club, m)
	})
}

// mergedModel puts the request into the model as it stands and checks the whole.
func (s *modelsService) mergedModel(ctx context.Context, tx *postgres.Tx, c caller, id string, req *pb.UpdateModelRequest) (postgres.ModelChange, error) {
	change := postgres.ModelChange{ID: id, Etag: req.GetModel().GetEtag()}
	before, err := tx.Model(ctx, id)
	if err != nil {
		return change, err
	}
	whole, err := showModel(c.club, before)
	if err != nil {
		return change, err
	}
	if err := merge(whole, req.GetModel(), req.GetUpdateMask(), "display_name", "description"); err != nil {
		return change, err
	}
	if err := validateMessage(s.validator, &pb.UpdateModelRequest{Model: whole}); err != nil {
		return change, err
	}
	name, err := displayName("model.displayName", whole.GetDisplayName())
	if err != nil {
		return change, err
	}
	change.DisplayName = &name
	change.Description, err = modelDocument(whole.GetDescription())
	return change, err
}

// ownModel reads a model of the caller: others' models do not exist for members and are not theirs to change for readers.
func ownModel(ctx context.Context, tx *postgres.ReadTx, c caller, id string) (club.Model, error) {
	m, err := readableModel(ctx, tx, c, id)
	if err == nil && m.OwnerID != c.person.ID {
		return club.Model{}, club.Refuse(club.Forbidden, "OWNER_ONLY", "only the owner can do this")
	}
	return m, err
}
