package main

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// gap is how many zeros in a row are left out between two pieces of data: fewer cost less written than another address does.
const gap = 512

// most is the highest address of data that is taken for one.
const most = 1 << 26

// load returns the memory that a data section fills, from its first address on.
func load(content []byte) (at int, image []byte, err error) {
	r := reader{content}
	count, err := r.number()
	if err != nil || count == 0 {
		return 0, nil, errors.New("has no data")
	}
	for i := range count {
		address, piece, err := r.piece()
		if err != nil {
			return 0, nil, fmt.Errorf("data %d: %w", i, err)
		}
		if i == 0 {
			at = address
		}
		if address < at || address > most {
			return 0, nil, fmt.Errorf("data %d lies at %d", i, address)
		}
		if more := address + len(piece) - at - len(image); more > 0 {
			image = append(image, make([]byte, more)...)
		}
		copy(image[address-at:], piece)
	}
	return at, image, nil
}

// piece reads one active piece of data of the first memory.
func (r *reader) piece() (address int, content []byte, err error) {
	for _, want := range []byte{0, constant} {
		if got, err := r.byte(); err != nil || got != want {
			return 0, nil, fmt.Errorf("is of another kind: %w", errors.Join(err, errShort))
		}
	}
	address, err = r.signed()
	if err != nil {
		return 0, nil, err
	}
	if got, err := r.byte(); err != nil || got != end {
		return 0, nil, errors.New("has no plain address")
	}
	content, err = r.block()
	return address, content, err
}

// store writes a data section that fills the same memory.
func store(at int, image []byte) []byte {
	var pieces []byte
	count := 0
	for from := nonZero(image, 0); from < len(image); {
		to := pieceEnd(image, from)
		pieces = append(appendSigned(append(pieces, 0, constant), at+from), end)
		pieces = appendBlock(pieces, image[from:to])
		count++
		from = nonZero(image, to)
	}
	return append(binary.AppendUvarint(nil, uint64(count)), pieces...)
}

// nonZero is the first place from here on that is not zero.
func nonZero(image []byte, from int) int {
	for from < len(image) && image[from] == 0 {
		from++
	}
	return from
}

// pieceEnd is where the piece from here on ends: before a gap of zeros.
func pieceEnd(image []byte, from int) int {
	for from < len(image) {
		next := nonZero(image, from)
		if next-from >= gap || next == len(image) {
			return from
		}
		from = next
		for from < len(image) && image[from] != 0 {
			from++
		}
	}
	return from
}
