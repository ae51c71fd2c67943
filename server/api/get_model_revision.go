package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// GetModelRevision reads one frozen description.
func (s *modelsService) GetModelRevision(ctx context.Context, req *pb.GetModelRevisionRequest) (*pb.ModelRevision, error) {
	c := callerOf(ctx)
	clubID, modelID, number, err := club.ParseRevision("name", req.GetName())
	if err != nil {
		return nil, err
	}
	if clubID != c.club {
		return nil, notFound("revision")
	}
	var r club.Revision
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		if _, err := readableModel(ctx, tx, c, modelID); err != nil {
			return err
		}
		r, err = tx.Revision(ctx, modelID, number)
		return err
	})
	if err != nil {
		return nil, err
	}
	return showRevision(c.club, r)
}
