package sample

import (
	"math"
	"slices"
)

// Band is what the middle nine tenths of a sample span.
type Band struct {
	P5, P50, P95 float64
	// Count is how many numbers it was read from.
	Count int
}

// BandOf returns the band of a sample; numbers that are none are left out. It is false when no number is left.
func BandOf(values []float64) (Band, bool) {
	sorted := make([]float64, 0, len(values))
	for _, v := range values {
		if !math.IsNaN(v) {
			sorted = append(sorted, v)
		}
	}
	if len(sorted) == 0 {
		return Band{}, false
	}
	slices.Sort(sorted)
	return Band{P5: Quantile(sorted, 0.05), P50: Quantile(sorted, 0.50), P95: Quantile(sorted, 0.95), Count: len(sorted)}, true
}

// Quantile returns the value below which a share of a sorted sample lies, straight between the two numbers next to it; no number for an empty sample.
//
//	h = n p + 1/2, x = x_floor(h) + (h - floor(h)) (x_floor(h)+1 - x_floor(h)), held at the first and last
//
// where the numbers x_1 to x_n each stand for the middle of their n-th part, as the points of an even sample do.
// Source: R. J. Hyndman, Y. Fan, "Sample quantiles in statistical packages", Am. Stat. 50 (1996) 361, definition 5.
func Quantile(sorted []float64, share float64) float64 {
	n := len(sorted)
	if n == 0 || math.IsNaN(share) {
		return math.NaN()
	}
	h := float64(float64(n)*share) - 0.5
	if h <= 0 {
		return sorted[0]
	}
	if h >= float64(n-1) {
		return sorted[n-1]
	}
	below := math.Floor(h)
	low, high := sorted[int(below)], sorted[int(below)+1]
	if low == high {
		return low
	}
	return low + float64((h-below)*(high-low))
}

// HoldShare returns the share of margins that are not negative; one that is no number does not hold. Zero for an empty sample.
func HoldShare(margins []float64) float64 {
	if len(margins) == 0 {
		return 0
	}
	held := 0
	for _, m := range margins {
		if m >= 0 {
			held++
		}
	}
	return float64(held) / float64(len(margins))
}

// moments returns mean and variance over n, added up pair by pair so that long sums keep their digits.
func moments(values []float64) (mean, variance float64) {
	n := float64(len(values))
	if n == 0 {
		return math.NaN(), math.NaN()
	}
	mean = pairSum(values, func(v float64) float64 { return v }) / n
	return mean, pairSum(values, func(v float64) float64 { return float64((v - mean) * (v - mean)) }) / n
}

// pairSum adds terms in halves, always in the same order.
func pairSum(values []float64, term func(float64) float64) float64 {
	if len(values) <= 8 {
		sum := 0.0
		for _, v := range values {
			sum += term(v)
		}
		return sum
	}
	half := len(values) / 2
	return pairSum(values[:half], term) + pairSum(values[half:], term)
}
