package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// PreviewRulePack tells which open approvals would change a verdict if the pack were published now or, of a published one, retired. It keeps nothing.
func (s *rulePacksService) PreviewRulePack(ctx context.Context, req *pb.PreviewRulePackRequest) (*pb.PreviewRulePackResponse, error) {
	c, id, err := locate(ctx, club.RulePacks, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	out := &pb.PreviewRulePackResponse{}
	return out, s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		before, after, err := s.bothRules(ctx, tx, id)
		if err != nil {
			return err
		}
		ids, err := tx.ApprovalsToReassess(ctx)
		if err == nil && len(ids) > mostAtOnce {
			err = club.Refuse(club.FailedPrecondition, "TOO_MANY_APPROVALS", "%d approvals are too many to compute in one call: begin a preview and follow it", len(ids))
		}
		if err != nil {
			return err
		}
		changed, tried, err := s.changedBy(ctx, tx, before, after)
		out.TriedApprovalCount = tried
		for _, r := range changed {
			out.Approvals = append(out.Approvals, showRuleChange(c.club, r))
		}
		return err
	})
}

// rulesAfter are the rules in force once a draft is published, or a published pack retired.
func rulesAfter(p club.RulePack, before rulesInForce, today string) (rulesInForce, error) {
	pack, err := keptPack(p)
	switch {
	case err != nil:
		return nil, err
	case p.State == club.PackPublished:
		return before.without(pack, today), nil
	case p.State == club.PackRetired:
		return nil, club.Refuse(club.FailedPrecondition, "RETIRED_ALREADY", "the pack is out of force already: open a draft of it to see what it would change")
	default:
		return before.with(pack), nil
	}
}
