// Package postgres keeps a club's records in PostgreSQL. (Signatures first; bodies follow file by file.)
package postgres

import (
	"context"
	"crypto/ed25519"
	"encoding/json"
	"errors"
	"time"

	"pitgate/server/club"
)

var errLater = errors.New("not written yet")

// Store is the database.
type Store struct{}

// Option changes a Store being opened.
type Option func(*Store)

func WithClock(now func() time.Time) Option                                   { return nil }
func WithIDs(next func() string) Option                                       { return nil }
func WithSigningKey(key ed25519.PrivateKey) Option                            { return nil }
func WithMaxConnections(n int32) Option                                       { return nil }
func Open(ctx context.Context, url string, options ...Option) (*Store, error) { return nil, errLater }
func Migrate(ctx context.Context, url string) error                           { return errLater }
func (s *Store) Close()                                                       {}
func (s *Store) Ping(ctx context.Context) error                               { return errLater }
func (s *Store) PublicKey() ed25519.PublicKey                                 { return nil }

// InTx runs work in one transaction of the club, again on serialization failure or deadlock.
func (s *Store) InTx(ctx context.Context, clubID string, work func(*Tx) error) error { return errLater }

// Read runs work on one read-only snapshot of the club.
func (s *Store) Read(ctx context.Context, clubID string, work func(*ReadTx) error) error {
	return errLater
}

// SessionByToken finds a session that has not expired and its person, without knowing the club. Unauthenticated when none.
func (s *Store) SessionByToken(ctx context.Context, tokenHash []byte) (club.Session, club.Person, error) {
	return club.Session{}, club.Person{}, errLater
}

// ReadTx reads one club.
type ReadTx struct{}

// Tx reads and writes one club.
type Tx struct{ ReadTx }

// Now is the one time of the transaction, UTC, to the microsecond. ClubID is the club.
func (r *ReadTx) Now() time.Time { return time.Time{} }
func (r *ReadTx) ClubID() string { return "" }

// clubs, people, sessions
func (r *ReadTx) Club(ctx context.Context) (club.Club, error) { return club.Club{}, errLater }
func (t *Tx) CreateClub(ctx context.Context, displayName string) (club.Club, error) {
	return club.Club{}, errLater
}
func (r *ReadTx) Person(ctx context.Context, id string) (club.Person, error) {
	return club.Person{}, errLater
}
func (r *ReadTx) PersonByEmail(ctx context.Context, email string) (club.Person, error) {
	return club.Person{}, errLater
}
func (r *ReadTx) People(ctx context.Context, page club.Page) (people []club.Person, next string, err error) {
	return nil, "", errLater
}
func (r *ReadTx) DemoPeople(ctx context.Context) ([]club.Person, error) { return nil, errLater }

// CreatePerson keeps p; an empty p.ID gets one. by is who does it ("" for the club itself).
func (t *Tx) CreatePerson(ctx context.Context, by club.Actor, p club.Person) (club.Person, error) {
	return club.Person{}, errLater
}
func (t *Tx) SetPassword(ctx context.Context, personID, passwordHash string) error { return errLater }

// CreateSession also removes the club's expired ones.
func (t *Tx) CreateSession(ctx context.Context, s club.Session) error   { return errLater }
func (t *Tx) DeleteSession(ctx context.Context, tokenHash []byte) error { return errLater }
func (t *Tx) DeleteOtherSessions(ctx context.Context, personID string, keepTokenHash []byte) error {
	return errLater
}
func (t *Tx) SweepSessions(ctx context.Context) (int64, error) { return 0, errLater }

// models
func (t *Tx) CreateModel(ctx context.Context, by club.Actor, m club.Model) (club.Model, error) {
	return club.Model{}, errLater
}
func (r *ReadTx) Model(ctx context.Context, id string) (club.Model, error) {
	return club.Model{}, errLater
}

