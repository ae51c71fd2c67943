package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// RefuseApproval refuses for good, with a reason.
func (s *approvalsService) RefuseApproval(ctx context.Context, req *pb.DecisionRequest) (*pb.Approval, error) {
	return s.decide(ctx, req, club.VerbRefuse)
}
