//go:build !page

// Package pwa holds the built page, so that one binary serves everything.
package pwa

import (
	"embed"
	"io/fs"
)

//go:embed empty
var empty embed.FS

// Built tells that the real page is inside this binary.
const Built = false

// FS returns one page that says how to build the real one, as index.html at its root.
func FS() fs.FS {
	root, err := fs.Sub(empty, "empty")
	if err != nil {
		// Sub fails only for an invalid name, and "empty" is a valid one.
		panic(err)
	}
	return root
}
