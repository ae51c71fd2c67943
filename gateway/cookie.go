package gateway

import (
	"context"
	"net/http"
	"strconv"
	"time"

	"github.com/grpc-ecosystem/grpc-gateway/v2/runtime"
	"google.golang.org/grpc/metadata"
	"google.golang.org/protobuf/proto"
)

// CookieName is the session cookie. The prefix makes browsers demand Secure, Path=/ and no Domain.
const CookieName = "__Host-pitgate"

// Metadata by which the server hands a session to the edge, and ends one.
const (
	// SessionMetadata holds a new session token.
	SessionMetadata = "pitgate-session"
	// SessionExpiryMetadata holds its end in seconds since 1970.
	SessionExpiryMetadata = "pitgate-session-expiry"
	// SessionEndMetadata tells that the session is over.
	SessionEndMetadata = "pitgate-session-end"
)

// cookieFromServer sets or clears the cookie as the server's metadata says.
func cookieFromServer(ctx context.Context, w http.ResponseWriter, _ proto.Message) error {
	md, ok := runtime.ServerMetadataFromContext(ctx)
	if !ok {
		return nil
	}
	if token := first(md.HeaderMD, SessionMetadata); token != "" {
		http.SetCookie(w, sessionCookie(token, first(md.HeaderMD, SessionExpiryMetadata)))
	}
	if first(md.HeaderMD, SessionEndMetadata) != "" {
		http.SetCookie(w, clearedCookie())
	}
	return nil
}

// sessionCookie holds the token until its expiry in seconds since 1970; without one it ends with the browser.
func sessionCookie(token, expiry string) *http.Cookie {
	c := bareCookie(token)
	if seconds, err := strconv.ParseInt(expiry, 10, 64); err == nil {
		c.Expires = time.Unix(seconds, 0).UTC()
	}
	return c
}

// clearedCookie removes the session from the browser.
func clearedCookie() *http.Cookie {
	c := bareCookie("")
	c.MaxAge = -1
	return c
}

// bareCookie has the attributes every form of the cookie shares.
func bareCookie(value string) *http.Cookie {
	return &http.Cookie{Name: CookieName, Value: value, Path: "/", Secure: true, HttpOnly: true, SameSite: http.SameSiteStrictMode}
}

// first returns the first value under a key, or "".
func first(md metadata.MD, key string) string {
	if values := md.Get(key); len(values) > 0 {
		return values[0]
	}
	return ""
}
