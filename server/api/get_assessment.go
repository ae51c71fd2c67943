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
		a, err = readableAssessment(ctx, tx, c, id)
		return err
	})
	if err != nil {
		return nil, err
	}
	return showAssessment(c.club, a)
}

// readableAssessment reads a kept computation when the caller may see it.
func readableAssessment(ctx context.Context, tx *postgres.ReadTx, c caller, id string) (club.Assessment, error) {
	a, err := tx.Assessment(ctx, id)
	if err != nil || c.mayRead(a.CreatorID) {
		return a, err
	}
	if a.ApprovalID == "" {
		return club.Assessment{}, notFound("assessment")
	}
	_, err = readableApproval(ctx, tx, c, a.ApprovalID)
	return a, err
}
