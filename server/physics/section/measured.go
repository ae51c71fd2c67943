package section

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/planform"
)

// stationCount is the number of stations over the chord at which an outline is read.
const stationCount = 200

// measured is an outline turned onto its chord line, as height against the signed angle t, x = (1 - cos t)/2: positive over the top,
// negative along the bottom, zero at the nose. In t the nose is smooth: a round nose has z in proportion to t.
type measured struct {
	angle, height, slope []float64 // rising angle
}

// newMeasured turns an outline onto its chord line: nose to the middle of the trailing edge, which becomes 0 to 1.
func newMeasured(outline []planform.OutlinePoint) measured {
	nose, edge := farthest(outline)
	origin := outline[nose]
	dx, dz := edge.X-origin.X, edge.Z-origin.Z
	square := max(float64(dx*dx)+float64(dz*dz), 1e-12)
	m := measured{}
	for i := len(outline) - 1; i >= 0; i-- {
		px, pz := outline[i].X-origin.X, outline[i].Z-origin.Z
		x := (float64(px*dx) + float64(pz*dz)) / square
		z := (float64(pz*dx) - float64(px*dz)) / square
		m.add(x, z, i > nose)
	}
	m.tangents()
	return m
}

// farthest returns the index of the point farthest from the middle of the trailing edge, and that middle.
func farthest(outline []planform.OutlinePoint) (int, planform.OutlinePoint) {
	a, b := outline[0], outline[len(outline)-1]
	edge := planform.OutlinePoint{X: float64(0.5 * (a.X + b.X)), Z: float64(0.5 * (a.Z + b.Z))}
	nose, most := 0, -1.0
	for i, p := range outline {
		dx, dz := p.X-edge.X, p.Z-edge.Z
		if d := float64(dx*dx) + float64(dz*dz); d > most {
			nose, most = i, d
		}
	}
	return nose, edge
}

// add appends a point when it lies farther round the outline than the one before.
func (m *measured) add(x, z float64, bottom bool) {
	angle := chordAngle(x)
	if bottom {
		angle = -angle
	}
	if n := len(m.angle); n > 0 && angle <= m.angle[n-1]+1e-9 {
		return
	}
	m.angle, m.height = append(m.angle, angle), append(m.height, z)
}

// chordAngle returns the angle of a place over chord.
//
// Formula: t = acos(1 - 2 x).
// Valid for: x from 0 to 1, held beyond.
// Source: Glauert's substitution.
func chordAngle(x float64) float64 {
	c := 1 - float64(2*max(0, min(1, x)))
	return elementary.Atan2(math.Sqrt(max(0, 1-float64(c*c))), c)
}

// tangents sets the slopes of the curve by the parabola through three neighbours; at the trailing edge dz/dt = (dz/dx) (sin t)/2 = 0.
func (m *measured) tangents() {
	n := len(m.angle)
	m.slope = make([]float64, n)
	if n < 3 {
		return
	}
	chord := func(i int) float64 { return (m.height[i+1] - m.height[i]) / (m.angle[i+1] - m.angle[i]) }
	for i := 1; i < n-1; i++ {
		before, after := m.angle[i]-m.angle[i-1], m.angle[i+1]-m.angle[i]
		m.slope[i] = (float64(chord(i-1)*after) + float64(chord(i)*before)) / (before + after)
	}
}

// at returns the height at a signed angle by cubic Hermite interpolation, the ends held.
//
// Formula: z = z0 + s (z1 - z0)(3 - 2 s) s + h s (1 - s)((1 - s) g0 - s g1); where s share of the interval h, g slopes.
// Valid for: rising angles.
// Source: Hermite interpolation.
func (m *measured) at(angle float64) float64 {
	n := len(m.angle)
	if n == 0 {
		return 0
	}
	if angle <= m.angle[0] {
		return m.height[0]
	}
	if angle >= m.angle[n-1] {
		return m.height[n-1]
	}
	low, high := 0, n-1
	for high-low > 1 {
		if middle := (low + high) / 2; m.angle[middle] <= angle {
			low = middle
		} else {
			high = middle
		}
	}
	h := m.angle[high] - m.angle[low]
	s := (angle - m.angle[low]) / h
	rise := float64(float64((m.height[high]-m.height[low])*(3-float64(2*s))) * float64(s*s))
	bend := float64(float64(h*s) * float64((1-s)*(float64((1-s)*m.slope[low])-float64(s*m.slope[high]))))
	return m.height[low] + rise + bend
}

