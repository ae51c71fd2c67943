package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
)

// GetRulePackPreview tells how far a preview is and, once it runs no more, what it found.
func (s *rulePacksService) GetRulePackPreview(ctx context.Context, req *pb.GetRulePackPreviewRequest) (*pb.RulePackPreview, error) {
	c, id, err := locate(ctx, club.Previews, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	return s.shownPreview(ctx, c.club, id)
}

// shownPreview reads a preview and writes it for the wire.
func (b *backend) shownPreview(ctx context.Context, clubID, id string) (out *pb.RulePackPreview, err error) {
	err = b.store.Read(ctx, clubID, func(tx *postgres.ReadTx) error {
		p, err := tx.Preview(ctx, id)
		if err != nil {
			return err
		}
		outdated, err := b.outdated(ctx, tx, p)
		if err != nil {
			return err
		}
		out = &pb.RulePackPreview{Name: club.Previews.Name(clubID, p.ID), RulePack: club.RulePacks.Name(clubID, p.RulePackID), State: previewState(p, outdated),
			ApprovalCount: p.Approvals, DoneCount: p.DoneCount, ChangedCount: p.ChangedCount, FailedCount: p.FailedCount, CreateTime: showTime(p.CreateTime)}
		if out.GetState() == pb.RulePackPreviewState_RULE_PACK_PREVIEW_STATE_RUNNING {
			return nil
		}
		results, err := tx.PreviewResults(ctx, id)
		for _, r := range results {
			out.Approvals = append(out.Approvals, showPreviewResult(clubID, r))
		}
		return err
	})
	return out, err
}

// previewState is where a preview stands.
func previewState(p club.RulePackPreview, outdated bool) pb.RulePackPreviewState {
	switch {
	case outdated:
		return pb.RulePackPreviewState_RULE_PACK_PREVIEW_STATE_OUTDATED
	case p.Cancelled:
		return pb.RulePackPreviewState_RULE_PACK_PREVIEW_STATE_CANCELLED
	case p.Done():
		return pb.RulePackPreviewState_RULE_PACK_PREVIEW_STATE_DONE
	default:
		return pb.RulePackPreviewState_RULE_PACK_PREVIEW_STATE_RUNNING
	}
}

// showPreviewResult writes what would become of one approval.
func showPreviewResult(clubID string, r club.PreviewResult) *pb.ApprovalVerdictChanges {
	out := &pb.ApprovalVerdictChanges{Approval: club.Approvals.Name(clubID, r.ApprovalID), ModelDisplayName: r.ModelDisplayName,
		OwnerDisplayName: r.OwnerDisplayName, State: string(r.State), Lapses: r.Lapses, Failure: r.Failure}
	for _, c := range r.Changes {
		out.Changes = append(out.Changes, &pb.VerdictChange{FindingId: c.FindingID, Title: c.Title, Note: c.Note,
			From: verdictProto(assess.Verdict(c.From)), To: verdictProto(assess.Verdict(c.To))})
	}
	return out
}
