package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// SubmitApproval freezes the model's latest revision and the field's latest version, computes and keeps the assessment, and hands the
// approval to the officers; assessment, change of state and ledger entry are one transaction.
func (s *approvalsService) SubmitApproval(ctx context.Context, req *pb.SubmitApprovalRequest) (*pb.Approval, error) {
	c, id, err := locate(ctx, club.Approvals, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	answer := &pb.Approval{}
	if found, err := recall(ctx, s.backend, req, answer); err != nil || found {
		return answer, err
	}
	before, err := s.approvalToDecide(ctx, c, id, req.GetEtag(), club.VerbSubmit, "")
	if err != nil {
		return nil, err
	}
	flight, err := s.changedFlight(c, before, req)
	if err != nil {
		return nil, err
	}
	computed, err := s.computeSubmission(ctx, c, flight)
	if err != nil {
		return nil, err
	}
	answer, err = once(ctx, s.backend, req, answer, func(tx *postgres.Tx) (*pb.Approval, error) {
		return s.writeSubmission(ctx, tx, c, computed, postgres.Decision{ID: id, Etag: req.GetEtag()}, noteOf(req))
	})
	return answer, s.explainStale(ctx, c, id, err)
}

// changedFlight is the approval's flight with the parts that the request replaces.
func (b *backend) changedFlight(c caller, a club.Approval, req *pb.SubmitApprovalRequest) (plannedFlight, error) {
	p := plannedFlight{modelID: a.ModelID, fieldID: a.FieldID, plan: a.LaunchPlan, day: a.Day, limits: a.Limits}
	var err error
	if p.words, err = b.confirmed(c, a.Confirmations, req.GetConfirmations()); err != nil {
		return p, err
	}
	if req.GetLaunchPlan() != nil {
		if p.plan, err = planDocument(req.GetLaunchPlan()); err != nil {
			return p, err
		}
	}
	if req.GetDay() != nil {
		p.day, err = dayDocument(req.GetDay())
	}
	return p, err
}

// noteOf is the new note, or nil when the former one stays.
func noteOf(req *pb.SubmitApprovalRequest) *string {
	if req.GetOwnerNote() == "" {
		return nil
	}
	note := req.GetOwnerNote()
	return &note
}
