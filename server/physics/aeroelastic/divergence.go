package aeroelastic

import (
	"math"
	"slices"

	"pitgate/server/physics/stability"
)

// SectionDivergencePressure returns the dynamic pressure at which a wing on a torsion spring twists off, Pa; false when it never does.
//
// Formula: q = K/(S e a); where K spring, N m/rad, S area, m2, e distance from the aerodynamic centre back to the elastic axis, m, a lift slope per rad.
// Valid for: a typical section that twists as one piece.
// Source: Megson, Aircraft Structures for Engineering Students, Eq. 29.3.
func SectionDivergencePressure(spring, area, arm, slope float64) (float64, bool) {
	q := spring / float64(float64(area*arm)*slope)
	return q, q > 0 && !math.IsInf(q, 0)
}

// UniformDivergencePressure returns the dynamic pressure at which a uniform cantilever wing twists off, Pa; false when it never does.
//
// Formula: q = pi^2 G J/(4 s^2 c e a); where G J torsional stiffness, N m2, s length, c chord, m, e, a as SectionDivergencePressure.
// Valid for: unswept wings, strip theory, which is cautious.
// Source: Megson, Aircraft Structures for Engineering Students, Eq. 29.11; Bisplinghoff, Ashley and Halfman, Aeroelasticity, chapter 8.
func UniformDivergencePressure(stiffness, length, chord, arm, slope float64) (float64, bool) {
	q := math.Pi * math.Pi * stiffness / (4 * float64(length*length) * float64(float64(chord*arm)*slope))
	return q, q > 0 && !math.IsInf(q, 0)
}

// Wing is one half of a wing that lift twists.
type Wing struct {
	// Stiffness is the twisting moment at the tip over the twist it causes there, N m/rad, root held: as measured, or stability.Box.TwistStiffness.
	Stiffness float64
	// HalfSpan from the root to the tip, m.
	HalfSpan float64
	// Chords at equal steps from root to tip, at least two, m.
	Chords []float64
	// Axis is where the elastic axis lies behind the leading edge, over the chord; the aerodynamic centre is taken at 0.25.
	Axis      float64
	LiftSlope float64 // of the sections in the wing, per rad
	Sweep     float64 // of the quarter chord, back positive, rad
}

// aerodynamicCentre over the chord.
const aerodynamicCentre = 0.25

// forwardSweep is the sweep below which bending washes the wing in and takes a share off the speed that the method does not see, rad.
const forwardSweep = -0.05

// Divergence is the outcome of Wing.Divergence.
type Divergence struct {
	Happens  bool    // false when the elastic axis lies at or ahead of the aerodynamic centre
	Pressure float64 // dynamic pressure, Pa; 0 when it does not happen
	Inside   bool    // false for a wing swept forward: bending then brings divergence sooner than is told
}

// Speed returns the true speed at a density (kg/m3), m/s; 0 when it does not happen.
func (d Divergence) Speed(density float64) float64 { return stability.SpeedOf(d.Pressure, density) }

// Divergence returns the dynamic pressure at which the wing twists off. Errors name the impossible field.
//
// Formula: least q with theta = q K[theta]; K[theta](y) = (1/G J) integral of min(y, n) a e(n) c(n) theta(n) dn, e = (axis - 0.25) c; by power iteration; G J
// = Stiffness HalfSpan, even.
// Valid for: no forward sweep (sweep back only raises the speed), strip theory with the wing's own slope. Even stiffness is the cautious choice for one that
// falls outboard.
// Source: Bisplinghoff, Ashley and Halfman, Aeroelasticity, chapter 8; integral form of the equation of a uniform wing.
func (w Wing) Divergence() (Divergence, error) {
	if err := w.check(); err != nil {
		return Divergence{}, err
	}
	d := Divergence{Inside: w.Sweep >= forwardSweep}
	if !(w.Axis > aerodynamicCentre) {
		return d, nil
	}
	q := float64(w.Stiffness*w.HalfSpan) / float64(w.greatestEigenvalue()*float64(w.LiftSlope*(w.Axis-aerodynamicCentre)))
	if err := checkResult(q); err != nil {
		return Divergence{}, err
	}
	d.Happens, d.Pressure = true, q
	return d, nil
}

func (w Wing) check() error {
	err := checkPositive(named{"stiffness", w.Stiffness}, named{"halfSpan", w.HalfSpan}, named{"liftSlope", w.LiftSlope},
		named{"chords less one", float64(len(w.Chords) - 1)}, named{"1.2 - elasticAxis", 1.2 - w.Axis})
	if err != nil {
		return err
	}
	if err := checkNotNegative(named{"elasticAxis", w.Axis}); err != nil {
		return err
	}
	if err := checkFinite(named{"sweep", w.Sweep}); err != nil {
		return err
	}
	for _, c := range w.Chords {
		if err := checkNotNegative(named{"chords", c}); err != nil {
			return err
		}
	}
	return checkPositive(named{"greatest of chords", slices.Max(w.Chords)})
}

const (
	strips     = 60
	iterations = 30
)

// greatestEigenvalue returns the greatest eigenvalue of integral of min(y, n) c(n)^2 theta(n) dn by power iteration with midpoints, m4.
func (w Wing) greatestEigenvalue() float64 {
	step := w.HalfSpan / strips
	var weight, theta [strips]float64
	for i := range theta {
		share := (float64(i) + 0.5) / strips
		c := w.chordAt(share)
		weight[i], theta[i] = float64(c*c), share
	}
	value := 0.0
	for range iterations {
		value = 0
		twisted := twistOf(&weight, &theta, step)
		for _, angle := range twisted {
			value = max(value, angle)
		}
		if !(value > 0) {
			return 0
		}
		for i := range theta {
			theta[i] = twisted[i] / value
		}
	}
	return value
}

// twistOf applies the integral in one sweep each way: the torque is what is outboard, the twist what the torque adds up to.
func twistOf(weight, theta *[strips]float64, step float64) [strips]float64 {
	var torque, twist [strips]float64
	outboard := 0.0
	for i := strips - 1; i >= 0; i-- {
		here := float64(float64(weight[i]*theta[i]) * step)
		torque[i] = outboard + float64(0.5*here)
		outboard += here
	}
	sum := 0.0
	for i := range twist {
		twist[i] = sum + float64(0.5*step*torque[i])
		sum += float64(step * torque[i])
	}
	return twist
}

// chordAt returns the chord at a share of the half span.
func (w Wing) chordAt(share float64) float64 {
	place := float64(share * float64(len(w.Chords)-1))
	i := min(int(place), len(w.Chords)-2)
	return w.Chords[i] + float64((place-float64(i))*(w.Chords[i+1]-w.Chords[i]))
}
