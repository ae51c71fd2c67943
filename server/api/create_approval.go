package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// CreateApproval opens an approval for a model of the caller and, when asked, submits it at once.
func (s *approvalsService) CreateApproval(ctx context.Context, req *pb.CreateApprovalRequest) (*pb.Approval, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	answer := &pb.Approval{}
	if found, err := recall(ctx, s.backend, req, answer); err != nil || found {
		return answer, err
	}
	flight, err := s.plannedIn(ctx, c, req.GetApproval())
	if err != nil {
		return nil, err
	}
	computed, err := s.draftedOrComputed(ctx, c, flight, req.GetSubmit())
	if err != nil {
		return nil, err
	}
	return once(ctx, s.backend, req, answer, func(tx *postgres.Tx) (*pb.Approval, error) {
		draft, err := tx.CreateApproval(ctx, c.person.Actor(), draftOf(c, req.GetApproval(), flight))
		if err != nil {
			return nil, err
		}
		if !req.GetSubmit() {
			return freshApproval(ctx, tx, c, draft.ID)
		}
		return s.writeSubmission(ctx, tx, c, computed, postgres.Decision{ID: draft.ID, Etag: club.Etag(draft.Version)}, nil)
	})
}

// plannedIn checks the names and documents of an approval on the wire.
func (b *backend) plannedIn(ctx context.Context, c caller, a *pb.Approval) (p plannedFlight, err error) {
	if _, p.modelID, err = locate(ctx, club.Models, "approval.model", a.GetModel()); err != nil {
		return p, err
	}
	if _, p.fieldID, err = locate(ctx, club.Fields, "approval.field", a.GetField()); err != nil {
		return p, err
	}
	if p.plan, err = planDocument(a.GetLaunchPlan()); err != nil {
		return p, err
	}
	if p.day, err = dayDocument(a.GetDay()); err != nil {
		return p, err
	}
	if p.words, err = b.confirmed(c, nil, a.GetConfirmations()); err != nil {
		return p, err
	}
	p.limits, err = ownersLimits(a.GetLimits())
	return p, err
}

// draftedOrComputed checks a draft's model and field, or computes what is to be submitted at once.
func (s *approvalsService) draftedOrComputed(ctx context.Context, c caller, p plannedFlight, submit bool) (submission, error) {
	if submit {
		return s.computeSubmission(ctx, c, p)
	}
	return submission{}, s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		if _, err := ownModel(ctx, tx, c, p.modelID); err != nil {
			return err
		}
		_, err := tx.Field(ctx, p.fieldID)
		return err
	})
}

// draftOf is the record to open. Conditions are the officers' to set, at the desk gate.
func draftOf(c caller, a *pb.Approval, p plannedFlight) club.Approval {
	return club.Approval{ModelID: p.modelID, FieldID: p.fieldID, OwnerID: c.person.ID, LaunchPlan: p.plan, Day: p.day, Limits: p.limits, Confirmations: p.words,
		OwnerNote: a.GetOwnerNote()}
}
