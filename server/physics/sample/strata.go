package sample

import "math/bits"

// Strata returns, for each dimension, in which of 2^digits equal layers of 0 to 1 each of the first 2^digits points of New lies: every layer holds one
// point of every dimension.
//
// The coins of scramble hang on the digits before, so that the layers of all points follow from one coin an inner knot of the tree of digits.
// Valid for: 1 to 12 digits and up to 256 dimensions; other numbers are brought within them. Source: as New.
func Strata(dimensions, digits int, seed uint64) [][]uint16 {
	digits = min(max(digits, 1), mostStrataDigits)
	out := make([][]uint16, min(max(dimensions, 0), MaximumSobol))
	count := 1 << digits
	all, turned := make([]uint16, len(out)*count), make([]uint16, 2*count)
	for d := range out {
		out[d] = all[d*count : (d+1)*count : (d+1)*count]
		turn(turned, digits, stream(seed, d))
		v, x := directionColumns(d), uint32(0)
		for j := range out[d] {
			out[d][j] = turned[count+int(x>>(sobolBits-digits))]
			x ^= v[bits.TrailingZeros32(uint32(j+1))]
		}
	}
	return out
}

// mostStrataDigits is how many digits a layer may have.
const mostStrataDigits = 12

// turn fills in what scramble makes of the leading digits: that of the digits p, k of them, stands at 1<<k + p.
func turn(out []uint16, digits int, start uint64) {
	out[1] = 0
	for before := 1; before < 1<<digits; before++ {
		coin := uint16(mix(start+uint64(before)) & 1)
		out[2*before], out[2*before+1] = out[before]<<1|coin, out[before]<<1|coin^1
	}
}
