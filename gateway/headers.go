package gateway

import (
	"net/http"
	"regexp"

	"github.com/google/uuid"
)

// requestIDHeader names one request in answers and logs.
const requestIDHeader = "X-Request-Id"

// requestIDForm is what we take over from a caller; anything else is replaced.
var requestIDForm = regexp.MustCompile(`^[A-Za-z0-9._-]{1,64}$`)

// contentPolicy lets the page load only its own files; wasm-unsafe-eval permits compiling the core, nothing else.
const contentPolicy = "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; " +
	"connect-src 'self'; worker-src 'self'; manifest-src 'self'; form-action 'self'; object-src 'none'; base-uri 'none'; frame-ancestors 'none'"

// securityHeaders sets what every answer carries. Strict-Transport-Security goes out only where TLS is spoken.
func securityHeaders(tls bool, next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", contentPolicy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Permissions-Policy", "camera=(self), geolocation=(self), microphone=(), payment=(), usb=()")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		if tls {
			h.Set("Strict-Transport-Security", "max-age=31536000; includeSubDomains")
		}
		next.ServeHTTP(w, r)
	})
}

// requestIDs gives every request an id, takes over a well-formed one, and returns it.
func requestIDs(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		id := r.Header.Get(requestIDHeader)
		if !requestIDForm.MatchString(id) {
			id = uuid.NewString()
			r.Header.Set(requestIDHeader, id)
		}
		w.Header().Set(requestIDHeader, id)
		next.ServeHTTP(w, r)
	})
}

// forwarded drops what a caller claims about its own address, unless a proxy in front is trusted to say it.
func forwarded(trust bool, next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if !trust {
			r.Header.Del("X-Forwarded-For")
			r.Header.Del("X-Forwarded-Host")
			r.Header.Del("Forwarded")
		}
		next.ServeHTTP(w, r)
	})
}

// noStore keeps answers with club data out of shared and disk caches.
func noStore(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Cache-Control", "no-store")
		next.ServeHTTP(w, r)
	})
}