// Models lists the models of ownerID, or of all when ownerID is empty.
func (r *ReadTx) Models(ctx context.Context, ownerID string, page club.Page) ([]club.Model, string, error) {
	return nil, "", errLater
}

// ModelChange: nil parts stay.
type ModelChange struct {
	ID, Etag    string
	DisplayName *string
	Description json.RawMessage
}

// UpdateModel freezes a next revision when the description differs, and lapses what rested on the former one.
func (t *Tx) UpdateModel(ctx context.Context, by club.Actor, c ModelChange) (club.Model, error) {
	return club.Model{}, errLater
}
func (t *Tx) DeleteModel(ctx context.Context, by club.Actor, id, etag string) error { return errLater }
func (r *ReadTx) Revision(ctx context.Context, modelID string, number int32) (club.Revision, error) {
	return club.Revision{}, errLater
}
func (r *ReadTx) Revisions(ctx context.Context, modelID string, page club.Page) ([]club.Revision, string, error) {
	return nil, "", errLater
}

// fields
func (t *Tx) CreateField(ctx context.Context, by club.Actor, f club.Field) (club.Field, error) {
	return club.Field{}, errLater
}
func (r *ReadTx) Field(ctx context.Context, id string) (club.Field, error) {
	return club.Field{}, errLater
}
func (r *ReadTx) Fields(ctx context.Context, page club.Page) ([]club.Field, string, error) {
	return nil, "", errLater
}

// FieldChange: nil parts stay.
type FieldChange struct {
	ID, Etag    string
	DisplayName *string
	Description json.RawMessage
}

func (t *Tx) UpdateField(ctx context.Context, by club.Actor, c FieldChange) (club.Field, error) {
	return club.Field{}, errLater
}
func (r *ReadTx) FieldVersion(ctx context.Context, fieldID string, number int32) (club.FieldVersion, error) {
	return club.FieldVersion{}, errLater
}

// assessments
func (t *Tx) CreateAssessment(ctx context.Context, by club.Actor, a club.Assessment) (club.Assessment, error) {
	return club.Assessment{}, errLater
}
func (r *ReadTx) Assessment(ctx context.Context, id string) (club.Assessment, error) {
	return club.Assessment{}, errLater
}

// Assessments lists without input and report, newest first; those of creatorID, or all when empty.
func (r *ReadTx) Assessments(ctx context.Context, creatorID string, page club.Page) ([]club.Assessment, string, error) {
	return nil, "", errLater
}

// approvals
// CreateApproval opens a draft: ModelID, FieldID, LaunchPlan, Day, Limits, OwnerNote, Conditions of a; the owner is by.
func (t *Tx) CreateApproval(ctx context.Context, by club.Actor, a club.Approval) (club.Approval, error) {
	return club.Approval{}, errLater
}
func (r *ReadTx) Approval(ctx context.Context, id string) (club.Approval, error) {
	return club.Approval{}, errLater
}

// ApprovalFilter: empty parts do not filter.
type ApprovalFilter struct {
	OwnerID string
	States  []club.State
}

func (r *ReadTx) Approvals(ctx context.Context, f ApprovalFilter, page club.Page) ([]club.Approval, string, error) {
	return nil, "", errLater
}

// Submission is what VerbSubmit puts into the approval. Revision and version must be the latest ones (else Stale).
type Submission struct {
	ModelRevision, FieldVersion int32
	LaunchPlan, Day             json.RawMessage
	OwnerNote                   *string
	AssessmentID                string
}

// Decision is one verb on one approval.
type Decision struct {
	ID, Etag string
	Verb     club.Verb
	By       club.Actor
	Reason   string
	// Conditions replaces the approval's when not nil (only VerbPassDesk).
	Conditions []string
	// Submission only with VerbSubmit, Signature only with VerbSign.
	Submission *Submission
	Signature  *club.Signature
}

// Decide checks etag, state machine and signing digest, changes the state, writes transition, hold or signature and ledger entry.
func (t *Tx) Decide(ctx context.Context, d Decision) (club.Approval, error) {
	return club.Approval{}, errLater
}

