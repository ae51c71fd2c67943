package gateway

import (
	"context"
	"net/http"
	"net/textproto"

	"github.com/grpc-ecosystem/grpc-gateway/v2/runtime"
	"google.golang.org/grpc/metadata"
	"google.golang.org/protobuf/encoding/protojson"
)

// ifMatchHeader carries an etag in HTTP's own way.
const ifMatchHeader = "If-Match"

// muxOptions sets JSON, headers, cookies and errors.
func muxOptions() []runtime.ServeMuxOption {
	return []runtime.ServeMuxOption{
		runtime.WithMarshalerOption(runtime.MIMEWildcard, jsonForm()),
		runtime.WithIncomingHeaderMatcher(incomingHeader),
		runtime.WithOutgoingHeaderMatcher(outgoingHeader),
		runtime.WithOutgoingTrailerMatcher(func(string) (string, bool) { return "", false }),
		runtime.WithMetadata(bearerFromCookie),
		runtime.WithForwardResponseOption(cookieFromServer),
		runtime.WithErrorHandler(handleError),
		runtime.WithRoutingErrorHandler(handleRoutingError),
	}
}

// jsonForm is proto3 JSON: names in lowerCamelCase, absent fields left out, unknown fields refused.
func jsonForm() runtime.Marshaler {
	return &runtime.HTTPBodyMarshaler{Marshaler: &runtime.JSONPb{
		MarshalOptions:   protojson.MarshalOptions{EmitUnpopulated: false},
		UnmarshalOptions: protojson.UnmarshalOptions{DiscardUnknown: false},
	}}
}

// incomingHeader lets only named headers through, so that nobody smuggles metadata in.
func incomingHeader(key string) (string, bool) {
	switch textproto.CanonicalMIMEHeaderKey(key) {
	case requestIDHeader:
		return "x-request-id", true
	case ifMatchHeader:
		return "if-match", true
	}
	return "", false
}

// outgoingHeader lets only the etag out.
func outgoingHeader(key string) (string, bool) {
	if key == "etag" {
		return "Etag", true
	}
	return "", false
}

// bearerFromCookie turns the session cookie into a bearer token, unless the caller sent an Authorization header.
func bearerFromCookie(_ context.Context, r *http.Request) metadata.MD {
	cookie, err := r.Cookie(CookieName)
	if err != nil || cookie.Value == "" || r.Header.Get("Authorization") != "" {
		return nil
	}
	return metadata.Pairs("authorization", "Bearer "+cookie.Value)
}
