package postgres

import (
	"context"
	"encoding/json"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// ApprovalFilter narrows a list; empty parts do not.
type ApprovalFilter struct {
	OwnerID string
	States  []club.State
}

// CreateApproval opens a draft owned by by, on the latest revision and field version. Uses ModelID, FieldID, LaunchPlan,
// Day, Limits, OwnerNote and Conditions of a. Forbidden when the model is somebody else's.
func (t *Tx) CreateApproval(ctx context.Context, by club.Actor, a club.Approval) (club.Approval, error) {
	model, err := t.q.ShareModel(ctx, t.clubID, a.ModelID)
	if err != nil {
		return club.Approval{}, found(err, "model", a.ModelID)
	}
	version, err := t.q.ShareField(ctx, t.clubID, a.FieldID)
	if err != nil {
		return club.Approval{}, found(err, "field", a.FieldID)
	}
	if model.OwnerID != by.PersonID {
		return club.Approval{}, club.Refuse(club.Forbidden, "NOT_YOUR_MODEL", "an approval is asked for by the model's owner")
	}
	id := t.store.id()
	err = t.q.InsertApproval(ctx, pgdb.InsertApprovalParams{
		ClubID: t.clubID, ApprovalID: id, OwnerID: by.PersonID, ModelID: a.ModelID, ModelRevision: model.LatestRevision,
		FieldID: a.FieldID, FieldVersion: version, LaunchPlan: orEmpty(a.LaunchPlan), Day: orEmpty(a.Day), Limits: a.Limits, Confirmations: orNone(a.Confirmations),
		OwnerNote: a.OwnerNote, Conditions: list(a.Conditions), Now: t.now,
	})
	if err != nil {
		return club.Approval{}, err
	}
	made, err := t.Approval(ctx, id)
	if err != nil {
		return club.Approval{}, err
	}
	if err := t.writeTransition(ctx, made, step{verb: club.VerbCreate, by: by}); err != nil {
		return club.Approval{}, err
	}
	return t.Approval(ctx, id)
}

// orNone is the list, or the empty one.
func orNone(list []byte) []byte {
	if len(list) == 0 {
		return []byte("[]")
	}
	return list
}

// orEmpty is the document, or the empty one.
func orEmpty(document []byte) []byte {
	if len(document) == 0 {
		return []byte("{}")
	}
	return document
}

// Approval reads an approval with its transitions, signatures, holds and officers' words. NotFound when there is none.
func (r *ReadTx) Approval(ctx context.Context, id string) (club.Approval, error) {
	row, err := r.q.Approval(ctx, r.clubID, id)
	if err != nil {
		return club.Approval{}, found(err, "approval", id)
	}
	a := approvalOf(row)
	if a.Transitions, err = r.transitions(ctx, id); err != nil {
		return club.Approval{}, err
	}
	if a.Signatures, err = r.signatures(ctx, id); err != nil {
		return club.Approval{}, err
	}
	if a.Holds, err = r.holds(ctx, id); err != nil {
		return club.Approval{}, err
	}
	a.RuleWords, err = r.ruleWords(ctx, id)
	return a, err
}

// Approvals lists approvals, newest first, without transitions, signatures and holds, and the token of the next page.
func (r *ReadTx) Approvals(ctx context.Context, f ApprovalFilter, page club.Page) ([]club.Approval, string, error) {
	after, err := readPlace(page.After, last)
	if err != nil {
		return nil, "", err
	}
	rows, err := r.q.ListApprovals(ctx, pgdb.ListApprovalsParams{
		ClubID: r.clubID, OwnerID: f.OwnerID, States: names(f.States), AfterTime: after.time, AfterID: after.id,
		Most: page.Limit() + 1,
	})
	approvals, next := cut(rows, page.Limit(), func(row pgdb.ListApprovalsRow) (club.Approval, place) {
		return approvalOf(pgdb.ApprovalRow(row)), place{row.CreateTime, row.ApprovalID}
	})
	return approvals, next, err
}

func names(states []club.State) []string {
	words := []string{}
	for _, state := range states {
		words = append(words, string(state))
	}
	return words
}

// statesThat lists the states for which the question is answered yes.
func statesThat(yes func(club.State) bool) []string {
	words := []string{}
	for _, state := range club.States() {
		if yes(state) {
			words = append(words, string(state))
		}
	}
	return words
}

func approvalOf(row pgdb.ApprovalRow) club.Approval {
	return club.Approval{
		ID: row.ApprovalID, State: club.State(row.State), HeldFrom: club.State(text(row.HeldFrom)),
		ModelID: row.ModelID, ModelDisplayName: row.ModelDisplayName, ModelRevision: row.ModelRevision,
		FieldID: row.FieldID, FieldDisplayName: row.FieldDisplayName, FieldVersion: row.FieldVersion,
		OwnerID: row.OwnerID, OwnerDisplayName: row.OwnerDisplayName,
		LaunchPlan: row.LaunchPlan, Day: row.Day, Limits: row.Limits, Confirmations: row.Confirmations, OwnerNote: row.OwnerNote, Conditions: row.Conditions,
		AssessmentID: text(row.AssessmentID), AssessmentDigest: text(row.InputDigest),
		Counts: club.Counts{
			Holds: orZero(row.HoldsCount), Tight: orZero(row.TightCount), Fails: orZero(row.FailsCount), Unknown: orZero(row.UnknownCount),
		},
		KeptGates: gatesOf(row.KeptGates), Version: row.Version, CreateTime: row.CreateTime, UpdateTime: row.UpdateTime,
	}
}

func orZero(count *int32) int32 { return orElse(count, 0) }

func (r *ReadTx) transitions(ctx context.Context, approvalID string) ([]club.Transition, error) {
	rows, err := r.q.Transitions(ctx, r.clubID, approvalID)
	var all []club.Transition
	for _, row := range rows {
		var gates []club.GateFate
		if err := json.Unmarshal(row.Gates, &gates); err != nil {
			return nil, err
		}
		all = append(all, club.Transition{
			From: club.State(row.FromState), To: club.State(row.ToState), Verb: club.Verb(row.Verb),
			ActorID: text(row.ActorID), ActorDisplayName: text(row.ActorDisplayName), Reason: row.Reason,
			ModelRevision: row.ModelRevision, AssessmentID: text(row.AssessmentID), Time: row.Time, LedgerIndex: row.LedgerIndex, Gates: gates,
		})
	}
	return all, err
}

func (r *ReadTx) signatures(ctx context.Context, approvalID string) ([]club.Signature, error) {
	rows, err := r.q.Signatures(ctx, r.clubID, approvalID)
	var all []club.Signature
	for _, row := range rows {
		all = append(all, club.Signature{
			SignerID: row.SignerID, SignerDisplayName: row.SignerDisplayName, Role: club.Role(row.Role), Meaning: row.Meaning,
			Digest: row.Digest, DeviceTime: moment(row.DeviceTime), ServerTime: row.ServerTime, Lapsed: row.Lapsed,
		})
	}
	return all, err
}

func (r *ReadTx) holds(ctx context.Context, approvalID string) ([]club.Hold, error) {
	rows, err := r.q.Holds(ctx, r.clubID, approvalID)
	var all []club.Hold
	for _, row := range rows {
		all = append(all, club.Hold{
			ID: row.HoldID, Reason: row.Reason, LessonID: text(row.LessonID), ActorID: text(row.ActorID),
			ActorDisplayName: text(row.ActorDisplayName), Time: row.Time, Released: row.ReleaseTime != nil,
			ReleaseReason: row.ReleaseReason, ReleasedByID: text(row.ReleasedBy),
			ReleasedByDisplayName: text(row.ReleasedByDisplayName),
		})
	}
	return all, err
}

// OpenApprovals lists the approvals a lesson may hold, oldest first, each with the description it rests on: the named
// revision, or the latest for one that is yet to be submitted.
func (r *ReadTx) OpenApprovals(ctx context.Context) ([]club.OpenApproval, error) {
	rows, err := r.q.OpenApprovals(ctx, r.clubID, statesThat(club.State.Open))
	var open []club.OpenApproval
	for _, row := range rows {
		open = append(open, club.OpenApproval{
			ID: row.ApprovalID, ModelID: row.ModelID, State: club.State(row.State), ModelRevision: row.Number,
			Description: row.Description,
		})
	}
	return open, err
}
