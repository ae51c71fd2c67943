package gateway

import (
	"context"
	"encoding/json"
	"net/http"
	"regexp"
	"strings"

	"github.com/grpc-ecosystem/grpc-gateway/v2/runtime"
	"google.golang.org/genproto/googleapis/rpc/code"
	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
)

// Error is the JSON body of every refusal.
type Error struct {
	// Code is the status by name, e.g. "INVALID_ARGUMENT".
	Code string `json:"code"`
	// Reason is a stable word for programs, e.g. "ETAG_MISMATCH".
	Reason string `json:"reason"`
	// Message tells a person what is wrong and what to do next.
	Message string `json:"message"`
	// FieldViolations names each bad field.
	FieldViolations []FieldViolation `json:"fieldViolations"`
	// RequestID finds the request in the server's log.
	RequestID string `json:"requestId"`
}

// FieldViolation is one bad field of the request.
type FieldViolation struct {
	// Field is the path, e.g. "model.description.surfaces[0].name".
	Field string `json:"field"`
	// Description says what is wrong with it.
	Description string `json:"description"`
}

// handleError writes a status as JSON. A stale etag that came as If-Match answers 412, as HTTP wants it.
func handleError(_ context.Context, _ *runtime.ServeMux, _ runtime.Marshaler, w http.ResponseWriter, r *http.Request, err error) {
	st := status.Convert(err)
	body := errorBody(st)
	body.RequestID = r.Header.Get(requestIDHeader)
	httpCode := runtime.HTTPStatusFromCode(st.Code())
	switch {
	case body.Reason == "ETAG_MISMATCH" && r.Header.Get(ifMatchHeader) != "":
		httpCode = http.StatusPreconditionFailed
	case body.Reason == reasonTooLarge:
		httpCode = http.StatusRequestEntityTooLarge
	case httpCode == http.StatusUnauthorized:
		w.Header().Set("WWW-Authenticate", "Bearer")
	}
	writeError(w, httpCode, body)
}

// handleRoutingError answers paths and methods that no RPC has.
func handleRoutingError(_ context.Context, _ *runtime.ServeMux, _ runtime.Marshaler, w http.ResponseWriter, r *http.Request, httpStatus int) {
	body := Error{Code: "NOT_FOUND", Reason: "NO_SUCH_PATH", Message: "no such path", RequestID: r.Header.Get(requestIDHeader)}
	switch httpStatus {
	case http.StatusMethodNotAllowed:
		body.Code, body.Reason, body.Message = "UNIMPLEMENTED", "NO_SUCH_METHOD", "the path does not take this method"
	case http.StatusBadRequest:
		body.Code, body.Reason, body.Message = "INVALID_ARGUMENT", "MALFORMED_PATH", "the path is malformed"
	}
	writeError(w, httpStatus, body)
}

// errorBody reads code, reason and field violations from a status.
func errorBody(st *status.Status) Error {
	body := Error{Code: codeName(st.Code()), Reason: codeName(st.Code()), Message: st.Message()}
	for _, detail := range st.Details() {
		switch d := detail.(type) {
		case *errdetails.ErrorInfo:
			body.Reason = d.GetReason()
		case *errdetails.BadRequest:
			body.FieldViolations = append(body.FieldViolations, violations(d)...)
		}
	}
	if st.Code() == codes.InvalidArgument && len(st.Details()) == 0 {
		explainParse(&body)
	}
	return body
}

// violations copies a status detail.
func violations(d *errdetails.BadRequest) []FieldViolation {
	out := make([]FieldViolation, 0, len(d.GetFieldViolations()))
	for _, v := range d.GetFieldViolations() {
		out = append(out, FieldViolation{Field: v.GetField(), Description: v.GetDescription()})
	}
	return out
}

const (
	reasonTooLarge  = "BODY_TOO_LARGE"
	reasonMalformed = "MALFORMED_JSON"
)

// unknownField and badField find the field in the decoder's own words.
var (
	unknownField = regexp.MustCompile(`unknown field "?([A-Za-z0-9_.\[\]]+)"?`)
	badField     = regexp.MustCompile(`for (?:\S+ )*field ([A-Za-z0-9_.]+)`)
	position     = regexp.MustCompile(`\(line \d+:\d+\)`)
)

// explainParse turns the decoder's message into ours.
func explainParse(body *Error) {
	text := strings.ReplaceAll(body.Message, "\u00a0", " ")
	text = strings.TrimSpace(strings.TrimPrefix(text, "proto:"))
	body.Message, body.Reason = text, reasonMalformed
	if strings.Contains(text, "request body too large") {
		body.Message, body.Reason = "the body is too large", reasonTooLarge
		return
	}
	if m := unknownField.FindStringSubmatch(text); m != nil {
		body.Reason = "UNKNOWN_FIELD"
		body.blame(m[1], "is not a field here", position.FindString(text))
		return
	}
	if m := badField.FindStringSubmatch(text); m != nil {
		body.blame(m[1], "has a value of the wrong kind", position.FindString(text))
	}
}

// blame names one field as what is wrong, and where in the body it stands.
func (e *Error) blame(field, description, where string) {
	e.FieldViolations = []FieldViolation{{Field: field, Description: description}}
	e.Message = strings.TrimSpace(field + ": " + description + " " + where)
}

// codeName returns "INVALID_ARGUMENT" for codes.InvalidArgument.
func codeName(c codes.Code) string {
	return code.Code(c).String()
}

// writeError writes the body with the given HTTP status.
func writeError(w http.ResponseWriter, httpStatus int, body Error) {
	if body.FieldViolations == nil {
		body.FieldViolations = []FieldViolation{}
	}
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	w.WriteHeader(httpStatus)
	// The caller may be gone; there is nobody left to tell.
	_ = json.NewEncoder(w).Encode(body)
}
