package sample

import (
	"math"

	"pitgate/server/physics/elementary"
)

// harmonics is how many half waves along an input are looked for.
const harmonics = 6

// waves are half waves along one input at each point, in the order of the points.
type waves [harmonics][]float64

// wavesOf returns
//
//	w_k = cos(pi k (rank + 1/2)/n)
//
// of every point, which have the mean square 1/2 and are orthogonal over all ranks.
// Source: the discrete cosine transform.
func wavesOf(order Order) waves {
	var w waves
	for k := range w {
		w[k] = make([]float64, len(order))
		for rank, j := range order {
			w[k][j] = elementary.Cos(math.Pi * float64(k+1) * ((float64(rank) + 0.5) / float64(len(order))))
		}
	}
	return w
}
