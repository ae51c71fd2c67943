package digest

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"strings"
	"testing"
)

// TestPublishedDigests compares with the examples of FIPS 180-2, appendix B, and with the digest of nothing.
func TestPublishedDigests(t *testing.T) {
	t.Parallel()
	for _, row := range []struct{ text, want string }{
		{"", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"},
		{"abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"},
		{"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"},
		{strings.Repeat("a", 1_000_000), "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0"},
	} {
		sum := Sum256([]byte(row.text))
		if got := hex.EncodeToString(sum[:]); got != row.want {
			t.Errorf("%.20q: got %s, want %s", row.text, got, row.want)
		}
	}
}

// TestDigestIsThatOfTheStandardLibrary compares texts of every length around the blocks.
func TestDigestIsThatOfTheStandardLibrary(t *testing.T) {
	t.Parallel()
	for length := range 300 {
		text := bytes.Repeat([]byte{byte(length), 0x80, 7}, length/3+1)[:length]
		if Sum256(text) != sha256.Sum256(text) {
			t.Errorf("%d bytes differ", length)
		}
	}
}

// FuzzSum256 compares any text.
func FuzzSum256(f *testing.F) {
	f.Add([]byte("Larkmoor"))
	f.Fuzz(func(t *testing.T, text []byte) {
		if Sum256(text) != sha256.Sum256(text) {
			t.Errorf("%d bytes differ", len(text))
		}
	})
}
