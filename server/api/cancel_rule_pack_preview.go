package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/postgres"
)

// CancelRulePackPreview stops a preview.
func (s *rulePacksService) CancelRulePackPreview(ctx context.Context, req *pb.CancelRulePackPreviewRequest) (*pb.RulePackPreview, error) {
	c, id, err := locate(ctx, club.Previews, "name", req.GetName())
	if err != nil {
		return nil, err
	}
	if err := s.store.InTx(ctx, c.club, func(tx *postgres.Tx) error { return s.cancelPreview(ctx, tx, id) }); err != nil {
		return nil, err
	}
	return s.shownPreview(ctx, c.club, id)
}

// cancelPreview stops a preview that goes on; one that is done stays done.
func (b *backend) cancelPreview(ctx context.Context, tx *postgres.Tx, id string) error {
	p, err := tx.Preview(ctx, id)
	if err != nil || p.Done() {
		return err
	}
	return tx.CancelPreview(ctx, id)
}
