package ledger

import (
	"fmt"
	"math/bits"

	"github.com/transparency-dev/merkle/compact"
	"github.com/transparency-dev/merkle/rfc6962"
)

// HashSize is the length of every leaf, node and root hash, in bytes.
const HashSize = 32

var (
	hasher  = rfc6962.DefaultHasher
	factory = &compact.RangeFactory{Hash: hasher.HashChildren}
)

// Leaf returns the leaf hash of one entry's canonical bytes.
//
//	leaf = SHA-256(0x00 || entry)
//
// Source: RFC 6962, section 2.1.
func Leaf(entry []byte) []byte { return hasher.HashLeaf(entry) }

// Head is all that must be kept to append to a tree: its size and the roots of its perfect subtrees, largest
// first. The zero value is the empty tree. A Head is never changed; appending returns another one.
type Head struct {
	Size   uint64
	Hashes [][]byte
}

// OpenHead returns the head with a stored state. It returns an error when the number of hashes does not belong to
// size (one hash for each one-bit of size) or a hash has the wrong length.
func OpenHead(size uint64, hashes [][]byte) (Head, error) {
	if want := bits.OnesCount64(size); len(hashes) != want {
		return Head{}, fmt.Errorf("hashes: a tree of %d entries has %d, got %d", size, want, len(hashes))
	}
	for i, hash := range hashes {
		if len(hash) != HashSize {
			return Head{}, fmt.Errorf("hashes[%d]: must have %d bytes, got %d", i, HashSize, len(hash))
		}
	}
	return Head{Size: size, Hashes: hashes}, nil
}

// Append returns the head after one more leaf hash (see Leaf), and its root. It panics when h is not a valid head;
// pass stored state through OpenHead.
func (h Head) Append(leaf []byte) (Head, []byte) {
	grown := h.openRange()
	if err := grown.Append(leaf, nil); err != nil {
		panic(fmt.Sprintf("ledger: invalid head: %v", err))
	}
	next := Head{Size: grown.End(), Hashes: grown.Hashes()}
	return next, next.Root()
}

// Root returns the root hash of the tree; the empty tree has the SHA-256 of nothing.
func (h Head) Root() []byte {
	if h.Size == 0 {
		return hasher.EmptyRoot()
	}
	root, err := h.openRange().GetRootHash(nil)
	if err != nil {
		panic(fmt.Sprintf("ledger: invalid head: %v", err))
	}
	return root
}

// openRange copies the list of hashes, since the library appends in place.
func (h Head) openRange() *compact.Range {
	r, err := factory.NewRange(0, h.Size, append([][]byte(nil), h.Hashes...))
	if err != nil {
		panic(fmt.Sprintf("ledger: invalid head: %v", err))
	}
	return r
}

// HeadOf returns the head of the tree over leaf hashes.
func HeadOf(leaves [][]byte) Head {
	var h Head
	grown := h.openRange()
	for _, leaf := range leaves {
		if err := grown.Append(leaf, nil); err != nil {
			panic(fmt.Sprintf("ledger: append to a tree of %d: %v", grown.End(), err)) // cannot happen: the range began valid
		}
	}
	return Head{Size: grown.End(), Hashes: grown.Hashes()}
}
