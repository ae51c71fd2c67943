package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// CreateAssessment computes by the rules of the club and keeps the answer for good.
func (s *assessmentsService) CreateAssessment(ctx context.Context, req *pb.CreateAssessmentRequest) (*pb.Assessment, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	answer := &pb.Assessment{}
	if found, err := recall(ctx, s.backend, req, answer); err != nil || found {
		return answer, err
	}
	computed, err := s.computeByRules(ctx, c, req.GetAssessment().GetInput())
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

// computeByRules computes a document from the wire by the rules in force in the caller's club.
func (b *backend) computeByRules(ctx context.Context, c caller, wire *pb.AssessmentInput) (club.Assessment, error) {
	in, err := decodeInput(wire)
	if err != nil {
		return club.Assessment{}, err
	}
	rules, err := b.clubRules(ctx, c.club)
	if err != nil {
		return club.Assessment{}, err
	}
	if err := rules.put(&in); err != nil {
		return club.Assessment{}, err
	}
	return b.computed(ctx, in)
}
