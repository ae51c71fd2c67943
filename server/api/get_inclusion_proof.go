package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/ledger"
	"pitgate/server/postgres"
)

// GetInclusionProof proves that an entry is in the tree of a given size.
func (s *ledgerService) GetInclusionProof(ctx context.Context, req *pb.GetInclusionProofRequest) (*pb.LedgerProof, error) {
	leaves, err := s.leaves(ctx, req.GetParent(), "treeSize", req.GetTreeSize())
	if err != nil {
		return nil, err
	}
	if req.GetIndex() >= req.GetTreeSize() {
		return nil, club.RefuseField("index", "OUT_OF_RANGE", "must be less than the tree's size")
	}
	hashes, err := ledger.Inclusion(leaves, uint64(req.GetIndex()))
	return &pb.LedgerProof{Hashes: hashes}, err
}

// leaves reads the hashes of the tree of a given size; the size must not be beyond the ledger.
func (s *ledgerService) leaves(ctx context.Context, parent, field string, size int64) ([][]byte, error) {
	c, err := enter(ctx, parent)
	if err != nil {
		return nil, err
	}
	var leaves [][]byte
	err = s.store.Read(ctx, c.club, func(tx *postgres.ReadTx) error {
		leaves, err = tx.LeafHashes(ctx, size)
		return err
	})
	if err == nil && int64(len(leaves)) != size {
		err = club.RefuseField(field, "OUT_OF_RANGE", "the ledger has no more than %d entries", len(leaves))
	}
	return leaves, err
}
