// Package digest is SHA-256 for the page's core: that of the standard library brings a source of randomness of 32 MB and every other digest along, which a
// phone would keep for nothing. Everywhere else the standard library's is used.
package digest

import (
	"encoding/binary"
	"math/bits"
)

// Size of a digest in bytes.
const Size = 32

const block = 64

// first are the first 32 bits of the fractional parts of the square roots of the first eight primes.
//
// Source: FIPS 180-4, 5.3.3.
var first = [8]uint32{0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19}

// constants are the first 32 bits of the fractional parts of the cube roots of the first 64 primes.
//
// Source: FIPS 180-4, 4.2.2.
var constants = [block]uint32{
	0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
	0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
	0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
	0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
	0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
	0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
	0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
	0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
}

// Sum256 returns the SHA-256 of a text.
//
// Source: FIPS 180-4, 6.2.2.
func Sum256(text []byte) [Size]byte {
	state := first
	for _, part := range [][]byte{text[:len(text)-len(text)%block], padded(text)} {
		for ; len(part) > 0; part = part[block:] {
			state = next(state, part[:block])
		}
	}
	var sum [Size]byte
	for i, word := range state {
		binary.BigEndian.PutUint32(sum[4*i:], word)
	}
	return sum
}

// padded returns the last blocks: the rest of a text, one bit, zeros, and the length of the whole in bits.
//
// Source: FIPS 180-4, 5.1.1.
func padded(text []byte) []byte {
	last := append([]byte(nil), text[len(text)-len(text)%block:]...)
	last = append(last, 0x80)
	for len(last)%block != block-8 {
		last = append(last, 0)
	}
	return binary.BigEndian.AppendUint64(last, uint64(len(text))*8)
}

// schedule expands a block to 64 words.
//
// Source: FIPS 180-4, 6.2.2, step 1.
func schedule(part []byte) (words [block]uint32) {
	for i := range 16 {
		words[i] = binary.BigEndian.Uint32(part[4*i:])
	}
	for i := 16; i < block; i++ {
		late, early := words[i-2], words[i-15]
		words[i] = words[i-16] + words[i-7] + (right(early, 7) ^ right(early, 18) ^ early>>3) + (right(late, 17) ^ right(late, 19) ^ late>>10)
	}
	return words
}

// next takes one block into the state.
//
// Source: FIPS 180-4, 6.2.2, steps 2 to 4.
func next(state [8]uint32, part []byte) [8]uint32 {
	a, b, c, d, e, f, g, h := state[0], state[1], state[2], state[3], state[4], state[5], state[6], state[7]
	for i, word := range schedule(part) {
		t1 := h + (right(e, 6) ^ right(e, 11) ^ right(e, 25)) + (e&f ^ ^e&g) + constants[i] + word
		t2 := (right(a, 2) ^ right(a, 13) ^ right(a, 22)) + (a&b ^ a&c ^ b&c)
		a, b, c, d, e, f, g, h = t1+t2, a, b, c, d+t1, e, f, g
	}
	for i, word := range [8]uint32{a, b, c, d, e, f, g, h} {
		state[i] += word
	}
	return state
}

func right(word uint32, by int) uint32 { return bits.RotateLeft32(word, -by) }
