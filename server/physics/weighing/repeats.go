package weighing

import (
	"math"

	"pitgate/server/physics/elementary"
)

// oneDeviation is the share of a normal distribution that lies within one standard deviation of its middle.
const oneDeviation = 0.6826894921370859

// tabled is how many degrees of freedom have their Student factor at hand.
const tabled = 40

var studentFactors = tableOfFactors()

// StudentFactor returns by how much the standard deviation of a mean must be widened, because it is itself known from few values only, so that
// one spread still holds 68.27 %.
//
//	A(k | v) = 0.6827, k the factor; beyond v = 40: k = 1 + 1/(2 v)
//
// where v are the degrees of freedom: one less than the number of values. Below one there is nothing to widen and the factor is 1.
// Valid for: values that scatter normally. Source: JCGM 100:2008, annex G.3 and table G.2.
func StudentFactor(freedom int) float64 {
	switch {
	case freedom < 1:
		return 1
	case freedom > tabled:
		return 1 + 1/(2*float64(freedom))
	}
	return studentFactors[freedom]
}

func tableOfFactors() [tabled + 1]float64 {
	table := [tabled + 1]float64{1}
	for v := 1; v <= tabled; v++ {
		low, high := 0.5, 4.0
		for range 60 {
			middle := (low + high) / 2
			if studentShare(middle, v) < oneDeviation {
				low = middle
			} else {
				high = middle
			}
		}
		table[v] = (low + high) / 2
	}
	return table
}

// studentShare returns the share of Student's distribution within -t and t.
//
//	v even: A = s (1 + 1/2 c^2 + (1 3)/(2 4) c^4 + ... up to c^(v-2))
//	v odd:  A = 2/pi (a + s c (1 + 2/3 c^2 + (2 4)/(3 5) c^4 + ... up to c^(v-3))), without the bracket's second term for v = 1
//
// where a = atan(t/sqrt(v)), s = sin a, c = cos a, v the degrees of freedom.
// Valid for: t >= 0, v >= 1. Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4.
func studentShare(t float64, v int) float64 {
	n := float64(v)
	hypotenuse := math.Sqrt(n + square(t))
	sine, cosine2 := t/hypotenuse, n/(n+square(t))
	odd := v % 2
	term, sum := 1.0, 0.0
	for k := odd; k <= v-2; k += 2 {
		sum += term
		term *= float64(k+1) / float64(k+2) * cosine2
	}
	if odd == 0 {
		return sine * sum
	}
	angle := elementary.Atan(t / math.Sqrt(n))
	return 2 / math.Pi * (angle + float64(sine*math.Sqrt(cosine2)*sum))
}

// meanOf returns the mean of values and their sample standard deviation; the latter is zero for fewer than two.
//
//	s^2 = sum((q_k - mean)^2) / (n - 1)
//
// where q_k are the n values. Valid for: n >= 1. Source: JCGM 100:2008, 4.2.1 and 4.2.2 (equations 3 and 4).
func meanOf(values []float64) (mean, deviation float64) {
	n := float64(len(values))
	for _, v := range values {
		mean += v / n
	}
	if len(values) < 2 {
		return mean, 0
	}
	squares := 0.0
	for _, v := range values {
		squares += square(v - mean)
	}
	return mean, math.Sqrt(squares / (n - 1))
}

// RepeatSpread returns the spread of the mean of repeated readings.
//
//	u = k(n-1) s / sqrt(n)
//
// where s is their sample standard deviation, n their number and k the Student factor. Zero for fewer than two.
// Valid for: readings taken anew each time, the model lifted off in between. Source: JCGM 100:2008, 4.2.3 (equation 5) and G.3.
func RepeatSpread(values []float64) float64 {
	if len(values) < 2 {
		return 0
	}
	_, deviation := meanOf(values)
	return StudentFactor(len(values)-1) * deviation / math.Sqrt(float64(len(values)))
}

// scatterLimit returns over what share of the true standard deviation a sample's own rises in one case of twenty.
//
//	(s/sigma)^2 = (1 - 2/(9 v) + 1.645 sqrt(2/(9 v)))^3
//
// where v are the degrees of freedom. Valid for: values that scatter normally, v >= 1.
// Source: Wilson and Hilferty, Proceedings of the National Academy of Sciences 17 (1931) 684: chi-squared by the normal distribution.
func scatterLimit(freedom int) float64 {
	part := 2 / (9 * float64(freedom))
	root := 1 - part + float64(1.6448536269514722*math.Sqrt(part))
	return math.Sqrt(root * root * root)
}
