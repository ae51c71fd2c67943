package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// MarkVerdictChangesRead keeps that the caller has read of a change that the caller may read.
func (s *approvalsService) MarkVerdictChangesRead(ctx context.Context, req *pb.MarkVerdictChangesReadRequest) (*pb.VerdictChanges, error) {
	c, id, err := locate(ctx, club.Changes, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	filter := postgres.ChangeFilter{ID: id, OwnerID: c.ownerFilter(false)}
	var out *pb.VerdictChanges
	err = s.store.InTx(ctx, c.club, func(tx *postgres.Tx) error {
		found, _, err := tx.ChangedVerdicts(ctx, c.person.ID, filter, club.Page{Size: 1})
		if err != nil {
			return err
		}
		if len(found) == 0 {
			return notFound("change of verdicts")
		}
		found[0].Read = true
		out = showChanges(c.club, found[0])
		return tx.MarkRead(ctx, c.person.ID, id)
	})
	return out, err
}
