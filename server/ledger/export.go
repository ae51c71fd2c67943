package ledger

import (
	"crypto/ed25519"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
)

// ExportFormat is the first member of every export and names this layout.
const ExportFormat = "pitgate ledger export v1"

const (
	// exportLimit is the largest export that is read, in bytes.
	exportLimit = 1 << 30
	// entryLimit is the largest single entry, in bytes.
	entryLimit = 1 << 20
)

// Export is a club's whole ledger in one JSON file. Entries stand in the order in which they were appended; the
// heads rise in tree size, and the last one covers every entry.
type Export struct {
	Format    string            `json:"format"`
	ClubID    string            `json:"club_id"`
	PublicKey []byte            `json:"public_key"`
	Entries   []json.RawMessage `json:"entries"`
	Heads     []SignedHead      `json:"heads"`
}

// ReadExport decodes an export and checks its form: every member once, none unknown, nothing after the end. It
// does not check signatures or hashes. Errors wrap ErrForm.
func ReadExport(r io.Reader) (Export, error) {
	in := exportReader{dec: json.NewDecoder(io.LimitReader(r, exportLimit))}
	if err := in.read(); err != nil {
		return Export{}, fmt.Errorf("%w: %w", ErrForm, err)
	}
	return in.export, in.export.checkForm()
}

// exportReader reads member by member: encoding/json alone would let a second "entries" replace the first one, so
// that two readers of one file could see two ledgers.
type exportReader struct {
	dec    *json.Decoder
	export Export
}

func (in *exportReader) read() error {
	if err := in.expect('{'); err != nil {
		return err
	}
	seen := map[string]bool{}
	for in.dec.More() {
		token, err := in.dec.Token()
		if err != nil {
			return err
		}
		name, _ := token.(string)
		if seen[name] {
			return fmt.Errorf("member %q stands twice", name)
		}
		seen[name] = true
		if err := in.member(name); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	if err := in.expect('}'); err != nil {
		return err
	}
	return in.end()
}

func (in *exportReader) member(name string) error {
	switch name {
	case "format":
		return in.dec.Decode(&in.export.Format)
	case "club_id":
		return in.dec.Decode(&in.export.ClubID)
	case "public_key":
		return in.dec.Decode(&in.export.PublicKey)
	case "entries":
		return in.dec.Decode(&in.export.Entries)
	case "heads":
		return in.heads()
	}
	return errors.New("no such member")
}

// heads reads the heads strictly: no member twice, none unknown.
func (in *exportReader) heads() error {
	var raw json.RawMessage
	if err := in.dec.Decode(&raw); err != nil {
		return err
	}
	if _, err := Canonical(raw); err != nil { // refuses members named twice
		return err
	}
	strict := json.NewDecoder(strings.NewReader(string(raw)))
	strict.DisallowUnknownFields()
	return strict.Decode(&in.export.Heads)
}

func (in *exportReader) expect(delim json.Delim) error {
	token, err := in.dec.Token()
	if err != nil {
		return err
	}
	if token != delim {
		return fmt.Errorf("expected %v, got %v", delim, token)
	}
	return nil
}

func (in *exportReader) end() error {
	if _, err := in.dec.Token(); !errors.Is(err, io.EOF) {
		return errors.New("more text follows the end")
	}
	return nil
}

func (e Export) checkForm() error {
	switch {
	case e.Format != ExportFormat:
		return fmt.Errorf("%w: format: want %q, got %q", ErrForm, ExportFormat, e.Format)
	case e.ClubID == "" || strings.ContainsAny(e.ClubID, "\r\n"):
		return fmt.Errorf("%w: club_id: must be one line", ErrForm)
	case len(e.PublicKey) != ed25519.PublicKeySize:
		return fmt.Errorf("%w: public_key: must have %d bytes, got %d", ErrForm, ed25519.PublicKeySize, len(e.PublicKey))
	case len(e.Heads) == 0:
		return fmt.Errorf("%w: heads: at least one signed head is needed", ErrForm)
	}
	return nil
}

// Fingerprint returns a short name of a public key to compare by eye: the first 16 bytes of its SHA-256 in groups
// of four hexadecimal digits.
func Fingerprint(key ed25519.PublicKey) string {
	sum := sha256.Sum256(key)
	digits := hex.EncodeToString(sum[:16])
	var groups []string
	for at := 0; at < len(digits); at += 4 {
		groups = append(groups, digits[at:at+4])
	}
	return strings.Join(groups, " ")
}
