package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// GetAssessment reads a kept computation, for its creator, the owner of its approval, officers and committee.
func (s *assessmentsService) GetAssessment(ctx context.Context, req *pb.GetAssessmentRequest) (*pb.Assessment, error) {
	c, id, err := locate(ctx, club.Assessments, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	var a club.Assessment
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		if a, err = tx.Assessment(ctx, id); err != nil || c.mayRead(a.CreatorID) {
			return err
		}
		if a.ApprovalID == "" {
			return notFound("assessment")
		}
		_, err := readableApproval(ctx, tx, c, a.ApprovalID)
		return err
	})
	if err != nil {
		return nil, err
	}
	return showAssessment(c.club, a)
}
