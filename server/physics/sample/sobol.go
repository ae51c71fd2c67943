package sample

import "math/bits"

const (
	// MaximumSobol is how many dimensions the sequence has; those beyond come from a Latin hypercube.
	MaximumSobol = 256
	// sobolBits is how many binary digits a coordinate has.
	sobolBits = 32
	// nestedBits is how many digits are scrambled each by the digits before it; a point has those to itself in runs of up to 2^16, so that the
	// digits after them are as good as drawn at once.
	nestedBits = 16
)

// columns are the direction numbers of one dimension as binary fractions of 32 digits.
type columns [sobolBits]uint32

// directionColumns returns the direction numbers of a dimension, counted from zero:
//
//	m_k = 2 a_1 m_{k-1} xor 4 a_2 m_{k-2} xor ... xor 2^s m_{k-s} xor m_{k-s}
//
// where a_1, a_2, ... are the inner coefficients of the primitive polynomial of degree s and m_1 to m_s its starting numbers; the fraction is
// m_k/2^k.
// Source: P. Bratley, B. L. Fox, "Algorithm 659", ACM Trans. Math. Softw. 14 (1988) 88; numbers of Joe and Kuo (2008).
func directionColumns(dimension int) columns {
	var v columns
	if dimension == 0 {
		for k := range v {
			v[k] = 1 << (sobolBits - 1 - k)
		}
		return v
	}
	d := &directions[dimension-1]
	degree := bits.Len32(d.polynomial) - 1
	for k := range v {
		if k < degree {
			v[k] = d.starts[k] << (sobolBits - 1 - k)
			continue
		}
		v[k] = v[k-degree] ^ v[k-degree]>>degree
		for i := 1; i < degree; i++ {
			if d.polynomial>>(degree-i)&1 == 1 {
				v[k] ^= v[k-i]
			}
		}
	}
	return v
}

// at returns the coordinate of a point of the sequence in the order of the Gray code.
func (v *columns) at(point int) uint32 {
	x := uint32(0)
	for gray := uint32(point) ^ uint32(point)>>1; gray != 0; gray &= gray - 1 {
		x ^= v[bits.TrailingZeros32(gray)]
	}
	return x
}

// scramble turns digit after digit of a coordinate by a coin that depends on the digits before it, which keeps every count of points in every
// elementary interval.
//
// Valid for: runs of up to 2^16 points.
// Source: A. B. Owen, "Randomly permuted (t,m,s)-nets and (t,s)-sequences", 1995; coins by hash after B. Burley, "Practical hash-based Owen
// scrambling", J. Comput. Graph. Tech. 9 (2020).
func scramble(x uint32, start uint64) uint32 {
	out := uint32(0)
	for k := range nestedBits {
		// The digits before, with a one in front of them so that 0 and 00 differ.
		before := uint64(x)>>(sobolBits-k) | 1<<k
		coin := uint32(mix(start+before) & 1)
		digit := x >> (sobolBits - 1 - k) & 1
		out |= (digit ^ coin) << (sobolBits - 1 - k)
	}
	const rest = 1<<(sobolBits-nestedBits) - 1
	tail := uint32(mix(start+(uint64(x)>>(sobolBits-nestedBits)|1<<nestedBits)) >> nestedBits)
	return out | (x^tail)&rest
}

// fraction returns the middle of the interval that a coordinate stands for, inside 0 to 1 and never at an end.
func fraction(x uint32) float64 { return float64((float64(x) + 0.5) / (1 << sobolBits)) }
