package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/postgres"
)

// CreateRulePack opens a draft of a pack. Its content must be a whole pack.
func (s *rulePacksService) CreateRulePack(ctx context.Context, req *pb.CreateRulePackRequest) (*pb.RulePack, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	draft, err := packDocument(req.GetRulePack().GetContent())
	if err != nil {
		return nil, err
	}
	return once(ctx, s.backend, req, &pb.RulePack{}, func(tx *postgres.Tx) (*pb.RulePack, error) {
		if err := checkVerifiers(ctx, &tx.ReadTx, c, draft.Content); err != nil {
			return nil, err
		}
		kept, err := tx.CreateRulePack(ctx, c.person.Actor(), draft)
		if err != nil {
			return nil, err
		}
		return s.showRulePack(c.club, kept)
	})
}
