package api

import (
	"context"
	"strings"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// CreateModel registers a model of the caller and freezes its first revision.
func (s *modelsService) CreateModel(ctx context.Context, req *pb.CreateModelRequest) (*pb.Model, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	description, err := modelDocument(req.GetModel().GetDescription())
	if err != nil {
		return nil, err
	}
	name, err := displayName("model.displayName", req.GetModel().GetDisplayName(), req.GetModel().GetDescription().GetDisplayName())
	if err != nil {
		return nil, err
	}
	return once(ctx, s.backend, req, &pb.Model{}, func(tx *postgres.Tx) (*pb.Model, error) {
		m, err := tx.CreateModel(ctx, c.person.Actor(), club.Model{DisplayName: name, OwnerID: c.person.ID, Description: description})
		if err != nil {
			return nil, err
		}
		return showModel(c.club, m)
	})
}

// displayName takes the first name that is not blank.
func displayName(field string, names ...string) (string, error) {
	for _, name := range names {
		if name = strings.TrimSpace(name); name != "" {
			return name, nil
		}
	}
	return "", club.RefuseField(field, "NAME_MISSING", "give it a name")
}
