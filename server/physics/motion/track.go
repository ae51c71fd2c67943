package motion

import "pitgate/server/physics/field"

// Lie is where a launch lies on a field.
type Lie struct {
	Origin    field.Point // start of the launch
	Heading   float64     // rad, clockwise from true north
	Ground    float64     // height of the ground at the start over the datum, m
	HalfWidth float64     // how far the path may lie to each side at the start, m: half the span and what is added to it
	Spread    float64     // growth of that with distance, m/m
}

// Track returns the path of a launch over the field, drift included, for clearances (field.Standing.Pass, field.Polygon.Enter, field.Line.Approach).
func (r *Result) Track(lie Lie) field.Track {
	track := make(field.Track, 0, len(r.Path))
	for _, p := range r.Path {
		track = append(track, lie.place(p))
	}
	return track
}

// Track returns the path of a failure over the field, drift included, from the loss of thrust to its end.
func (f *Failure) Track(lie Lie) field.Track {
	track := make(field.Track, 0, len(f.Path))
	for _, p := range f.Path {
		track = append(track, lie.place(p))
	}
	return track
}

// place puts a point of a launch on the field.
func (l Lie) place(p PathPoint) field.Place {
	along := field.Ahead(l.Heading).Times(p.Distance)
	aside := field.Right(l.Heading).Times(p.Drift)
	return field.Place{
		Point: l.Origin.Plus(along).Plus(aside), Height: l.Ground + p.Height, Spread: l.HalfWidth + float64(l.Spread*max(0, p.Distance)),
	}
}

// Track returns one lap of the circuit over the field at a height over the datum (m), with a spread to each side (m).
func (c Circuit) Track(height, spread float64) field.Track {
	path := c.Path()
	track := make(field.Track, 0, len(path))
	for _, p := range path {
		track = append(track, field.Place{Point: p, Height: height, Spread: spread})
	}
	return track
}
