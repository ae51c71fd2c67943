// Package ledger is the arithmetic of a club's append-only record: canonical entries, the Merkle tree over them,
// signed tree heads, proofs, and the check of a whole export. It knows no database and no network, so that anyone
// who holds an export can check it.
//
// The tree is the one of RFC 6962 with SHA-256; entries are hashed in the canonical form of RFC 8785; heads are
// signed with Ed25519 (RFC 8032).
package ledger
