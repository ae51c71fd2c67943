package postgres

import (
	"context"
	"encoding/json"
	"errors"

	"github.com/jackc/pgx/v5"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// EveryClub lists the ids of all clubs: for work that goes over all of them, one transaction a club.
func (s *Store) EveryClub(ctx context.Context) (ids []string, err error) {
	err = pgx.BeginTxFunc(ctx, s.pool, pgx.TxOptions{AccessMode: pgx.ReadOnly}, func(tx pgx.Tx) error {
		q := pgdb.New(tx)
		if err := q.SetEveryClub(ctx); err != nil {
			return err
		}
		ids, err = q.EveryClub(ctx)
		return err
	})
	return ids, answer(err)
}

// Enqueue lends the transaction to a queue, so that jobs are added when it commits and not otherwise.
func (t *Tx) Enqueue(insert func(pgx.Tx) error) error { return insert(t.raw) }

// BeginRun opens a run. Uses Cause, Reason, CoreVersion and ByJobs of r. A change of rules stands in the ledger already; what else begins one is told
// to it here.
func (t *Tx) BeginRun(ctx context.Context, by club.Actor, r club.ReassessmentRun) (club.ReassessmentRun, error) {
	id := t.store.id()
	err := t.q.InsertRun(ctx, pgdb.InsertRunParams{
		ClubID: t.clubID, RunID: id, Cause: string(r.Cause), Reason: r.Reason, CoreVersion: r.CoreVersion, ByJobs: r.ByJobs, Now: t.now,
	})
	if err != nil {
		return r, err
	}
	if r.Cause != club.CauseRules {
		_, err = t.record(ctx, "reassessment.begun", by, event{"run": id, "cause": r.Cause, "reason": r.Reason, "core_version": r.CoreVersion})
		if err != nil {
			return r, err
		}
	}
	return t.Run(ctx, id)
}

// LockRuns keeps others from opening a run of the club until the transaction ends.
func (t *Tx) LockRuns(ctx context.Context) error { return t.q.LockClub(ctx, "runs/"+t.clubID) }

// Run reads a run with how far it is. NotFound when there is none.
func (r *ReadTx) Run(ctx context.Context, id string) (club.ReassessmentRun, error) {
	row, err := r.q.Run(ctx, r.clubID, id)
	if err != nil {
		return club.ReassessmentRun{}, found(err, "reassessment run", id)
	}
	return club.ReassessmentRun{
		ID: row.RunID, Cause: club.Cause(row.Cause), Reason: row.Reason, CoreVersion: row.CoreVersion, ByJobs: row.ByJobs,
		Listed: row.Approvals != nil, Approvals: orZero(row.Approvals), DoneCount: row.DoneCount, ChangedCount: row.ChangedCount,
		FailCount: row.FailedCount, CreateTime: row.CreateTime,
	}, nil
}

// RunCause reads why a run was opened, without counting how far it is.
func (r *ReadTx) RunCause(ctx context.Context, id string) (club.ReassessmentRun, error) {
	row, err := r.q.RunCause(ctx, r.clubID, id)
	return club.ReassessmentRun{ID: id, Cause: club.Cause(row.Cause), Reason: row.Reason}, found(err, "reassessment run", id)
}

// LatestRun reads the last run of a cause; found is false when there was none.
func (r *ReadTx) LatestRun(ctx context.Context, cause club.Cause) (run club.ReassessmentRun, found bool, err error) {
	id, err := r.q.LatestRunID(ctx, r.clubID, string(cause))
	if errors.Is(err, pgx.ErrNoRows) {
		return run, false, nil
	}
	if err != nil {
		return run, false, err
	}
	run, err = r.Run(ctx, id)
	return run, err == nil, err
}

// ListRun keeps how many approvals a run goes over.
func (t *Tx) ListRun(ctx context.Context, runID string, approvals int) error {
	return t.q.SetRunApprovals(ctx, int32(approvals), t.clubID, runID)
}

// ApprovalsToReassess lists the ids of the computed approvals that may still lead to a flight, oldest first.
func (r *ReadTx) ApprovalsToReassess(ctx context.Context) ([]string, error) {
	return r.q.ApprovalsToReassess(ctx, r.clubID, statesThat(club.State.Open))
}

// ApprovalToReassess reads an approval with the document of the newest answer kept for it, without the report. NotFound when nothing was computed for it.
func (r *ReadTx) ApprovalToReassess(ctx context.Context, id string) (club.ReassessedApproval, error) {
	row, err := r.q.ApprovalToReassess(ctx, r.clubID, id)
	if err != nil {
		return club.ReassessedApproval{}, found(err, "computed approval", id)
	}
	return club.ReassessedApproval{AssessmentID: row.AssessmentID, AssessedApproval: club.AssessedApproval{
		ID: row.ApprovalID, ModelDisplayName: row.ModelDisplayName, OwnerDisplayName: row.OwnerDisplayName, State: club.State(row.State),
		HeldFrom: club.State(text(row.HeldFrom)), Limits: row.Limits, Input: row.Input, InputDigest: row.InputDigest,
		CoreVersion: row.CoreVersion,
	}}, nil
}

// LockToReassess locks an approval, so that nothing about it changes until the transaction ends, and reads where it stands and the newest answer's id.
func (t *Tx) LockToReassess(ctx context.Context, id string) (club.ReassessedApproval, error) {
	a, err := t.lockApproval(ctx, id)
	if err != nil {
		return club.ReassessedApproval{}, err
	}
	answer, err := t.q.NewestAnswer(ctx, t.clubID, &id)
	return club.ReassessedApproval{AssessmentID: answer, AssessedApproval: club.AssessedApproval{ID: id, State: a.State, HeldFrom: a.HeldFrom}},
		found(err, "computed approval", id)
}

// Reassessed tells whether an approval had its turn in a run.
func (r *ReadTx) Reassessed(ctx context.Context, runID, approvalID string) (bool, error) {
	return r.q.HasReassessment(ctx, r.clubID, runID, approvalID)
}

// KeepReassessment keeps what became of an approval in a run, once: kept is false when it was there already. Uses RunID, ApprovalID, Outcome,
// CoreVersion, State, Lapsed, AssessmentID, Changes and Failure of a. A change that lapses nothing gets a ledger entry here, since a lapse has its own.
func (t *Tx) KeepReassessment(ctx context.Context, a club.Reassessment) (kept bool, err error) {
	changes, err := club.Document(a.Changes)
	if err != nil {
		return false, err
	}
	rows, err := t.q.InsertReassessment(ctx, pgdb.InsertReassessmentParams{
		ClubID: t.clubID, RunID: a.RunID, ApprovalID: a.ApprovalID, ReassessmentID: t.store.id(), Outcome: string(a.Outcome), CoreVersion: a.CoreVersion,
		State: string(a.State), Lapsed: a.Lapsed, AssessmentID: optional(a.AssessmentID), Changes: changes, Failure: a.Failure, Now: t.now,
	})
	if err != nil || rows == 0 || a.Lapsed || a.Outcome == club.OutcomeSame || a.Outcome == club.OutcomeSkipped {
		return rows > 0, err
	}
	_, err = t.record(ctx, "approval.reassessed", club.Actor{}, event{
		"approval": club.Approvals.Name(t.clubID, a.ApprovalID), "run": a.RunID, "outcome": a.Outcome, "core_version": a.CoreVersion,
		"assessment": club.Assessments.Name(t.clubID, a.AssessmentID), "changes": len(a.Changes),
	})
	return true, err
}

// AwaitsRules tells whether rules changed since the approval was computed and jobs have not come to it.
func (r *ReadTx) AwaitsRules(ctx context.Context, approvalID string) (bool, error) {
	return r.q.AwaitsRules(ctx, r.clubID, approvalID)
}

// ChangeFilter narrows a list of changed verdicts; empty parts do not.
type ChangeFilter struct {
	OwnerID, ApprovalID, ID string
	// Unread leaves out what the reader has marked.
	Unread bool
}

// ChangedVerdicts lists the reassessments that changed verdicts or failed, newest first, as a person reads them, and the token of the next page.
func (r *ReadTx) ChangedVerdicts(ctx context.Context, readerID string, f ChangeFilter, page club.Page) ([]club.Reassessment, string, error) {
	after, err := readPlace(page.After, last)
	if err != nil {
		return nil, "", err
	}
	rows, err := r.q.ListChanges(ctx, pgdb.ListChangesParams{
		ClubID: r.clubID, ReaderID: readerID, OwnerID: f.OwnerID, ApprovalID: f.ApprovalID, ReassessmentID: f.ID, Unread: f.Unread,
		AfterTime: after.time, AfterID: after.id, Most: page.Limit() + 1,
	})
	if err != nil {
		return nil, "", err
	}
	var broken error
	changes, next := cut(rows, page.Limit(), func(row pgdb.ListChangesRow) (club.Reassessment, place) {
		a, err := reassessmentOf(row)
		broken = errors.Join(broken, err)
		return a, place{row.CreateTime, row.ReassessmentID}
	})
	return changes, next, broken
}

func reassessmentOf(row pgdb.ListChangesRow) (club.Reassessment, error) {
	a := club.Reassessment{
		ID: row.ReassessmentID, RunID: row.RunID, ApprovalID: row.ApprovalID, Outcome: club.Outcome(row.Outcome), CoreVersion: row.CoreVersion,
		State: club.State(row.State), StateNow: club.State(row.StateNow), Lapsed: row.Lapsed, AssessmentID: text(row.AssessmentID), Failure: row.Failure,
		Cause: club.Cause(row.Cause), Reason: row.Reason, ModelDisplayName: row.ModelDisplayName, OwnerDisplayName: row.OwnerDisplayName,
		Read: row.Read, CreateTime: row.CreateTime,
	}
	return a, json.Unmarshal(row.Changes, &a.Changes)
}

// MarkRead keeps that a person has read of a change; again is no error.
func (t *Tx) MarkRead(ctx context.Context, personID, reassessmentID string) error {
	return t.q.InsertReading(ctx, pgdb.InsertReadingParams{ClubID: t.clubID, ReassessmentID: reassessmentID, PersonID: personID, Now: t.now})
}
