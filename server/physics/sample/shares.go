package sample

import "math"

// How many times its own scatter a correlation must reach to count: a bend or a wave is rarer than a slope, and there are more of them to be
// mistaken for one.
const (
	slopeSigmas = 3
	curveSigmas = 4
)

// Inputs are functions of every input of a run, made once for all answers: its deviate, the bend of it, and waves along it. Each has the mean zero and
// the variance one over the points.
type Inputs struct {
	slopes, bends [][]float64
	waves         [][]float64 // harmonics an input
}

// NewInputs keeps deviates by input, then by point.
func NewInputs(deviates [][]float64) *Inputs {
	in := &Inputs{}
	for _, x := range deviates {
		in.slopes, in.bends = append(in.slopes, standard(x)), append(in.bends, standard(bend(x)))
		for _, wave := range wavesOf(OrderOf(x)) {
			in.waves = append(in.waves, standard(wave))
		}
	}
	return in
}

// standard returns numbers with their mean taken off and over the root of their variance; zeros when they do not vary.
func standard(x []float64) []float64 {
	out := make([]float64, len(x))
	mean, variance := moments(x)
	if !(variance > 0) || math.IsInf(variance, 0) {
		return out
	}
	root := math.Sqrt(variance)
	for j := range x {
		out[j] = (x[j] - mean) / root
	}
	return out
}

// Shares returns the first-order share of each input in the variance of y from one plain sample, an even one or one drawn by chance.
//
//	S_i = rho_i^2 + kappa_i^2 + C_i,  y = mean + sum b_i z_i + sum c_i q_i + rest
//
// where rho_i is the correlation of y with input i, kappa_i with its bend q_i, and C_i what the first waves along input i carry of the rest, each as far
// as it is larger than its scatter. Everything here scatters by 1/n only, so that many inputs with small shares do not drown. Ranks of neighbours would
// scatter by 1/sqrt(n), and be wrong for even samples, whose neighbours along one input lie apart by a pattern in the others. Points where y is no
// number are left out.
// Valid for: independent inputs, answers that a parabola and six waves follow.
// Source: the variance of a conditional mean by orthogonal functions of one input; for the waves E. Plischke, "How to compute variance-based
// sensitivity indicators with your spreadsheet software", Environ. Model. Softw. 35 (2012) 188.
func (in *Inputs) Shares(y []float64) []float64 {
	out := make([]float64, len(in.slopes))
	kept := finitePlaces(y)
	if len(kept) < MinimumCount {
		return out
	}
	rest := standard(pick(y, kept))
	in.take(in.slopes, rest, kept, slopeSigmas, out)
	in.take(in.slopes, rest, kept, slopeSigmas, out) // what the scatter of the strong ones hid
	in.take(in.bends, rest, kept, curveSigmas, out)
	in.take(in.waves, rest, kept, curveSigmas, out)
	return out
}

// clearlyCurved is the part of the variance below which it is not asked what the slopes leave.
const clearlyCurved = 0.005

// take adds the share of each function to its input's and takes the function from the rest. The strongest goes first, and what is left of the others is
// told afterwards: two columns of an even sample in many inputs can lie along each other by their pattern, and the weak one must not be credited with what
// the strong one does. The order of the inputs does not matter.
func (in *Inputs) take(functions [][]float64, rest []float64, kept []int, sigmas float64, out []float64) {
	_, variance := moments(rest)
	if variance < clearlyCurved {
		return
	}
	least := float64(sigmas*sigmas) / float64(len(rest)) * variance
	each := len(functions) / max(1, len(out))
	for open := standing(functions, rest, kept, least); len(open) > 0; {
		k, slope := strongest(open, rest)
		square := float64(slope * slope)
		if !(square > least) {
			return
		}
		out[open[k].of/each] += square
		for j := range rest {
			rest[j] -= float64(slope * open[k].x[j])
		}
		open = append(open[:k], open[k+1:]...)
	}
}

// candidate is a function that may have a share.
type candidate struct {
	of int // its place among the functions
	x  []float64
}

// standing lists the functions whose square slope is larger than the least one.
func standing(functions [][]float64, rest []float64, kept []int, least float64) []candidate {
	var open []candidate
	for i, x := range functions {
		if len(kept) < len(x) {
			x = standard(pick(x, kept))
		}
		if slope := slopeAlong(x, rest); float64(slope*slope) > least {
			open = append(open, candidate{i, x})
		}
	}
	return open
}

// strongest returns the place of the steepest candidate and its slope.
func strongest(open []candidate, rest []float64) (place int, slope float64) {
	for k := range open {
		if s := slopeAlong(open[k].x, rest); math.Abs(s) > math.Abs(slope) {
			place, slope = k, s
		}
	}
	return place, slope
}

// slopeAlong is the slope of a rest along a function of mean 0 and variance 1.
func slopeAlong(x, rest []float64) float64 { return dot(x, rest) / float64(len(rest)) }

func dot(x, y []float64) float64 {
	var a, b, c, d float64
	y = y[:len(x)]
	j := 0
	for ; j+4 <= len(x); j += 4 {
		a += float64(x[j] * y[j])
		b += float64(x[j+1] * y[j+1])
		c += float64(x[j+2] * y[j+2])
		d += float64(x[j+3] * y[j+3])
	}
	for ; j < len(x); j++ {
		a += float64(x[j] * y[j])
	}
	return a + b + (c + d)
}

// bend returns the squares of numbers without the part that goes with the numbers themselves.
func bend(x []float64) []float64 {
	mean, variance := moments(x)
	q := make([]float64, len(x))
	for j := range x {
		q[j] = float64((x[j] - mean) * (x[j] - mean))
	}
	_, spread := moments(q)
	if !(variance > 0) || !(spread > 0) {
		return q
	}
	slope := Correlation(x, q) * math.Sqrt(spread/variance)
	for j := range q {
		q[j] -= float64(slope * (x[j] - mean))
	}
	return q
}

func finitePlaces(y []float64) []int {
	kept := make([]int, 0, len(y))
	for j, v := range y {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			kept = append(kept, j)
		}
	}
	return kept
}

func pick(values []float64, places []int) []float64 {
	if len(places) == len(values) {
		return values
	}
	out := make([]float64, 0, len(places))
	for _, at := range places {
		out = append(out, values[at])
	}
	return out
}
