package drag

import "math"

// PolarPoint is an addition to the drag coefficient at a lift coefficient.
type PolarPoint struct{ Lift, Drag float64 }

// Polar is the drag of a whole model against its lift coefficient. What is in it is counted once:
// ZeroLift holds the build-up; Induced the lattice's drag of the whole trimmed model (or untrimmed, with Trim for the rest); Profile what the
// sections' drag rises above the build-up, and only when it is empty ParasiteFactor stands in for it.
type Polar struct {
	ZeroLift       float64      // drag coefficient of the build-up
	ZeroLiftSpread float64      // one standard deviation of it
	Induced        float64      // drag coefficient over lift coefficient squared, from the lattice in free air
	InducedSpread  float64      // one standard deviation over Induced; 0 counts as 0.05
	GroundFactor   float64      // what is left of the induced drag near the ground; 0 counts as 1
	Profile        []PolarPoint // rise of the sections' drag, by rising lift; straight between, held at the ends
	ProfileSpread  float64      // one standard deviation over the rise; 0 counts as 0.25
	ParasiteFactor float64      // rise per lift coefficient squared while Profile is empty
	Trim           []PolarPoint // what trimming adds where Induced is without it; see TrimDrag
	TrimSpread     float64      // one standard deviation over it; 0 counts as 0.3
	MaximumLift    float64      // greatest lift coefficient; 0 = no limit known, 1.5 is searched to
}

// Drag is the drag coefficient at one lift coefficient, by parts.
type Drag struct {
	Total    float64
	Spread   float64 // one standard deviation of Total
	ZeroLift float64
	Induced  float64
	Profile  float64
	Trim     float64
	Inside   bool // within the greatest lift and the tables
}

// Spreads that count when none is given.
const (
	spreadInduced   = 0.05
	spreadProfile   = 0.25
	spreadTrim      = 0.30
	unknownLiftEdge = 1.5
)

// NewPolar returns the polar of a build-up: its total and spread, the lattice's induced factor, and the rise of the sections' drag by the
// rule 0.38 CD0 until Profile is filled.
func NewPolar(components []Component, aspectRatio, spanEfficiency float64) Polar {
	total := 0.0
	for _, part := range components {
		total += part.Coefficient
	}
	return Polar{
		ZeroLift: total, ZeroLiftSpread: TotalSpread(components), Induced: InducedFactor(aspectRatio, spanEfficiency),
		ParasiteFactor: float64(parasiteShare * total),
	}
}

// Near returns the polar near the ground, where a part of the induced drag is left.
//
// Formula: induced drag times the factor; McCormick's (16 h/b)^2/(1 + (16 h/b)^2), which package lift holds, where h height of the wing over
// the ground and b span, m.
// Valid for: h/b 0.03 to 1; other rules differ by 40 % at 0.1. A polar of a lattice solved with its image in the ground needs none.
// Source: McCormick, as in Anderson, Introduction to Flight, Eq. 6.77.
func (p Polar) Near(factor float64) Polar {
	p.GroundFactor = max(math.SmallestNonzeroFloat64, min(1, factor))
	return p
}

// At returns the drag coefficient at a lift coefficient.
//
// Formula: CD = CD0 + phi K CL^2 + profile rise + trim; spread = root of the sum of the parts' variances.
// Valid for: attached flow; Inside says whether CL lies within the greatest lift and the tables. A CL that is no number counts as 0.
// Source: sum of the parts.
func (p Polar) At(liftCoefficient float64) Drag {
	cl := liftCoefficient
	if math.IsNaN(cl) || math.IsInf(cl, 0) {
		cl = 0
	}
	square := float64(cl * cl)
	d := Drag{ZeroLift: p.ZeroLift, Induced: float64(float64(orOne(p.GroundFactor)*p.Induced) * square), Trim: between(p.Trim, cl)}
	d.Profile = between(p.Profile, cl)
	if len(p.Profile) == 0 {
		d.Profile = float64(p.ParasiteFactor * square)
	}
	d.Total = d.ZeroLift + d.Induced + d.Profile + d.Trim
	d.Spread = p.spreadOf(d)
	d.Inside = cl == liftCoefficient && p.inside(cl)
	return d
}

// spreadOf returns one standard deviation of the sum.
func (p Polar) spreadOf(d Drag) float64 {
	square := float64(p.ZeroLiftSpread * p.ZeroLiftSpread)
	for _, part := range [...]struct{ value, given, fallback float64 }{
		{d.Induced, p.InducedSpread, spreadInduced}, {d.Profile, p.ProfileSpread, spreadProfile}, {d.Trim, p.TrimSpread, spreadTrim},
	} {
		relative := part.given
		if !(relative > 0) {
			relative = part.fallback
		}
		own := float64(part.value * relative)
		square += float64(own * own)
	}
	return math.Sqrt(square)
}

// inside reports whether a lift coefficient lies within the greatest lift and the tables.
func (p Polar) inside(cl float64) bool {
	if p.MaximumLift > 0 && math.Abs(cl) > p.MaximumLift {
		return false
	}
	for _, table := range [...][]PolarPoint{p.Profile, p.Trim} {
		if n := len(table); n > 0 && (cl < table[0].Lift || cl > table[n-1].Lift) {
			return false
		}
	}
	return true
}

// orOne returns a factor, 1 when it is 0.
func orOne(factor float64) float64 {
	if factor == 0 {
		return 1
	}
	return factor
}

// between reads a table at a lift coefficient: straight between its points, held at the ends, 0 when empty.
func between(table []PolarPoint, cl float64) float64 {
	if len(table) == 0 {
		return 0
	}
	if cl <= table[0].Lift {
		return table[0].Drag
	}
	for i := 1; i < len(table); i++ {
		a, b := table[i-1], table[i]
		if cl <= b.Lift && b.Lift > a.Lift {
			return a.Drag + float64((cl-a.Lift)/(b.Lift-a.Lift)*(b.Drag-a.Drag))
		}
	}
	return table[len(table)-1].Drag
}
