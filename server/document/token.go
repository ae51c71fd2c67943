package document

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"
)

// unexpected names what stands where something else must.
func (r *treeReader) unexpected(want string) error {
	character, _ := utf8.DecodeRuneInString(r.rest)
	return errors.New("must be " + want + ", got " + strconv.QuoteRune(character))
}

// word reads one of the three words of JSON.
func (r *treeReader) word(want string) error {
	for i := range len(want) {
		if r.rest == "" {
			return errEarly
		}
		if r.rest[0] != want[i] {
			return r.unexpected(want)
		}
		r.rest = r.rest[1:]
	}
	return nil
}

// number reads a number of JSON: a minus, whole digits without a zero in front, a fraction, an exponent.
//
// Source: RFC 8259, 6.
func (r *treeReader) number() (string, error) {
	whole := r.rest
	r.pass("-")
	if !r.pass("0") {
		if err := r.digits("a value"); err != nil {
			return "", err
		}
	}
	if r.pass(".") {
		if err := r.digits("a digit after the point"); err != nil {
			return "", err
		}
	}
	if r.pass("eE") {
		r.pass("+-")
		if err := r.digits("a digit of the exponent"); err != nil {
			return "", err
		}
	}
	return whole[:len(whole)-len(r.rest)], nil
}

// pass passes over one of the characters, if one is there.
func (r *treeReader) pass(one string) bool {
	if r.rest == "" || strings.IndexByte(one, r.rest[0]) < 0 {
		return false
	}
	r.rest = r.rest[1:]
	return true
}

// digits passes over at least one digit.
func (r *treeReader) digits(want string) error {
	after := strings.TrimLeft(r.rest, "0123456789")
	if r.rest == "" {
		return errEarly
	}
	if len(after) == len(r.rest) {
		return r.unexpected(want)
	}
	r.rest = after
	return nil
}

// text reads a text in quotes; a half of a pair of surrogates becomes U+FFFD.
func (r *treeReader) text() (string, error) {
	r.rest = r.rest[1:]
	var text []byte
	for {
		plain := strings.IndexFunc(r.rest, func(c rune) bool { return c < ' ' || c == '"' || c == '\\' })
		if plain < 0 {
			r.rest = ""
			return "", errEarly
		}
		text = append(text, r.rest[:plain]...)
		r.rest = r.rest[plain:]
		switch {
		case r.pass("\""):
			return string(text), nil
		case !r.pass("\\"):
			return "", r.unexpected("escaped in a text")
		}
		character, err := r.escape()
		if err != nil {
			return "", err
		}
		text = utf8.AppendRune(text, character)
	}
}

// escapes are the characters that may stand after a backslash, then what they mean.
const escapes, meanings = `"\/bfnrt`, "\"\\/\b\f\n\r\t"

// escape reads what stands after a backslash.
func (r *treeReader) escape() (rune, error) {
	if r.rest == "" {
		return 0, errEarly
	}
	if at := strings.IndexByte(escapes, r.rest[0]); at >= 0 {
		r.rest = r.rest[1:]
		return rune(meanings[at]), nil
	}
	if !r.pass("u") {
		return 0, r.unexpected("a known character after a backslash")
	}
	unit, err := r.unit()
	if err != nil || unit < firstHigh || unit >= endOfLow {
		return unit, err
	}
	return r.pair(unit)
}

// The halves of a pair of UTF-16 that stands for one character: 0xd800 to 0xdbff, then 0xdc00 to 0xdfff.
const firstHigh, firstLow, endOfLow = 0xd800, 0xdc00, 0xe000

// pair reads the second half of a pair after the first, if there is one.
func (r *treeReader) pair(high rune) (rune, error) {
	before := r.rest
	if high >= firstLow || !strings.HasPrefix(r.rest, `\u`) {
		return utf8.RuneError, nil
	}
	r.rest = r.rest[2:]
	low, err := r.unit()
	if err != nil {
		return 0, err
	}
	if low < firstLow || low >= endOfLow {
		r.rest = before
		return utf8.RuneError, nil
	}
	return 0x10000 + (high-firstHigh)<<10 + (low - firstLow), nil
}

// unit reads four digits of base 16.
func (r *treeReader) unit() (rune, error) {
	var unit rune
	for range 4 {
		if r.rest == "" {
			return 0, errEarly
		}
		digit := strings.IndexByte("0123456789abcdef", r.rest[0]|0x20)
		if digit < 0 || r.rest[0] < '0' {
			return 0, r.unexpected("four digits of base 16 after \\u")
		}
		unit, r.rest = unit<<4|rune(digit), r.rest[1:]
	}
	return unit, nil
}
