// Package postgres keeps clubs' records in PostgreSQL. Every statement stands in query/*.sql; package pgdb is generated
// from them. All access goes through a transaction of one club: Tx to change, ReadTx to look. Both work as the role
// pitgate_app, so the database itself keeps clubs apart.
//
// Every change that decides something is written to the club's ledger in the same transaction, by the method that makes
// the change. Errors the caller can act on are *club.Error; any other error says only that the database could not
// answer, with the cause to be unwrapped for the log.
package postgres

//go:generate ../../.bin/sqlc generate
