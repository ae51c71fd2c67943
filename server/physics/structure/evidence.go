package structure

import (
	"math"

	"pitgate/server/physics/elementary"
	"pitgate/server/physics/loads"
)

// Basis says what a permitted load factor rests on.
type Basis string

// Bases of a permitted load factor.
const (
	BasisNone       Basis = "nothing known"
	BasisDesign     Basis = "designer's figure, not shown"
	BasisCalculated Basis = "calculated"
	BasisTested     Basis = "sandbag test"
)

// Evidence is what is known of the load factor a model stands; 0 for what is not.
type Evidence struct {
	Calculated float64 // limit load factor of Assess
	Design     float64 // the builder's or designer's figure
	Proof      float64 // held in a sandbag test without damage
}

// Permitted is the load factor to fly with.
type Permitted struct {
	LoadFactor float64 // limit
	Basis      Basis
	// BelowDesign is true when what was shown or calculated is less than the designer's figure.
	BelowDesign bool
	// TestBeyondCalculation is true when a test held more than the calculation gives: measures or materials of the calculation should be looked at.
	TestBeyondCalculation bool
}

// Decide returns the load factor to fly with: a test replaces the calculation, which replaces a designer's figure. Errors name the impossible field.
//
// Valid for: tests with the load spread like the lift and held for three seconds; they show the limit load, not how much is left beyond it.
// Source: 14 CFR 25.305 and 25.307: proof by test of the limit load.
func Decide(e Evidence) (Permitted, error) {
	err := checkNotNegative(named{"calculated", e.Calculated}, named{"designLoadFactor", e.Design}, named{"proofLoadFactor", e.Proof})
	if err != nil {
		return Permitted{}, err
	}
	p := Permitted{Basis: BasisNone}
	switch {
	case e.Proof > 0:
		p = Permitted{LoadFactor: e.Proof, Basis: BasisTested, TestBeyondCalculation: e.Calculated > 0 && e.Proof > e.Calculated}
	case e.Calculated > 0:
		p = Permitted{LoadFactor: e.Calculated, Basis: BasisCalculated}
	case e.Design > 0:
		return Permitted{LoadFactor: e.Design, Basis: BasisDesign}, nil
	}
	p.BelowDesign = p.Basis != BasisNone && p.LoadFactor < e.Design
	return p, nil
}

// SandbagMass returns the mass to lay on a wing that hangs upside down from its seat to bend it as a load factor does, kg; 0 when its own weight is enough.
// Errors name the
// impossible field.
//
// Formula: n (m - m_w) - m_w; where m the model, m_w the wing, kg: in flight the wing's own weight relieves it, on the bench it adds.
// Valid for: bags spread along the span like the lift less the wing's own weight.
// Source: statics.
func SandbagMass(loadFactor, mass, wingMass float64) (float64, error) {
	err := checkPositive(named{"loadFactor", loadFactor}, named{"mass", mass})
	if err != nil {
		return 0, err
	}
	if err := checkNotNegative(named{"wingMass", wingMass}, named{"mass less wingMass", mass - wingMass}); err != nil {
		return 0, err
	}
	bags := max(0, float64(loadFactor*(mass-wingMass))-wingMass)
	return bags, checkResult(bags)
}

// Flight is what a load factor permits at a speed.
type Flight struct {
	PullUpRadius float64 // least radius at the bottom of a dive at the speed looked at, m; 0 when the load factor permits none
	TurnBank     float64 // greatest bank of a level turn, rad; 0 when it permits none
	StallLimited bool    // the wing stalls before it reaches the load factor at that speed
}

// PullUp returns the least radius of a pull-up at a true speed (m/s) with a permitted load factor and the one at which the wing stalls there.
//
// Formula: loads.PullUpRadius of the lesser; bank = acos(1/n).
// Valid for, source: loads.PullUpRadius.
func PullUp(speed, permitted, stalls float64) Flight {
	n := max(1, min(permitted, stalls))
	bank := elementary.Atan2(math.Sqrt(max(0, float64(n*n)-1)), 1)
	return Flight{PullUpRadius: loads.PullUpRadius(speed, n), TurnBank: bank, StallLimited: stalls < permitted}
}
