package api

import (
	"context"
	"encoding/json"
	"fmt"

	"google.golang.org/protobuf/encoding/protojson"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/postgres"
	"pitgate/server/rulepack"
)

// ComposeLimits makes the limits that the packs in force, and one more when asked for, make for one document, and says which rule gave each figure.
func (s *rulePacksService) ComposeLimits(ctx context.Context, req *pb.ComposeLimitsRequest) (*pb.ComposeLimitsResponse, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	in, err := decodeInput(req.GetInput())
	if err != nil {
		return nil, err
	}
	rules, err := s.rulesFor(ctx, c, req.GetWithRulePack())
	if err != nil {
		return nil, err
	}
	made, err := rulepack.Compose(rules, in)
	if err != nil {
		return nil, prefixed("limits", err)
	}
	return showComposition(made)
}

// decodeInput decodes a document from the wire.
func decodeInput(in *pb.AssessmentInput) (assess.Input, error) {
	text, err := protojson.Marshal(orEmpty(in, &pb.AssessmentInput{}))
	if err != nil {
		return assess.Input{}, fmt.Errorf("assessment input: %w", err)
	}
	return document.Decode(text)
}

// rulesFor are the packs in force with the one named put in its place; the empty name adds none.
func (s *rulePacksService) rulesFor(ctx context.Context, c caller, name string) (rulesInForce, error) {
	if name == "" {
		return s.clubRules(ctx, c.club)
	}
	_, id, err := locate(ctx, club.RulePacks, "withRulePack", name)
	if err != nil {
		return nil, err
	}
	var rules rulesInForce
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		kept, err := tx.RulePack(ctx, id)
		if err != nil {
			return err
		}
		pack, err := keptPack(kept)
		if err != nil {
			return err
		}
		before, err := readRules(ctx, tx)
		rules = before.with(pack)
		return err
	})
	return rules, err
}

// showComposition writes limits and the strictest-of view.
func showComposition(made rulepack.Composition) (*pb.ComposeLimitsResponse, error) {
	text, err := json.Marshal(made.Limits)
	if err != nil {
		return nil, fmt.Errorf("limits: %w", err)
	}
	out := &pb.ComposeLimitsResponse{Limits: &pb.Limits{}}
	if err := readDocument(text, out.Limits); err != nil {
		return nil, err
	}
	for _, f := range made.Figures {
		out.Figures = append(out.Figures, showFigure(f))
	}
	return out, nil
}

func showFigure(f rulepack.Figure) *pb.StrictestFigure {
	out := &pb.StrictestFigure{Limit: f.Limit, Unit: f.Unit, Sense: pb.RuleSense(pb.RuleSense_value[string(f.Sense)]), Value: f.Value,
		Deciding: f.Deciding, CoreValue: f.Core}
	for _, a := range f.Asked {
		value := a.Value
		out.Asked = append(out.Asked, &pb.AskedFigure{Rule: a.Rule, Authority: a.Authority, Citation: a.Citation, Date: a.Date, Value: &value,
			Applies: a.Applies, Why: a.Why, Verified: a.Verified, Expired: a.Expired, Deciding: a.Deciding})
	}
	return out
}
