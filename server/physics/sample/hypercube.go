package sample

import (
	"cmp"
	"slices"
)

// hypercube fills one dimension with one point in each of as many equal layers as there are points, in an order of its own.
//
//	u_j = (layer_j + r_j)/n
//
// where the layers are the numbers 0 to n-1 in the order of their hash and r_j is a fraction by hash.
// Source: M. D. McKay, R. J. Beckman, W. J. Conover, Technometrics 21 (1979) 239.
func hypercube(out []float64, start uint64) {
	order := make([]int, len(out))
	keys := make([]uint64, len(out))
	for j := range order {
		order[j], keys[j] = j, mix(start+uint64(2*j))
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(keys[a], keys[b]) })
	for layer, j := range order {
		within := fraction(uint32(mix(start+uint64(2*j+1)) >> 32))
		out[j] = (float64(layer) + within) / float64(len(out))
	}
}
