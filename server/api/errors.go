package api

import (
	"context"
	"errors"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/protoadapt"

	"pitgate/server/club"
	"pitgate/server/document"
)

// errorDomain stands in every ErrorInfo.
const errorDomain = "pitgate"

// reasonEtag is the reason of every stale etag, whoever found it.
const reasonEtag = "ETAG_MISMATCH"

// codeOf maps the club's codes, one line each.
var codeOf = map[club.Code]codes.Code{
	club.Invalid:            codes.InvalidArgument,
	club.NotFound:           codes.NotFound,
	club.Conflict:           codes.AlreadyExists,
	club.Stale:              codes.Aborted,
	club.Forbidden:          codes.PermissionDenied,
	club.FailedPrecondition: codes.FailedPrecondition,
	club.Unauthenticated:    codes.Unauthenticated,
}

// tooManyError is a refusal by rate: the caller may come back later.
type tooManyError struct{ message string }

// Error implements error.
func (e *tooManyError) Error() string { return e.message }

// statusOf is the one mapper: every error of a handler or an interceptor becomes a status here. Errors nobody planned for say only the
// request's id; the log has the rest.
func statusOf(err error, requestID string) error {
	var (
		clubErr *club.Error
		invalid *invalidError
		faults  document.Errors
		many    *tooManyError
	)
	switch {
	case errors.As(err, &clubErr):
		return clubStatus(clubErr)
	case errors.As(err, &invalid):
		return refusal(codes.InvalidArgument, "INVALID_FIELDS", invalid.Error(), nil, invalid.violations)
	case errors.As(err, &faults):
		return refusal(codes.InvalidArgument, "INVALID_DOCUMENT", "the document has faults", nil, faultViolations(faults))
	case errors.As(err, &many):
		return refusal(codes.ResourceExhausted, "TOO_MANY_REQUESTS", many.message, nil, nil)
	case errors.Is(err, context.DeadlineExceeded):
		return refusal(codes.DeadlineExceeded, "TOO_SLOW", "it took too long: try again", nil, nil)
	case errors.Is(err, context.Canceled):
		return refusal(codes.Canceled, "CANCELED", "the caller went away", nil, nil)
	}
	if st, ok := status.FromError(err); ok && st.Code() != codes.Unknown {
		return refusal(st.Code(), "REFUSED", st.Message(), nil, nil)
	}
	return refusal(codes.Internal, "INTERNAL", "something broke on the server; tell the administrator the request id "+requestID,
		map[string]string{"request_id": requestID}, nil)
}

// clubStatus maps a refusal by the club's rules.
func clubStatus(e *club.Error) error {
	reason, metadata := e.Reason, map[string]string{}
	if e.Code == club.Stale {
		reason = reasonEtag
	}
	var bad []violation
	if e.Field != "" {
		field := jsonNames(e.Field)
		metadata["field"] = field
		bad = []violation{{field, e.Message}}
	}
	code, ok := codeOf[e.Code]
	if !ok {
		code = codes.Internal
	}
	return refusal(code, reason, e.Error(), metadata, bad)
}

// faultViolations copies the faults of a document.
func faultViolations(faults document.Errors) []violation {
	out := make([]violation, 0, len(faults))
	for _, f := range faults {
		out = append(out, violation{f.Path, f.Message})
	}
	return out
}

// refusal builds a status with ErrorInfo and, where fields are at fault, BadRequest.
func refusal(code codes.Code, reason, message string, metadata map[string]string, bad []violation) error {
	details := []protoadapt.MessageV1{&errdetails.ErrorInfo{Reason: reason, Domain: errorDomain, Metadata: metadata}}
	if len(bad) > 0 {
		request := &errdetails.BadRequest{}
		for _, v := range bad {
			request.FieldViolations = append(request.FieldViolations,
				&errdetails.BadRequest_FieldViolation{Field: v.field, Description: v.text})
		}
		details = append(details, request)
	}
	st := status.New(code, message)
	if full, err := st.WithDetails(details...); err == nil {
		st = full
	}
	return st.Err()
}
