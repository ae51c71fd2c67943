package club

import (
	"encoding/json"
	"strconv"
	"strings"
	"time"
)

// Ids in these records are the last part of a resource name ("x4k2..."), never the whole name. The club's own id is its
// slug ("larkmoor"). Documents (descriptions, plans, reports) are proto3 JSON.

// Club is one model-flying club.
type Club struct {
	ID          string
	DisplayName string
	CreateTime  time.Time
}

// Person is someone in a club. The password hash is there for signing in and goes no further.
type Person struct {
	ID, DisplayName, Email, PasswordHash string
	Roles                                []Role
	// Demo marks a person of the demonstration, who may be chosen without a password.
	Demo       bool
	CreateTime time.Time
}

// Actor is the person as one who asks for a change.
func (p Person) Actor() Actor {
	return Actor{PersonID: p.ID, Roles: p.Roles}
}

// Session is one signed-in browser or program. The token itself is never kept, only its hash.
type Session struct {
	ClubID, PersonID string
	TokenHash        []byte
	ExpireTime       time.Time
}

// Model is a member's aircraft with its latest description.
type Model struct {
	ID, DisplayName, OwnerID, OwnerDisplayName string
	Description                                json.RawMessage
	LatestRevision                             int32
	Version                                    int64
	CreateTime, UpdateTime                     time.Time
}

// Revision is a numbered, frozen description of a model.
type Revision struct {
	ModelID     string
	Number      int32
	Description json.RawMessage
	// Digest is SHA-256 over the canonical JSON of the description, in hex.
	Digest     string
	CreateTime time.Time
}

// Field is a flying site with its latest description.
type Field struct {
	ID, DisplayName        string
	Description            json.RawMessage
	LatestVersion          int32
	Version                int64
	CreateTime, UpdateTime time.Time
}

// FieldVersion is a numbered, frozen description of a field.
type FieldVersion struct {
	FieldID     string
	Number      int32
	Description json.RawMessage
	// Digest is SHA-256 over the canonical JSON of the description, in hex.
	Digest     string
	CreateTime time.Time
}

// Counts of findings by verdict.
type Counts struct {
	Holds, Tight, Fails, Unknown int32
}

// Assessment is a kept computation.
type Assessment struct {
	ID            string
	Input, Report json.RawMessage
	InputDigest   string
	CoreVersion   string
	Counts        Counts
	CreatorID     string
	// ApprovalID is empty when it was computed for no approval.
	ApprovalID string
	CreateTime time.Time
}

// Approval is one first-flight approval.
type Approval struct {
	ID    string
	State State
	// HeldFrom is the state a held approval goes back to; empty otherwise.
	HeldFrom                  State
	ModelID, ModelDisplayName string
	ModelRevision             int32
	FieldID, FieldDisplayName string
	FieldVersion              int32
	OwnerID, OwnerDisplayName string
	LaunchPlan, Day, Limits   json.RawMessage
	// Confirmations is the JSON list of what owner and officers confirm.
	Confirmations json.RawMessage
	OwnerNote     string
	// AssessmentID is empty before the first submission.
	AssessmentID     string
	AssessmentDigest string
	Counts           Counts
	Conditions       []string
	// KeptGates were passed before a lapse and stand for the present answer too.
	KeptGates              []Gate
	Version                int64
	CreateTime, UpdateTime time.Time
	// Transitions, Signatures, Holds and RuleWords are filled when one approval is read, and empty in lists.
	Transitions []Transition
	Signatures  []Signature
	Holds       []Hold
	RuleWords   []RuleWord
}

// RuleWord is what an officer answered to a rule that asks for somebody's word.
type RuleWord struct {
	// Rule is "<pack>.<rule>".
	Rule      string
	Confirmed bool
	// Date is the day for which it is said, "2026-05-16".
	Date                          string
	OfficerID, OfficerDisplayName string
	Reason                        string
	Time                          time.Time
	LedgerIndex                   int64
}

