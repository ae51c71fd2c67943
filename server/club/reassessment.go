package club

import (
	"encoding/json"
	"time"
)

// Cause is why approvals are computed again.
type Cause string

// The causes: the rules in force changed, the core changed, somebody asked.
const (
	CauseRules Cause = "rules"
	CauseCore  Cause = "core"
	CauseAsked Cause = "asked"
)

// Outcome is what computing an approval again came to.
type Outcome string

// The outcomes. Skipped is one that could no longer lead to a flight when its turn came.
const (
	OutcomeSame    Outcome = "same"
	OutcomeChanged Outcome = "changed"
	OutcomeSkipped Outcome = "skipped"
	OutcomeFailed  Outcome = "failed"
)

// ReassessmentRun is one change because of which a club's approvals are computed again.
type ReassessmentRun struct {
	ID    string
	Cause Cause
	// Reason is the cause in words.
	Reason, CoreVersion string
	// ByJobs is false when everything was computed in the transaction of the change.
	ByJobs bool
	// Listed tells that the approvals are known, and Approvals how many they are.
	Listed                                        bool
	Approvals, DoneCount, ChangedCount, FailCount int32
	CreateTime                                    time.Time
}

// Done tells whether every approval had its turn.
func (r ReassessmentRun) Done() bool { return r.Listed && r.DoneCount >= r.Approvals }

// ChangedVerdict is one finding whose verdict changed; an empty verdict means that there is no such finding.
type ChangedVerdict struct {
	FindingID string `json:"findingId"`
	Title     string `json:"title"`
	From      string `json:"from,omitempty"`
	To        string `json:"to,omitempty"`
	// Note is the deciding numbers in a sentence.
	Note string `json:"note,omitempty"`
}

// Reassessment is what became of one approval in one run.
type Reassessment struct {
	ID, RunID, ApprovalID string
	Outcome               Outcome
	CoreVersion           string
	// State is where the approval stood, StateNow where it stands.
	State, StateNow State
	Lapsed          bool
	// AssessmentID names the new answer; empty when verdicts did not change.
	AssessmentID string
	Changes      []ChangedVerdict
	// Failure says why it could not be computed.
	Failure                            string
	Cause                              Cause
	Reason                             string
	ModelDisplayName, OwnerDisplayName string
	// Read tells whether the reader of the list has marked it as read.
	Read       bool
	CreateTime time.Time
}

// ReassessedApproval is an approval with the newest answer that was kept for it; its report is read apart.
type ReassessedApproval struct {
	AssessedApproval
	AssessmentID string
}

// Document is the kept document of a change list.
func Document(changes []ChangedVerdict) (json.RawMessage, error) {
	if changes == nil {
		changes = []ChangedVerdict{}
	}
	return json.Marshal(changes)
}
