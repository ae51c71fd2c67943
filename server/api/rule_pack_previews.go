package api

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"sync"
	"time"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/jobs"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
)

// BeginRulePackPreview begins to compute which open approvals change a verdict, or finds the preview that did so already. A few are computed here, many
// by jobs.
func (s *rulePacksService) BeginRulePackPreview(ctx context.Context, req *pb.BeginRulePackPreviewRequest) (*pb.RulePackPreview, error) {
	c, id, err := locate(ctx, club.RulePacks, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	var preview club.RulePackPreview
	var few []string
	err = s.store.InTx(ctx, c.club, func(tx *postgres.Tx) error {
		preview, few, err = s.openPreview(ctx, tx, club.RulePackPreview{RulePackID: id, PersonID: c.person.ID, CoreVersion: assess.Version})
		return err
	})
	if err != nil {
		return nil, err
	}
	if err := s.previewNow(ctx, c.club, preview.ID, few); err != nil {
		return nil, err
	}
	return s.shownPreview(ctx, c.club, preview.ID)
}

// openPreview finds or opens a preview. The approvals that it returns are to be computed at once.
func (b *backend) openPreview(ctx context.Context, tx *postgres.Tx, p club.RulePackPreview) (club.RulePackPreview, []string, error) {
	if err := tx.LockRules(ctx); err != nil {
		return p, nil, err
	}
	var err error
	if p.Digest, p.RulesDigest, err = b.previewBasis(ctx, &tx.ReadTx, p.RulePackID); err != nil {
		return p, nil, err
	}
	if there, found, err := tx.PreviewOf(ctx, p); err != nil || found {
		return there, nil, err
	}
	ids, err := tx.ApprovalsToReassess(ctx)
	if err != nil {
		return p, nil, err
	}
	p.Approvals = int32(len(ids))
	if p, err = tx.BeginPreview(ctx, p); err != nil || len(ids) <= mostAtOnce {
		return p, ids, err
	}
	return p, nil, b.queue.AddPreview(ctx, tx, p.ID, ids)
}

// previewBasis is what a preview of a pack is computed with: the digests of the pack's content and of the rules in force. It refuses a retired pack.
func (b *backend) previewBasis(ctx context.Context, tx *postgres.ReadTx, packID string) (digest, rulesDigest string, err error) {
	kept, err := tx.RulePack(ctx, packID)
	if err != nil {
		return "", "", err
	}
	before, err := readRules(ctx, tx)
	if err != nil {
		return "", "", err
	}
	if _, err := rulesAfter(kept, before, b.today()); err != nil {
		return "", "", err
	}
	rulesDigest, err = before.digest()
	return kept.Digest, rulesDigest, err
}

// today is the day in Greenwich.
func (b *backend) today() string { return b.now().UTC().Format(time.DateOnly) }

// digest names the rules in force.
func (r rulesInForce) digest() (string, error) {
	text, err := json.Marshal(r)
	if err != nil {
		return "", fmt.Errorf("rules in force: %w", err)
	}
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:]), nil
}

// previewNow computes a few approvals of a preview.
func (b *backend) previewNow(ctx context.Context, clubID, previewID string, ids []string) error {
	r := &reassessor{b}
	errs := make([]error, len(ids))
	var group sync.WaitGroup
	for i, id := range ids {
		group.Go(func() {
			job := jobs.PreviewApproval{Club: clubID, Preview: previewID, Approval: id}
			if errs[i] = r.Preview(ctx, job); club.CodeOf(errs[i]) == club.Invalid {
				errs[i] = r.KeepPreviewFailure(ctx, job, errs[i].Error())
			}
		})
	}
	group.Wait()
	return errors.Join(errs...)
}

// foretold is one approval on its way through a preview.
type foretold struct {
	approval      club.AssessedApproval
	before, after rulesInForce
	// over tells that there is nothing to do: it had its turn, or the preview is cancelled, gone or out of date.
	over bool
}

// Preview implements jobs.Assessor.
func (r *reassessor) Preview(ctx context.Context, job jobs.PreviewApproval) error {
	f, err := r.readForetold(ctx, job)
	if err != nil || f.over {
		return err
	}
	kept := club.PreviewResult{PreviewID: job.Preview, ApprovalID: job.Approval, State: f.approval.State, Outcome: club.OutcomeSkipped}
	if f.approval.State.Open() {
		kept.Outcome = club.OutcomeSame
		changed, err := r.changesIn(ctx, f.approval, f.before, f.after)
		if err != nil {
			return err
		}
		if len(changed.changes) > 0 {
			kept.Outcome, kept.Changes = club.OutcomeChanged, listChanges(changed.changes)
			kept.Lapses = ruleChange{approval: f.approval}.lapses()
		}
	}
	return r.store.InTx(ctx, job.Club, func(tx *postgres.Tx) error { return tx.KeepPreviewResult(ctx, kept) })
}

// readForetold reads what a job of a preview is about.
func (r *reassessor) readForetold(ctx context.Context, job jobs.PreviewApproval) (f foretold, err error) {
	err = r.store.Read(ctx, job.Club, func(tx *postgres.ReadTx) error {
		preview, err := tx.Preview(ctx, job.Preview)
		if f.over = club.CodeOf(err) == club.NotFound || preview.Cancelled; f.over {
			return nil
		}
		if err != nil {
			return err
		}
		if f.over, err = tx.Previewed(ctx, job.Preview, job.Approval); err != nil || f.over {
			return err
		}
		if f.over, err = r.outdated(ctx, tx, preview); err != nil || f.over {
			return err
		}
		if f.approval, err = tx.AssessedApproval(ctx, job.Approval); err != nil {
			return err
		}
		f.before, f.after, err = r.bothRules(ctx, tx, preview.RulePackID)
		return err
	})
	return f, err
}

// bothRules are the rules in force and those after the change of a pack.
func (b *backend) bothRules(ctx context.Context, tx *postgres.ReadTx, packID string) (before, after rulesInForce, err error) {
	kept, err := tx.RulePack(ctx, packID)
	if err != nil {
		return nil, nil, err
	}
	if before, err = readRules(ctx, tx); err != nil {
		return nil, nil, err
	}
	after, err = rulesAfter(kept, before, b.today())
	return before, after, err
}

// outdated tells whether a preview rests on another pack, other rules or another core than there are now.
func (b *backend) outdated(ctx context.Context, tx *postgres.ReadTx, p club.RulePackPreview) (bool, error) {
	digest, rulesDigest, err := b.previewBasis(ctx, tx, p.RulePackID)
	if club.CodeOf(err) == club.FailedPrecondition {
		return true, nil
	}
	return digest != p.Digest || rulesDigest != p.RulesDigest || p.CoreVersion != assess.Version, err
}

// KeepPreviewFailure implements jobs.Assessor.
func (r *reassessor) KeepPreviewFailure(ctx context.Context, job jobs.PreviewApproval, reason string) error {
	return r.store.InTx(ctx, job.Club, func(tx *postgres.Tx) error {
		a, err := tx.Approval(ctx, job.Approval)
		if err != nil {
			return err
		}
		return tx.KeepPreviewResult(ctx, club.PreviewResult{PreviewID: job.Preview, ApprovalID: job.Approval, State: a.State, Outcome: club.OutcomeFailed,
			Failure: failureText(reason)})
	})
}
