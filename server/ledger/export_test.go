package ledger

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"
)

const testClub = "0195f0a2-7c11-7d4e-9a53-6c1a2f3b4d5e"

var testBegin = time.Date(2026, 4, 11, 9, 0, 0, 0, time.UTC)

// signedAt returns the head over the first size entries, signed with the key of the given seed.
func signedAt(entries []json.RawMessage, size int, seed byte) SignedHead {
	var leaves [][]byte
	for _, entry := range entries[:size] {
		canonical, err := Canonical(entry)
		if err != nil {
			panic(err)
		}
		leaves = append(leaves, Leaf(canonical))
	}
	_, key := testKey(seed)
	at, root := testBegin.Add(time.Duration(size)*time.Hour), HeadOf(leaves).Root()
	return SignedHead{uint64(size), root, at, SignHead(key, testClub, uint64(size), root, at)}
}

func sampleExport() Export {
	public, _ := testKey(1)
	e := Export{Format: ExportFormat, ClubID: testClub, PublicKey: public}
	for i, what := range []string{"submitted", "desk review", "returned", "submitted", "desk review", "bench inspection", "signed"} {
		e.Entries = append(e.Entries, fmt.Appendf(nil, `{"approval":"Redshank","number":%d,"to":%q}`, i, what))
	}
	for _, size := range []int{0, 2, 5, 7} {
		e.Heads = append(e.Heads, signedAt(e.Entries, size, 1))
	}
	return e
}

func written(t *testing.T, e Export) []byte {
	t.Helper()
	text, err := json.MarshalIndent(e, "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func TestVerifyExport(t *testing.T) {
	t.Parallel()
	e := sampleExport()
	got, err := VerifyExport(bytes.NewReader(written(t, e)), e.Heads[1], e.Heads[2])
	if err != nil {
		t.Fatal(err)
	}
	last := e.Heads[3]
	if got.Entries != 7 || got.Heads != 4 || got.ClubID != testClub || !bytes.Equal(got.RootHash, last.RootHash) {
		t.Errorf("result %+v", got)
	}
	if !got.FirstSigned.Equal(testBegin) || !got.LastSigned.Equal(last.Time) {
		t.Errorf("signed %v to %v", got.FirstSigned, got.LastSigned)
	}
	if want := Fingerprint(e.PublicKey); got.Fingerprint != want || len(want) != 39 {
		t.Errorf("fingerprint %q, want %q", got.Fingerprint, want)
	}
}

func TestTamperedExportIsRefused(t *testing.T) {
	t.Parallel()
	tests := []struct {
		name   string
		tamper func(*Export)
		want   error
		says   string
	}{
		{"changed entry", func(e *Export) { e.Entries[3] = json.RawMessage(`{"approval":"Redshank","number":3,"to":"signed"}`) }, ErrMismatch, "from 2 to 4"},
		{"changed last entry", func(e *Export) { e.Entries[6] = json.RawMessage(`{"to":"refused"}`) }, ErrMismatch, "from 5 to 6"},
		{"removed end", func(e *Export) { e.Entries = e.Entries[:6] }, ErrMismatch, "the end was cut off"},
		{"removed middle", func(e *Export) { e.Entries = slices.Delete(e.Entries, 2, 3) }, ErrMismatch, "from 2 to 4"},
		{"inserted entry", func(e *Export) { e.Entries = slices.Insert(e.Entries, 2, json.RawMessage(`{}`)) }, ErrMismatch, "from 2 to 4"},
		{"added entry", func(e *Export) { e.Entries = append(e.Entries, json.RawMessage(`{}`)) }, ErrMismatch, "7 to 7 stand under no signed head"},
		{"swapped entries", func(e *Export) { e.Entries[5], e.Entries[6] = e.Entries[6], e.Entries[5] }, ErrMismatch, "from 5 to 6"},
		{"removed last head", func(e *Export) { e.Heads = e.Heads[:3] }, ErrMismatch, "5 to 6"},
		{"swapped heads", func(e *Export) { e.Heads[1], e.Heads[2] = e.Heads[2], e.Heads[1] }, ErrMismatch, "older"},
		{"no head", func(e *Export) { e.Heads = nil }, ErrForm, "heads"},
		{"wrong signature", func(e *Export) { e.Heads[2].Signature[7] ^= 1 }, ErrSignature, "heads[2]"},
		{"short signature", func(e *Export) { e.Heads[2].Signature = nil }, ErrSignature, "heads[2]"},
		{"moved time", func(e *Export) { e.Heads[2].Time = e.Heads[2].Time.Add(time.Second) }, ErrSignature, "heads[2]"},
		{"another key", func(e *Export) { e.PublicKey, _ = testKey(2) }, ErrSignature, "heads[0]"},
		{"another club", func(e *Export) { e.ClubID = "0195f0a2-0000-7d4e-9a53-6c1a2f3b4d5e" }, ErrSignature, "heads[0]"},
		{"root without signature", func(e *Export) { e.Heads[3].RootHash[0] ^= 1 }, ErrSignature, "heads[3]"},
		{"short key", func(e *Export) { e.PublicKey = e.PublicKey[1:] }, ErrForm, "public_key"},
		{"another format", func(e *Export) { e.Format = "ledger v0" }, ErrForm, "format"},
		{"entry is no object", func(e *Export) { e.Entries[0] = json.RawMessage(`7`) }, ErrForm, "entries[0]"},
		{"entry with a member twice", func(e *Export) { e.Entries[0] = json.RawMessage(`{"a":1,"a":2}`) }, ErrForm, "entries[0]"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			t.Parallel()
			e := sampleExport()
			test.tamper(&e)
			_, err := VerifyExport(bytes.NewReader(written(t, e)))
			if !errors.Is(err, test.want) || !strings.Contains(err.Error(), test.says) {
				t.Errorf("got %v, want %v saying %q", err, test.want, test.says)
			}
		})
	}
}

