package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// GetApproval reads one approval with its whole history.
func (s *approvalsService) GetApproval(ctx context.Context, req *pb.GetApprovalRequest) (*pb.Approval, error) {
	c, id, err := locate(ctx, club.Approvals, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	var a club.Approval
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		a, err = readableApproval(ctx, tx, c, id)
		return err
	})
	if err != nil {
		return nil, err
	}
	return showApproval(c.club, a)
}

// readableApproval reads an approval that the caller may know of.
func readableApproval(ctx context.Context, tx *postgres.ReadTx, c caller, id string) (club.Approval, error) {
	a, err := tx.Approval(ctx, id)
	if err == nil && !c.mayRead(a.OwnerID) {
		return club.Approval{}, notFound("approval")
	}
	return a, err
}
