package api

import (
	"context"
	"encoding/json"
	"slices"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
)

// ConfirmRule keeps an officer's answer to a rule on an approval of another that is under review: the document is computed again with that word by the
// rules in force; answer, assessment and ledger entry are one transaction.
func (s *approvalsService) ConfirmRule(ctx context.Context, req *pb.ConfirmRuleRequest) (*pb.Approval, error) {
	c, id, err := locate(ctx, club.Approvals, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	answer := &pb.Approval{}
	if found, err := recall(ctx, s.backend, req, answer); err != nil || found {
		return answer, err
	}
	before, err := s.approvalToDecide(ctx, c, id, req.GetEtag(), club.VerbConfirmRule, req.GetReason())
	if err != nil {
		return nil, err
	}
	made, err := s.answerRule(ctx, c, before, req)
	if err != nil {
		return nil, err
	}
	answer, err = once(ctx, s.backend, req, answer, func(tx *postgres.Tx) (*pb.Approval, error) {
		return made.write(ctx, tx, c, req)
	})
	return answer, s.explainStale(ctx, c, id, err)
}

// ruleAnswer is an answer that waits to be written: the approval's list with it, and what was computed of that.
type ruleAnswer struct {
	approvalID string
	answer     postgres.Answer
	rules      rulesInForce
	assessment club.Assessment
}

// answerRule computes the approval's document with the officer's word.
func (b *backend) answerRule(ctx context.Context, c caller, a club.Approval, req *pb.ConfirmRuleRequest) (ruleAnswer, error) {
	out := ruleAnswer{approvalID: a.ID, answer: postgres.Answer{Rule: req.GetRule(), Confirmed: req.GetConfirmed()}}
	var err error
	if out.answer.Date, err = dateOfWord(req.GetDate(), b.now().UTC()); err != nil {
		return out, &invalidError{[]violation{{"date", err.Error()}}}
	}
	words, err := keptConfirmations(a.Confirmations)
	if err != nil {
		return out, err
	}
	yes := true
	words = withWord(words, assess.RuleConfirmation{Rule: req.GetRule(), Confirmed: &out.answer.Confirmed, By: c.person.DisplayName, Date: out.answer.Date, Officer: &yes})
	if out.answer.Confirmations, err = json.Marshal(words); err != nil {
		return out, err
	}
	in, err := b.documentOf(ctx, c, a, &out)
	if err != nil {
		return out, err
	}
	if !asksForWord(in.Limits, req.GetRule()) {
		return out, &invalidError{[]violation{{"rule", "must be one that is asked of this approval and takes somebody's word"}}}
	}
	in.Confirmations = words
	out.assessment, err = b.computed(ctx, in)
	return out, err
}

// documentOf is the document that an approval was last computed from, under the rules in force, which are noted.
func (b *backend) documentOf(ctx context.Context, c caller, a club.Approval, out *ruleAnswer) (in assess.Input, err error) {
	var kept club.Assessment
	err = b.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		if kept, err = tx.Assessment(ctx, a.AssessmentID); err != nil {
			return err
		}
		out.rules, err = readRules(ctx, tx)
		return err
	})
	if err != nil {
		return in, err
	}
	return inputUnder(club.AssessedApproval{Limits: a.Limits, Input: kept.Input}, out.rules)
}

// asksForWord tells whether limits hold a rule that takes somebody's word.
func asksForWord(limits *assess.Limits, key string) bool {
	return limits != nil && slices.ContainsFunc(limits.Rules, func(r assess.AppliedRule) bool {
		return r.ID != "" && r.Kind == assess.RuleKindConfirmation && r.Key() == key
	})
}

// write keeps assessment and answer.
func (m ruleAnswer) write(ctx context.Context, tx *postgres.Tx, c caller, req *pb.ConfirmRuleRequest) (*pb.Approval, error) {
	if err := stillInForce(ctx, tx, m.rules); err != nil {
		return nil, err
	}
	m.assessment.ApprovalID, m.assessment.CreatorID = m.approvalID, c.person.ID
	kept, err := tx.CreateAssessment(ctx, c.person.Actor(), m.assessment)
	if err != nil {
		return nil, err
	}
	m.answer.AssessmentID = kept.ID
	_, err = tx.Decide(ctx, postgres.Decision{ID: m.approvalID, Etag: req.GetEtag(), Verb: club.VerbConfirmRule, By: c.person.Actor(),
		Reason: req.GetReason(), Answer: &m.answer})
	if err != nil {
		return nil, err
	}
	return freshApproval(ctx, tx, c, m.approvalID)
}
