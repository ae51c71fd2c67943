// Package demo fills an empty database with the Larkmoor Model Flying Club: invented people, four models, two fields, approvals in several
// states, three past incidents and a lesson waiting for its votes. Everything but the club and its people goes in through the API, so that
// the same rules judge it and the ledger tells how it came about.
package demo
