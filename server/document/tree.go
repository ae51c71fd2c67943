package document

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
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

// parse reads exactly one JSON value and refuses what encoding/json would let pass: invalid UTF-8, anything after the
// value, too much and too deep. Repeated keys are kept for the filler to refuse.
func parse(data []byte, found *faults) (node, bool) {
	if len(data) > MaximumBytes {
		found.add("", fmt.Sprintf("must be at most %d bytes, got %d", MaximumBytes, len(data)))
		return node{}, false
	}
	if !utf8.Valid(data) {
		found.add("", "is not valid UTF-8")
		return node{}, false
	}
	reader := treeReader{decoder: json.NewDecoder(bytes.NewReader(data)), found: found}
	reader.decoder.UseNumber()
	root, err := reader.value(0)
	if err == nil {
		err = reader.end()
	}
	if err != nil {
		reader.report(err)
		return node{}, false
	}
	return root, len(found.list) == 0
}

type treeReader struct {
	decoder *json.Decoder
	found   *faults
}

var errDepth = fmt.Errorf("must not be nested deeper than %d", MaximumDepth)

var errTrailing = errors.New("has something after its end")

func (r *treeReader) report(err error) {
	switch {
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		r.found.add("", "ends too early")
	case errors.Is(err, errDepth), errors.Is(err, errTrailing):
		r.found.add("", err.Error())
	default:
		r.found.add("", fmt.Sprintf("is not JSON near byte %d: %v", r.decoder.InputOffset(), err))
	}
}

func (r *treeReader) end() error {
	_, err := r.decoder.Token()
	if errors.Is(err, io.EOF) {
		return nil
	}
	return errTrailing
}

func (r *treeReader) value(depth int) (node, error) {
	if depth > MaximumDepth {
		return node{}, errDepth
	}
	token, err := r.decoder.Token()
	if err != nil {
		return node{}, err
	}
	switch t := token.(type) {
	case json.Delim:
		if t == '{' {
			return r.object(depth)
		}
		return r.array(depth)
	case json.Number:
		return node{kind: kindNumber, text: t.String()}, nil
	case string:
		return node{kind: kindString, text: t}, nil
	case bool:
		return node{kind: kindBool, truth: t}, nil
	}
	return node{kind: kindNull}, nil
}

func (r *treeReader) object(depth int) (node, error) {
	result := node{kind: kindObject}
	for r.decoder.More() {
		token, err := r.decoder.Token()
		if err != nil {
			return node{}, err
		}
		key, _ := token.(string)
		value, err := r.value(depth + 1)
		if err != nil {
			return node{}, err
		}
		result.members = append(result.members, member{key: key, value: value})
	}
	_, err := r.decoder.Token()
	return result, err
}

func (r *treeReader) array(depth int) (node, error) {
	result := node{kind: kindArray}
	for r.decoder.More() {
		value, err := r.value(depth + 1)
		if err != nil {
			return node{}, err
		}
		result.items = append(result.items, value)
	}
	_, err := r.decoder.Token()
	return result, err
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func index(path string, i int) string { return fmt.Sprintf("%s[%d]", path, i) }
