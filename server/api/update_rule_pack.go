package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// UpdateRulePack replaces the content of a draft or of a proposal. Words given for another content no longer count.
func (s *rulePacksService) UpdateRulePack(ctx context.Context, req *pb.UpdateRulePackRequest) (*pb.RulePack, error) {
	c, id, err := locate(ctx, club.RulePacks, "rulePack.name", req.GetRulePack().GetName())
	if err != nil {
		return nil, err
	}
	return once(ctx, s.backend, req, &pb.RulePack{}, func(tx *postgres.Tx) (*pb.RulePack, error) {
		changed, err := s.mergedRulePack(ctx, tx, c, id, req)
		if err != nil {
			return nil, err
		}
		kept, err := tx.UpdateRulePack(ctx, c.person.Actor(), changed, req.GetRulePack().GetEtag())
		if err != nil {
			return nil, err
		}
		return s.showRulePack(c.club, kept)
	})
}

// mergedRulePack puts the request into the pack as it stands and checks the whole.
func (s *rulePacksService) mergedRulePack(ctx context.Context, tx *postgres.Tx, c caller, id string, req *pb.UpdateRulePackRequest) (club.RulePack, error) {
	before, err := tx.RulePack(ctx, id)
	if err != nil {
		return club.RulePack{}, err
	}
	if req.GetRulePack().GetEtag() == "" {
		return club.RulePack{}, club.RefuseField("rulePack.etag", "ETAG_MISSING", "send the etag of the pack as you read it")
	}
	whole, err := s.showRulePack(c.club, before)
	if err != nil {
		return club.RulePack{}, err
	}
	if err := merge(whole, req.GetRulePack(), req.GetUpdateMask(), "content"); err != nil {
		return club.RulePack{}, err
	}
	if err := validateMessage(s.validator, &pb.UpdateRulePackRequest{RulePack: whole}); err != nil {
		return club.RulePack{}, err
	}
	changed, err := packDocument(whole.GetContent())
	if err != nil {
		return club.RulePack{}, err
	}
	former, err := keptPack(before)
	if err != nil {
		return club.RulePack{}, err
	}
	changed.ID = id
	return changed, checkVerifiers(ctx, &tx.ReadTx, c, changed.Content, former)
}
