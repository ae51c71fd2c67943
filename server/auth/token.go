package auth

import (
	"crypto/rand"
	"crypto/sha256"
	"encoding/base64"
	"errors"
	"strings"
)

const (
	// secretSize is the random part of a session token, in bytes: 256 bits.
	secretSize = 32
	// clubIDLimit is the longest club id that a token carries, in bytes.
	clubIDLimit = 64
)

// ErrToken means that a text is not a session token. It says no more, on purpose.
var ErrToken = errors.New("session token: malformed")

// NewToken returns a new session token for a club and the hash to store. The token is
// "<clubID>.<256 random bits in base64url>"; only its SHA-256 may be kept, so that a stolen database opens no session.
// The club id may hold letters, digits, '-' and '_', at most 64.
func NewToken(clubID string) (token string, hash []byte, err error) {
	if !isClubID(clubID) {
		return "", nil, errors.New("club id: must be 1 to 64 letters, digits, '-' or '_'")
	}
	var secret [secretSize]byte
	rand.Read(secret[:])
	token = clubID + "." + base64.RawURLEncoding.EncodeToString(secret[:])
	return token, hashToken(token), nil
}

// ParseToken returns the club that a token names and the hash to look up. It proves nothing by itself: the session
// is the one stored under that hash for that club. It returns ErrToken when the text has another form.
func ParseToken(token string) (clubID string, hash []byte, err error) {
	clubID, encoded, found := strings.Cut(token, ".")
	if !found || !isClubID(clubID) || len(encoded) != base64.RawURLEncoding.EncodedLen(secretSize) {
		return "", nil, ErrToken
	}
	if strings.ContainsAny(encoded, "\r\n") { // the decoder would skip them
		return "", nil, ErrToken
	}
	if _, err := base64.RawURLEncoding.Strict().DecodeString(encoded); err != nil {
		return "", nil, ErrToken
	}
	return clubID, hashToken(token), nil
}

// hashToken covers the club too, so that a token moved to another club's name finds nothing.
func hashToken(token string) []byte {
	sum := sha256.Sum256([]byte(token))
	return sum[:]
}

func isClubID(s string) bool {
	return s != "" && len(s) <= clubIDLimit && !strings.ContainsFunc(s, notInClubID)
}

func notInClubID(r rune) bool {
	letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
	return !letter && (r < '0' || r > '9') && r != '-' && r != '_'
}
