package api

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"sync"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
)

// ruleChange is what other rules change in one approval.
type ruleChange struct {
	approval club.AssessedApproval
	changes  []verdictChange
	// in and answer are the document under those rules and what the core says of it.
	in     assess.Input
	answer assess.Report
}

// verdictChange is one finding whose verdict changes; an empty verdict means that there is no such finding.
type verdictChange struct {
	finding  assess.Finding
	from, to assess.Verdict
}

// changedBy tries other rules on every open approval that was computed, and returns those whose verdicts change and how many were tried. Both sides are
// computed by the present core on the document that was assessed, so that nothing but the rules can make a difference.
func (b *backend) changedBy(ctx context.Context, tx *postgres.ReadTx, before, after rulesInForce) ([]ruleChange, int32, error) {
	open, err := tx.AssessedApprovals(ctx)
	if err != nil {
		return nil, 0, err
	}
	found, errs := make([]ruleChange, len(open)), make([]error, len(open))
	var group sync.WaitGroup
	for i, a := range open {
		group.Go(func() { found[i], errs[i] = b.changesIn(ctx, a, before, after) })
	}
	group.Wait()
	if err := errors.Join(errs...); err != nil {
		return nil, 0, err
	}
	var out []ruleChange
	for _, r := range found {
		if len(r.changes) > 0 {
			out = append(out, r)
		}
	}
	return out, int32(len(open)), nil
}

// changesIn computes one approval by both sets of rules; the kept report serves where it answers for the former.
func (b *backend) changesIn(ctx context.Context, a club.AssessedApproval, before, after rulesInForce) (r ruleChange, err error) {
	_, was, err := b.underRules(ctx, a, before)
	if err != nil {
		return r, fmt.Errorf("approval %s: %w", a.ID, err)
	}
	in, becomes, err := b.underRules(ctx, a, after)
	if err != nil {
		return r, fmt.Errorf("approval %s: %w", a.ID, err)
	}
	return ruleChange{approval: a, changes: verdictChanges(was, becomes), in: in, answer: becomes}, nil
}

// underRules computes an approval's document by other rules; the owner's own limits stay.
func (b *backend) underRules(ctx context.Context, a club.AssessedApproval, rules rulesInForce) (in assess.Input, report assess.Report, err error) {
	if in, err = inputUnder(a, rules); err != nil {
		return in, report, err
	}
	if a.CoreVersion == assess.Version && a.InputDigest == document.Digest(in) {
		return in, report, json.Unmarshal(a.Report, &report)
	}
	release, err := b.waitInLine(ctx)
	if err != nil {
		return in, report, err
	}
	defer release()
	report, err = document.Assess(in)
	return in, report, err
}

// inputUnder is an approval's document with the limits that rules and owner make.
func inputUnder(a club.AssessedApproval, rules rulesInForce) (assess.Input, error) {
	in, err := document.Decode(a.Input)
	if err != nil {
		return in, err
	}
	in.Limits = nil
	if len(a.Limits) > 0 {
		own, err := document.DecodeLimits(a.Limits)
		if err != nil {
			return in, err
		}
		in.Limits = &own
	}
	return in, rules.put(&in)
}

// verdictChanges lists the findings whose verdict differs, in the order of the new report, those that are gone last. A finding that comes and holds, or
// that held and goes, is no change.
func verdictChanges(was, becomes assess.Report) []verdictChange {
	before, gone := map[string]assess.Finding{}, map[string]bool{}
	for _, f := range was.Findings {
		before[f.ID], gone[f.ID] = f, true
	}
	var out []verdictChange
	for _, f := range becomes.Findings {
		delete(gone, f.ID)
		from := before[f.ID].Verdict
		if f.Verdict != from && (from != "" || f.Verdict != assess.VerdictHolds) {
			out = append(out, verdictChange{f, from, f.Verdict})
		}
	}
	for _, f := range was.Findings {
		if gone[f.ID] && f.Verdict != assess.VerdictHolds {
			out = append(out, verdictChange{f, f.Verdict, ""})
		}
	}
	return out
}

