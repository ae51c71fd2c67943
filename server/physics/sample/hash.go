package sample

// mix turns a number into one that looks unlike that of its neighbours: two rounds of shift and product, each of which can be turned back, so that no
// two numbers share an image.
//
// Source: G. L. Steele, D. Lea, C. H. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014, variant 13 of the finalizer.
func mix(x uint64) uint64 {
	x ^= x >> 30
	x *= 0xbf58476d1ce4e5b9
	x ^= x >> 27
	x *= 0x94d049bb133111eb
	return x ^ x>>31
}

// stream returns the start of the numbers that one dimension of one seed draws from.
func stream(seed uint64, dimension int) uint64 {
	const golden = 0x9e3779b97f4a7c15
	return mix(mix(seed+golden) + golden*uint64(dimension+1))
}
