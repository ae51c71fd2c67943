package main

import (
	"encoding/binary"
	"errors"
	"slices"
)

// plainType is of functions without parameters and results.
var plainType = []byte{0x60, 0, 0}

// withStart adds a function of a body to the parts of a module, to run before any other as soon as the memory is filled.
func withStart(parts []section, body []byte) ([]section, error) {
	parts = slices.Clone(parts)
	content := func(id byte) *section {
		i := slices.IndexFunc(parts, func(s section) bool { return s.id == id })
		if i < 0 {
			return &section{}
		}
		return &parts[i]
	}
	kinds, functions, bodies := content(typeSection), content(functionSection), content(codeSection)
	imported, err := count(content(importSection).content)
	if err != nil {
		imported = 0
	}
	own, err := count(functions.content)
	if err != nil {
		return nil, errors.New("has no functions")
	}
	kind, err := kinds.extend(plainType)
	if err == nil {
		_, err = functions.extend(binary.AppendUvarint(nil, uint64(kind)))
	}
	if err == nil {
		_, err = bodies.extend(appendBlock(nil, body))
	}
	if err != nil {
		return nil, err
	}
	at := slices.IndexFunc(parts, func(s section) bool { return s.id > startSection })
	return slices.Insert(parts, at, section{startSection, binary.AppendUvarint(nil, uint64(imported+own))}), nil
}

// count is how many entries a section says that it has.
func count(content []byte) (int, error) {
	r := reader{content}
	return r.number()
}

// extend adds an entry to a section and returns its number.
func (s *section) extend(entry []byte) (int, error) {
	r := reader{s.content}
	n, err := r.number()
	if err != nil {
		return 0, err
	}
	s.content = slices.Concat(binary.AppendUvarint(nil, uint64(n+1)), r.rest, entry)
	return n, nil
}
