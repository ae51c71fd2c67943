package sample

import "errors"

// Pick is what a function answered for the pick-and-freeze design: at n points a, at n points b, and for each input at the points a with that input
// taken from b.
type Pick struct {
	A, B []float64
	// Mixed is by input, then by point.
	Mixed [][]float64
}

// Evaluate asks a function for a pick-and-freeze design of inputs spread evenly over 0 to 1. An error names samples or inputs out of range.
func Evaluate(inputs, count int, seed uint64, of func([]float64) float64) (Pick, error) {
	points, err := New(2*inputs, count, seed)
	if err != nil {
		return Pick{}, err
	}
	p := Pick{Mixed: make([][]float64, inputs)}
	x := make([]float64, inputs)
	for j := range count {
		for i := range x {
			x[i] = points.by[inputs+i][j]
		}
		p.B = append(p.B, of(x))
		for i := range x {
			x[i] = points.by[i][j]
		}
		p.A = append(p.A, of(x))
		for i := range x {
			x[i] = points.by[inputs+i][j]
			p.Mixed[i] = append(p.Mixed[i], of(x))
			x[i] = points.by[i][j]
		}
	}
	return p, nil
}

var errPick = errors.New("pick: every list needs one answer a point")

// Shares returns first-order and total shares of each input.
//
//	S_i = sum b_j (ab_ij - a_j)/n / V,  T_i = sum (a_j - ab_ij)^2/(2 n) / V
//
// where ab_ij is the answer at point a_j with input i from b_j and V the variance of all a and b. The mean is taken off first, which changes neither and
// keeps the scatter small.
// Valid for: independent inputs.
// Source: A. Saltelli, P. Annoni, I. Azzini, F. Campolongo, M. Ratto, S. Tarantola, Comput. Phys. Commun. 181 (2010) 259, table 2, rows (b) and (f).
func (p Pick) Shares() (first, total []float64, err error) {
	n := float64(len(p.A))
	mean, variance := moments(append(append([]float64{}, p.A...), p.B...))
	first, total = make([]float64, len(p.Mixed)), make([]float64, len(p.Mixed))
	for i, mixed := range p.Mixed {
		if len(mixed) != len(p.A) || len(p.B) != len(p.A) {
			return nil, nil, errPick
		}
		if !(variance > 0) {
			continue
		}
		for j, ab := range mixed {
			first[i] += float64((p.B[j] - mean) * (ab - p.A[j]))
			total[i] += float64((p.A[j] - ab) * (p.A[j] - ab))
		}
		first[i] = first[i] / n / variance
		total[i] = total[i] / (2 * n) / variance
	}
	return first, total, nil
}
