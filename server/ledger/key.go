package ledger

import (
	"crypto/ed25519"
	"crypto/rand"
	"crypto/x509"
	"encoding/pem"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

const pemType = "PRIVATE KEY"

// LoadOrCreateKey returns the signing key kept in path (PKCS #8 in PEM), making one when there is none. Several
// processes may call it at once: all get the same key. It returns an error when the file can be read by others.
func LoadOrCreateKey(path string) (ed25519.PrivateKey, error) {
	key, err := loadKey(path)
	if errors.Is(err, fs.ErrNotExist) {
		if err := createKey(path); err != nil {
			return nil, fmt.Errorf("signing key: %w", err)
		}
		key, err = loadKey(path)
	}
	if err != nil {
		return nil, fmt.Errorf("signing key: %w", err)
	}
	return key, nil
}

func loadKey(path string) (ed25519.PrivateKey, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	if info.Mode().Perm()&0o077 != 0 {
		return nil, fmt.Errorf("%s can be read by others: chmod 600 it", path)
	}
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	return parseKey(text)
}

func parseKey(text []byte) (ed25519.PrivateKey, error) {
	block, _ := pem.Decode(text)
	if block == nil || block.Type != pemType {
		return nil, fmt.Errorf("no PEM block %q found", pemType)
	}
	parsed, err := x509.ParsePKCS8PrivateKey(block.Bytes)
	if err != nil {
		return nil, err
	}
	key, ok := parsed.(ed25519.PrivateKey)
	if !ok {
		return nil, errors.New("not an Ed25519 key")
	}
	return key, nil
}

func formatKey(key ed25519.PrivateKey) ([]byte, error) {
	der, err := x509.MarshalPKCS8PrivateKey(key)
	if err != nil {
		return nil, err
	}
	return pem.EncodeToMemory(&pem.Block{Type: pemType, Bytes: der}), nil
}

// createKey writes a new key beside path and links it in place; linking fails when another process was first,
// whose key is then the one that counts.
func createKey(path string) error {
	_, key, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		return err
	}
	text, err := formatKey(key)
	if err != nil {
		return err
	}
	draft, err := writeDraft(path, text)
	if err != nil {
		return err
	}
	defer os.Remove(draft)
	if err := os.Link(draft, path); err != nil && !errors.Is(err, fs.ErrExist) {
		return err
	}
	return nil
}

// writeDraft writes a 0600 file next to path and flushes it to disk.
func writeDraft(path string, content []byte) (string, error) {
	draft, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+"-*")
	if err != nil {
		return "", err
	}
	_, err = draft.Write(content)
	if err := errors.Join(err, draft.Sync(), draft.Close()); err != nil {
		return "", errors.Join(err, os.Remove(draft.Name()))
	}
	return draft.Name(), nil
}
