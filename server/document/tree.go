package document

import (
	"cmp"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// node is one JSON value with the order of its members kept, so that faults come in the order of the document.
type node struct {
	kind    kind
	text    string // of a string or number
	truth   bool
	members []member
	items   []node
}

type member struct {
	key   string
	value node
}

type kind int

const (
	kindNull kind = iota
	kindBool
	kindNumber
	kindString
	kindArray
	kindObject
)

func (k kind) String() string {
	return [...]string{"null", "a truth value", "a number", "a text", "a list", "an object"}[k]
}

// parse reads exactly one JSON value (RFC 8259) in UTF-8, not too long and not too deep. Repeated keys are kept for the filler to refuse.
func parse(data []byte, found *faults) (node, bool) {
	if len(data) > MaximumBytes {
		found.add("", fmt.Sprintf("must be at most %d bytes, got %d", MaximumBytes, len(data)))
		return node{}, false
	}
	if !utf8.Valid(data) {
		found.add("", "is not valid UTF-8")
		return node{}, false
	}
	reader := treeReader{rest: string(data), length: len(data)}
	root, err := reader.value(0)
	if err == nil {
		err = reader.end()
	}
	if err != nil {
		found.add("", reader.fault(err))
		return node{}, false
	}
	return root, true
}

// treeReader reads JSON from the front of a text.
type treeReader struct {
	rest   string
	length int // of the whole text
}

var (
	errDepth    = fmt.Errorf("must not be nested deeper than %d", MaximumDepth)
	errTrailing = errors.New("has something after its end")
	errEarly    = errors.New("ends too early")
)

// fault puts an error into words, with its place where it has one.
func (r *treeReader) fault(err error) string {
	if err == errDepth || err == errTrailing || err == errEarly { //nolint:errorlint // this file alone makes them and wraps none
		return err.Error()
	}
	return fmt.Sprintf("is not JSON near byte %d: %v", r.length-len(r.rest), err)
}

func (r *treeReader) end() error {
	r.skip()
	if r.rest != "" {
		return errTrailing
	}
	return nil
}

// skip passes over white space.
func (r *treeReader) skip() { r.rest = strings.TrimLeft(r.rest, " \t\r\n") }

// next is the first character after white space, which stays.
func (r *treeReader) next() (byte, error) {
	r.skip()
	if r.rest == "" {
		return 0, errEarly
	}
	return r.rest[0], nil
}

func (r *treeReader) value(depth int) (node, error) {
	if depth > MaximumDepth {
		return node{}, errDepth
	}
	first, err := r.next()
	if err != nil {
		return node{}, err
	}
	switch first {
	case '{':
		return r.object(depth)
	case '[':
		return r.array(depth)
	case '"':
		text, err := r.text()
		return node{kind: kindString, text: text}, err
	case 't':
		return node{kind: kindBool, truth: true}, r.word("true")
	case 'f':
		return node{kind: kindBool}, r.word("false")
	case 'n':
		return node{kind: kindNull}, r.word("null")
	}
	text, err := r.number()
	return node{kind: kindNumber, text: text}, err
}

func (r *treeReader) object(depth int) (node, error) {
	result := node{kind: kindObject}
	err := r.each('}', func() error {
		if first, err := r.next(); err != nil || first != '"' {
			return cmp.Or(err, r.unexpected("the name of a field"))
		}
		key, err := r.text()
		if err != nil {
			return err
		}
		if colon, err := r.next(); err != nil || colon != ':' {
			return cmp.Or(err, r.unexpected("a colon after the name of a field"))
		}
		r.rest = r.rest[1:]
		value, err := r.value(depth + 1)
		result.members = append(result.members, member{key: key, value: value})
		return err
	})
	return result, err
}

func (r *treeReader) array(depth int) (node, error) {
	result := node{kind: kindArray}
	err := r.each(']', func() error {
		value, err := r.value(depth + 1)
		result.items = append(result.items, value)
		return err
	})
	return result, err
}

// each reads entries with commas between them, from behind the opening character to the closing one.
func (r *treeReader) each(closing byte, entry func() error) error {
	r.rest = r.rest[1:]
	first, err := r.next()
	if err != nil {
		return err
	}
	if first == closing {
		r.rest = r.rest[1:]
		return nil
	}
	for {
		if err := entry(); err != nil {
			return err
		}
		after, err := r.next()
		if err != nil {
			return err
		}
		if after != closing && after != ',' {
			return r.unexpected("a comma or " + strconv.Quote(string(closing)))
		}
		r.rest = r.rest[1:]
		if after == closing {
			return nil
		}
	}
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func index(path string, i int) string { return fmt.Sprintf("%s[%d]", path, i) }
