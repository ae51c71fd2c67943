package ledger

import (
	"crypto/ed25519"
	"encoding/hex"
	"fmt"
	"time"
)

// SignedHead is a tree head as it is handed out, printed and kept by phones. In JSON the hashes are base64.
type SignedHead struct {
	TreeSize  uint64    `json:"tree_size"`
	RootHash  []byte    `json:"root_hash"`
	Time      time.Time `json:"time"`
	Signature []byte    `json:"signature"`
}

// SignHead returns the Ed25519 signature over a club's tree head. The time counts in whole microseconds, the
// precision that the database keeps.
func SignHead(key ed25519.PrivateKey, clubID string, size uint64, root []byte, at time.Time) []byte {
	return ed25519.Sign(key, headMessage(clubID, size, root, at))
}

// VerifyHead reports whether signature is key's over this head of this club.
func VerifyHead(key ed25519.PublicKey, clubID string, size uint64, root []byte, at time.Time, signature []byte) bool {
	return len(key) == ed25519.PublicKeySize && ed25519.Verify(key, headMessage(clubID, size, root, at), signature)
}

// Verify reports whether h carries key's signature for this club.
func (h SignedHead) Verify(key ed25519.PublicKey, clubID string) bool {
	return VerifyHead(key, clubID, h.TreeSize, h.RootHash, h.Time, h.Signature)
}

// headMessage is what is signed. The first line keeps a signature from meaning anything else; the last three lines
// cannot hold a line break, so the text has only one reading.
func headMessage(clubID string, size uint64, root []byte, at time.Time) []byte {
	stamp := at.UTC().Truncate(time.Microsecond).Format("2006-01-02T15:04:05.000000Z")
	return fmt.Appendf(nil, "pitgate ledger head v1\n%s\n%d\n%s\n%s\n", clubID, size, hex.EncodeToString(root), stamp)
}
