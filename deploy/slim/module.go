package main

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
)

// Of the binary format: WebAssembly Core Specification, section 5.
const (
	headerBytes     = 8
	customSection   = 0
	typeSection     = 1
	importSection   = 2
	functionSection = 3
	exportSection   = 7
	startSection    = 8
	codeSection     = 10
	dataSection     = 11
	constant        = 0x41 // i32.const
	end             = 0x0b
)

var errShort = errors.New("ends too early")

// section is one part of a module.
type section struct {
	id      byte
	content []byte
}

// sections splits a module.
func sections(module []byte) ([]section, error) {
	if !bytes.HasPrefix(module, []byte("\x00asm\x01\x00\x00\x00")) {
		return nil, errors.New("is not a WebAssembly module")
	}
	var all []section
	for r := (reader{module[headerBytes:]}); len(r.rest) > 0; {
		id, err := r.byte()
		if err != nil {
			return nil, err
		}
		content, err := r.block()
		if err != nil {
			return nil, err
		}
		all = append(all, section{id, content})
	}
	return all, nil
}

// append writes the section after out.
func (s section) append(out []byte) []byte { return appendBlock(append(out, s.id), s.content) }

// reader reads from the front of a text.
type reader struct{ rest []byte }

func (r *reader) byte() (byte, error) {
	if len(r.rest) == 0 {
		return 0, errShort
	}
	b := r.rest[0]
	r.rest = r.rest[1:]
	return b, nil
}

// number reads an unsigned LEB128.
func (r *reader) number() (int, error) {
	value, width := binary.Uvarint(r.rest)
	if width <= 0 || value > 1<<32 {
		return 0, errShort
	}
	r.rest = r.rest[width:]
	return int(value), nil
}

// signed reads a signed LEB128 of at most 32 bits that is not negative: an address.
func (r *reader) signed() (int, error) {
	value, shift := 0, 0
	for {
		b, err := r.byte()
		if err != nil {
			return 0, err
		}
		value |= int(b&0x7f) << shift
		shift += 7
		if b < 0x80 {
			if b&0x40 != 0 || shift > 35 {
				return 0, fmt.Errorf("an address of %d bits or below zero", shift)
			}
			return value, nil
		}
	}
}

// block reads a length and as many bytes.
func (r *reader) block() ([]byte, error) {
	length, err := r.number()
	if err != nil || length > len(r.rest) {
		return nil, errShort
	}
	content := r.rest[:length]
	r.rest = r.rest[length:]
	return content, nil
}

func appendBlock(out, content []byte) []byte {
	return append(binary.AppendUvarint(out, uint64(len(content))), content...)
}

// appendSigned writes a signed LEB128.
func appendSigned(out []byte, n int) []byte {
	for n < -0x40 || n >= 0x40 {
		out = append(out, byte(n)|0x80)
		n >>= 7
	}
	return append(out, byte(n)&0x7f)
}
