package auth

import (
	"bytes"
	"context"
	"encoding/base64"
	"encoding/csv"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/alexedwards/argon2id"
)

const larkmoor = "0195f0a2-7c11-7d4e-9a53-6c1a2f3b4d5e"

func passwords(t *testing.T, concurrent int) *Passwords {
	t.Helper()
	p, err := NewPasswords(concurrent)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestPublishedPasswordHash(t *testing.T) {
	t.Parallel()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "published", "argon2", "values.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil || len(records) < 2 {
		t.Fatalf("%d records, %v", len(records), err)
	}
	p := passwords(t, 1)
	for _, r := range records[1:] {
		var in struct{ Password, Encoded string }
		if err := json.Unmarshal([]byte(r[1]), &in); err != nil {
			t.Fatal(err)
		}
		ok, outdated, err := p.Verify(context.Background(), in.Password, in.Encoded)
		if err != nil || ok != (r[2] == "match") || outdated {
			t.Errorf("%s: got %v, outdated %v, %v, want %s", r[0], ok, outdated, err, r[2])
		}
	}
}

func TestHashAndVerify(t *testing.T) {
	t.Parallel()
	ctx, p := context.Background(), passwords(t, 2)
	hash, err := p.Hash(ctx, "gorse bank long acre")
	if err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(hash, "$argon2id$v=19$m=19456,t=2,p=1$") {
		t.Errorf("cost: %s", hash)
	}
	other, err := p.Hash(ctx, "gorse bank long acre")
	if err != nil || other == hash {
		t.Errorf("the same password twice gives the same text: %v", err)
	}
	tests := []struct {
		name, password, hash string
		want                 bool
	}{
		{"right", "gorse bank long acre", hash, true},
		{"wrong", "gorse bank long acrE", hash, false},
		{"empty", "", hash, false},
		{"no such person", "gorse bank long acre", "", false},
		{"the decoy's own", "nobody has this password", "", false},
		{"far too long", strings.Repeat("a", 1<<20), hash, false},
	}
	for _, test := range tests {
		if got, _, err := p.Verify(ctx, test.password, test.hash); err != nil || got != test.want {
			t.Errorf("%s: got %v, %v, want %v", test.name, got, err, test.want)
		}
	}
}

// A phone may send an accented letter as one character, another as two.
func TestVerifyAcceptsEitherSpellingOfALetter(t *testing.T) {
	t.Parallel()
	ctx, p := context.Background(), passwords(t, 1)
	hash, err := p.Hash(ctx, "caf\u00e9 in the hangar")
	if err != nil {
		t.Fatal(err)
	}
	if ok, _, err := p.Verify(ctx, "cafe\u0301 in the hangar", hash); err != nil || !ok {
		t.Errorf("got %v, %v", ok, err)
	}
}

func TestOutdatedAndDamagedHashes(t *testing.T) {
	t.Parallel()
	ctx, p := context.Background(), passwords(t, 1)
	cheap := cost
	cheap.Memory = 8 * 1024
	hash, err := argon2id.CreateHash("gorse bank long acre", &cheap)
	if err != nil {
		t.Fatal(err)
	}
	if ok, outdated, err := p.Verify(ctx, "gorse bank long acre", hash); err != nil || !ok || !outdated {
		t.Errorf("cheap hash: %v, outdated %v, %v", ok, outdated, err)
	}
	if ok, outdated, err := p.Verify(ctx, "another password", hash); err != nil || ok || outdated {
		t.Errorf("cheap hash, wrong password: %v, outdated %v, %v", ok, outdated, err)
	}
	damaged := []string{
		"x",
		strings.Replace(hash, "argon2id", "argon2i", 1),
		strings.Replace(hash, "t=2", "t=0", 1),
		strings.Replace(hash, "t=2", "t=4000000000", 1),
		strings.Replace(hash, "p=1", "p=0", 1),
		strings.Replace(hash, "m=8192", "m=4000000000", 1),
		hash[:strings.LastIndex(hash, "$")+1],
	}
	for _, d := range damaged {
		if ok, _, err := p.Verify(ctx, "gorse bank long acre", d); err == nil || ok {
			t.Errorf("%s: got %v, %v, want an error", d, ok, err)
		}
	}
}

func TestOnlySoManyAtATime(t *testing.T) {
	t.Parallel()
	p := passwords(t, 1)
	p.slots <- struct{}{} // somebody else is at work
	ctx, cancel := context.WithTimeout(context.Background(), 10*time.Millisecond)
	defer cancel()
	if _, err := p.Hash(ctx, "gorse bank long acre"); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("Hash: got %v", err)
	}
	if _, _, err := p.Verify(ctx, "gorse bank long acre", ""); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("Verify: got %v", err)
	}
	p.leave()
	if _, err := p.Hash(context.Background(), "gorse bank long acre"); err != nil {
		t.Errorf("after the other left: %v", err)
	}
	if len(p.slots) != 0 {
		t.Error("a place was not given back")
	}
}

func TestCheckPassword(t *testing.T) {
	t.Parallel()
	tests := []struct{ password, says string }{
		{"twelve chars", ""},
		{strings.Repeat("ab", 128), ""},
		{"ääääääääääöö", ""},
		{"eleven char", "at least 12"},
		{"", "at least 12"},
		{strings.Repeat("ab", 128) + "c", "at most 256"},
		{"aaaaaaaaaaaaaaaa", "same character"},
		{"long enough \xff\xfe", "cannot be read"},
	}
	for _, test := range tests {
		err := CheckPassword(test.password)
		if test.says == "" && err != nil {
			t.Errorf("%q: %v", test.password, err)
		}
		if test.says != "" && (!errors.Is(err, ErrPassword) || !strings.Contains(err.Error(), test.says)) {
			t.Errorf("%q: got %v, want %q", test.password, err, test.says)
		}
	}
}

