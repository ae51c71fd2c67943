package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/postgres"
)

// GetTreeHead reads the ledger's latest signed head.
func (s *ledgerService) GetTreeHead(ctx context.Context, req *pb.GetTreeHeadRequest) (*pb.TreeHead, error) {
	c, err := enter(ctx, req.GetParent())
	if err != nil {
		return nil, err
	}
	var head postgres.LedgerHead
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		head, err = tx.LedgerHead(ctx)
		return err
	})
	return &pb.TreeHead{TreeSize: head.Size, RootHash: head.Root, Time: showTime(head.Time), Signature: head.Signature,
		PublicKey: s.store.PublicKey()}, err
}
