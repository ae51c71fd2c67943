package main

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"regexp"
)

// kept is in the names that the runtime tells functions by: its own goroutines, which do not count as the program's, and two functions of reflect.
//
// Source: isSystemGoroutine and argMapInternal in the runtime of the toolchain.
var kept = regexp.MustCompile(`^(runtime\.(bgsweep|bgscavenge|gcBgMarkWorker|forcegchelper|updateMaxProcsGoroutine|.*gowrap[0-9]*)|reflect\.[a-zA-Z]+)$`)

// magic begins the table: its layout, that of Go 1.20 and later, then smallest instruction and pointer size on this processor.
var magic = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// table is the runtime's table of functions, in place.
//
// Source: runtime/symtab.go and runtime/runtime2.go of the toolchain, pcHeader and _func.
type table struct {
	count     int    // of functions
	names     []byte // each with a zero after it
	files     []byte // which files a package has, then their paths
	places    []byte // by what is true from which instruction on: depth of the stack, file, line, live variables
	functions []byte // where each begins, then what is known of each
	at        int    // where functions begins in the data
}

// Where the fields of a function lie, in bytes.
const (
	nameField      = 4
	argumentsField = 8
	deferField     = 12
	depthField     = 16
	countField     = 28
	kindsField     = 43 // a byte: how many kinds of data follow the places
	fixedFields    = 44
)

// none is the offset of data that a function does not have.
const none = 1<<32 - 1

// find finds the table.
func find(image []byte) (table, error) {
	at := bytes.Index(image, magic)
	if at < 0 || bytes.Contains(image[at+1:], magic) || len(image) < at+8+8*9 {
		return table{}, errors.New("its table of functions is not where it was: is the toolchain a newer one?")
	}
	rest := image[at:]
	offset := func(word int) int { return int(binary.LittleEndian.Uint64(rest[8*word:])) }
	bounds := []int{offset(4), offset(5), offset(7), offset(8), len(rest)}
	for i := range bounds[1:] {
		if bounds[i] < 0 || bounds[i] > bounds[i+1] {
			return table{}, errors.New("its table of functions has parts out of order")
		}
	}
	if offset(1) < 0 || offset(1) > (len(rest)-bounds[3])/(2*4) {
		return table{}, errors.New("its table of functions counts more than it holds")
	}
	return table{offset(1), rest[bounds[0]:bounds[1]], rest[bounds[1]:bounds[2]], rest[bounds[2]:bounds[3]], rest[bounds[3]:], at + bounds[3]}, nil
}

// function is what is known of one function.
type function []byte

func (f function) word(at int) int { return int(binary.LittleEndian.Uint32(f[at:])) }

func (t table) function(i int) (function, error) {
	at := int(binary.LittleEndian.Uint32(t.functions[8*i+4:]))
	if at+fixedFields > len(t.functions) {
		return nil, fmt.Errorf("function %d of %d lies outside", i, t.count)
	}
	f := function(t.functions[at:])
	size := fixedFields + 4*(f.word(countField)+int(f[kindsField]))
	if size > len(f) || f.word(0) != int(binary.LittleEndian.Uint32(t.functions[8*i:])) || f.word(nameField) >= len(t.names) {
		return nil, fmt.Errorf("function %d of %d has another layout: is the toolchain a newer one?", i, t.count)
	}
	return f[:size], nil
}

// sequence is one of pairs, how a value changes and for how many instructions, up to the zero that ends it. At 0 there is none.
func (t table) sequence(from int) ([]byte, error) {
	if from >= len(t.places) {
		return nil, fmt.Errorf("a sequence at %d of %d", from, len(t.places))
	}
	r := reader{t.places[from:]}
	for first := true; ; first = false {
		change, err := r.number()
		if err != nil {
			return nil, err
		}
		if change == 0 && !first {
			return t.places[from : len(t.places)-len(r.rest)], nil
		}
		if _, err := r.number(); err != nil {
			return nil, err
		}
	}
}

// unname takes a function's name away unless the runtime needs it.
func (t table) unname(f function) {
	at := f.word(nameField)
	name, _, _ := bytes.Cut(t.names[at:], []byte{0})
	if kept.Match(name) {
		return
	}
	clear(name)
	binary.LittleEndian.PutUint32(f[nameField:], 0)
}
