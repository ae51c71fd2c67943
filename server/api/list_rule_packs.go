package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/postgres"
)

// ListRulePacks lists the club's packs, every version, newest first.
func (s *rulePacksService) ListRulePacks(ctx context.Context, req *pb.ListRulePacksRequest) (*pb.ListRulePacksResponse, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	out := &pb.ListRulePacksResponse{}
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		list, next, err := tx.RulePacks(ctx, pageOf(req))
		if err != nil {
			return err
		}
		out.NextPageToken = next
		for _, p := range list {
			shown, err := s.showRulePack(c.club, p)
			if err != nil {
				return err
			}
			out.RulePacks = append(out.RulePacks, shown)
		}
		return nil
	})
	return out, err
}