// meanLine returns the height of the mean line at an angle from 0 to pi.
func (m *measured) meanLine(angle float64) float64 { return (m.at(angle) + m.at(-angle)) / 2 }

// thickness returns the distance between the sides at an angle from 0 to pi.
func (m *measured) thickness(angle float64) float64 { return m.at(angle) - m.at(-angle) }

// thicknessAt returns the thickness at a place over chord.
func (m *measured) thicknessAt(x float64) float64 { return m.thickness(chordAngle(x)) }

// greatest returns the value of greatest magnitude of a function of the angle, and its place over chord, refined by a parabola.
func greatest(f func(angle float64) float64) (value, place float64) {
	step := math.Pi / stationCount
	best := 0.0
	for i := 1; i < stationCount; i++ {
		if v := f(float64(float64(i) * step)); math.Abs(v) > math.Abs(value) {
			value, best = v, float64(i)
		}
	}
	before, after := f(float64((best-1)*step)), f(float64((best+1)*step))
	if bend := before - float64(2*value) + after; best > 0 && math.Abs(bend) > 1e-15 {
		shift := max(-1, min(1, float64(0.5*(before-after))/bend))
		best += shift
		value -= float64(0.25 * float64((before-after)*shift))
	}
	return value, (1 - elementary.Cos(float64(best*step))) / 2
}

// shape reads the figures of the outline.
func (m *measured) shape() Figures {
	out := Figures{Measured: true}
	out.Thickness, out.ThicknessPosition = greatest(m.thickness)
	out.Camber, out.CamberPosition = greatest(m.meanLine)
	if math.Abs(out.Camber) < 5e-4 {
		out.Camber = 0
	}
	out.NoseRadius = m.noseRadius(out.Thickness)
	out.NoseRise = m.noseRise()
	out.TrailingEdgeThickness = max(0, m.thickness(math.Pi))
	wedge := (m.thicknessAt(0.9) - out.TrailingEdgeThickness) / 0.1
	out.TrailingEdgeAngle = float64(2 * elementary.Atan(max(0, wedge)/2))
	return out
}

// noseStations are the places over chord at which the nose is read.
var noseStations = [...]float64{0.005, 0.0125, 0.025, 0.05, 0.075, 0.1, 0.15}

// noseRadius returns the radius of the nose over chord: that of the parabola y = sqrt(2 r x) to which the half thickness tends.
//
// Formula: least squares of y/sqrt(x) = a + b sqrt(x) + c x over seven stations; r = a^2/2, from 0 to half the thickness.
// Valid for: noses drawn by a point within 2 % of the chord; exact for the polynomial of four-digit sections up to its cubic term.
// Source: definition of the radius of curvature at the vertex of a parabola.
func (m *measured) noseRadius(thickness float64) float64 {
	var normal [3][4]float64
	for _, x := range noseStations {
		root := math.Sqrt(x)
		terms := [3]float64{1, root, x}
		y := float64(0.5*m.thicknessAt(x)) / root
		for i := range terms {
			for j := range terms {
				normal[i][j] += float64(terms[i] * terms[j])
			}
			normal[i][3] += float64(terms[i] * y)
		}
	}
	a := max(0, firstUnknown(normal))
	return min(float64(0.5*float64(a*a)), float64(0.5*thickness))
}

// firstUnknown solves three linear equations for the first unknown by Cramer's rule; 0 when they are not independent.
func firstUnknown(e [3][4]float64) float64 {
	minor := func(p, q int) float64 { return float64(e[1][p]*e[2][q]) - float64(e[1][q]*e[2][p]) }
	cross := func(p, q, r int) float64 {
		return float64(e[0][p]*minor(q, r)) - float64(e[0][q]*minor(p, r)) + float64(e[0][r]*minor(p, q))
	}
	whole := cross(0, 1, 2)
	if math.Abs(whole) < 1e-18 {
		return 0
	}
	return cross(3, 1, 2) / whole
}

// noseRise returns how much the half thickness rises from 0.15 % to 6 % of the chord, over chord.
//
// Formula: dy = y(0.06) - y(0.0015); four-digit sections have dy = 0.26 t.
// Valid for: as noseRadius.
// Source: leading-edge parameter of the USAF Stability and Control DATCOM, 4.1.1 (from memory).
func (m *measured) noseRise() float64 {
	return float64(0.5 * (m.thicknessAt(0.06) - m.thicknessAt(0.0015)))
}
