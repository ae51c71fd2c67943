package footprint

import "pitgate/server/physics/sample"

// Draws are what the samples of any plan are drawn from: even points and the normal deviates of their layers. They never change.
type Draws struct {
	layers   [][]uint16
	deviates []float64
}

// MostDraws is how many samples can be drawn, and drawDigits the number of binary digits of a layer.
const (
	MostDraws  = 1 << drawDigits
	drawDigits = 12
)

// NewDraws returns the draws: each value of a sample is that in the middle of one of 4,096 equal layers, those in which the points of Plan.Sample lie.
func NewDraws() *Draws { return drawsOf(pointsSeed) }

// drawsOf is NewDraws with another scrambling.
func drawsOf(seed uint64) *Draws {
	d := &Draws{layers: sample.Strata(dimensions, drawDigits, seed), deviates: make([]float64, MostDraws)}
	for k := range d.deviates {
		d.deviates[k] = normalWithin((float64(k) + 0.5) / MostDraws)
	}
	return d
}

// at fills in sample i of a plan.
func (d *Draws) at(p *Plan, i int, out *point) {
	for k := range out {
		layer := d.layers[k][i]
		if p.uniform(k) {
			out[k] = (float64(layer) + 0.5) / MostDraws
		} else {
			out[k] = d.deviates[layer]
		}
	}
}
