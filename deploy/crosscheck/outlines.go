package main

import (
	"errors"
	"math"
	"math/rand/v2"

	"pitgate/server/physics/field"
)

// outlined is an outline as drawn, with what the core makes of it and of places, a line and another area beside it.
type outlined struct {
	Corners field.Polygon `json:"corners"`
	Whole   bool          `json:"whole"` // does not cross itself and has an area
	Crosses bool          `json:"crosses"`
	// The rest only for whole outlines.
	Area      float64       `json:"area"`
	Perimeter float64       `json:"perimeter"`
	Centroid  field.Point   `json:"centroid"`
	Places    []field.Point `json:"places"`
	Inside    []bool        `json:"inside"`
	Distances []float64     `json:"distances"`
	Line      field.Line    `json:"line"`
	LineAway  float64       `json:"lineAway"`
	Other     field.Polygon `json:"other"`
	OtherAway float64       `json:"otherAway"`
}

// outlines returns 300 outlines: stars around a middle, random corners that mostly cross, and corners on a small grid, where edges touch and fold.
func outlines() []outlined {
	r := rand.New(rand.NewPCG(31, 37))
	all := make([]outlined, 300)
	for i := range all {
		o, reach := &all[i], 300.0
		switch i % 3 {
		case 0:
			o.Corners = star(r, 3+r.IntN(20), field.Point{})
		case 1:
			o.Corners = scattered(r, 3+r.IntN(4))
		case 2:
			o.Corners, reach = gridded(r, 3+r.IntN(4)), 4
		}
		o.measure(r, reach)
	}
	return all
}

// star returns an outline around a middle, its corners in order of angle at random distances.
func star(r *rand.Rand, corners int, middle field.Point) field.Polygon {
	out := make(field.Polygon, corners)
	for i := range out {
		angle := 2 * math.Pi * (float64(i) + 0.9*r.Float64()) / float64(corners)
		out[i] = middle.Plus(field.Ahead(angle).Times(40 + 160*r.Float64()))
	}
	return out
}

// scattered returns corners anywhere.
func scattered(r *rand.Rand, corners int) field.Polygon {
	out := make(field.Polygon, corners)
	for i := range out {
		out[i] = within(r, 300)
	}
	return out
}

// gridded returns corners on a grid of five by five.
func gridded(r *rand.Rand, corners int) field.Polygon {
	out := make(field.Polygon, corners)
	for i := range out {
		out[i] = field.Point{X: float64(r.IntN(5)), Y: float64(r.IntN(5))}
	}
	return out
}

// within returns a place within a reach of the middle to either side, m.
func within(r *rand.Rand, reach float64) field.Point {
	return field.Point{X: reach * (2*r.Float64() - 1), Y: reach * (2*r.Float64() - 1)}
}

// measure lets the core take the outline to its normal form and measure it, with places within a reach.
func (o *outlined) measure(r *rand.Rand, reach float64) {
	normal, _, err := o.Corners.Normal()
	var crossing field.CrossingError
	o.Whole, o.Crosses = err == nil, errors.As(err, &crossing)
	if !o.Whole {
		return
	}
	o.Area, o.Perimeter, o.Centroid = normal.Area(), normal.Perimeter(), normal.Centroid()
	for range 20 {
		p := within(r, reach)
		o.Places, o.Inside, o.Distances = append(o.Places, p), append(o.Inside, normal.Contains(p)), append(o.Distances, normal.SignedDistance(p))
	}
	o.Line = field.Line{within(r, reach), within(r, reach), within(r, reach)}
	o.LineAway = normal.PathDistance(o.Line)
	o.Other = star(r, 5, within(r, 600))
	o.OtherAway, _ = normal.Separation(o.Other)
}
