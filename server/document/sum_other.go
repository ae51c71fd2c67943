//go:build !js

package document

import "crypto/sha256"

// sum256 is SHA-256.
func sum256(text []byte) [sha256.Size]byte { return sha256.Sum256(text) }
