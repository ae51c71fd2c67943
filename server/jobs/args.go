package jobs

import (
	"time"

	"github.com/riverqueue/river"
)

// ReassessClub lists the approvals of a club and adds a job for each.
type ReassessClub struct {
	Club string `json:"club"`
	// Run is the id of the run in the club.
	Run string `json:"run"`
}

// Kind implements river.JobArgs.
func (ReassessClub) Kind() string { return "reassess_club" }

// InsertOpts implements river.JobArgsWithInsertOpts: a run is listed before anything of it is computed.
func (ReassessClub) InsertOpts() river.InsertOpts {
	return river.InsertOpts{MaxAttempts: mostAttempts, Priority: 1, Queue: queueName, UniqueOpts: river.UniqueOpts{ByArgs: true}}
}

// ReassessApproval computes one approval again.
type ReassessApproval struct {
	Club     string `json:"club"`
	Run      string `json:"run"`
	Approval string `json:"approval"`
}

// Kind implements river.JobArgs.
func (ReassessApproval) Kind() string { return "reassess_approval" }

// InsertOpts implements river.JobArgsWithInsertOpts.
func (ReassessApproval) InsertOpts() river.InsertOpts {
	return river.InsertOpts{MaxAttempts: mostAttempts, Priority: 2, Queue: queueName, UniqueOpts: river.UniqueOpts{ByArgs: true}}
}

// PreviewApproval computes one approval by rules that are not in force, for somebody who waits for it.
type PreviewApproval struct {
	Club     string `json:"club"`
	Preview  string `json:"preview"`
	Approval string `json:"approval"`
}

// Kind implements river.JobArgs.
func (PreviewApproval) Kind() string { return "preview_approval" }

// InsertOpts implements river.JobArgsWithInsertOpts: somebody waits, so that it comes before what nobody waits for.
func (PreviewApproval) InsertOpts() river.InsertOpts {
	return river.InsertOpts{MaxAttempts: mostPreviewAttempts, Priority: 1, Queue: queueName, UniqueOpts: river.UniqueOpts{ByArgs: true}}
}

const (
	// mostPreviewAttempts is how often it is tried for somebody who waits.
	mostPreviewAttempts = 3
	// queueName is the one queue: clubs take turns within it.
	queueName = "reassess"
	// mostAttempts is how often a job is tried; the pauses between grow with the fourth power of the attempt, in seconds.
	mostAttempts = 6
)

// turns is the time at which the first turn lies; it only has to be past.
var turns = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// turn is where the job of a club's nth approval stands in the queue, which goes by this time. The nth jobs of all clubs stand together, so that a club
// with few approvals is done while one with many is still being worked on, whichever came first.
func turn(n int) time.Time { return turns.Add(time.Duration(n) * time.Second) }
