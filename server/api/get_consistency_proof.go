package api

import (
	"context"

	pb "pitgate/proto/pitgate/v1"
	"pitgate/server/club"
	"pitgate/server/ledger"
)

// GetConsistencyProof proves that a later tree only added to an earlier one.
func (s *ledgerService) GetConsistencyProof(ctx context.Context, req *pb.GetConsistencyProofRequest) (*pb.LedgerProof, error) {
	if req.GetFirstTreeSize() > req.GetSecondTreeSize() {
		return nil, club.RefuseField("firstTreeSize", "OUT_OF_RANGE", "must not be greater than the second size")
	}
	leaves, err := s.leaves(ctx, req.GetParent(), "secondTreeSize", req.GetSecondTreeSize())
	if err != nil || req.GetFirstTreeSize() == 0 {
		return &pb.LedgerProof{}, err
	}
	hashes, err := ledger.Consistency(leaves, uint64(req.GetFirstTreeSize()))
	return &pb.LedgerProof{Hashes: hashes}, err
}
