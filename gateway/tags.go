package gateway

import (
	"crypto/sha256"
	"encoding/hex"
	"sync"
)

// contentTags remembers the entity tag of each file of the page, so that a browser asks for content only when it changed.
type contentTags struct{ known sync.Map }

// of is the quoted tag of a file: a digest over its content, computed once.
func (c *contentTags) of(name string, content []byte) string {
	if tag, ok := c.known.Load(name); ok {
		return tag.(string)
	}
	sum := sha256.Sum256(content)
	tag := `"` + hex.EncodeToString(sum[:12]) + `"`
	c.known.Store(name, tag)
	return tag
}
