package api

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"pitgate/server/club"
	"pitgate/server/document"
)

func TestStatusOf(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name          string
		err           error
		code          codes.Code
		reason, field string
	}{
		{"invalid", club.RefuseField("model.display_name", "NAME_MISSING", "x"), codes.InvalidArgument, "NAME_MISSING", "model.displayName"},
		{"not found", club.Refuse(club.NotFound, "NOT_FOUND", "x"), codes.NotFound, "NOT_FOUND", ""},
		{"conflict", club.Refuse(club.Conflict, "TAKEN", "x"), codes.AlreadyExists, "TAKEN", ""},
		{"stale", club.MatchEtag("v1", 2), codes.Aborted, "ETAG_MISMATCH", "etag"},
		{"forbidden, wrapped", fmt.Errorf("deep: %w", club.Refuse(club.Forbidden, "OWNER_ONLY", "x")), codes.PermissionDenied, "OWNER_ONLY", ""},
		{"state", club.Refuse(club.FailedPrecondition, "WRONG_STATE", "x"), codes.FailedPrecondition, "WRONG_STATE", ""},
		{"session", club.Refuse(club.Unauthenticated, "SIGN_IN", "x"), codes.Unauthenticated, "SIGN_IN", ""},
		{"document", document.Errors{{Path: "model.mass", Message: "x"}}, codes.InvalidArgument, "INVALID_DOCUMENT", "model.mass"},
		{"fields", &invalidError{[]violation{{"a.b", "x"}}}, codes.InvalidArgument, "INVALID_FIELDS", "a.b"},
		{"too many", &tooManyError{"x"}, codes.ResourceExhausted, "TOO_MANY_REQUESTS", ""},
		{"deadline", fmt.Errorf("sql: %w", context.DeadlineExceeded), codes.DeadlineExceeded, "TOO_SLOW", ""},
		{"gone", context.Canceled, codes.Canceled, "CANCELED", ""},
		{"status", status.Error(codes.Unimplemented, "x"), codes.Unimplemented, "REFUSED", ""},
		{"panic", &panicError{value: "boom"}, codes.Internal, "INTERNAL", ""},
		{"unknown", errors.New("pq: password authentication failed for user postgres"), codes.Internal, "INTERNAL", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			st := status.Convert(statusOf(c.err, "req-7"))
			reason, field := details(st)
			if st.Code() != c.code || reason != c.reason || field != c.field {
				t.Errorf("%v %q %q, want %v %q %q", st.Code(), reason, field, c.code, c.reason, c.field)
			}
			if st.Code() == codes.Internal && (!strings.Contains(st.Message(), "req-7") || strings.Contains(st.Message(), c.err.Error())) {
				t.Errorf("the message tells too much or no request id: %q", st.Message())
			}
		})
	}
}

// details reads reason and first bad field.
func details(st *status.Status) (reason, field string) {
	for _, d := range st.Details() {
		switch d := d.(type) {
		case *errdetails.ErrorInfo:
			reason = d.GetReason()
		case *errdetails.BadRequest:
			field = d.GetFieldViolations()[0].GetField()
		}
	}
	return reason, field
}
