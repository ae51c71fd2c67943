package survey

import (
	"errors"
	"fmt"
	"slices"

	"pitgate/server/physics/field"
)

// Part is a feature on the field's plane.
type Part struct {
	Kind  Kind
	Name  string
	Shape Shape
	// Points are in metres from the datum: x east, y north; z is the height of the ground over the datum where Grounded says that it is known, else 0.
	// Areas are in normal form: open, counter-clockwise, no corner twice.
	Points   []field.Local
	Grounded bool
	Height   *float64     // top over the ground, m; nil when it was not given
	Repair   field.Repair // what had to be changed in an area's outline
	Spread   float64      // one standard deviation of its places, the greatest given, m; zero when none was
}

// Plan is a survey on a field's plane.
type Plan struct {
	Datum field.Position
	Parts []Part
}

// Place puts features on the plane of a datum. Without one the middle of all places is taken, at the first height of ground given. Outlines are brought
// to their normal form.
//
// Errors are of type *Error and name the feature: a place far from the datum or, without one, from the others, said to be swapped where latitude and
// longitude exchanged would fit; an outline that crosses itself, with the place, or has no area.
func Place(features []Feature, at *field.Position) (Plan, error) {
	if len(features) == 0 {
		return Plan{}, &Error{Err: errors.New("there are no features")}
	}
	origin, err := datumOf(features, at)
	if err != nil {
		return Plan{}, err
	}
	datum, err := field.NewDatum(origin)
	if err != nil {
		return Plan{}, &Error{Member: "datum", Err: err}
	}
	plan := Plan{Datum: origin, Parts: make([]Part, 0, len(features))}
	for i := range features {
		part, err := features[i].place(datum, origin.Height)
		if err != nil {
			return Plan{}, inFeature(err, i+1, features[i].Name)
		}
		plan.Parts = append(plan.Parts, part)
	}
	return plan, nil
}

// datumOf returns the datum asked for, or the middle of all places once they are known to lie together.
func datumOf(features []Feature, at *field.Position) (field.Position, error) {
	if at != nil {
		return *at, nil
	}
	var places []field.Position
	height, known := 0.0, false
	for i := range features {
		for j, p := range features[i].Places {
			places = append(places, p)
			if !known && features[i].Grounded[j] {
				height, known = p.Height, true
			}
		}
	}
	if err := together(features, places); err != nil {
		return field.Position{}, err
	}
	middle, err := field.Middle(places)
	if err != nil {
		return field.Position{}, &Error{Err: err}
	}
	middle.Height = height
	return middle, nil
}

// together returns an error for the first place that lies far from the one in the middle of the crowd.
func together(features []Feature, places []field.Position) error {
	if len(places) == 0 {
		return &Error{Err: errors.New("there are no places")}
	}
	datum, err := field.NewDatum(crowded(places))
	if err != nil {
		return &Error{Err: err}
	}
	for i := range features {
		for j, p := range features[i].Places {
			if _, err := datum.Place(p); err != nil {
				return inFeature(&Error{Member: fmt.Sprintf("place %d", j+1), Err: err}, i+1, features[i].Name)
			}
		}
	}
	return nil
}

// crowded returns the place nearest to the medians of the earth-centred coordinates: one that lies with most of them.
func crowded(places []field.Position) field.Position {
	var x, y, z []float64
	for _, p := range places {
		c := p.Centred()
		x, y, z = append(x, c.X), append(y, c.Y), append(z, c.Z)
	}
	middle := field.Centred{X: median(x), Y: median(y), Z: median(z)}
	best, least := places[0], -1.0
	for _, p := range places {
		c := p.Centred()
		dx, dy, dz := c.X-middle.X, c.Y-middle.Y, c.Z-middle.Z
		if d := dx*dx + dy*dy + dz*dz; least < 0 || d < least {
			best, least = p, d
		}
	}
	return best
}

// median returns the middle of values.
func median(values []float64) float64 {
	sorted := slices.Clone(values)
	slices.Sort(sorted)
	return sorted[len(sorted)/2]
}

// place puts one feature on the plane.
func (f *Feature) place(datum field.Datum, height float64) (Part, error) {
	part := Part{Kind: f.Kind, Name: f.Name, Shape: f.Shape, Height: f.Height, Grounded: len(f.Places) > 0}
	if f.Shape == Area && len(f.Places) > MostCorners {
		return part, fmt.Errorf("area of %d corners, at most %d are taken: simplify it, as a walk is", len(f.Places), MostCorners)
	}
	for i, p := range f.Places {
		local, err := datum.Place(p)
		if err != nil {
			return part, &Error{Member: fmt.Sprintf("place %d", i+1), Err: err}
		}
		// The ground follows the earth, so its height is told by heights, not by the plane.
		local.Z = 0
		if f.Grounded[i] {
			local.Z = p.Height - height
		}
		part.Grounded = part.Grounded && f.Grounded[i]
		part.Spread = max(part.Spread, f.Accuracy[i])
		part.Points = append(part.Points, local)
	}
	if f.Shape != Area {
		return part, nil
	}
	return part, part.normal()
}

// normal brings an area to its normal form.
func (p *Part) normal() error {
	outline := make(field.Polygon, len(p.Points))
	for i, l := range p.Points {
		outline[i] = l.Point()
	}
	kept, repair, err := outline.Normal()
	if err != nil {
		return err
	}
	points := make([]field.Local, len(kept))
	for i, corner := range kept {
		points[i] = p.Points[slices.Index(outline, corner)]
	}
	p.Points, p.Repair = points, repair
	return nil
}

// Outline returns the points of the part without heights.
func (p *Part) Outline() field.Polygon {
	outline := make(field.Polygon, len(p.Points))
	for i, l := range p.Points {
		outline[i] = l.Point()
	}
	return outline
}
