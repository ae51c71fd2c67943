package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// WithdrawApproval takes it back; only the owner can.
func (s *approvalsService) WithdrawApproval(ctx context.Context, req *pb.DecisionRequest) (*pb.Approval, error) {
	return s.decide(ctx, req, club.VerbWithdraw)
}
