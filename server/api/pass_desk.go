package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// PassDesk opens the desk gate and sets the conditions.
func (s *approvalsService) PassDesk(ctx context.Context, req *pb.DecisionRequest) (*pb.Approval, error) {
	return s.decide(ctx, req, club.VerbPassDesk)
}
