package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// ReturnApproval sends it back to the owner with a reason.
func (s *approvalsService) ReturnApproval(ctx context.Context, req *pb.DecisionRequest) (*pb.Approval, error) {
	return s.decide(ctx, req, club.VerbReturn)
}
