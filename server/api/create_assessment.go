package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/postgres"
)

// CreateAssessment computes and keeps the answer for good.
func (s *assessmentsService) CreateAssessment(ctx context.Context, req *pb.CreateAssessmentRequest) (*pb.Assessment, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	answer := &pb.Assessment{}
	if found, err := recall(ctx, s.backend, req, answer); err != nil || found {
		return answer, err
	}
	computed, err := s.computeInput(ctx, c, orEmpty(req.GetAssessment().GetInput(), &pb.AssessmentInput{}))
	if err != nil {
		return nil, err
	}
	computed.CreatorID = c.person.ID
	return once(ctx, s.backend, req, answer, func(tx *postgres.Tx) (*pb.Assessment, error) {
		kept, err := tx.CreateAssessment(ctx, c.person.Actor(), computed)
		if err != nil {
			return nil, err
		}
		return showAssessment(c.club, kept)
	})
}
