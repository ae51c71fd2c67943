// Package demo holds the demonstration documents: models, fields, plans, days and whole assessments of an invented club.
package demo

import "embed"

// Files are all demonstration documents, as proto3 JSON.
//
// dabchick, sandmartin, redshank and nightjar are models; long_acre and quarry_top fields; plan_*, day_* and limits_* the other parts;
// <model>_<field>[_<variant>] whole documents; redshank_weigh_in is the model as it came to the bench, on three cradles with a list of its items.
//
//go:embed *.json
var Files embed.FS
