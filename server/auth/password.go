package auth

import (
	"context"
	"errors"
	"fmt"
	"runtime"
	"unicode/utf8"

	"github.com/alexedwards/argon2id"
	"golang.org/x/text/unicode/norm"
)

const (
	// PasswordMin is the fewest characters of a password.
	PasswordMin = 12
	// PasswordMax is the most characters of a password.
	PasswordMax = 256
)

// cost of one hash: 19 MiB, two passes, one lane, the least that the OWASP password storage guide names for Argon2id.
var cost = argon2id.Params{Memory: 19 * 1024, Iterations: 2, Parallelism: 1, SaltLength: 16, KeyLength: 32}

// ErrPassword is wrapped by every error about a password that its owner can put right. The text is for the owner.
var ErrPassword = errors.New("password")

// CheckPassword returns nil when a new password may be used, and otherwise an error in plain words that wraps
// ErrPassword. Length is all that counts: any character is allowed, none is required.
func CheckPassword(password string) error {
	switch length := utf8.RuneCountInString(password); {
	case !utf8.ValidString(password):
		return fmt.Errorf("%w: it holds characters that cannot be read; please type it again", ErrPassword)
	case length < PasswordMin:
		return fmt.Errorf("%w: it has %d characters; please use at least %d, for example four words", ErrPassword, length, PasswordMin)
	case length > PasswordMax:
		return fmt.Errorf("%w: it has %d characters; please use at most %d", ErrPassword, length, PasswordMax)
	case oneCharacter(password):
		return fmt.Errorf("%w: it is the same character over and over; please choose another", ErrPassword)
	}
	return nil
}

func oneCharacter(s string) bool {
	first, _ := utf8.DecodeRuneInString(s)
	for _, r := range s {
		if r != first {
			return false
		}
	}
	return true
}

// Passwords hashes and checks passwords, only so many at a time, since each takes 19 MiB and much of a processor.
type Passwords struct {
	slots chan struct{}
	decoy string
}

// NewPasswords returns a Passwords that works on at most concurrent passwords at a time; others wait for their
// turn. Zero or less means one for each processor.
func NewPasswords(concurrent int) (*Passwords, error) {
	if concurrent <= 0 {
		concurrent = runtime.GOMAXPROCS(0)
	}
	decoy, err := argon2id.CreateHash("nobody has this password", &cost)
	if err != nil {
		return nil, fmt.Errorf("password hash: %w", err)
	}
	return &Passwords{slots: make(chan struct{}, concurrent), decoy: decoy}, nil
}

// Hash returns the text to store for a new password. It returns CheckPassword's error for one that may not be
// used, and the context's error when the turn does not come in time.
func (p *Passwords) Hash(ctx context.Context, password string) (string, error) {
	if err := CheckPassword(password); err != nil {
		return "", err
	}
	if err := p.enter(ctx); err != nil {
		return "", err
	}
	defer p.leave()
	hash, err := argon2id.CreateHash(norm.NFKC.String(password), &cost)
	if err != nil {
		return "", fmt.Errorf("password hash: %w", err)
	}
	return hash, nil
}

// Verify tells whether password is the one that was hashed. Pass an empty hash when there is no such person or no
// password: the answer is then false after the same work, so that the time tells nothing. Outdated means that the
// password matches but the hash was made at a lower cost: hash again and store.
func (p *Passwords) Verify(ctx context.Context, password, hash string) (ok, outdated bool, err error) {
	if utf8.RuneCountInString(password) > PasswordMax {
		password, hash = "", "" // too long to be anybody's; the work is done all the same
	}
	known := hash != ""
	if !known {
		hash = p.decoy
	}
	if err := checkHash(hash); err != nil {
		return false, false, err
	}
	if err := p.enter(ctx); err != nil {
		return false, false, err
	}
	defer p.leave()
	match, params, err := argon2id.CheckHash(norm.NFKC.String(password), hash)
	if err != nil {
		return false, false, fmt.Errorf("password hash: %w", err)
	}
	ok = match && known
	return ok, ok && (params.Memory < cost.Memory || params.Iterations < cost.Iterations), nil
}

// checkHash refuses a stored hash whose cost would stop the server or that the algorithm is not defined for.
func checkHash(hash string) error {
	params, _, _, err := argon2id.DecodeHash(hash)
	if err != nil {
		return fmt.Errorf("password hash: %w", err)
	}
	const mostMemory, mostPasses = 256 * 1024, 16
	if params.Memory > mostMemory || params.Iterations < 1 || params.Iterations > mostPasses || params.Parallelism < 1 || params.KeyLength < 16 {
		return errors.New("password hash: stored cost is out of range")
	}
	return nil
}

func (p *Passwords) enter(ctx context.Context) error {
	select {
	case p.slots <- struct{}{}:
		return nil
	case <-ctx.Done():
		return fmt.Errorf("waiting to check a password: %w", ctx.Err())
	}
}

func (p *Passwords) leave() { <-p.slots }
