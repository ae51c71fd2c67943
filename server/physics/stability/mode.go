package stability

import "math"

// Root is one root of a motion, 1/s: the motion goes with e^(Real t) and turns with Imaginary rad/s.
type Root struct{ Real, Imaginary float64 }

// Mode is one natural motion: an oscillation, a pair of aperiodic motions that belong together, or a single aperiodic motion.
type Mode struct {
	// Real and Imaginary are the root with the greater real part, 1/s and rad/s; Imaginary is not negative.
	Real, Imaginary float64
	// Other is the second real root of an aperiodic pair, 1/s; equal to Real otherwise.
	Other float64
	// NaturalFrequency is the root of the product of both roots, rad/s; 0 for a pair of opposite signs, which has none.
	NaturalFrequency float64
	// Damping is the damping ratio; above 1 for an aperiodic pair, negative when it grows, 0 where there is no frequency.
	Damping float64
	// Period of an oscillation, s; 0 for aperiodic motions.
	Period float64
	// HalfTime until half the amplitude, s; 0 when it does not decay.
	HalfTime float64
	// DoubleTime until twice the amplitude, s; 0 when it does not grow.
	DoubleTime float64
}

// Oscillates reports whether the motion swings.
func (m Mode) Oscillates() bool { return m.Imaginary > 0 }

// Decays reports whether the motion dies out by itself.
func (m Mode) Decays() bool { return m.Real < 0 }

// pairMode describes two roots that belong together: conjugates or two real ones.
//
// Formula: omega_n = sqrt(r1 r2), zeta = -(r1 + r2)/(2 omega_n).
// Valid for: both roots conjugate or both real.
// Source: definition of the damped oscillator.
func pairMode(a, b Root) Mode {
	if b.Real > a.Real {
		a, b = b, a
	}
	m := Mode{Real: a.Real, Other: b.Real, Imaginary: math.Abs(a.Imaginary)}
	product := float64(a.Real*b.Real) + float64(a.Imaginary*a.Imaginary)
	if product > 0 {
		m.NaturalFrequency = math.Sqrt(product)
		m.Damping = -(a.Real + b.Real) / float64(2*m.NaturalFrequency)
	}
	return m.withTimes()
}

// singleMode describes one real root.
func singleMode(root float64) Mode {
	m := Mode{Real: root, Other: root, NaturalFrequency: math.Abs(root)}
	if root != 0 {
		m.Damping = -root / m.NaturalFrequency
	}
	return m.withTimes()
}

// withTimes fills period, half time and double time.
//
// Formula: T = 2 pi/omega; t = ln 2/|sigma|.
// Valid for: linear motions.
// Source: definition.
func (m Mode) withTimes() Mode {
	if m.Imaginary > 0 {
		m.Period = 2 * math.Pi / m.Imaginary
	}
	switch {
	case m.Real < 0:
		m.HalfTime = -math.Ln2 / m.Real
	case m.Real > 0:
		m.DoubleTime = math.Ln2 / m.Real
	}
	return m
}

// quadraticMode describes the motion of s^2 + twice s + square = 0.
//
// Valid for: all real coefficients.
// Source: quadratic formula, in the form that does not cancel.
func quadraticMode(square, twice float64) Mode {
	half := float64(-0.5 * twice)
	under := float64(half*half) - square
	if under < 0 {
		swing := math.Sqrt(-under)
		return pairMode(Root{half, swing}, Root{half, -swing})
	}
	far := half + math.Copysign(math.Sqrt(under), half)
	if far == 0 {
		return pairMode(Root{}, Root{})
	}
	return pairMode(Root{Real: far}, Root{Real: square / far})
}
