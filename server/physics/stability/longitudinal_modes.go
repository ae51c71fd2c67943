package stability

import "math"

// PitchMotions are the two natural motions of the pitching plane.
type PitchMotions struct {
	ShortPeriod Mode // fast: incidence
	Phugoid     Mode // slow: speed against height
	// Merged reports that the two no longer part into a fast and a slow pair of their own, as near or aft of the neutral point: a pair has roots of both signs,
	// or the fastest and the slowest root are aperiodic, stand as ShortPeriod and leave the oscillation between them as Phugoid.
	Merged bool
}

// Motions returns both natural motions from the whole system. The error names an impossible field of the state.
//
// Formula: roots of the 4 by 4 system; the two fastest are the short period.
// Valid for: controls held fixed, rigid model.
// Source: Nelson, Flight Stability and Automatic Control, chapter 4.
func (d Longitudinal) Motions(s State) (PitchMotions, error) {
	forces, err := d.Dimensional(s)
	if err != nil {
		return PitchMotions{}, err
	}
	roots, err := forces.Matrix().Roots()
	if err != nil {
		return PitchMotions{}, err
	}
	return partPitch(roots), nil
}

// partPitch sorts roots, fastest first, into the two motions.
func partPitch(r [order]Root) PitchMotions {
	if r[1].Imaginary > 0 && r[2].Imaginary < 0 {
		return PitchMotions{ShortPeriod: pairMode(r[0], r[3]), Phugoid: pairMode(r[1], r[2]), Merged: true}
	}
	short, slow := pairMode(r[0], r[1]), pairMode(r[2], r[3])
	return PitchMotions{ShortPeriod: short, Phugoid: slow, Merged: short.NaturalFrequency == 0 || slow.NaturalFrequency == 0}
}

// ShortPeriodEstimate returns the short period of two degrees of freedom at constant speed.
//
// Formula: omega^2 = Z_w M_q - V M_w; 2 zeta omega = -(M_q + V M_w' + Z_w).
// Valid for: stable models; within 1 % of the whole system for ordinary ones.
// Source: Nelson, Flight Stability and Automatic Control, chapter 4.
func (f LongitudinalForces) ShortPeriodEstimate() Mode {
	square := float64(f.ZW*f.MQ) - float64(f.Speed*f.MW)
	return quadraticMode(square, -(f.MQ + float64(f.Speed*f.MWDot) + f.ZW))
}

// PhugoidEstimate returns the phugoid at constant incidence.
//
// Formula: omega^2 = -Z_u g/V; 2 zeta omega = -X_u.
// Valid for: stable models; some 20 % high in frequency.
// Source: Nelson, Flight Stability and Automatic Control, chapter 4.
func (f LongitudinalForces) PhugoidEstimate() Mode {
	return quadraticMode(-float64(f.ZU*f.Gravity)/f.Speed, -f.XU)
}

// LanchesterPeriod returns the period of a phugoid without drag, s.
//
// Formula: T = sqrt(2) pi V/g.
// Valid for: order of magnitude; independent of the model.
// Source: Lanchester, Aerodonetics, 1908.
func LanchesterPeriod(speed, gravity float64) float64 {
	if !(gravity > 0) {
		return 0
	}
	return float64(math.Sqrt2*math.Pi) * speed / gravity
}