func TestToken(t *testing.T) {
	t.Parallel()
	token, hash, err := NewToken(larkmoor)
	if err != nil {
		t.Fatal(err)
	}
	club, again, err := ParseToken(token)
	if err != nil || club != larkmoor || !bytes.Equal(hash, again) || len(hash) != 32 {
		t.Errorf("got %s, %x, %v", club, again, err)
	}
	if bytes.Contains([]byte(token), hash) {
		t.Error("the token holds its own hash")
	}
	if second, _, _ := NewToken(larkmoor); second == token {
		t.Error("two tokens are the same")
	}
	moved := strings.Replace(token, larkmoor, "0195f0a2-0000-7d4e-9a53-6c1a2f3b4d5e", 1)
	if _, other, err := ParseToken(moved); err != nil || bytes.Equal(other, hash) {
		t.Errorf("a token under another club's name finds the same session: %v", err)
	}
}

func TestTokenRefused(t *testing.T) {
	t.Parallel()
	secret := base64.RawURLEncoding.EncodeToString(make([]byte, 32))
	for name, token := range map[string]string{
		"empty":            "",
		"no club":          "." + secret,
		"no secret":        larkmoor + ".",
		"short secret":     larkmoor + "." + secret[1:],
		"long secret":      larkmoor + "." + secret + "A",
		"line break":       larkmoor + "." + secret[2:] + "\r\n",
		"last bits set":    larkmoor + "." + secret[1:] + "B",
		"other alphabet":   larkmoor + "." + secret[1:] + "+",
		"path in the club": "../" + larkmoor + "." + secret,
		"two dots":         "a.b." + secret,
		"long club":        strings.Repeat("a", 65) + "." + secret,
	} {
		if club, _, err := ParseToken(token); !errors.Is(err, ErrToken) {
			t.Errorf("%s: got %q, %v", name, club, err)
		}
	}
	for _, id := range []string{"", "a.b", "a b", strings.Repeat("a", 65)} {
		if _, _, err := NewToken(id); err == nil {
			t.Errorf("club id %q was taken", id)
		}
	}
}

// FuzzParseToken holds that each accepted text is the only one for its session: the club and the random bits give
// back the very same text.
func FuzzParseToken(f *testing.F) {
	token, _, err := NewToken(larkmoor)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(token)
	f.Add("a." + strings.Repeat("A", 43))
	f.Add("a." + strings.Repeat("A", 41) + "\r\n")
	f.Fuzz(func(t *testing.T, token string) {
		club, hash, err := ParseToken(token)
		if err != nil {
			return
		}
		secret, err := base64.RawURLEncoding.DecodeString(token[len(club)+1:])
		if err != nil || len(secret) != 32 || len(hash) != 32 {
			t.Fatalf("%q: %d random bytes, %v", token, len(secret), err)
		}
		if back := club + "." + base64.RawURLEncoding.EncodeToString(secret); back != token {
			t.Errorf("%q and %q name one session", token, back)
		}
	})
}

func TestSignInLimit(t *testing.T) {
	t.Parallel()
	l, now := newSignInLimit([32]byte{1}), time.Unix(1_800_000_000, 0)
	for i := range perTry.burst {
		if ok, _ := l.Allow(larkmoor, "ada@larkmoor.example", "192.0.2.1", now); !ok {
			t.Fatalf("attempt %d refused", i)
		}
	}
	ok, wait := l.Allow(larkmoor, " ADA@larkmoor.example ", "192.0.2.1", now)
	if ok || wait <= 0 || wait > perTry.every {
		t.Errorf("one too many: %v, wait %v", ok, wait)
	}
	if ok, _ := l.Allow(larkmoor, "ada@larkmoor.example", "192.0.2.1", now.Add(wait)); !ok {
		t.Error("refused after the wait that was told")
	}
	if ok, _ := l.Allow(larkmoor, "ada@larkmoor.example", "192.0.2.2", now); !ok {
		t.Error("another address was refused")
	}
	if ok, _ := l.Allow(larkmoor, "bram@larkmoor.example", "192.0.2.1", now); !ok {
		t.Error("another account was refused")
	}
}

func TestSecretScattersTheKeys(t *testing.T) {
	t.Parallel()
	a, b := NewSignInLimit(), NewSignInLimit()
	first, again := a.scatter("ada"), a.scatter("ada")
	if first != again || a.scatter("ada") == b.scatter("ada") || a.scatter("ada") == a.scatter("bram") {
		t.Error("keys are not scattered by a secret of the limit's own")
	}
}

func TestManyAddressesOnOneAccount(t *testing.T) {
	t.Parallel()
	l, now, allowed := newSignInLimit([32]byte{1}), time.Unix(1_800_000_000, 0), 0
	for i := range 4 * perAccount.burst {
		if ok, _ := l.Allow(larkmoor, "ada@larkmoor.example", "192.0.2."+string(rune('A'+i)), now); ok {
			allowed++
		}
	}
	if allowed != perAccount.burst {
		t.Errorf("%d attempts allowed, want %d", allowed, perAccount.burst)
	}
}

func TestManyAccountsFromOneAddress(t *testing.T) {
	t.Parallel()
	l, now, allowed := newSignInLimit([32]byte{1}), time.Unix(1_800_000_000, 0), 0
	for i := range 4 * perPeer.burst {
		if ok, _ := l.Allow(larkmoor, string(rune('A'+i))+"@larkmoor.example", "192.0.2.1", now); ok {
			allowed++
		}
	}
	if allowed != perPeer.burst {
		t.Errorf("%d attempts allowed, want %d", allowed, perPeer.burst)
	}
}
