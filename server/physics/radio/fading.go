package radio

import (
	"math"

	"pitgate/server/physics/elementary"
)

// RayleighOutage returns the share of time a signal without a direct ray is below the least usable one, 0 to 1: 1 - exp(-10^(-M/10)).
//
// where margin M is of the mean power over the least (dB). Valid for: many scattered rays of like power, none direct: the worst case.
// Source: exponential distribution of power, textbooks of mobile radio.
func RayleighOutage(margin float64) float64 {
	x := Ratio(-clamp(margin, -mostDecibels, mostDecibels))
	if x < 1e-5 {
		return x - float64(square(x)/2)
	}
	return 1 - elementary.Exp(-x)
}

// RayleighMargin returns the margin that holds the outage to a share, dB: -10 log10(-ln(1 - P)).
//
// where outage P is from 1e-12 to below 1. Valid for: as RayleighOutage. Source: its inverse.
func RayleighMargin(outage float64) float64 {
	p := clamp(outage, 1e-12, 1-1e-12)
	if p < 1e-5 {
		return -Decibels(p + float64(square(p)/2))
	}
	return -Decibels(-elementary.Log(1 - p))
}

// Limits of the series of Rice's distribution.
const (
	mostRiceFactor = 100.0
	mostTerms      = 1200
)

// RiceOutage returns the share of time a direct ray with scattered ones is below the least usable power, 0 to 1.
//
//	P = sum over n of exp(-K) K^n/n! P(n+1, (1+K) 10^(-M/10))
//
// where margin M is of the mean power (dB, -20 to 60), factor K the direct over the scattered power (0 to 100; held there) and P(a, x) the lower
// regularized gamma function. K = 0 is RayleighOutage. Valid for: one steady ray. Source: Rice's distribution as a mixture of Poisson and gamma.
func RiceOutage(margin, factor float64) float64 {
	k := clamp(factor, 0, mostRiceFactor)
	x := float64((1 + k) * Ratio(-clamp(margin, -20, 60)))
	if x > 700 {
		return 1
	}
	// gamma holds exp(-x) x^n/n! of the present n; lower holds P(n+1, x), summed from the far end.
	terms := int(x+float64(12*math.Sqrt(x))+k+float64(12*math.Sqrt(k))) + 40
	terms = min(terms, mostTerms)
	gamma := make([]float64, terms+1)
	gamma[0] = elementary.Exp(-x)
	for n := 1; n <= terms; n++ {
		gamma[n] = gamma[n-1] * x / float64(n)
	}
	poisson := make([]float64, terms+1)
	poisson[0] = elementary.Exp(-k)
	for n := 1; n <= terms; n++ {
		poisson[n] = poisson[n-1] * k / float64(n)
	}
	lower, outage := 0.0, 0.0
	for n := terms - 1; n >= 0; n-- {
		lower += gamma[n+1]
		outage += float64(poisson[n] * lower)
	}
	return clamp(outage, 0, 1)
}

// DiversityOutage returns the outage of the best of several branches that fade apart, 0 to 1: P^n.
//
// where outage P is that of one branch and branches n of them. Valid for: independent branches, at least Spacing apart or crossed.
// Source: product of probabilities.
func DiversityOutage(outage float64, branches int) float64 {
	out := 1.0
	for range min(max(branches, 0), 64) {
		out *= clamp(outage, 0, 1)
	}
	return out
}
