package footprint

// primes are the bases of the places of the sequence.
var primes = [...]int{2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43}

// dimensions is the number of values of a point.
const dimensions = len(primes)

// sequenceSeed fixes the shuffling, so that the same plan gives the same points on every machine and day.
const sequenceSeed = 0x9e3779b97f4a7c15

// sequence is a scrambled Halton sequence.
type sequence struct {
	// shuffles[d][k] is the permutation of digit k in base primes[d].
	shuffles [dimensions][][]uint8
}

// newSequence returns the sequence; seed zero leaves the digits unshuffled.
func newSequence(seed uint64) *sequence {
	s := &sequence{}
	stream := seed
	for d, base := range primes {
		for size := uint64(1); size < 1<<32; size *= uint64(base) {
			order := identity(base)
			if seed != 0 {
				shuffle(order, &stream)
			}
			s.shuffles[d] = append(s.shuffles[d], order)
		}
	}
	return s
}

// identity returns the numbers from zero to below n in order.
func identity(n int) []uint8 {
	order := make([]uint8, n)
	for i := range order {
		order[i] = uint8(i)
	}
	return order
}

// shuffle puts the numbers in an order drawn from a stream.
//
// Source: Fisher and Yates; Durstenfeld's form.
func shuffle(order []uint8, stream *uint64) {
	for i := len(order) - 1; i > 0; i-- {
		j := int(mix(stream) % uint64(i+1))
		order[i], order[j] = order[j], order[i]
	}
}

// mix returns the next number of a stream.
//
// Source: Steele, Lea and Flood, Fast splittable pseudorandom number generators, 2014.
func mix(stream *uint64) uint64 {
	*stream += 0x9e3779b97f4a7c15
	z := *stream
	z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9
	z = (z ^ (z >> 27)) * 0x94d049bb133111eb
	return z ^ (z >> 31)
}

// point returns point i of the sequence, each value within 0 to 1, ends excluded.
func (s *sequence) point(i int) [dimensions]float64 {
	var p [dimensions]float64
	for d := range p {
		p[d] = s.value(d, i)
	}
	return p
}

// value returns one value of point i.
//
//	x = sum_k pi_k(d_k) b^-(k+1) + half of the last place, d_k the digits of i in base b
//
// where b is the prime of the place and pi_k the shuffle of digit k. Valid for: i from 0 to 2^31.
// Source: Halton, Numerische Mathematik 2 (1960) 84-90; shuffled digits: Matousek, Journal of Complexity 14 (1998) 527-556.
func (s *sequence) value(d, i int) float64 {
	base := primes[d]
	scale, sum := 1.0, 0.0
	for _, order := range s.shuffles[d] {
		scale /= float64(base)
		sum += float64(float64(order[i%base]) * scale)
		i /= base
	}
	return sum + float64(0.5*scale)
}
