package postgres

import (
	"context"
	"errors"
	"log/slog"

	"github.com/jackc/pgx/v5"
	"github.com/jackc/pgx/v5/pgconn"

	"pitgate/server/club"
)

// UnansweredError is an error the caller cannot do anything about. Its text holds nothing of the driver's; a log shows the
// cause.
type UnansweredError struct{ cause error }

// Error implements error.
func (f *UnansweredError) Error() string { return "the database could not answer" }

// Unwrap gives the cause.
func (f *UnansweredError) Unwrap() error { return f.cause }

// LogValue is the cause in the driver's words.
func (f *UnansweredError) LogValue() slog.Value { return slog.StringValue(f.cause.Error()) }

// SQLSTATE codes that are told apart.
const (
	serializationFailure = "40001"
	deadlockDetected     = "40P01"
	lockNotAvailable     = "55P03"
	uniqueViolation      = "23505"
	foreignKeyViolation  = "23503"
	checkViolation       = "23514"
	notNullViolation     = "23502"
	restrictViolation    = "23001"
	privilegeMissing     = "42501"
	textNotStorable      = "22021"
	jsonNotStorable      = "22P05"
	jsonMalformed        = "22P02"
)

// byState is what a SQLSTATE means to the caller.
var byState = map[string]club.Error{
	serializationFailure: {Code: club.Conflict, Reason: "BUSY", Message: "others were changing the same records: try again"},
	deadlockDetected:     {Code: club.Conflict, Reason: "BUSY", Message: "others were changing the same records: try again"},
	lockNotAvailable:     {Code: club.Conflict, Reason: "BUSY", Message: "others were changing the same records: try again"},
	uniqueViolation:      {Code: club.Conflict, Reason: "ALREADY_THERE", Message: "there is one already"},
	foreignKeyViolation:  {Code: club.Invalid, Reason: "NAMES_NOTHING", Message: "names a record that this club does not have"},
	checkViolation:       {Code: club.Invalid, Reason: "OUT_OF_RANGE", Message: "a value is outside of what is allowed"},
	notNullViolation:     {Code: club.Invalid, Reason: "MISSING", Message: "a required part is missing"},
	restrictViolation:    {Code: club.FailedPrecondition, Reason: "FROZEN", Message: "this record is never changed or removed"},
	privilegeMissing:     {Code: club.Forbidden, Reason: "NOT_ALLOWED", Message: "this may not be done to this record"},
	textNotStorable:      {Code: club.Invalid, Reason: "BAD_TEXT", Message: "a text holds a character that cannot be kept"},
	jsonNotStorable:      {Code: club.Invalid, Reason: "BAD_TEXT", Message: "a text holds a character that cannot be kept"},
	jsonMalformed:        {Code: club.Invalid, Reason: "BAD_TEXT", Message: "a document is not well formed"},
}

// byConstraint is what breaking a named constraint means to the caller; it goes before byState.
var byConstraint = map[string]club.Error{
	"people_email_key":            {Code: club.Conflict, Field: "person.email", Reason: "EMAIL_TAKEN", Message: "somebody in this club has it already"},
	"clubs_pkey":                  {Code: club.Conflict, Field: "club", Reason: "CLUB_EXISTS", Message: "there is a club of this name already"},
	"lesson_votes_pkey":           {Code: club.Conflict, Reason: "ALREADY_VOTED", Message: "you have voted for this lesson already: another committee member has to"},
	"rule_pack_votes_pkey":        {Code: club.Conflict, Reason: "ALREADY_VOTED", Message: "you have given your word already: another committee member has to"},
	"rule_pack_needs_two":         {Code: club.FailedPrecondition, Reason: "SECOND_WORD_MISSING", Message: "two different committee members have to give their word"},
	"rule_pack_word_of_committee": {Code: club.Forbidden, Reason: "ROLE_MISSING", Message: "only a committee member has a word on rule packs"},
	"rule_packs_in_force":         {Code: club.Conflict, Reason: "ALREADY_IN_FORCE", Message: "another version of this pack was published at the same time: read it again"},
	"signatures_once":             {Code: club.Conflict, Reason: "ALREADY_SIGNED", Message: "you have signed this approval already"},
	"rule_word_of_officer":        {Code: club.Forbidden, Reason: "ROLE_MISSING", Message: "only a safety officer answers a rule on an approval of another"},
	"rule_word_never_of_owner":    {Code: club.Forbidden, Reason: "OWN_APPROVAL", Message: "nobody answers as an officer for a model of their own: ask another officer"},
	"signer_is_never_owner":       {Code: club.Forbidden, Reason: "OWN_APPROVAL", Message: "nobody signs for a model of their own: ask another officer"},
	"replies_pkey":                {Code: club.Conflict, Field: "request_id", Reason: "REQUEST_ID_REUSED", Message: "this request is being answered already"},
}

// answer turns an error of the driver into a *club.Error, or a *UnansweredError when the caller can do nothing about it.
func answer(err error) error {
	var refusal *club.Error
	var unanswered *UnansweredError
	if err == nil || errors.As(err, &refusal) || errors.As(err, &unanswered) ||
		errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	var pg *pgconn.PgError
	if !errors.As(err, &pg) {
		return &UnansweredError{cause: err}
	}
	if known, ok := byConstraint[pg.ConstraintName]; ok {
		return &known
	}
	if known, ok := byState[pg.Code]; ok {
		return &known
	}
	return &UnansweredError{cause: err}
}

// brokenOff tells whether the same transaction may succeed when tried again.
func brokenOff(err error) bool {
	var pg *pgconn.PgError
	return errors.As(err, &pg) && (pg.Code == serializationFailure || pg.Code == deadlockDetected)
}

// found turns the absence of a row into NotFound.
func found(err error, what, id string) error {
	if errors.Is(err, pgx.ErrNoRows) {
		return club.Refuse(club.NotFound, "NOT_FOUND", "this club has no %s %q", what, id)
	}
	return err
}
