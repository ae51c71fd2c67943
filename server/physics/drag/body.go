package drag

import "math"

// BodyStation is one cross section of a body, m; Z the height of its centre.
type BodyStation struct{ X, Width, Height, Z float64 }

// Body is a fuselage, boom or pod from nose to tail.
type Body struct {
	Name        string
	Stations    []BodyStation
	Mirrored    bool
	SquareSided bool
	BaseArea    float64 // flat base that no exhaust fills, m2
	Pod         bool    // nacelle or store, by the rule for pods
	Mount       string  // of a pod, one of the Mount constants; near when empty
}

// BodyShape are the measures of a body, both sides together when it is mirrored (length, fineness and section of one).
type BodyShape struct {
	Length       float64 // m
	WettedArea   float64 // m2
	Volume       float64 // m3
	CrossSection float64 // greatest, m2
	Fineness     float64 // length over the diameter of a circle of the greatest cross section
}

// MeasureBody integrates the cross sections of a body; false when there are fewer than two or they do not run aft.
//
// Formula: wetted area = integral perimeter ds, volume = integral area dx; ellipse or rectangle by SquareSided, straight between.
// Valid for: slender bodies.
// Source: geometry; perimeter of the ellipse by Ramanujan's first rule.
func MeasureBody(b Body) (BodyShape, bool) {
	shape := BodyShape{}
	for i, s := range b.Stations {
		shape.CrossSection = max(shape.CrossSection, sectionArea(s, b.SquareSided))
		if i == 0 {
			continue
		}
		before := b.Stations[i-1]
		dx := s.X - before.X
		if !(dx >= 0) {
			return BodyShape{}, false
		}
		shape.Length += dx
		shape.addSlice(before, s, dx, b.SquareSided)
	}
	if !(shape.Length > 0) || !(shape.CrossSection > 0) || math.IsInf(shape.WettedArea, 0) {
		return BodyShape{}, false
	}
	shape.Fineness = shape.Length / math.Sqrt(4/math.Pi*shape.CrossSection)
	if b.Mirrored {
		shape.WettedArea, shape.Volume = float64(2*shape.WettedArea), float64(2*shape.Volume)
	}
	return shape, true
}

// addSlice adds what lies between two stations.
func (s *BodyShape) addSlice(a, b BodyStation, dx float64, square bool) {
	rise := float64(0.25 * ((b.Width + b.Height) - (a.Width + a.Height)))
	slant := math.Sqrt(float64(dx*dx) + float64(rise*rise))
	s.WettedArea += float64(float64(0.5*(sectionPerimeter(a, square)+sectionPerimeter(b, square))) * slant)
	middle := BodyStation{Width: float64(0.5 * (a.Width + b.Width)), Height: float64(0.5 * (a.Height + b.Height))}
	areas := sectionArea(a, square) + float64(4*sectionArea(middle, square)) + sectionArea(b, square)
	s.Volume += float64(areas*dx) / 6
}

// sectionArea returns the area of a cross section, m2.
func sectionArea(s BodyStation, square bool) float64 {
	area := float64(s.Width * s.Height)
	if square {
		return area
	}
	return float64(math.Pi / 4 * area)
}

// sectionPerimeter returns the perimeter of a cross section, m.
//
// Formula: pi (3 (a + b) - sqrt((3a + b)(a + 3b))); where a, b half axes; 2 (w + h) with square corners.
// Valid for: axes ratio to 5 within 0.1 %.
// Source: Ramanujan 1914.
func sectionPerimeter(s BodyStation, square bool) float64 {
	if square {
		return float64(2 * (s.Width + s.Height))
	}
	a, b := float64(0.5*s.Width), float64(0.5*s.Height)
	root := math.Sqrt(max(0, float64((float64(3*a)+b)*(a+float64(3*b)))))
	return float64(math.Pi * (float64(3*(a+b)) - root))
}
