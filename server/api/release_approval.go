package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// ReleaseApproval ends a hold, by a named officer with a reason.
func (s *approvalsService) ReleaseApproval(ctx context.Context, req *pb.DecisionRequest) (*pb.Approval, error) {
	return s.decide(ctx, req, club.VerbRelease)
}
