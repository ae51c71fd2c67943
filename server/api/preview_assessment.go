package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// PreviewAssessment computes a document as it is given, limits and rules included, and keeps nothing: the answer is that of a device without a server.
// ComposeLimits makes the limits of the club for it.
func (s *assessmentsService) PreviewAssessment(ctx context.Context, req *pb.PreviewAssessmentRequest) (*pb.AssessmentReport, error) {
	if _, err := enter(ctx, req.GetParent()); err != nil {
		return nil, err
	}
	computed, err := s.computeInput(ctx, req.GetInput())
	if err != nil {
		return nil, err
	}
	report := &pb.AssessmentReport{}
	return report, readDocument(computed.Report, report)
}

// computeInput computes a document from the wire as it is given.
func (b *backend) computeInput(ctx context.Context, wire *pb.AssessmentInput) (club.Assessment, error) {
	in, err := decodeInput(wire)
	if err != nil {
		return club.Assessment{}, err
	}
	return b.computed(ctx, in)
}
