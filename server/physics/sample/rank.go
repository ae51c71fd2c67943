package sample

import (
	"cmp"
	"math"
	"slices"
)

// Order is the order of a sample's points along one input.
type Order []int

// OrderOf returns the places of numbers, least first; equal ones as they come.
func OrderOf(x []float64) Order {
	order := make(Order, len(x))
	for j := range order {
		order[j] = j
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(x[a], x[b]) })
	return order
}

// RankShare returns the first-order share of one input in the variance of y: what is alike between neighbours along it.
//
//	S = (sum y_j y_N(j)/n - mean^2)/(sum y_j^2/n - mean^2)
//
// where N(j) is the point that follows j in the order of the input, the first following the last. Zero when y does not vary. Its own scatter is about
// 1/sqrt(n), so that it may come out a little below zero.
// Valid for: one continuous input, independent of the others.
// Source: F. Gamboa, P. Gremaud, T. Klein, A. Lagnoux, "Global sensitivity analysis: a novel generation of mighty estimators based on rank
// statistics", Bernoulli 28 (2022) 2345, after S. Chatterjee (2021).
func RankShare(order Order, y []float64) float64 {
	mean, variance := moments(y)
	if !(variance > 0) || len(order) != len(y) {
		return 0
	}
	sum, last := 0.0, order[len(order)-1]
	for _, j := range order {
		sum += float64((y[last] - mean) * (y[j] - mean))
		last = j
	}
	return sum / float64(len(y)) / variance
}

// Correlation returns the correlation of two samples of the same length; zero when one of them does not vary.
func Correlation(x, y []float64) float64 {
	if len(x) != len(y) {
		return 0
	}
	meanX, varianceX := moments(x)
	meanY, varianceY := moments(y)
	scale := math.Sqrt(float64(varianceX * varianceY))
	if !(scale > 0) {
		return 0
	}
	sum := 0.0
	for j := range x {
		sum += float64((x[j] - meanX) * (y[j] - meanY))
	}
	return min(max(sum/float64(len(x))/scale, -1), 1)
}
