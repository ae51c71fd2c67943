package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// ListAssessments lists the caller's computations, or the club's for officers and committee, newest first.
func (s *assessmentsService) ListAssessments(ctx context.Context, req *pb.ListAssessmentsRequest) (*pb.ListAssessmentsResponse, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	var list []club.Assessment
	out := &pb.ListAssessmentsResponse{}
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		list, out.NextPageToken, err = tx.Assessments(ctx, c.ownerFilter(false), pageOf(req))
		return err
	})
	if err != nil {
		return nil, err
	}
	out.Assessments, err = showAll(list, func(a club.Assessment) (*pb.Assessment, error) { return showAssessment(c.club, a) })
	return out, err
}
