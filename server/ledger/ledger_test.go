package ledger

import (
	"bytes"
	"crypto/ed25519"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"
)

func someLeaves(n int) [][]byte {
	leaves := make([][]byte, n)
	for i := range leaves {
		leaves[i] = Leaf(fmt.Appendf(nil, "entry %d", i))
	}
	return leaves
}

func TestAppendLeavesTheOldHeadAlone(t *testing.T) {
	t.Parallel()
	for n := range 40 {
		old := HeadOf(someLeaves(n))
		before := old.Root()
		left, leftRoot := old.Append(Leaf([]byte("left")))
		_, rightRoot := old.Append(Leaf([]byte("right")))
		if !bytes.Equal(old.Root(), before) || !bytes.Equal(left.Root(), leftRoot) || bytes.Equal(leftRoot, rightRoot) {
			t.Errorf("size %d: appending changed an earlier head", n)
		}
	}
}

func TestEveryInclusionAndConsistencyProof(t *testing.T) {
	t.Parallel()
	const most = 20
	leaves := someLeaves(most)
	for size := 1; size <= most; size++ {
		root := HeadOf(leaves[:size]).Root()
		for index := range size {
			checkInclusion(t, leaves[:size], uint64(index), root)
		}
		for first := 0; first <= size; first++ {
			checkConsistency(t, leaves[:size], uint64(first), root)
		}
	}
}

func checkInclusion(t *testing.T, leaves [][]byte, index uint64, root []byte) {
	t.Helper()
	size := uint64(len(leaves))
	path, err := Inclusion(leaves, index)
	if err != nil {
		t.Fatal(err)
	}
	if err := VerifyInclusion(leaves[index], index, size, path, root); err != nil {
		t.Errorf("entry %d of %d: %v", index, size, err)
	}
	if err := VerifyInclusion(Leaf([]byte("forged")), index, size, path, root); !errors.Is(err, ErrProof) {
		t.Errorf("entry %d of %d: a forged entry passed: %v", index, size, err)
	}
	if err := VerifyInclusion(leaves[index], index, size, append(path, root), root); !errors.Is(err, ErrProof) {
		t.Errorf("entry %d of %d: a longer path passed: %v", index, size, err)
	}
}

func checkConsistency(t *testing.T, leaves [][]byte, first uint64, root []byte) {
	t.Helper()
	size := uint64(len(leaves))
	path, err := Consistency(leaves, first)
	if err != nil {
		t.Fatal(err)
	}
	firstRoot := HeadOf(leaves[:first]).Root()
	if err := VerifyConsistency(first, size, path, firstRoot, root); err != nil {
		t.Errorf("%d to %d: %v", first, size, err)
	}
	if first == 0 {
		return // anything adds to the empty tree
	}
	rewritten := slices.Clone(leaves[:first])
	rewritten[first/2] = Leaf([]byte("rewritten"))
	if err := VerifyConsistency(first, size, path, HeadOf(rewritten).Root(), root); !errors.Is(err, ErrProof) {
		t.Errorf("%d to %d: a rewritten history passed: %v", first, size, err)
	}
}

func TestProofsOutOfRange(t *testing.T) {
	t.Parallel()
	if _, err := Inclusion(someLeaves(3), 3); err == nil {
		t.Error("an entry beyond the tree was proved")
	}
	if _, err := Consistency(someLeaves(3), 4); err == nil {
		t.Error("a larger first tree was proved")
	}
}

func TestOpenHead(t *testing.T) {
	t.Parallel()
	good := HeadOf(someLeaves(7))
	opened, err := OpenHead(good.Size, good.Hashes)
	if err != nil || !bytes.Equal(opened.Root(), good.Root()) {
		t.Errorf("stored state: %v", err)
	}
	bad := []struct {
		size   uint64
		hashes [][]byte
	}{
		{7, good.Hashes[:2]},
		{8, good.Hashes},
		{0, good.Hashes[:1]},
		{1, [][]byte{good.Hashes[0][:31]}},
		{1, [][]byte{nil}},
	}
	for _, b := range bad {
		if _, err := OpenHead(b.size, b.hashes); err == nil {
			t.Errorf("size %d with %d hashes was taken", b.size, len(b.hashes))
		}
	}
}

func TestCanonicalRefuses(t *testing.T) {
	t.Parallel()
	tests := map[string]string{
		"nothing":              ``,
		"spaces":               `  `,
		"unfinished member":    `{"a":1,"b`,
		"two numbers":          `[1 2]`,
		"a comma too many":     `[1,]`,
		"not a number":         `[NaN]`,
		"hexadecimal":          `[0x10]`,
		"beyond a double":      `[1e400]`,
		"a member twice":       `{"a":1,"a":2}`,
		"twice by an escape":   `{"a":1,"\u0061":2}`,
		"high surrogate alone": `["\ud83d"]`,
		"low surrogate alone":  `["\ude02"]`,
		"surrogates swapped":   `["\ude02\ud83d"]`,
		"high and a letter":    `["\ud83d\u0041"]`,
		"not UTF-8":            "[\"\xff\"]",
		"two texts":            `{} {}`,
		"too deep":             strings.Repeat("[", 101) + strings.Repeat("]", 101),
	}
	for name, text := range tests {
		if out, err := Canonical([]byte(text)); err == nil {
			t.Errorf("%s: %s became %s", name, text, out)
		}
	}
}

