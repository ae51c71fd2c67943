package stability

import "math"

// LateralMotions are the natural motions of sideslip, roll and yaw.
type LateralMotions struct {
	DutchRoll Mode // swing of yaw and roll
	Roll      Mode // damping of roll, fast
	Spiral    Mode // slow: bank that grows or dies out
	// Coupled reports that roll and spiral have joined to a second, slow oscillation, which then stands in both.
	Coupled bool
}

// Motions returns the natural motions from the whole system. The error names an impossible field of the state.
//
// Formula: roots of the 4 by 4 system; the oscillation is the Dutch roll, the faster real root the roll, the slower one the spiral.
// Valid for: controls held fixed, rigid model.
// Source: Nelson, Flight Stability and Automatic Control, chapter 5.
func (d Lateral) Motions(s State) (LateralMotions, error) {
	forces, err := d.Dimensional(s)
	if err != nil {
		return LateralMotions{}, err
	}
	roots, err := forces.Matrix().Roots()
	if err != nil {
		return LateralMotions{}, err
	}
	return partLateral(roots), nil
}

// partLateral sorts roots, fastest first, into the motions.
func partLateral(r [order]Root) LateralMotions {
	switch {
	case r[0].Imaginary > 0 && r[2].Imaginary > 0:
		slow := pairMode(r[2], r[3])
		return LateralMotions{DutchRoll: pairMode(r[0], r[1]), Roll: slow, Spiral: slow, Coupled: true}
	case r[0].Imaginary > 0:
		return LateralMotions{DutchRoll: pairMode(r[0], r[1]), Roll: singleMode(r[2].Real), Spiral: singleMode(r[3].Real)}
	case r[2].Imaginary > 0:
		return LateralMotions{Roll: singleMode(r[0].Real), Spiral: singleMode(r[1].Real), DutchRoll: pairMode(r[2], r[3])}
	}
	return LateralMotions{Roll: singleMode(r[0].Real), DutchRoll: pairMode(r[1], r[2]), Spiral: singleMode(r[3].Real)}
}

// RollEstimate returns the root of rolling alone, 1/s.
//
// Formula: L_p.
// Valid for: small sideslip; within 1 % for ordinary models.
// Source: Nelson, Flight Stability and Automatic Control, chapter 5.
func (f LateralForces) RollEstimate() Mode { return singleMode(f.LP) }

// SpiralEstimate returns the slow root by the last two terms of the characteristic equation; false when they do not decide.
//
// Formula: lambda = -E/D; E = g (L_v N_r - N_v L_r), D = V (L_v N_p - L_p N_v) - g L_v.
// Valid for: a root much smaller than the others.
// Source: Etkin and Reid, Dynamics of Flight, chapter 6.
func (f LateralForces) SpiralEstimate() (Mode, bool) {
	e := float64(f.Gravity * (float64(f.LV*f.NR) - float64(f.NV*f.LR)))
	d := float64(f.Speed*(float64(f.LV*f.NP)-float64(f.LP*f.NV))) - float64(f.Gravity*f.LV)
	if root := -e / d; finite(root) {
		return singleMode(root), true
	}
	return Mode{}, false
}

// DutchRollEstimate returns the swing of yaw and sideslip without roll.
//
// Formula: omega^2 = Y_v N_r + N_v (V - Y_r); 2 zeta omega = -(Y_v + N_r).
// Valid for: little dihedral; the frequency within some 10 %, the damping a guess.
// Source: Nelson, Flight Stability and Automatic Control, chapter 5.
func (f LateralForces) DutchRollEstimate() Mode {
	return quadraticMode(float64(f.YV*f.NR)+float64(f.NV*(f.Speed-f.YR)), -(f.YV + f.NR))
}

// Tendency says what a small bank does by itself.
type Tendency int

// Tendencies of the spiral motion.
const (
	SpiralReturns  Tendency = iota // the wings come level
	SpiralNeutral                  // the bank stays for longer than a pilot looks away
	SpiralDiverges                 // the bank grows
)

// String returns the tendency as words of a sentence.
func (t Tendency) String() string {
	switch t {
	case SpiralReturns:
		return "rolls level by itself"
	case SpiralDiverges:
		return "bank grows by itself"
	default:
		return "keeps its bank"
	}
}

// SpiralTendency judges a slow root: within neutralTime (s) of halving or doubling it counts as neutral; 0 takes one minute.
//
// Valid for: controls held fixed.
// Source: judgement; a minute is longer than a pilot leaves a model alone.
func SpiralTendency(spiral Mode, neutralTime float64) Tendency {
	if !(neutralTime > 0) {
		neutralTime = 60
	}
	switch slow := math.Ln2 / neutralTime; {
	case spiral.Real > slow:
		return SpiralDiverges
	case spiral.Real < -slow:
		return SpiralReturns
	default:
		return SpiralNeutral
	}
}
