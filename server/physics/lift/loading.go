package lift

import "math"

// Columns of the boundary condition, in this order; the controls follow.
const (
	columnIncidence = iota
	columnBasic
	columnRate
	columnControls
)

// boundaryColumns returns the right-hand sides: unit incidence, built-in incidence and camber, unit pitch rate about x = 0, and unit
// deflection of each control as the equivalent incidence of its strips.
func (l lattice) boundaryColumns(controls []control) [][]float64 {
	columns := make([][]float64, columnControls+len(controls))
	for k := range columns {
		columns[k] = make([]float64, len(l.panels))
	}
	for i := range l.panels {
		p := &l.panels[i]
		strip := &l.strips[p.strip]
		columns[columnIncidence][i] = -p.normalZ
		columns[columnBasic][i] = strip.zeroLift - float64(p.normalZ*strip.incidence)
		columns[columnRate][i] = -float64(p.normalZ * p.control.x)
		for k, c := range controls {
			columns[columnControls+k][i] = -float64(c.effectiveness * c.cover[p.strip])
		}
	}
	return columns
}

// liftAndMoment returns lift over dynamic pressure (m2) and nose-up moment about x = 0 over dynamic pressure (m3), both sides.
//
// Formula: L/q = 4 sum g dy, M/q = -4 sum x g dy; where g circulation over speed, x middle of the bound leg, dy its width.
// Valid for: symmetric flight, small angles.
// Source: Kutta-Joukowski theorem.
func (l lattice) liftAndMoment(strength []float64) (lift, moment float64) {
	for i := range l.panels {
		p := &l.panels[i]
		if !l.counts(p.strip) {
			continue
		}
		force := float64(4 * float64(strength[i]*(p.b.y-p.a.y)))
		lift += force
		moment -= float64(force * float64(0.5*(p.a.x+p.b.x)))
	}
	return lift, moment
}

// camberMoment returns the moment over dynamic pressure (m3) that the sections' own moments add, both sides.
//
// Formula: 2 sum cm c^2 dy.
// Valid for: thin-aerofoil moments about the quarter chord.
// Source: strip theory.
func (l lattice) camberMoment() float64 {
	sum := 0.0
	for _, s := range l.strips {
		sum += float64(float64(2*s.camberMoment) * float64(float64(s.Chord*s.Chord)*s.projected))
	}
	return sum
}

// controlMoment returns the moment over dynamic pressure per radian that the sections' own moments add for a control, both sides.
//
// Formula: 2 sum cm_delta c^2 dy over the covered strips.
// Valid for: as camberMoment.
// Source: strip theory.
func (l lattice) controlMoment(c control) float64 {
	sum := 0.0
	for i, s := range l.strips {
		sum += float64(float64(2*float64(c.momentSlope*c.cover[i])) * float64(float64(s.Chord*s.Chord)*s.projected))
	}
	return sum
}

// stripStrength sums the circulation of the panels of each strip.
func (l lattice) stripStrength(strength []float64) []float64 {
	sums := make([]float64, len(l.strips))
	for i, g := range strength {
		sums[l.panels[i].strip] += g
	}
	return sums
}

// trefftzWash returns the normal velocity far behind each strip, over speed, for strip circulations over speed.
//
// Formula: two-dimensional vortices (g/(2 pi h^2)) at the strip edges, with core between surfaces, port side included. Between two
// surfaces only the wash on the one with the finer strips is taken, twice: by Munk's theorem the two shares of the drag are equal, and
// the wash of a wide wake on narrow strips is the one the lattice resolves.
// Valid for: symmetric flight, wake along x.
// Source: Trefftz-plane method, Katz and Plotkin, Low-Speed Aerodynamics.
func (l lattice) trefftzWash(strength []float64) []float64 {
	wash := make([]float64, len(l.strips))
	for i := range l.strips {
		s := &l.strips[i]
		ny, nz := -(s.b.z-s.a.z)/s.Width, (s.b.y-s.a.y)/s.Width
		sum := 0.0
		for j := range l.strips {
			weight := l.mutualWeight(i, j)
			if weight == 0 {
				continue
			}
			core := l.coreBetween(i, j)
			y, z := l.strips[j].farVelocity(s.middle.y, s.middle.z, core)
			my, mz := l.strips[j].farVelocity(-s.middle.y, s.middle.z, core)
			sum += float64(float64(weight*strength[j]) * (float64(ny*(y-my)) + float64(nz*(z+mz))))
		}
		wash[i] = sum
	}
	return wash
}

// mutualWeight returns how often the wash of a source strip counts on a receiving strip: once within a surface or joined ones; between others twice
// on the one with the finer strips, not at all on the other, once when they are equally fine.
func (l lattice) mutualWeight(receiver, source int) float64 {
	r, s := l.strips[receiver].surface, l.strips[source].surface
	switch {
	case l.group[r] == l.group[s] || l.meanWidth[r] == l.meanWidth[s]:
		return 1
	case l.meanWidth[r] < l.meanWidth[s]:
		return 2
	}
	return 0
}

// farVelocity returns the y and z velocity of a strip's two trailing vortices far downstream per unit circulation.
func (s *latticeStrip) farVelocity(y, z, core float64) (vy, vz float64) {
	ay, az, by, bz := y-s.a.y, z-s.a.z, y-s.b.y, z-s.b.z
	la := farFactor(float64(ay*ay)+float64(az*az), max(0, core-float64(az*az)))
	lb := farFactor(float64(by*by)+float64(bz*bz), max(0, core-float64(bz*bz)))
	return float64(la*az) - float64(lb*bz), float64(lb*by) - float64(la*ay)
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
func (l lattice) inducedArea(strength, wash []float64) float64 {
	sum := 0.0
	for i := range l.strips {
		sum -= float64(2 * float64(float64(strength[i]*wash[i])*l.strips[i].Width))
	}
	return sum
}
