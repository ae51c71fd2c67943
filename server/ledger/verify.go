package ledger

import (
	"bytes"
	"crypto/ed25519"
	"errors"
	"fmt"
	"io"
	"time"
)

var (
	// ErrForm means that the file is not an export of this layout.
	ErrForm = errors.New("not a ledger export")
	// ErrSignature means that a head does not carry the signature it should carry.
	ErrSignature = errors.New("signature does not verify")
	// ErrMismatch means that the entries are not those that were signed.
	ErrMismatch = errors.New("entries do not match the signed head")
)

// Result tells what a verified export holds.
type Result struct {
	ClubID      string            `json:"club_id"`
	PublicKey   ed25519.PublicKey `json:"public_key"`
	Fingerprint string            `json:"fingerprint"`
	Entries     uint64            `json:"entries"`
	RootHash    []byte            `json:"root_hash"`
	Heads       int               `json:"heads"`
	FirstSigned time.Time         `json:"first_signed"`
	LastSigned  time.Time         `json:"last_signed"`
}

// VerifyExport checks a whole export: every head's signature, every head's root against the entries, and that the
// last head covers all of them. It needs nothing but the file.
//
// A file can agree with itself and still be rewritten or shortened by whoever holds the signing key. Pass the heads
// that phones and printed certificates kept as known: each must be signed by the export's key and lie on its tree.
//
// Errors wrap ErrForm, ErrSignature or ErrMismatch and name the entries in question, counted from 0.
func VerifyExport(r io.Reader, known ...SignedHead) (Result, error) {
	export, err := ReadExport(r)
	if err != nil {
		return Result{}, err
	}
	roots, err := export.roots()
	if err != nil {
		return Result{}, err
	}
	if err := export.checkHeads(roots); err != nil {
		return Result{}, err
	}
	for i, head := range known {
		if err := export.checkHead(head, roots, 0); err != nil {
			return Result{}, fmt.Errorf("known head %d: %w", i, err)
		}
	}
	return export.result(), nil
}

// roots returns the root of the tree at every size from 0 to the number of entries.
func (e Export) roots() ([][]byte, error) {
	var head Head
	roots := make([][]byte, 1, len(e.Entries)+1)
	roots[0] = head.Root()
	for i, entry := range e.Entries {
		if len(entry) > entryLimit {
			return nil, fmt.Errorf("%w: entries[%d]: longer than %d bytes", ErrForm, i, entryLimit)
		}
		canonical, err := Canonical(entry)
		if err != nil {
			return nil, fmt.Errorf("%w: entries[%d]: %w", ErrForm, i, err)
		}
		if canonical[0] != '{' {
			return nil, fmt.Errorf("%w: entries[%d]: must be a JSON object", ErrForm, i)
		}
		var root []byte
		head, root = head.Append(Leaf(canonical))
		roots = append(roots, root)
	}
	return roots, nil
}

// checkHeads checks each head, their order, and that the last one covers every entry.
func (e Export) checkHeads(roots [][]byte) error {
	var before SignedHead
	for i, head := range e.Heads {
		if err := e.checkHead(head, roots, before.TreeSize); err != nil {
			return fmt.Errorf("heads[%d]: %w", i, err)
		}
		if head.TreeSize < before.TreeSize || head.Time.Before(before.Time) {
			return fmt.Errorf("heads[%d]: %w: it is older than the head before it", i, ErrMismatch)
		}
		before = head
	}
	if covered := before.TreeSize; covered != uint64(len(e.Entries)) {
		return fmt.Errorf("%w: entries %d to %d stand under no signed head", ErrMismatch, covered, len(e.Entries)-1)
	}
	return nil
}

// checkHead checks one head's signature and root; the entries before verified are known to be right.
func (e Export) checkHead(head SignedHead, roots [][]byte, verified uint64) error {
	if !head.Verify(e.PublicKey, e.ClubID) {
		return fmt.Errorf("%w: key %s, club %s", ErrSignature, Fingerprint(e.PublicKey), e.ClubID)
	}
	if head.TreeSize >= uint64(len(roots)) {
		return fmt.Errorf("%w: signed over %d entries but %d are here: the end was cut off", ErrMismatch, head.TreeSize, len(roots)-1)
	}
	if !bytes.Equal(head.RootHash, roots[head.TreeSize]) {
		return fmt.Errorf("%w: an entry from %d to %d was changed, moved, added or removed", ErrMismatch, verified, max(head.TreeSize, 1)-1)
	}
	return nil
}

func (e Export) result() Result {
	first, last := e.Heads[0], e.Heads[len(e.Heads)-1]
	return Result{
		ClubID: e.ClubID, PublicKey: e.PublicKey, Fingerprint: Fingerprint(e.PublicKey),
		Entries: last.TreeSize, RootHash: last.RootHash,
		Heads: len(e.Heads), FirstSigned: first.Time, LastSigned: last.Time,
	}
}
