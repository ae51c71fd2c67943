package ledger

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"errors"
	"fmt"
	"strconv"
	"unicode/utf8"

	"github.com/gowebpki/jcs"
)

// depthLimit is the deepest nesting accepted; the time to canonicalize grows with depth times length.
const depthLimit = 100

// Canonical returns the one byte form of a JSON text: members sorted by UTF-16 code units, numbers in the shortest
// form that reads back to the same double, no spaces.
// It returns an error for text that is not JSON, is not UTF-8, names a member twice, nests deeper than 100, holds half
// a surrogate pair or a number beyond the range of a double. Integers beyond 2^53 are rounded to a double: send them as strings.
// Source: RFC 8785.
func Canonical(text []byte) ([]byte, error) {
	if err := wellFormed(text); err != nil {
		return nil, fmt.Errorf("canonical json: %w", err)
	}
	out, err := jcs.Transform(bytes.TrimSpace(text))
	if err != nil {
		return nil, fmt.Errorf("canonical json: %w", err)
	}
	return out, nil
}

// Digest returns the SHA-256 of the canonical form of a JSON text.
func Digest(text []byte) ([]byte, error) {
	canonical, err := Canonical(text)
	if err != nil {
		return nil, err
	}
	sum := sha256.Sum256(canonical)
	return sum[:], nil
}

// wellFormed refuses what the canonical form is not defined for. The transformation itself is lenient, so nothing
// malformed may reach it.
func wellFormed(text []byte) error {
	switch {
	case !utf8.Valid(text):
		return errors.New("not UTF-8")
	case !json.Valid(text):
		return errors.New("not a JSON text")
	case depth(text) > depthLimit:
		return fmt.Errorf("nested deeper than %d", depthLimit)
	case hasLoneSurrogate(text):
		return errors.New("half a surrogate pair in a string")
	}
	return nil
}

// depth returns how deep arrays and objects nest in a JSON text.
func depth(text []byte) (deepest int) {
	now, inString := 0, false
	for i := 0; i < len(text); i++ {
		switch c := text[i]; {
		case inString && c == '\\':
			i++
		case c == '"':
			inString = !inString
		case !inString && (c == '[' || c == '{'):
			now++
			deepest = max(deepest, now)
		case !inString && (c == ']' || c == '}'):
			now--
		}
	}
	return deepest
}

// hasLoneSurrogate reports an escape \uD800 to \uDFFF outside of a pair. Backslashes occur only in strings, and
// the text is already known to be JSON.
func hasLoneSurrogate(text []byte) bool {
	for {
		at := bytes.IndexByte(text, '\\')
		if at < 0 {
			return false
		}
		unit, escape := codeUnit(text[at:])
		text = text[at+max(escape, 2):]
		switch {
		case isLow(unit):
			return true
		case isHigh(unit):
			next, length := codeUnit(text)
			if !isLow(next) {
				return true
			}
			text = text[length:]
		}
	}
}

// codeUnit reads a \uXXXX escape at the beginning of text and its length, or 0, 0 when there is none.
func codeUnit(text []byte) (unit uint64, length int) {
	if len(text) < 6 || text[0] != '\\' || text[1] != 'u' {
		return 0, 0
	}
	unit, err := strconv.ParseUint(string(text[2:6]), 16, 16)
	if err != nil {
		return 0, 0
	}
	return unit, 6
}

func isHigh(unit uint64) bool { return unit >= 0xd800 && unit <= 0xdbff }
func isLow(unit uint64) bool  { return unit >= 0xdc00 && unit <= 0xdfff }
