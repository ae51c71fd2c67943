package api

import (
	"context"
	"errors"
	"fmt"
	"net"
	"strings"
	"time"

	"google.golang.org/grpc/peer"

	"pitgate/server/auth"
	"pitgate/server/club"
)

// doors checks who comes in: passwords, and how often they may be tried.
type doors struct {
	passwords *auth.Passwords
	limit     *auth.SignInLimit
	now       func() time.Time
}

// newDoors returns doors with full budgets of attempts.
func newDoors(now func() time.Time) (*doors, error) {
	passwords, err := auth.NewPasswords(0)
	if err != nil {
		return nil, err
	}
	return &doors{passwords: passwords, limit: auth.NewSignInLimit(), now: now}, nil
}

// verify checks a password against a hash ("" for nobody's) after taking one attempt from the budgets.
func (d *doors) verify(ctx context.Context, clubID, email, password, hash string) (bool, error) {
	if ok, wait := d.limit.Allow(clubID, email, clientAddress(ctx), d.now()); !ok {
		return false, &tooManyError{fmt.Sprintf("too many attempts: try again in %d s", int(wait.Seconds())+1)}
	}
	ok, _, err := d.passwords.Verify(ctx, password, hash)
	return ok, err
}

// passwordAgain asks a signed-in person for the password once more.
func (d *doors) passwordAgain(ctx context.Context, c caller, field, password string) error {
	ok, err := d.verify(ctx, c.club, c.person.Email, password, c.person.PasswordHash)
	if err == nil && !ok {
		err = &club.Error{Code: club.Forbidden, Field: field, Reason: "WRONG_PASSWORD", Message: "this is not your password"}
	}
	return err
}

// hash checks and hashes a new password; a bad one is named by its field.
func (d *doors) hash(ctx context.Context, field, password string) (string, error) {
	hash, err := d.passwords.Hash(ctx, password)
	if errors.Is(err, auth.ErrPassword) {
		text := strings.TrimPrefix(err.Error(), auth.ErrPassword.Error()+": ")
		return "", club.RefuseField(field, "WEAK_PASSWORD", "%s", text)
	}
	return hash, err
}

// clientAddress is the caller's address without port. Behind the edge the connection is in memory and the edge tells the address.
func clientAddress(ctx context.Context) string {
	p, ok := peer.FromContext(ctx)
	if !ok {
		return ""
	}
	if _, inMemory := p.Addr.(*net.TCPAddr); !inMemory {
		hops := strings.Split(incoming(ctx, "x-forwarded-for"), ",")
		return strings.TrimSpace(hops[len(hops)-1])
	}
	host, _, err := net.SplitHostPort(p.Addr.String())
	if err != nil {
		return p.Addr.String()
	}
	return host
}
