// Package site reads a description of a flying site as a careful keeper would: what is worth a second look although it may be kept. What may not
// be kept is the document package's to say.
//
// It needs no clock and no network: the same description always gives the same remarks.
package site