// LapseForModel and LapseForField are called by UpdateModel and UpdateField; they return the ids that lapsed.
func (t *Tx) LapseForModel(ctx context.Context, modelID string, reason string) ([]string, error) {
	return nil, errLater
}
func (t *Tx) LapseForField(ctx context.Context, fieldID string, reason string) ([]string, error) {
	return nil, errLater
}

// OpenApprovals are those a lesson may hold, each with its model's description.
func (r *ReadTx) OpenApprovals(ctx context.Context) ([]club.OpenApproval, error) {
	return nil, errLater
}

// HoldByLesson holds one approval because of a lesson; doing it twice for the same unreleased lesson changes nothing.
func (t *Tx) HoldByLesson(ctx context.Context, by club.Actor, lessonID, approvalID string) error {
	return errLater
}

// incidents and lessons
func (t *Tx) CreateIncident(ctx context.Context, by club.Actor, i club.Incident) (club.Incident, error) {
	return club.Incident{}, errLater
}
func (r *ReadTx) Incident(ctx context.Context, id string) (club.Incident, error) {
	return club.Incident{}, errLater
}
func (r *ReadTx) Incidents(ctx context.Context, page club.Page) ([]club.Incident, string, error) {
	return nil, "", errLater
}

// UpdateIncident writes every editable part of i; read it first and change what the mask names.
func (t *Tx) UpdateIncident(ctx context.Context, by club.Actor, i club.Incident, etag string) (club.Incident, error) {
	return club.Incident{}, errLater
}
func (t *Tx) AddPhoto(ctx context.Context, by club.Actor, p club.Photo) (club.Photo, error) {
	return club.Photo{}, errLater
}
func (r *ReadTx) Photo(ctx context.Context, incidentID, photoID string) (club.Photo, error) {
	return club.Photo{}, errLater
}
func (t *Tx) CreateLesson(ctx context.Context, by club.Actor, l club.Lesson) (club.Lesson, error) {
	return club.Lesson{}, errLater
}
func (r *ReadTx) Lesson(ctx context.Context, id string) (club.Lesson, error) {
	return club.Lesson{}, errLater
}
func (r *ReadTx) Lessons(ctx context.Context, page club.Page) ([]club.Lesson, string, error) {
	return nil, "", errLater
}

// AdoptedLessons are all in force: a submission has to be tried on them (HoldByLesson).
func (r *ReadTx) AdoptedLessons(ctx context.Context) ([]club.Lesson, error) { return nil, errLater }

// VoteLesson adds by's vote; the lesson comes back Adopted when this vote was the deciding one.
func (t *Tx) VoteLesson(ctx context.Context, by club.Actor, lessonID, etag string) (club.Lesson, error) {
	return club.Lesson{}, errLater
}

// replies
func (t *Tx) FindReply(ctx context.Context, k club.ReplyKey) (reply []byte, found bool, err error) {
	return nil, false, errLater
}
func (t *Tx) SaveReply(ctx context.Context, k club.ReplyKey, reply []byte) error { return errLater }

// ledger
func (t *Tx) AppendLedger(ctx context.Context, entry any) (index int64, err error) {
	return 0, errLater
}

// LedgerHead is a signed tree head.
type LedgerHead struct {
	Size            int64
	Root, Signature []byte
	Time            time.Time
}

func (r *ReadTx) LedgerHead(ctx context.Context) (LedgerHead, error) { return LedgerHead{}, errLater }

// LedgerEntries from index first on, at most limit.
func (r *ReadTx) LedgerEntries(ctx context.Context, first int64, limit int32) ([]club.LedgerEntry, error) {
	return nil, errLater
}

// LeafHashes of the first size entries.
func (r *ReadTx) LeafHashes(ctx context.Context, size int64) ([][]byte, error) { return nil, errLater }
