package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// BeginReview takes a submitted approval up for desk review.
func (s *approvalsService) BeginReview(ctx context.Context, req *pb.DecisionRequest) (*pb.Approval, error) {
	return s.decide(ctx, req, club.VerbBeginReview)
}
