package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// GetRulePack reads one version of a pack.
func (s *rulePacksService) GetRulePack(ctx context.Context, req *pb.GetRulePackRequest) (*pb.RulePack, error) {
	c, id, err := locate(ctx, club.RulePacks, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	var p club.RulePack
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		p, err = tx.RulePack(ctx, id)
		return err
	})
	if err != nil {
		return nil, err
	}
	return s.showRulePack(c.club, p)
}
