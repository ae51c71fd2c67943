package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// HoldApproval stops it with a reason.
func (s *approvalsService) HoldApproval(ctx context.Context, req *pb.DecisionRequest) (*pb.Approval, error) {
	return s.decide(ctx, req, club.VerbHold)
}
