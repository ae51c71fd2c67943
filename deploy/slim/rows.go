package main

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// What is kept of a function beyond the fixed fields: which live variables hold pointers, what was inlined, deferred calls. Places at which another
// thread may stop it, of which WebAssembly has none, and what a stack trace prints of arguments are not.
//
// Source: internal/abi/symtab.go of the toolchain, PCDATA and FUNCDATA.
const (
	keptPlaces = 3
	keptData   = 5
	rowWords   = fixedFields/4 + keptPlaces + keptData
	rowBytes   = 4 * rowWords
)

// idle tells what a running program does not look at, by its number among places and among data.
var idlePlaces, idleData = map[int]bool{0: true, 3: true}, map[int]bool{5: true, 6: true, 7: true}

// row is what is known of one function, in as many words as of every other.
type row [rowWords]uint32

// rowOf takes away what only stack traces need, but for the name.
func rowOf(f function) (row, error) {
	var r row
	for _, field := range []int{0, nameField, argumentsField, deferField, depthField} {
		r[field/4] = uint32(f.word(field))
	}
	r[countField/4] = keptPlaces
	r[kindsField/4] = uint32(f.word(kindsField-3))&0xffffff | keptData<<24
	places := f.word(countField)
	err := errors.Join(
		keep(r[fixedFields/4:fixedFields/4+keptPlaces], f[fixedFields:fixedFields+4*places], idlePlaces, 0),
		keep(r[fixedFields/4+keptPlaces:], f[fixedFields+4*places:], idleData, none))
	return r, err
}

// keep copies words that are not idle; empty stands for one that is not there.
func keep(to []uint32, from []byte, idle map[int]bool, empty uint32) error {
	for i := range to {
		to[i] = empty
	}
	for i := range len(from) / 4 {
		word := binary.LittleEndian.Uint32(from[4*i:])
		switch {
		case idle[i] || word == empty:
		case i < len(to):
			to[i] = word
		default:
			return fmt.Errorf("a function has data %d: is the toolchain a newer one?", i)
		}
	}
	return nil
}

// rows returns what is kept of every function, after names and files are blanked and places hold each sequence once, in the order of its first use.
func (t table) rows() ([]row, error) {
	all := make([]row, t.count)
	for i := range all {
		f, err := t.function(i)
		if err != nil {
			return nil, err
		}
		t.unname(f)
		if all[i], err = rowOf(f); err != nil {
			return nil, err
		}
		if all[i][0] != all[0][0]+uint32(i) {
			return nil, fmt.Errorf("function %d of %d does not follow the one before", i, t.count)
		}
	}
	clear(t.files)
	return all, t.place(all)
}

// place lays the sequences anew.
func (t table) place(all []row) error {
	laid := []byte{0}
	found := map[string]uint32{}
	for _, word := range []int{depthField / 4, fixedFields/4 + 1, fixedFields/4 + 2} {
		for i := range all {
			if all[i][word] == 0 {
				continue
			}
			sequence, err := t.sequence(int(all[i][word]))
			if err != nil {
				return err
			}
			at, known := found[string(sequence)]
			if !known {
				at = uint32(len(laid))
				found[string(sequence)] = at
				laid = append(laid, sequence...)
			}
			all[i][word] = at
		}
	}
	if len(laid) > len(t.places) {
		return errors.New("its table of functions has sequences within others")
	}
	clear(t.places)
	copy(t.places, laid)
	return nil
}