// Transition is one change of an approval's state.
type Transition struct {
	From, To                  State
	Verb                      Verb
	ActorID, ActorDisplayName string
	Reason                    string
	ModelRevision             int32
	AssessmentID              string
	Time                      time.Time
	LedgerIndex               int64
	// Gates says what became of the gates that stood, where it lapsed or another answer came.
	Gates []GateFate
}

// Signature is one signature on an approval.
type Signature struct {
	SignerID, SignerDisplayName string
	Role                        Role
	// Meaning is what was signed: "go for first flight".
	Meaning string
	// Digest is what SigningDigest gave for what the signer was shown.
	Digest string
	// DeviceTime is zero when the device told none.
	DeviceTime time.Time
	ServerTime time.Time
	Lapsed     bool
}

// Hold is a stop on an approval.
type Hold struct {
	ID, Reason string
	// LessonID is empty when an officer did it.
	LessonID                            string
	ActorID, ActorDisplayName           string
	Time                                time.Time
	Released                            bool
	ReleaseReason                       string
	ReleasedByID, ReleasedByDisplayName string
}

// Incident is a report and its review.
type Incident struct {
	ID                              string
	State                           IncidentState
	Title, Narrative                string
	OccurTime                       time.Time
	FieldID, Place, ModelID         string
	Injury                          Injury
	InjuryNote                      string
	ReporterID, ReporterDisplayName string
	Categories, Causes              []string
	Actions                         []Action
	// Photos are without content.
	Photos                 []Photo
	LessonIDs              []string
	Version                int64
	CreateTime, UpdateTime time.Time
}

// Action is something to be done after an incident.
type Action struct {
	Text string `json:"text"`
	// OwnerID is a person's id, or empty.
	OwnerID string `json:"owner_id,omitempty"`
	// DueDate is "2026-12-31", or empty.
	DueDate  string `json:"due_date,omitempty"`
	Done     bool   `json:"done,omitempty"`
	Evidence string `json:"evidence,omitempty"`
}

// Photo is a picture of an incident, JPEG, re-encoded.
type Photo struct {
	ID, IncidentID            string
	WidthPixels, HeightPixels int32
	Content                   []byte
}

// Lesson is a check derived from an incident.
type Lesson struct {
	ID                          string
	State                       LessonState
	Text, PredicateText, Remedy string
	// IncidentID is empty when the lesson has no incident of this club behind it.
	IncidentID          string
	ProposerID          string
	AdopterIDs          []string
	AdopterDisplayNames []string
	HoldCount           int32
	Version             int64
	CreateTime          time.Time
	// AdoptTime is zero while proposed.
	AdoptTime time.Time
}

// OpenApproval is what a lesson needs to know of an approval it may hold.
type OpenApproval struct {
	ID, ModelID   string
	State         State
	ModelRevision int32
	// Description is the model as the approval names it: the named revision, or the latest one for a draft.
	Description json.RawMessage
}

// ReplyKey identifies a request that may be sent twice.
type ReplyKey struct {
	RequestID, RPC, PersonID string
	// BodyDigest is a SHA-256 over the request without its request_id.
	BodyDigest []byte
}

// LedgerEntry is one entry of a club's ledger.
type LedgerEntry struct {
	Index int64
	// Entry is the canonical JSON that was hashed.
	Entry    string
	LeafHash []byte
}

// Page asks for part of a list. Size below 1 means 50, above 1000 means 1000. After is the token of the former page.
type Page struct {
	Size  int32
	After string
}

// Limit is the size in force.
func (p Page) Limit() int32 {
	switch {
	case p.Size < 1:
		return 50
	case p.Size > 1000:
		return 1000
	default:
		return p.Size
	}
}

// Etag writes a version as an etag.
func Etag(version int64) string {
	return "v" + strconv.FormatInt(version, 10)
}

// MatchEtag refuses with Stale unless etag is that of the version. An empty etag matches.
func MatchEtag(etag string, version int64) error {
	if etag == "" || strings.Trim(etag, `"`) == Etag(version) {
		return nil
	}
	return &Error{Code: Stale, Field: "etag", Reason: "STALE_ETAG", Message: "it was changed since you read it: read it again and repeat"}
}
