package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// ListModelRevisions lists the frozen descriptions of one model.
func (s *modelsService) ListModelRevisions(ctx context.Context, req *pb.ListModelRevisionsRequest) (*pb.ListModelRevisionsResponse, error) {
	c, modelID, err := locate(ctx, club.Models, "parent", req.GetParent())
	if err != nil {
		return nil, err
	}
	var list []club.Revision
	out := &pb.ListModelRevisionsResponse{}
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		if _, err := readableModel(ctx, tx, c, modelID); err != nil {
			return err
		}
		list, out.NextPageToken, err = tx.Revisions(ctx, modelID, pageOf(req))
		return err
	})
	if err != nil {
		return nil, err
	}
	out.Revisions, err = showAll(list, func(r club.Revision) (*pb.ModelRevision, error) { return showRevision(c.club, r) })
	return out, err
}
