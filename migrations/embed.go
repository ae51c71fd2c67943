// Package migrations holds the database's schema as numbered steps, carried inside the program.
package migrations

import "embed"

// FS holds the steps, NNNNN_name.sql, for goose.
//
//go:embed *.sql
var FS embed.FS
