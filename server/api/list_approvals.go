package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// ListApprovals lists the caller's approvals, or the club's for officers and committee.
func (s *approvalsService) ListApprovals(ctx context.Context, req *pb.ListApprovalsRequest) (*pb.ListApprovalsResponse, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	filter := postgres.ApprovalFilter{OwnerID: c.ownerFilter(req.GetMine())}
	for _, state := range req.GetStates() {
		if filter.States, err = addState(filter.States, state); err != nil {
			return nil, err
		}
	}
	var list []club.Approval
	out := &pb.ListApprovalsResponse{}
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		list, out.NextPageToken, err = tx.Approvals(ctx, filter, pageOf(req))
		return err
	})
	if err != nil {
		return nil, err
	}
	out.Approvals, err = showAll(list, func(a club.Approval) (*pb.Approval, error) { return showApproval(c.club, a) })
	return out, err
}

// addState refuses a state that does not exist, which would otherwise filter nothing.
func addState(states []club.State, p pb.ApprovalState) ([]club.State, error) {
	state := club.StateOf(p)
	if state == "" {
		return nil, club.RefuseField("states", "UNKNOWN_STATE", "has a state that does not exist")
	}
	return append(states, state), nil
}
