package postgres

import (
	"context"
	"encoding/json"
	"errors"

	"github.com/jackc/pgx/v5"

	"pitgate/server/club"
	"pitgate/server/postgres/pgdb"
)

// BeginPreview opens a preview and removes the former ones of its pack. Uses all but the counts and times of p; the id is new.
func (t *Tx) BeginPreview(ctx context.Context, p club.RulePackPreview) (club.RulePackPreview, error) {
	if err := t.q.RemovePreviews(ctx, t.clubID, p.RulePackID); err != nil {
		return p, err
	}
	id := t.store.id()
	err := t.q.InsertPreview(ctx, pgdb.InsertPreviewParams{
		ClubID: t.clubID, PreviewID: id, RulePackID: p.RulePackID, PersonID: p.PersonID, Digest: p.Digest, RulesDigest: p.RulesDigest,
		CoreVersion: p.CoreVersion, Approvals: p.Approvals, Now: t.now,
	})
	if err != nil {
		return p, err
	}
	return t.Preview(ctx, id)
}

// PreviewOf finds a preview that was not cancelled with the pack, digests and core of p.
func (r *ReadTx) PreviewOf(ctx context.Context, p club.RulePackPreview) (club.RulePackPreview, bool, error) {
	id, err := r.q.PreviewOfPack(ctx, pgdb.PreviewOfPackParams{
		ClubID: r.clubID, RulePackID: p.RulePackID, Digest: p.Digest, RulesDigest: p.RulesDigest, CoreVersion: p.CoreVersion,
	})
	if errors.Is(err, pgx.ErrNoRows) {
		return p, false, nil
	}
	if err != nil {
		return p, false, err
	}
	p, err = r.Preview(ctx, id)
	return p, err == nil, err
}

// Preview reads a preview with how far it is. NotFound when there is none, or another took its place.
func (r *ReadTx) Preview(ctx context.Context, id string) (club.RulePackPreview, error) {
	row, err := r.q.Preview(ctx, r.clubID, id)
	if err != nil {
		return club.RulePackPreview{}, found(err, "preview", id)
	}
	return club.RulePackPreview{
		ID: row.PreviewID, RulePackID: row.RulePackID, PersonID: row.PersonID, Digest: row.Digest, RulesDigest: row.RulesDigest,
		CoreVersion: row.CoreVersion, Approvals: row.Approvals, DoneCount: row.DoneCount, ChangedCount: row.ChangedCount, FailedCount: row.FailedCount,
		Cancelled: row.CancelTime != nil, CreateTime: row.CreateTime,
	}, nil
}

// CancelPreview stops a preview; again is no error.
func (t *Tx) CancelPreview(ctx context.Context, id string) error {
	return t.q.CancelPreview(ctx, t.now, t.clubID, id)
}

// Previewed tells whether an approval had its turn in a preview.
func (r *ReadTx) Previewed(ctx context.Context, previewID, approvalID string) (bool, error) {
	return r.q.HasPreviewResult(ctx, r.clubID, previewID, approvalID)
}

// KeepPreviewResult keeps what would become of an approval, once, unless the preview is cancelled or gone. Uses all but the names of p.
func (t *Tx) KeepPreviewResult(ctx context.Context, p club.PreviewResult) error {
	goesOn, err := t.q.LockPreview(ctx, t.clubID, p.PreviewID)
	if errors.Is(err, pgx.ErrNoRows) || err == nil && !goesOn {
		return nil
	}
	if err != nil {
		return err
	}
	changes, err := club.Document(p.Changes)
	if err != nil {
		return err
	}
	return t.q.InsertPreviewResult(ctx, pgdb.InsertPreviewResultParams{
		ClubID: t.clubID, PreviewID: p.PreviewID, ApprovalID: p.ApprovalID, Outcome: string(p.Outcome), State: string(p.State), Lapses: p.Lapses,
		Changes: changes, Failure: p.Failure,
	})
}

// PreviewResults lists what changes or could not be computed, in the order of the approvals.
func (r *ReadTx) PreviewResults(ctx context.Context, previewID string) ([]club.PreviewResult, error) {
	rows, err := r.q.PreviewResults(ctx, r.clubID, previewID)
	var out []club.PreviewResult
	for _, row := range rows {
		p := club.PreviewResult{PreviewID: previewID, ApprovalID: row.ApprovalID, ModelDisplayName: row.ModelDisplayName, OwnerDisplayName: row.OwnerDisplayName,
			Outcome: club.Outcome(row.Outcome), State: club.State(row.State), Lapses: row.Lapses, Failure: row.Failure}
		err = errors.Join(err, json.Unmarshal(row.Changes, &p.Changes))
		out = append(out, p)
	}
	return out, err
}

// AssessedApproval reads an approval with the document that it was computed from and the answer. NotFound when nothing was computed for it.
func (r *ReadTx) AssessedApproval(ctx context.Context, id string) (club.AssessedApproval, error) {
	row, err := r.q.AssessedApproval(ctx, r.clubID, id)
	return assessedApprovalOf(pgdb.AssessedApprovalsRow(row)), found(err, "computed approval", id)
}
