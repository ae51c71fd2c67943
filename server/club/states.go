package club

import (
	"slices"
	"strings"

	pitgatev1 "pitgate/proto/pitgate/v1"
)

// State is where an approval stands.
type State string

// The states.
const (
	Draft      State = "draft"
	Submitted  State = "submitted"
	DeskReview State = "desk_review"
	Returned   State = "returned"
	Bench      State = "bench"
	Ready      State = "ready"
	Signed     State = "signed"
	Flown      State = "flown"
	Refused    State = "refused"
	Withdrawn  State = "withdrawn"
	Lapsed     State = "lapsed"
	Held       State = "held"
)

// States lists every state.
func States() []State {
	return []State{Draft, Submitted, DeskReview, Returned, Bench, Ready, Signed, Flown, Refused, Withdrawn, Lapsed, Held}
}

// Open tells whether an approval in the state may still lead to a flight, so that a lesson has to hold it.
func (s State) Open() bool {
	return slices.Contains([]State{Draft, Submitted, DeskReview, Returned, Bench, Ready, Signed, Held}, s)
}

// RestsOnRevision tells whether an approval in the state lapses when its model or field is changed.
func (s State) RestsOnRevision() bool {
	return slices.Contains([]State{Submitted, DeskReview, Bench, Ready, Signed}, s)
}

const statePrefix = "APPROVAL_STATE_"

// Proto is the state on the wire.
func (s State) Proto() pitgatev1.ApprovalState {
	return pitgatev1.ApprovalState(pitgatev1.ApprovalState_value[statePrefix+strings.ToUpper(string(s))])
}

// StateOf is the state from the wire; empty when unspecified or unknown.
func StateOf(p pitgatev1.ApprovalState) State {
	s := State(strings.ToLower(strings.TrimPrefix(p.String(), statePrefix)))
	if !slices.Contains(States(), s) {
		return ""
	}
	return s
}

// IncidentState is where a review stands.
type IncidentState string

// The states of a review.
const (
	Reported    IncidentState = "reported"
	UnderReview IncidentState = "under_review"
	Closed      IncidentState = "closed"
)

// Proto is the state on the wire.
func (s IncidentState) Proto() pitgatev1.IncidentState {
	return pitgatev1.IncidentState(pitgatev1.IncidentState_value["INCIDENT_STATE_"+strings.ToUpper(string(s))])
}

// IncidentStateOf is the state from the wire; Reported when unspecified.
func IncidentStateOf(p pitgatev1.IncidentState) IncidentState {
	switch p {
	case pitgatev1.IncidentState_INCIDENT_STATE_UNDER_REVIEW:
		return UnderReview
	case pitgatev1.IncidentState_INCIDENT_STATE_CLOSED:
		return Closed
	default:
		return Reported
	}
}

// Injury says who was hurt, and how badly.
type Injury string

// The grades of injury; unspecified is the empty string.
const (
	InjuryUnknown Injury = ""
	InjuryNone    Injury = "none"
	InjuryMinor   Injury = "minor"
	InjurySerious Injury = "serious"
	InjuryFatal   Injury = "fatal"
)

// Proto is the injury on the wire.
func (i Injury) Proto() pitgatev1.Injury {
	return pitgatev1.Injury(pitgatev1.Injury_value["INJURY_"+strings.ToUpper(string(i))])
}

// InjuryOf is the injury from the wire.
func InjuryOf(p pitgatev1.Injury) Injury {
	if p == pitgatev1.Injury_INJURY_UNSPECIFIED {
		return InjuryUnknown
	}
	return Injury(strings.ToLower(strings.TrimPrefix(p.String(), "INJURY_")))
}

// LessonState is where a lesson stands.
type LessonState string

// The states of a lesson.
const (
	Proposed LessonState = "proposed"
	Adopted  LessonState = "adopted"
)

// Proto is the state on the wire.
func (s LessonState) Proto() pitgatev1.LessonState {
	return pitgatev1.LessonState(pitgatev1.LessonState_value["LESSON_STATE_"+strings.ToUpper(string(s))])
}

// AdoptersNeeded is how many committee members must vote before a lesson is adopted.
const AdoptersNeeded = 2
