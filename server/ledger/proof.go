package ledger

import (
	"errors"
	"fmt"

	"github.com/transparency-dev/merkle/compact"
	"github.com/transparency-dev/merkle/proof"
)

// ErrProof means that a proof does not lead to the root it should lead to.
var ErrProof = errors.New("the proof does not verify")

// Inclusion returns the audit path that proves leaf number index in the tree over all of leaves. Pass only the
// first n leaves to prove against the tree as it was at size n.
// Source: RFC 6962, section 2.1.1.
func Inclusion(leaves [][]byte, index uint64) ([][]byte, error) {
	nodes, err := proof.Inclusion(index, uint64(len(leaves)))
	if err != nil {
		return nil, fmt.Errorf("index: %w", err)
	}
	return pathOf(nodes, leaves)
}

// Consistency returns the proof that the tree over all of leaves only added to the tree over its first leaves.
// Source: RFC 6962, section 2.1.2.
func Consistency(leaves [][]byte, first uint64) ([][]byte, error) {
	nodes, err := proof.Consistency(first, uint64(len(leaves)))
	if err != nil {
		return nil, fmt.Errorf("first tree size: %w", err)
	}
	return pathOf(nodes, leaves)
}

// pathOf computes the hashes of the nodes that make up a proof.
func pathOf(nodes proof.Nodes, leaves [][]byte) ([][]byte, error) {
	hashes := make([][]byte, len(nodes.IDs))
	for i, id := range nodes.IDs {
		hashes[i] = nodeHash(id, leaves)
	}
	return nodes.Rehash(hashes, hasher.HashChildren)
}

// nodeHash returns the hash of a perfect subtree, which is the root of the tree over the leaves it covers.
func nodeHash(id compact.NodeID, leaves [][]byte) []byte {
	begin, end := id.Coverage()
	return HeadOf(leaves[begin:end]).Root()
}

// VerifyInclusion returns nil when path proves that leaf is number index in the tree of the given size and root,
// and an error wrapping ErrProof otherwise.
func VerifyInclusion(leaf []byte, index, size uint64, path [][]byte, root []byte) error {
	if err := proof.VerifyInclusion(hasher, index, size, leaf, path, root); err != nil {
		return fmt.Errorf("%w: %w", ErrProof, err)
	}
	return nil
}

// VerifyConsistency returns nil when path proves that the second tree only added to the first one, and an error
// wrapping ErrProof otherwise. Every tree adds to the empty one; that needs no proof.
func VerifyConsistency(firstSize, secondSize uint64, path [][]byte, firstRoot, secondRoot []byte) error {
	if err := proof.VerifyConsistency(hasher, firstSize, secondSize, path, firstRoot, secondRoot); err != nil {
		return fmt.Errorf("%w: %w", ErrProof, err)
	}
	return nil
}