func TestCanonicalAccepts(t *testing.T) {
	t.Parallel()
	tests := []struct{ in, want string }{
		{" \n1.0 ", `1`},
		{`"\\ud83d"`, `"\\ud83d"`},
		{`["\ud83d\ude02\\"]`, `["😂\\"]`},
		{`{"span_meters":1.80,"name":"Redshank \"[[["}`, `{"name":"Redshank \"[[[","span_meters":1.8}`},
		{strings.Repeat("[", 100) + strings.Repeat("]", 100), strings.Repeat("[", 100) + strings.Repeat("]", 100)},
	}
	for _, test := range tests {
		if got, err := Canonical([]byte(test.in)); err != nil || string(got) != test.want {
			t.Errorf("%s: got %s, %v, want %s", test.in, got, err, test.want)
		}
	}
}

func TestHeadSignatureBindsEveryPart(t *testing.T) {
	t.Parallel()
	_, key := testKey(1)
	public := key.Public().(ed25519.PublicKey)
	other, _ := testKey(2)
	root, at := HeadOf(someLeaves(3)).Root(), time.Date(2026, 5, 9, 10, 0, 0, 123456789, time.UTC)
	signature := SignHead(key, "larkmoor", 3, root, at)
	here := at.In(time.FixedZone("field", 3600)).Truncate(time.Microsecond)
	if !VerifyHead(public, "larkmoor", 3, root, here, signature) {
		t.Error("the same moment in another zone, as stored, does not verify")
	}
	wrong := map[string]bool{
		"club":      VerifyHead(public, "heathside", 3, root, at, signature),
		"size":      VerifyHead(public, "larkmoor", 4, root, at, signature),
		"root":      VerifyHead(public, "larkmoor", 3, HeadOf(nil).Root(), at, signature),
		"time":      VerifyHead(public, "larkmoor", 3, root, at.Add(time.Microsecond), signature),
		"key":       VerifyHead(other, "larkmoor", 3, root, at, signature),
		"no key":    VerifyHead(nil, "larkmoor", 3, root, at, signature),
		"signature": VerifyHead(public, "larkmoor", 3, root, at, signature[1:]),
	}
	for part, verified := range wrong {
		if verified {
			t.Errorf("verifies with another %s", part)
		}
	}
}

func testKey(seed byte) (ed25519.PublicKey, ed25519.PrivateKey) {
	key := ed25519.NewKeyFromSeed(bytes.Repeat([]byte{seed}, ed25519.SeedSize))
	return key.Public().(ed25519.PublicKey), key
}

func TestKeyIsMadeOnceAndPrivate(t *testing.T) {
	t.Parallel()
	path := filepath.Join(t.TempDir(), "key.pem")
	keys := make([]ed25519.PrivateKey, 8)
	var group sync.WaitGroup
	for i := range keys {
		group.Go(func() {
			var err error
			if keys[i], err = LoadOrCreateKey(path); err != nil {
				t.Error(err)
			}
		})
	}
	group.Wait()
	for i, key := range keys {
		if !key.Equal(keys[0]) {
			t.Errorf("process %d got another key", i)
		}
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("key file: %v, %v", info.Mode(), err)
	}
	if left, _ := filepath.Glob(filepath.Join(filepath.Dir(path), ".key*")); len(left) != 0 {
		t.Errorf("drafts left behind: %v", left)
	}
}

func TestKeyFileRefused(t *testing.T) {
	t.Parallel()
	_, key := testKey(1)
	good, err := formatKey(key)
	if err != nil {
		t.Fatal(err)
	}
	tests := []struct {
		name, content, says string
		mode                os.FileMode
	}{
		{"open to others", string(good), "chmod 600", 0o644},
		{"empty", "", "no PEM block", 0o600},
		{"another block", strings.ReplaceAll(string(good), "PRIVATE", "PUBLIC"), "no PEM block", 0o600},
		{"damaged", strings.Replace(string(good), "MC4CAQ", "MC4CAg", 1), "signing key", 0o600},
	}
	for _, test := range tests {
		path := filepath.Join(t.TempDir(), "key.pem")
		if err := os.WriteFile(path, []byte(test.content), test.mode); err != nil {
			t.Fatal(err)
		}
		if _, err := LoadOrCreateKey(path); err == nil || !strings.Contains(err.Error(), test.says) {
			t.Errorf("%s: got %v, want %q", test.name, err, test.says)
		}
	}
}
