package api

import (
	"context"
	"fmt"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// decide does one verb to one approval: the club's state machine judges, the store writes state, transition and ledger entry together.
func (s *approvalsService) decide(ctx context.Context, req *pb.DecisionRequest, verb club.Verb) (*pb.Approval, error) {
	c, id, err := locate(ctx, club.Approvals, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	if err := needEtag(req.GetEtag()); err != nil {
		return nil, err
	}
	d := postgres.Decision{ID: id, Etag: req.GetEtag(), Verb: verb, By: c.person.Actor(), Reason: req.GetReason()}
	if len(req.GetConditions()) > 0 {
		d.Conditions = req.GetConditions()
	}
	answer, err := once(ctx, s.backend, req, &pb.Approval{}, func(tx *postgres.Tx) (*pb.Approval, error) {
		if _, err := readableApproval(ctx, &tx.ReadTx, c, id); err != nil {
			return nil, err
		}
		if _, err := tx.Decide(ctx, d); err != nil {
			return nil, err
		}
		return freshApproval(ctx, tx, c, id)
	})
	return answer, s.explainStale(ctx, c, id, err)
}

// approvalToDecide reads an approval and refuses early what the transaction would refuse later, before costly work is done.
func (s *approvalsService) approvalToDecide(ctx context.Context, c caller, id, etag string, verb club.Verb, reason string) (club.Approval, error) {
	if err := needEtag(etag); err != nil {
		return club.Approval{}, err
	}
	var a club.Approval
	err := s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) (err error) {
		a, err = readableApproval(ctx, tx, c, id)
		return err
	})
	if err != nil {
		return a, err
	}
	if err := club.Permit(a, verb, c.person.Actor()); err != nil {
		return a, err
	}
	if err := club.MatchEtag(etag, a.Version); err != nil {
		return a, s.explainStale(ctx, c, id, err)
	}
	_, err = club.Next(a, verb, c.person.Actor(), reason)
	return a, err
}

// needEtag refuses a decision that does not say which state of the record it was taken on.
func needEtag(etag string) error {
	if etag == "" {
		return club.RefuseField("etag", "ETAG_MISSING", "send the etag of the approval as you read it")
	}
	return nil
}

// explainStale says who changed the approval meanwhile, when that is known.
func (s *approvalsService) explainStale(ctx context.Context, c caller, id string, err error) error {
	if club.CodeOf(err) != club.Stale {
		return err
	}
	var a club.Approval
	readErr := s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) (e error) {
		a, e = tx.Approval(ctx, id)
		return e
	})
	if readErr != nil || len(a.Transitions) == 0 {
		return err
	}
	last := a.Transitions[len(a.Transitions)-1]
	who := last.ActorDisplayName
	if who == "" {
		who = "the club"
	}
	return &club.Error{Code: club.Stale, Field: "etag", Reason: reasonEtag, Message: fmt.Sprintf(
		"%s changed it at %s, it is now %s: read it again and repeat", who, last.Time.UTC().Format("2006-01-02 15:04 UTC"), a.State.Words())}
}
