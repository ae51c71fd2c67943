package gateway

import (
	"mime"
	"net/http"
	"strings"
)

// Caps on a request's body in bytes. A photo of 8 MiB grows by a third as base64.
const (
	bodyCap  = 1 << 20
	photoCap = 12 << 20
)

// limitBodies demands JSON on every write and caps its size.
func limitBodies(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if takesBody(r.Method) && !isJSON(r.Header.Get("Content-Type")) {
			writeError(w, http.StatusUnsupportedMediaType, Error{Code: "INVALID_ARGUMENT", Reason: "NOT_JSON",
				Message: "send the body as application/json", RequestID: r.Header.Get(requestIDHeader)})
			return
		}
		limit := bodyLimit(r.URL.Path)
		if r.ContentLength > limit {
			writeError(w, http.StatusRequestEntityTooLarge, Error{Code: "INVALID_ARGUMENT", Reason: reasonTooLarge,
				Message: "the body is too large", RequestID: r.Header.Get(requestIDHeader)})
			return
		}
		r.Body = http.MaxBytesReader(w, r.Body, limit)
		next.ServeHTTP(w, r)
	})
}

// bodyLimit is larger only where a photo is sent.
func bodyLimit(path string) int64 {
	if strings.HasSuffix(path, ":addPhoto") {
		return photoCap
	}
	return bodyCap
}

// takesBody tells the methods that write.
func takesBody(method string) bool {
	return method == http.MethodPost || method == http.MethodPatch || method == http.MethodPut
}

// isJSON tells whether the media type is JSON, with or without a character set.
func isJSON(contentType string) bool {
	media, _, err := mime.ParseMediaType(contentType)
	return err == nil && media == "application/json"
}
