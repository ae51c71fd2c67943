package club

import (
	"errors"
	"fmt"
)

// Code says what kind of refusal an Error is; callers branch on it.
type Code string

// The codes.
const (
	// Invalid: the request itself is wrong and stays wrong; Field names the part.
	Invalid Code = "invalid"
	// NotFound: there is no such record in this club.
	NotFound Code = "not_found"
	// Conflict: another record or an earlier request with the same key says otherwise.
	Conflict Code = "conflict"
	// Stale: the record changed since the caller read it; read it again.
	Stale Code = "stale"
	// Forbidden: the caller's role or relation to the record does not allow it.
	Forbidden Code = "forbidden"
	// FailedPrecondition: the record's state does not allow it now.
	FailedPrecondition Code = "failed_precondition"
	// Unauthenticated: nobody is signed in, or the password is wrong.
	Unauthenticated Code = "unauthenticated"
)

// Error is a refusal the caller can understand. Its message tells what to do next and never quotes a driver.
type Error struct {
	Code Code
	// Field is the path of the request part at fault, or empty.
	Field string
	// Reason is a stable upper-case word for programs, such as "STALE_ETAG".
	Reason  string
	Message string
}

// Error implements error.
func (e *Error) Error() string {
	if e.Field == "" {
		return e.Message
	}
	return e.Field + ": " + e.Message
}

// Refuse makes an Error without a field.
func Refuse(code Code, reason, format string, args ...any) *Error {
	return &Error{Code: code, Reason: reason, Message: fmt.Sprintf(format, args...)}
}

// RefuseField makes an Error of code Invalid about one field of the request.
func RefuseField(field, reason, format string, args ...any) *Error {
	return &Error{Code: Invalid, Field: field, Reason: reason, Message: fmt.Sprintf(format, args...)}
}

// CodeOf returns the code of the Error in err's chain, or "" when there is none.
func CodeOf(err error) Code {
	var e *Error
	if errors.As(err, &e) {
		return e.Code
	}
	return ""
}
