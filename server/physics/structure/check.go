package structure

import (
	"math"

	"pitgate/server/physics/loads"
)

// Mode is a way in which a part fails.
type Mode string

// Modes of failure.
const (
	ModeTension      Mode = "pulled apart"
	ModeCompression  Mode = "crushed"
	ModeWallBuckling Mode = "tube wall buckles"
	ModeCapBuckling  Mode = "cap buckles"
	ModeSkinBuckling Mode = "skin buckles"
	ModeShear        Mode = "sheared"
	ModeWebBuckling  Mode = "web buckles in shear"
	ModeBearing      Mode = "socket crushed"
	ModePulled       Mode = "bolt pulled or sheared"
)

// Unlimited stands for a load factor that nothing limits.
const Unlimited = 1000.0

// Check is one way in which one part may fail.
type Check struct {
	Part         int // index of the part
	Mode         Mode
	Allowable    float64    // stress, Pa, knock-downs taken off
	Stress       loads.Line // over the load factor, Pa: of the fibre or wall that this mode looks at, tension positive, no safety factor
	Upper, Lower float64    // greatest and least limit load factor it stands: SafetyFactor times the stress there is the allowable; within -Unlimited to Unlimited
}

// Margin returns the margin of safety at a load factor: allowable over SafetyFactor times stress, less 1; Unlimited without stress.
//
// Formula: MS = a/(1.5 s) - 1.
// Valid for: any load factor; below 0 the part fails before the safety factor is used up.
// Source: common practice of stress analysis.
func (c Check) Margin(loadFactor float64) float64 {
	stress := SafetyFactor * math.Abs(c.Stress.At(loadFactor))
	if !(stress > 0) {
		return Unlimited
	}
	return min(Unlimited, c.Allowable/stress-1)
}

// within returns the load factors between which a stress stays within -low and high.
func within(stress loads.Line, low, high float64) (lower, upper float64) {
	a, aFound := stress.Reaches(-low)
	b, bFound := stress.Reaches(high)
	if !aFound || !bFound {
		if stress.AtZero >= -low && stress.AtZero <= high {
			return -Unlimited, Unlimited
		}
		return 0, 0
	}
	return clip(min(a, b)), clip(max(a, b))
}

func clip(n float64) float64 { return max(-Unlimited, min(Unlimited, n)) }

// check returns a check of a stress that may be as great as tension or compression.
func check(part int, mode Mode, stress loads.Line, compression, tension float64) Check {
	c := Check{Part: part, Mode: mode, Stress: stress, Allowable: tension}
	c.Lower, c.Upper = within(stress, compression/SafetyFactor, tension/SafetyFactor)
	if stress.PerLoad < 0 {
		c.Allowable = compression
	}
	return c
}

// fibreChecks appends the checks of a part's highest and lowest fibre.
func fibreChecks(to []Check, i int, s PartSection, a Allowable, l loads.Load) []Check {
	for _, perMoment := range [2]float64{s.Top, s.Bottom} {
		stress := l.Bending.Times(perMoment)
		mode := ModeTension
		if stress.PerLoad < 0 {
			mode = ModeCompression
		}
		to = append(to, check(i, mode, stress, a.Compression, a.Tension))
	}
	return to
}

// buckles returns the stress at which the pressed side of a part buckles, and as what; false when it is too thick to.
func (p Part) buckles(core *Material) (float64, Mode, bool) {
	e := plateModulus(p.Material)
	switch {
	case p.Shape == ShapeTube && p.inner() > 0:
		radius := float64(0.5 * (p.Outer - p.Wall))
		return float64(BendingShellFactor(radius/p.Wall) * TubeBucklingStress(e, p.Wall, radius)), ModeWallBuckling, true
	case p.Shape == ShapeCapsAndWeb:
		outstand := float64(0.5 * (p.Width - p.Web))
		return held(PlateBucklingStress(PlatePressedFree, e, p.Cap, outstand), p.Material, core), ModeCapBuckling, outstand > 0
	case p.Shape == ShapeSheet:
		return held(PlateBucklingStress(PlatePressed, e, p.Wall, p.Width), p.Material, core), ModeSkinBuckling, true
	}
	return 0, "", false
}

// held returns the buckling stress of a plate, or that of one bonded to a core when that is greater.
func held(plate float64, m Material, core *Material) float64 {
	if core == nil {
		return plate
	}
	return max(plate, WrinklingStress(m.Modulus, core.Modulus, core.ShearModulus))
}

// bucklingChecks appends the check of a part's pressed side.
func bucklingChecks(to []Check, i int, p Part, s PartSection, core *Material, l loads.Load) []Check {
	limit, mode, may := p.buckles(core)
	if !may {
		return to
	}
	for _, perMoment := range [2]float64{s.Top, s.Bottom} {
		stress := l.Bending.Times(perMoment)
		c := check(i, mode, stress, limit, limit)
		switch { // pressed on one side of the load factor only
		case stress.PerLoad < 0:
			c.Lower = -Unlimited
		case stress.PerLoad > 0:
			c.Upper = Unlimited
		}
		to = append(to, c)
	}
	return to
}

// shearChecks appends the checks of a part that carries shear, and twist when it is a tube and twist is its job.
func shearChecks(to []Check, i int, p Part, s PartSection, a Allowable, core *Material, l loads.Load, perTorque float64) []Check {
	if s.Shear == 0 {
		return to
	}
	signs := []float64{1, -1}
	if perTorque == 0 {
		signs = signs[:1]
	}
	for _, sign := range signs {
		stress := l.Shear.Times(s.Shear).Plus(l.Torsion.Times(sign * perTorque))
		to = append(to, check(i, ModeShear, stress, a.Shear, a.Shear))
		if p.Shape == ShapeCapsAndWeb {
			limit := held(PlateBucklingStress(PlateInShear, plateModulus(p.Material), p.Web, p.Depth-float64(2*p.Cap)), p.Material, core)
			to = append(to, check(i, ModeWebBuckling, stress, limit, limit))
		}
	}
	return to
}