// Whoever holds the key can sign another history; a head kept elsewhere shows it.
func TestKnownHeadExposesARewrittenLedger(t *testing.T) {
	t.Parallel()
	kept := sampleExport().Heads[2]
	tests := []struct {
		name    string
		rewrite func(*Export)
		want    error
	}{
		{"rolled back", func(e *Export) { e.Entries, e.Heads = e.Entries[:2], e.Heads[:2] }, ErrMismatch},
		{"signed again", func(e *Export) {
			e.Entries[3] = json.RawMessage(`{"to":"signed"}`)
			e.Heads = []SignedHead{signedAt(e.Entries, 7, 1)}
		}, ErrMismatch},
		{"signed with another key", func(e *Export) {
			e.PublicKey, _ = testKey(2)
			e.Heads = []SignedHead{signedAt(e.Entries, 7, 2)}
		}, ErrSignature},
	}
	for _, test := range tests {
		e := sampleExport()
		test.rewrite(&e)
		text := written(t, e)
		if _, err := VerifyExport(bytes.NewReader(text)); err != nil {
			t.Errorf("%s: the file must agree with itself: %v", test.name, err)
		}
		if _, err := VerifyExport(bytes.NewReader(text), kept); !errors.Is(err, test.want) || !strings.Contains(err.Error(), "known head 0") {
			t.Errorf("%s: got %v, want %v", test.name, err, test.want)
		}
	}
}

func TestExportForm(t *testing.T) {
	t.Parallel()
	good := string(written(t, sampleExport()))
	tests := map[string]string{
		"empty":               "",
		"an array":            "[]",
		"cut off":             good[:len(good)-3],
		"more after the end":  good + "{}",
		"unknown member":      strings.Replace(good, `"format"`, `"note": 1, "format"`, 1),
		"entries twice":       strings.Replace(good, `"format"`, `"entries": [], "format"`, 1),
		"entries capitalised": strings.Replace(good, `"entries"`, `"Entries"`, 1),
		"unknown in a head":   strings.Replace(good, `"tree_size"`, `"note": 1, "tree_size"`, 1),
		"twice in a head":     strings.Replace(good, `"tree_size": 7`, `"tree_size": 1, "tree_size": 7`, 1),
		"negative size":       strings.Replace(good, `"tree_size": 7`, `"tree_size": -7`, 1),
	}
	for name, text := range tests {
		if _, err := VerifyExport(strings.NewReader(text)); !errors.Is(err, ErrForm) {
			t.Errorf("%s: got %v, want ErrForm", name, err)
		}
	}
}

// FuzzVerifyExport holds that no input crashes the check, and that what it accepts is bound to the signed root:
// the entries, hashed again on another way, give the root of the result.
func FuzzVerifyExport(f *testing.F) {
	good, err := json.Marshal(sampleExport())
	if err != nil {
		f.Fatal(err)
	}
	f.Add(good)
	f.Add([]byte(`{"format":"pitgate ledger export v1","entries":null,"heads":[{"tree_size":18446744073709551615}]}`))
	f.Add([]byte(`{"entries":[{"a":"\ud800"}]}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		result, err := VerifyExport(bytes.NewReader(text))
		if err != nil {
			return
		}
		e, err := ReadExport(bytes.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		if again := signedAt(e.Entries, len(e.Entries), 1); !bytes.Equal(again.RootHash, result.RootHash) {
			t.Errorf("accepted root %x, hashed again %x", result.RootHash, again.RootHash)
		}
	})
}

// FuzzCanonical holds that the canonical form is JSON and is its own canonical form.
func FuzzCanonical(f *testing.F) {
	for _, seed := range []string{`{"b":[1.50,null],"a":"\u20ac"}`, `-0.0`, `"\\\ud83d\ude02"`, ` [ ] `} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		once, err := Canonical(text)
		if err != nil {
			return
		}
		twice, err := Canonical(once)
		if err != nil || !bytes.Equal(once, twice) || !json.Valid(once) {
			t.Errorf("%q became %q, then %q, %v", text, once, twice, err)
		}
	})
}
