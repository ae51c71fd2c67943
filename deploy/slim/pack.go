package main

import (
	"bytes"
	"encoding/binary"
	"errors"
)

// Of the table by which the runtime finds the function of an instruction: how many entries one function takes, and how long each is.
//
// Source: findfuncbucket in runtime/symtab.go of the toolchain, and what its linker writes for WebAssembly, where a function spans 65,536 addresses.
const (
	bucketsOfOne = 16
	bucketBytes  = 20
)

// layout is where in memory the module writes its table of functions when it starts.
type layout struct {
	first   int // number of the first function
	count   int // of functions
	starts  int // where it is told where each function begins
	offset  int // of the first row, from starts
	tokens  int // the packed rows: first what each word is, then by how much new values differ
	changes int
	scratch int // values seen so far in a column
	finder  int // of the table by which functions are found; tokens, changes and scratch lie in its room until it is written
}

// finderEnd is behind the last entry that is written. The last function's own entries stay in the data, as their count is of another rule.
func (l layout) finderEnd() int { return l.finder + (l.count-1)*bucketsOfOne*bucketBytes }

// condense takes the table of functions out of the data that begins at a place of memory and leaves it there packed, to be written when the module
// starts: it is as large as all else and follows few rules.
func condense(at int, image []byte) (layout, error) {
	t, err := find(image)
	if err != nil {
		return layout{}, err
	}
	if t.count < 2 {
		return layout{}, errors.New("its table of functions is empty")
	}
	rows, err := t.rows()
	if err != nil {
		return layout{}, err
	}
	l := layout{first: int(rows[0][0]), count: t.count, starts: at + t.at, offset: int(binary.LittleEndian.Uint32(t.functions[4:]))}
	if err := t.blank(l.offset); err != nil {
		return layout{}, err
	}
	finder, room, err := takeFinder(image, t.count)
	if err != nil {
		return layout{}, err
	}
	tokens, changes := packed(rows)
	l.finder, l.tokens, l.changes = at+finder, at+finder, at+finder+len(tokens)
	l.scratch = l.changes + len(changes)
	if l.scratch+4*t.count > at+finder+len(room) {
		return layout{}, errors.New("its table of functions does not fit in the room of the finder")
	}
	copy(room, append(tokens, changes...))
	return l, nil
}

// blank clears where the functions begin and what is known of each, from the offset of the first on.
func (t table) blank(offset int) error {
	last, err := t.function(t.count - 1)
	if err != nil {
		return err
	}
	end := int(binary.LittleEndian.Uint32(t.functions[8*(t.count-1)+4:])) + len(last)
	if offset < 8*t.count || offset+rowBytes*t.count > end {
		return errors.New("its table of functions has no room for rows of one length")
	}
	clear(t.functions[:8*t.count])
	clear(t.functions[offset:end])
	return nil
}

// takeFinder clears the table by which functions are found, all but the last function's part, and returns where it was.
func takeFinder(image []byte, count int) (int, []byte, error) {
	want := make([]byte, (count-1)*bucketsOfOne*bucketBytes)
	for i := range (count - 1) * bucketsOfOne {
		binary.LittleEndian.PutUint32(want[i*bucketBytes:], uint32(i/bucketsOfOne))
	}
	// The first entries are zeros, as may be what lies before them: the second function's tell where it is.
	head := bucketsOfOne * bucketBytes
	tail := bytes.Index(image, want[head:])
	if tail < head || !bytes.Equal(image[tail-head:tail], want[:head]) {
		return 0, nil, errors.New("the finder of its functions is not where it was: is the toolchain a newer one?")
	}
	room := image[tail-head:][:len(want)]
	clear(room)
	return tail - head, room, nil
}

// packed writes the rows word by word but for the first, which counts on. A value seen before in the same word is told by its number among those, from
// 1 on; a new one is a zero, and its change from the new one before.
func packed(rows []row) (tokens, changes []byte) {
	for word := 1; word < rowWords; word++ {
		seen := map[uint32]uint64{}
		last := uint32(0)
		for i := range rows {
			value := rows[i][word]
			token := seen[value]
			tokens = binary.AppendUvarint(tokens, token)
			if token == 0 {
				seen[value] = uint64(len(seen) + 1)
				changes = binary.AppendUvarint(changes, uint64(folded(value-last)))
				last = value
			}
		}
	}
	return tokens, changes
}

// folded lays differences to both sides of zero on the numbers from zero on.
func folded(change uint32) uint32 { return change<<1 ^ uint32(int32(change)>>31) }
