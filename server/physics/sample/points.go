package sample

import "fmt"

// Limits of a run.
const (
	MinimumCount = 16
	MaximumCount = 16384
	DefaultCount = 512
	// MaximumDimensions bounds what a run may ask for.
	MaximumDimensions = 4096
)

// Points are evenly spread points of the unit cube. They never change after New.
type Points struct {
	count int
	by    [][]float64 // by dimension, then by point
}

// New returns count points of a cube of as many dimensions: a scrambled Sobol sequence in the first 256 dimensions and a Latin hypercube in those
// beyond. The same seed gives the same points, and a point's coordinates do not depend on how many dimensions follow.
//
// An error names a count outside 16 to 16384 or dimensions outside 0 to 4096.
func New(dimensions, count int, seed uint64) (*Points, error) {
	if count < MinimumCount || count > MaximumCount {
		return nil, fmt.Errorf("samples %d: give %d to %d", count, MinimumCount, MaximumCount)
	}
	if dimensions < 0 || dimensions > MaximumDimensions {
		return nil, fmt.Errorf("dimensions %d: give 0 to %d", dimensions, MaximumDimensions)
	}
	p := &Points{count: count, by: make([][]float64, dimensions)}
	all := make([]float64, dimensions*count)
	for d := range p.by {
		p.by[d] = all[d*count : (d+1)*count : (d+1)*count]
		fill(p.by[d], d, stream(seed, d))
	}
	return p, nil
}

func fill(out []float64, dimension int, start uint64) {
	if dimension >= MaximumSobol {
		hypercube(out, start)
		return
	}
	v := directionColumns(dimension)
	for j := range out {
		out[j] = fraction(scramble(v.at(j), start))
	}
}

// Count returns how many points there are.
func (p *Points) Count() int { return p.count }

// Dimensions returns how many coordinates a point has.
func (p *Points) Dimensions() int { return len(p.by) }

// Along returns one coordinate of all points, between 0 and 1 and never at an end. It must not be changed.
func (p *Points) Along(dimension int) []float64 { return p.by[dimension] }

// Deviates returns one coordinate of all points as deviates of the standard normal distribution.
func (p *Points) Deviates(dimension int) []float64 {
	out := make([]float64, p.count)
	for j, u := range p.by[dimension] {
		out[j] = NormalQuantile(u)
	}
	return out
}
