// Package jobs computes approvals again in the background when rules or the core change. A job is added in the transaction of the change, survives the
// death of any process, and does its work at most once in effect: what became of an approval in a run is one row. Clubs take turns.
package jobs
