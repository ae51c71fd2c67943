package postgres

import (
	"context"
	"encoding/json"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// Answer is what an officer answers to a rule on an approval, with the assessment that counts it.
type Answer struct {
	// Rule is "<pack>.<rule>", Date the day for which it is said.
	Rule, Date string
	Confirmed  bool
	// Confirmations is the approval's whole list with this one.
	Confirmations json.RawMessage
	AssessmentID  string
}

// takeAnswer puts an answer into an approval on its way into the database. Gates that the new assessment concerns open again.
func (t *Tx) takeAnswer(ctx context.Context, in *Answer, a *held, s *step) error {
	if in == nil || in.Rule == "" || in.AssessmentID == "" {
		return club.RefuseField("rule", "ANSWER_MISSING", "say which rule is answered")
	}
	touch, err := t.touched(ctx, a.AssessmentID, in.AssessmentID, in.Rule)
	if err != nil {
		return err
	}
	if fates := a.Fates(touch); len(club.Kept(fates)) < len(fates) {
		s.gates, a.Approval = fates, a.Reopen(fates)
	}
	a.Confirmations, a.AssessmentID, s.answer = in.Confirmations, in.AssessmentID, in
	s.extra["rule"], s.extra["confirmed"], s.extra["date"] = in.Rule, in.Confirmed, in.Date
	return nil
}

// keepAnswer keeps an answer with the index of its ledger entry.
func (t *Tx) keepAnswer(ctx context.Context, approvalID string, index int64, s step) error {
	return t.q.InsertRuleWord(ctx, pgdb.InsertRuleWordParams{
		ClubID: t.clubID, ApprovalID: approvalID, LedgerIndex: index, Rule: s.answer.Rule, Confirmed: s.answer.Confirmed, Date: s.answer.Date,
		PersonID: s.by.PersonID, Reason: s.reason, AssessmentID: s.answer.AssessmentID, Now: t.now,
	})
}

// ruleWords lists what officers answered on an approval, newest last.
func (r *ReadTx) ruleWords(ctx context.Context, approvalID string) ([]club.RuleWord, error) {
	rows, err := r.q.RuleWords(ctx, r.clubID, approvalID)
	var all []club.RuleWord
	for _, row := range rows {
		all = append(all, club.RuleWord{Rule: row.Rule, Confirmed: row.Confirmed, Date: row.Date, OfficerID: row.PersonID,
			OfficerDisplayName: row.OfficerDisplayName, Reason: row.Reason, Time: row.Time, LedgerIndex: row.LedgerIndex})
	}
	return all, err
}
