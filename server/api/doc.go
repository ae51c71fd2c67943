// Package api serves pitgate's gRPC services: one file per RPC, a chain of interceptors around them, and one table, policy.yaml, that says
// who may call what. Handlers load records, ask the club's rules, and write every change with its ledger entry in one transaction.
package api
