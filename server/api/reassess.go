package api

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"pitgate/server/club"
	"pitgate/server/document"
	"pitgate/server/jobs"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
)

// reassessor does the jobs that compute approvals again. It waits in line for a processor as every call does.
type reassessor struct{ *backend }

// overtakings is how often a job begins anew at once because approval or rules changed while it computed.
const overtakings = 3

// errOvertaken says that approval or rules changed while an answer was computed.
var errOvertaken = errors.New("the approval or the rules changed meanwhile")

// Reassess implements jobs.Assessor.
func (r *reassessor) Reassess(ctx context.Context, job jobs.ReassessApproval) error {
	for attempt := 1; ; attempt++ {
		err := r.reassessOnce(ctx, job)
		if !errors.Is(err, errOvertaken) || attempt == overtakings {
			return err
		}
	}
}

// again is one approval on its way: as it was read, and what was computed of it.
type again struct {
	run      club.ReassessmentRun
	approval club.ReassessedApproval
	rules    rulesInForce
	done     bool
	// answer is nil when no verdict changed.
	answer  *club.Assessment
	changes []verdictChange
}

func (r *reassessor) reassessOnce(ctx context.Context, job jobs.ReassessApproval) error {
	a, err := r.readAgain(ctx, job)
	if err != nil || a.done {
		return err
	}
	if a.approval.State.Open() {
		if err := r.computeAgain(ctx, job.Club, &a); err != nil {
			return err
		}
	}
	return r.store.InTx(ctx, job.Club, func(tx *postgres.Tx) error { return keepAgain(ctx, tx, a) })
}

// readAgain reads what a job is about.
func (r *reassessor) readAgain(ctx context.Context, job jobs.ReassessApproval) (a again, err error) {
	err = r.store.Read(ctx, job.Club, func(tx *postgres.ReadTx) error {
		if a.done, err = tx.Reassessed(ctx, job.Run, job.Approval); err != nil || a.done {
			return err
		}
		if a.run, err = tx.RunCause(ctx, job.Run); err != nil {
			return err
		}
		if a.approval, err = tx.ApprovalToReassess(ctx, job.Approval); err != nil {
			return err
		}
		a.rules, err = readRules(ctx, tx)
		return err
	})
	return a, err
}

// computeAgain computes the approval's document by the rules in force and the present core, and compares with the newest answer kept for it. The whole
// answer is computed only when verdicts changed.
func (r *reassessor) computeAgain(ctx context.Context, clubID string, a *again) error {
	in, err := inputUnder(a.approval.AssessedApproval, a.rules)
	if err != nil {
		return err
	}
	if a.approval.CoreVersion == assess.Version && a.approval.InputDigest == document.Digest(in) {
		return nil
	}
	was, err := r.keptReport(ctx, clubID, a.approval.AssessmentID)
	if err != nil {
		return err
	}
	release, err := r.waitInLine(ctx)
	if err != nil {
		return err
	}
	defer release()
	becomes, err := document.Answers(in)
	if err != nil {
		return club.RefuseField("document", "NOT_COMPUTABLE", "%v", err)
	}
	if a.changes = verdictChanges(was, becomes); len(a.changes) == 0 {
		return nil
	}
	whole, err := assessed(in)
	whole.ApprovalID, a.answer = a.approval.ID, &whole
	return err
}

// keptReport reads the report of a kept answer.
func (r *reassessor) keptReport(ctx context.Context, clubID, id string) (report assess.Report, err error) {
	var kept club.Assessment
	err = r.store.Read(ctx, clubID, func(tx *postgres.ReadTx) error {
		kept, err = tx.Assessment(ctx, id)
		return err
	})
	if err != nil {
		return report, err
	}
	if err := json.Unmarshal(kept.Report, &report); err != nil {
		return report, fmt.Errorf("kept report: %w", err)
	}
	return report, nil
}

// keepAgain keeps what became of the approval: the new answer and the changed verdicts, and the lapse when it no longer stands on what was signed.
func keepAgain(ctx context.Context, tx *postgres.Tx, a again) error {
	now, err := lockUnchanged(ctx, tx, a)
	if err != nil {
		return err
	}
	kept := club.Reassessment{RunID: a.run.ID, ApprovalID: now.ID, State: now.State, CoreVersion: assess.Version, Outcome: club.OutcomeSame}
	switch {
	case !now.State.Open():
		kept.Outcome = club.OutcomeSkipped
	case a.answer != nil:
		answer, err := tx.CreateAssessment(ctx, club.Actor{}, *a.answer)
		if err != nil {
			return err
		}
		kept.Outcome, kept.AssessmentID, kept.Changes = club.OutcomeChanged, answer.ID, listChanges(a.changes)
		kept.Lapsed = now.Underneath().RestsOnRevision() && a.mustLapse()
	}
	fresh, err := tx.KeepReassessment(ctx, kept)
	if err != nil || !fresh || !kept.Lapsed {
		return err
	}
	return tx.LapseForAnswer(ctx, now.ID, kept.AssessmentID, lapseReason(a.run.Reason, a.changes))
}

// lockUnchanged locks rules and approval and wants both as they were read.
func lockUnchanged(ctx context.Context, tx *postgres.Tx, a again) (club.ReassessedApproval, error) {
	if err := tx.LockRules(ctx); err != nil {
		return club.ReassessedApproval{}, err
	}
	rules, err := readRules(ctx, &tx.ReadTx)
	if err != nil {
		return club.ReassessedApproval{}, err
	}
	same, err := rules.same(a.rules)
	if err != nil {
		return club.ReassessedApproval{}, err
	}
	now, err := tx.LockToReassess(ctx, a.approval.ID)
	if err != nil {
		return now, err
	}
	done, err := tx.Reassessed(ctx, a.run.ID, now.ID)
	if err == nil && (done || !same || now.AssessmentID != a.approval.AssessmentID || now.State.Open() != a.approval.State.Open()) {
		err = errOvertaken
	}
	return now, err
}

// mustLapse tells whether the approval may not stand on its former answer: rules are part of what was signed, so that any change of verdict by them
// lapses it; what another core only judges better is told and lapses nothing.
func (a *again) mustLapse() bool {
	if a.run.Cause == club.CauseRules {
		return true
	}
	for _, c := range a.changes {
		if club.Worse(string(c.from), string(c.to)) {
			return true
		}
	}
	return false
}

// listChanges writes changes as they are kept.
func listChanges(changes []verdictChange) []club.ChangedVerdict {
	var out []club.ChangedVerdict
	for _, c := range changes {
		out = append(out, club.ChangedVerdict{FindingID: c.finding.ID, Title: c.finding.Title, From: string(c.from), To: string(c.to), Note: c.finding.Note})
	}
	return out
}

// mostFailureText is how much of a failure is kept, in bytes.
const mostFailureText = 400

// failureText returns the beginning of a failure, cut between letters.
func failureText(reason string) string {
	return strings.ToValidUTF8(reason[:min(len(reason), mostFailureText)], "")
}

// KeepFailure implements jobs.Assessor. An approval whose turn is kept already stays as it is.
func (r *reassessor) KeepFailure(ctx context.Context, job jobs.ReassessApproval, reason string) error {
	return r.store.InTx(ctx, job.Club, func(tx *postgres.Tx) error {
		a, err := tx.LockToReassess(ctx, job.Approval)
		if err != nil {
			return err
		}
		_, err = tx.KeepReassessment(ctx, club.Reassessment{RunID: job.Run, ApprovalID: job.Approval, State: a.State, CoreVersion: assess.Version,
			Outcome: club.OutcomeFailed, Failure: failureText(reason)})
		return err
	})
}
