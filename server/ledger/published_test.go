package ledger

import (
	"bytes"
	"crypto/ed25519"
	"crypto/sha256"
	"encoding/binary"
	"encoding/csv"
	"encoding/hex"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// row is one published value.
type row struct{ id, inputs, expected string }

func published(t *testing.T, source string) []row {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "..", "testdata", "published", source, "values.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil || len(records) < 2 {
		t.Fatalf("%s: %d records, %v", source, len(records), err)
	}
	var rows []row
	for _, r := range records[1:] {
		rows = append(rows, row{r[0], r[1], r[2]})
	}
	return rows
}

func unhex(t *testing.T, s string) []byte {
	t.Helper()
	b, err := hex.DecodeString(s)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func decode(t *testing.T, text string, into any) {
	t.Helper()
	if err := json.Unmarshal([]byte(text), into); err != nil {
		t.Fatal(err)
	}
}

func TestPublishedRoots(t *testing.T) {
	t.Parallel()
	for _, r := range published(t, "rfc6962") {
		var entries []string
		decode(t, r.inputs, &entries)
		var head Head
		root := head.Root()
		var leaves [][]byte
		for _, entry := range entries {
			leaves = append(leaves, Leaf(unhex(t, entry)))
			head, root = head.Append(leaves[len(leaves)-1])
		}
		if got := hex.EncodeToString(root); got != r.expected {
			t.Errorf("%s: appended one by one: got %s, want %s", r.id, got, r.expected)
		}
		if got := hex.EncodeToString(HeadOf(leaves).Root()); got != r.expected {
			t.Errorf("%s: at once: got %s, want %s", r.id, got, r.expected)
		}
		if head.Size != uint64(len(entries)) {
			t.Errorf("%s: size %d", r.id, head.Size)
		}
	}
}

// The published keys go through this package's own key file, so that its form is checked too.
func TestPublishedSignatures(t *testing.T) {
	t.Parallel()
	for _, r := range published(t, "rfc8032") {
		var in struct {
			Seed, Message string
		}
		var want struct {
			PublicKey string `json:"public_key"`
			Signature string
		}
		decode(t, r.inputs, &in)
		decode(t, r.expected, &want)
		key := storedKey(t, ed25519.NewKeyFromSeed(unhex(t, in.Seed)))
		if got := hex.EncodeToString(key.Public().(ed25519.PublicKey)); got != want.PublicKey {
			t.Errorf("%s: public key %s, want %s", r.id, got, want.PublicKey)
		}
		if got := hex.EncodeToString(ed25519.Sign(key, unhex(t, in.Message))); got != want.Signature {
			t.Errorf("%s: signature %s, want %s", r.id, got, want.Signature)
		}
	}
}

// storedKey writes key in this package's form and loads it again.
func storedKey(t *testing.T, key ed25519.PrivateKey) ed25519.PrivateKey {
	t.Helper()
	text, err := formatKey(key)
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "key.pem")
	if err := os.WriteFile(path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	loaded, err := LoadOrCreateKey(path)
	if err != nil {
		t.Fatal(err)
	}
	return loaded
}

func TestPublishedCanonicalForms(t *testing.T) {
	t.Parallel()
	for _, r := range published(t, "rfc8785") {
		if digits, ok := strings.CutPrefix(r.id, "number-"); ok {
			checkNumber(t, r, unhex(t, digits))
			continue
		}
		canonical, err := Canonical([]byte(r.inputs))
		if err != nil {
			t.Errorf("%s: %v", r.id, err)
			continue
		}
		sum := sha256.Sum256(canonical)
		if got := hex.EncodeToString(sum[:]); got != r.expected {
			t.Errorf("%s: got %s of %s, want %s", r.id, got, canonical, r.expected)
		}
		if digest, err := Digest([]byte(r.inputs)); err != nil || !bytes.Equal(digest, sum[:]) {
			t.Errorf("%s: Digest %x, %v", r.id, digest, err)
		}
	}
}

func checkNumber(t *testing.T, r row, raw []byte) {
	t.Helper()
	value := math.Float64frombits(binary.BigEndian.Uint64(raw))
	got, err := Canonical([]byte(strconv.FormatFloat(value, 'g', 17, 64)))
	if err != nil || string(got) != r.expected {
		t.Errorf("%s: got %s, %v, want %s", r.id, got, err, r.expected)
	}
}
