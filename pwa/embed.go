//go:build page

// Package pwa holds the built page, so that one binary serves everything.
package pwa

import (
	"embed"
	"io/fs"
)

//go:embed all:dist
var dist embed.FS

// Built tells that the real page is inside this binary.
const Built = true

// FS returns the files of the built page, with index.html at its root.
func FS() fs.FS {
	root, err := fs.Sub(dist, "dist")
	if err != nil {
		// Sub fails only for an invalid name, and "dist" is a valid one.
		panic(err)
	}
	return root
}
