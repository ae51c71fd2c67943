package assess

import "math"

// drawing is where the base pass draws its lines, so that every moved pass can be read off at the same places.
type drawing struct {
	distances []float64 // of the launch path's points, m
	landed    []float64 // distances of the landing path's points from the threshold, m
	lifts     []float64 // lift coefficients of the polar
	twist     twist     // of the wing under its ailerons
	twisting  *twisting // of the wing under its lift
	carrying  *carrying
	linkages  *linkages
	fittings  *fittings

	coldPack  int // the pack that is nearest to its coldest, and that temperature, K
	coldLimit float64

	kept     map[string]keptAnswer // answers that take long
	place    landingPlace
	run      *longestRun    // of the area landed on
	landing  landingSection // as the base pass flew it
	under    []int          // obstacles under the approach, as they stand in the field
	lull     float64        // that the pilot allows for on the approach, m/s
	goAround float64        // least height, m

	feed      *keptFeed
	parts     []keptPart // near the exhaust, under their names
	partNames []string
	found     []nearPart // in the plume and not declared
	ground    *keptGround
}

// ordinates are what a pass reads off there.
type ordinates struct {
	heights []float64 // of the launch path, m
	descent []float64 // heights of the landing path, m
	drags   []float64 // drag coefficients of the polar
}

// empty returns ordinates of the same length, all zero.
func (o *ordinates) empty() ordinates {
	return ordinates{heights: make([]float64, len(o.heights)), descent: make([]float64, len(o.descent)), drags: make([]float64, len(o.drags))}
}

// add adds the squares of half the differences of two moved passes.
func (o *ordinates) add(high, low *ordinates) {
	addSquares(o.heights, high.heights, low.heights)
	addSquares(o.descent, high.descent, low.descent)
	addSquares(o.drags, high.drags, low.drags)
}

func addSquares(sum, high, low []float64) {
	for i := range sum {
		if i < len(high) && i < len(low) {
			step := (high[i] - low[i]) / 2
			sum[i] += float64(step * step)
		}
	}
}

// drawBands gives every point of the launch's and the landing's profile and of the polar its band.
func (p *pass) drawBands(squares ordinates) {
	bands := map[string][]float64{"launch.profile": squares.heights, "landing.profile": squares.descent}
	for k := range p.lines {
		band := bands[p.lines[k].ID]
		for i := range min(len(band), len(p.lines[k].Points)) {
			p.lines[k].Points[i].HalfBandMeters = halfBand(band[i])
		}
	}
	for k := range p.curves {
		if p.curves[k].ID == "drag.polar" {
			addBand(p.curves[k].Series[0].Points, squares.drags)
		}
	}
}

// addBand gives each point its ends.
func addBand(points []CurvePoint, squares []float64) {
	for i := range points {
		half := halfBand(squares[i])
		low, high := points[i].Y-half, points[i].Y+half
		points[i].Low, points[i].High = &low, &high
	}
}

// halfBand returns half the width of the band of a variance; zero where there is none to be had.
func halfBand(variance float64) float64 {
	if half := float64(bandFactor * math.Sqrt(variance)); finite(half) {
		return half
	}
	return 0
}
