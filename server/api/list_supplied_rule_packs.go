package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/rulepack"
)

// ListSuppliedRulePacks lists the packs that come with the program, to open a draft from.
func (s *rulePacksService) ListSuppliedRulePacks(ctx context.Context, req *pb.ListSuppliedRulePacksRequest) (*pb.ListSuppliedRulePacksResponse, error) {
	if _, err := enter(ctx, req.GetParent()); err != nil {
		return nil, err
	}
	packs, err := rulepack.Supplied()
	if err != nil {
		return nil, err
	}
	out := &pb.ListSuppliedRulePacksResponse{}
	for _, pack := range packs {
		form, err := rulepack.Canonical(pack)
		if err != nil {
			return nil, err
		}
		content := &pb.RulePackContent{}
		if err := readDocument(form, content); err != nil {
			return nil, err
		}
		out.Packs = append(out.Packs, content)
	}
	return out, nil
}
