package lift

import "math"

// trefftzMatrix returns the normal velocity far behind each strip per unit circulation of each, weighted for the drag of all together.
//
// Formula: two-dimensional vortices (g/(2 pi h^2)) at the strip edges, with core between surfaces, images included. Between two
// surfaces only the wash on the one with the finer strips is taken, twice: by Munk's theorem the two shares of the drag are equal, and
// the wash of a wide wake on narrow strips is the one the lattice resolves.
// Valid for: symmetric flight, wake along x.
// Source: Trefftz-plane method, Katz and Plotkin, Low-Speed Aerodynamics.
func (l *lattice) trefftzMatrix() []float64 {
	far := l.farMatrix(1)
	for i := range l.strips {
		for j := range l.strips {
			far[i*len(l.strips)+j] *= l.mutualWeight(i, j)
		}
	}
	return far
}

// farMatrix returns the normal velocity far behind every strip per unit circulation of every strip, row by row, as it acts there; image as
// for influence.
func (l *lattice) farMatrix(image float64) []float64 {
	n := len(l.strips)
	far := make([]float64, n*n)
	for i := range n {
		for j := range n {
			far[i*n+j] = l.farNormal(i, j, image)
		}
	}
	return far
}

// washOf multiplies a matrix of farMatrix or trefftzMatrix with the circulations of the strips.
func washOf(far, strength []float64) []float64 {
	n := len(strength)
	wash := make([]float64, n)
	for i := range n {
		for j, g := range strength {
			wash[i] += float64(far[i*n+j] * g)
		}
	}
	return wash
}

// mutualWeight returns how often the wash of a source strip counts on a receiving strip: once within a surface or joined ones; between
// others twice on the one with the finer strips, not at all on the other, once when they are equally fine.
func (l *lattice) mutualWeight(receiver, source int) float64 {
	r, s := l.strips[receiver].surface, l.strips[source].surface
	switch {
	case l.joints.joined(r, s) || l.meanWidth[r] == l.meanWidth[s]:
		return 1
	case l.meanWidth[r] < l.meanWidth[s]:
		return 2
	}
	return 0
}

// farNormal returns the normal velocity far behind one strip per unit circulation of another and its images.
func (l *lattice) farNormal(receiver, source int, image float64) float64 {
	r, s := &l.strips[receiver], &l.strips[source]
	core := l.coreBetween(receiver, source)
	far := l.farAboveGround(s, r.middle.y, r.middle.z, core)
	if !s.alone {
		twin := l.farAboveGround(s, -r.middle.y, r.middle.z, core)
		far = far.plus(velocity{-float64(image * twin.y), float64(image * twin.z)})
	}
	return (float64((r.b.y-r.a.y)*far.z) - float64((r.b.z-r.a.z)*far.y)) / r.Width
}

// farAboveGround returns the far velocity of a strip together with its image below the ground, as belowGround gives it near the model.
func (l *lattice) farAboveGround(s *latticeStrip, y, z, core float64) velocity {
	v := s.farVelocity(y, z, core)
	if l.ground > 0 {
		image := s.farVelocity(y, -float64(2*l.ground)-z, 0)
		v = v.plus(velocity{image.y, -image.z})
	}
	return v
}

// farVelocity returns the y and z velocity of a strip's two trailing vortices far downstream per unit circulation.
func (s *latticeStrip) farVelocity(y, z, core float64) velocity {
	ay, az, by, bz := y-s.a.y, z-s.a.z, y-s.b.y, z-s.b.z
	la := farFactor(float64(ay*ay)+float64(az*az), max(0, core-float64(az*az)))
	lb := farFactor(float64(by*by)+float64(bz*bz), max(0, core-float64(bz*bz)))
	return velocity{float64(la*az) - float64(lb*bz), float64(lb*by) - float64(la*ay)}
}

// farFactor returns (h^2 + 3 c^2)/(2 pi (h^2 + c^2)^2), the limit of legFactor far downstream.
func farFactor(square, core float64) float64 {
	sum := square + core
	if sum <= 0 {
		return 0
	}
	return (square + float64(3*core)) / float64(2*math.Pi*float64(sum*sum))
}

// inducedArea returns induced drag over dynamic pressure, m2, of a loading in a wash.
//
// Formula: D/q = -2 sum g w ds; where both sides count.
// Valid for: symmetric flight.
// Source: Trefftz-plane method.
func (l *lattice) inducedArea(strength, wash []float64) float64 {
	sum := 0.0
	for i := range l.strips {
		sum -= float64(2 * float64(float64(strength[i]*wash[i])*l.strips[i].Width))
	}
	return sum
}
