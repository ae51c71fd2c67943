package api

import (
	"context"
	"encoding/json"
	"fmt"

	"google.golang.org/protobuf/encoding/protojson"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
)

// PreviewAssessment computes without keeping anything.
func (s *assessmentsService) PreviewAssessment(ctx context.Context, req *pb.PreviewAssessmentRequest) (*pb.AssessmentReport, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	computed, err := s.computeInput(ctx, c, req.GetInput())
	if err != nil {
		return nil, err
	}
	report := &pb.AssessmentReport{}
	return report, readDocument(computed.Report, report)
}

// computeInput computes a document from the wire by the rules of the caller's club.
func (b *backend) computeInput(ctx context.Context, c caller, in *pb.AssessmentInput) (club.Assessment, error) {
	text, err := protojson.Marshal(in)
	if err != nil {
		return club.Assessment{}, fmt.Errorf("assessment input: %w", err)
	}
	rules, err := b.clubRules(ctx, c.club)
	if err != nil {
		return club.Assessment{}, err
	}
	return b.compute(ctx, json.RawMessage(text), rules)
}
