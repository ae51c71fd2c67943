package document

import "pitgate/server/document/digest"

// sum256 is SHA-256.
func sum256(text []byte) [digest.Size]byte { return digest.Sum256(text) }