// lapses tells whether the approval rests on the rules that change.
func (r ruleChange) lapses() bool { return r.approval.Underneath().RestsOnRevision() }

// showRuleChange writes what changes in one approval.
func showRuleChange(clubID string, r ruleChange) *pb.ApprovalVerdictChanges {
	out := &pb.ApprovalVerdictChanges{
		Approval: club.Approvals.Name(clubID, r.approval.ID), ModelDisplayName: r.approval.ModelDisplayName,
		OwnerDisplayName: r.approval.OwnerDisplayName, State: string(r.approval.State), Lapses: r.lapses(),
	}
	for _, c := range r.changes {
		out.Changes = append(out.Changes, &pb.VerdictChange{
			FindingId: c.finding.ID, Title: c.finding.Title, From: verdictProto(c.from), To: verdictProto(c.to), Note: c.finding.Note,
		})
	}
	return out
}

func verdictProto(v assess.Verdict) pb.Verdict { return pb.Verdict(pb.Verdict_value[string(v)]) }

// mostNamed is how many findings the reason of a lapse names.
const mostNamed = 6

// lapseReason says in words why an approval lapses.
func lapseReason(what string, changes []verdictChange) string {
	var names []string
	for _, c := range changes {
		if len(names) == mostNamed {
			names = append(names, fmt.Sprintf("and %d more", len(changes)-mostNamed))
			break
		}
		names = append(names, fmt.Sprintf("%s (%s to %s)", c.finding.ID, club.VerdictWords(string(c.from)), club.VerdictWords(string(c.to))))
	}
	return fmt.Sprintf("%s: %s.", what, strings.Join(names, ", "))
}

// mostAtOnce is how many approvals are computed in the transaction of a change of rules; more are left to jobs, and none of them can be signed before its
// turn.
const mostAtOnce = 40

// lapseChanged lapses the approvals whose verdicts change from one set of rules to another, and lists the changes.
func (b *backend) lapseChanged(ctx context.Context, tx *postgres.Tx, by club.Actor, what string, before, after rulesInForce) error {
	run := club.ReassessmentRun{Cause: club.CauseRules, Reason: what, CoreVersion: assess.Version}
	ids, err := tx.ApprovalsToReassess(ctx)
	if err != nil {
		return err
	}
	if len(ids) > mostAtOnce {
		_, err := b.queue.Begin(ctx, tx, by, run)
		return err
	}
	changed, _, err := b.changedBy(ctx, &tx.ReadTx, before, after)
	if err != nil || len(changed) == 0 {
		return err
	}
	if run, err = tx.BeginRun(ctx, by, run); err != nil {
		return err
	}
	for _, r := range changed {
		if err := keepRuleChange(ctx, tx, run, r); err != nil {
			return err
		}
	}
	return tx.ListRun(ctx, run.ID, len(changed))
}

// keepRuleChange lists what changes in one approval; where it rests on the rules, the new answer is kept and it lapses.
func keepRuleChange(ctx context.Context, tx *postgres.Tx, run club.ReassessmentRun, r ruleChange) error {
	kept := club.Reassessment{RunID: run.ID, ApprovalID: r.approval.ID, State: r.approval.State, CoreVersion: assess.Version,
		Outcome: club.OutcomeChanged, Lapsed: r.lapses(), Changes: listChanges(r.changes)}
	if kept.Lapsed {
		whole, err := written(r.in, r.answer)
		if err != nil {
			return err
		}
		whole.ApprovalID = r.approval.ID
		answer, err := tx.CreateAssessment(ctx, club.Actor{}, whole)
		if err != nil {
			return err
		}
		kept.AssessmentID = answer.ID
	}
	if _, err := tx.KeepReassessment(ctx, kept); err != nil || !kept.Lapsed {
		return err
	}
	return tx.LapseForAnswer(ctx, r.approval.ID, kept.AssessmentID, lapseReason(run.Reason, r.changes))
}
