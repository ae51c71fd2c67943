package aeroelastic

import (
	"cmp"
	"slices"

	"pitgate/server/physics/order"
)

// Kind is what a speed not to pass comes from.
type Kind string

// Kinds of speeds not to pass.
const (
	KindDivergence Kind = "wing twists off"
	KindFlutter    Kind = "thin fin may flutter"
	KindReversal   Kind = "aileron reversal"
	KindServo      Kind = "servo torque"
	KindRod        Kind = "pushrod"
	KindGust       Kind = "load factor in the design gust"
	KindRule       Kind = "rule"
	KindMaker      Kind = "maker's or designer's figure"
)

// shares of each computed speed that may be flown.
//
// Source: CS-VLA 629 asks 1.2 times the dive speed clear of flutter and divergence (from memory), 1/1.2 rounded down to 0.8; reversal 1/1.3 by this project's
// limit; speeds
// with a factor in them already, rules and gusts as they are; judgement else.
var shares = map[Kind]float64{KindDivergence: 0.8, KindFlutter: 0.8, KindReversal: 1 / 1.3}

// Share returns the part of a computed speed that may be flown.
//
// Valid for: every Kind; 1 for those whose margin is in the figure already.
// Source: shares.
func (k Kind) Share() float64 {
	if share, ok := shares[k]; ok {
		return share
	}
	return 1
}

// Term is one speed not to pass.
type Term struct {
	Kind  Kind
	Name  string  // of the surface, control or rule
	Speed float64 // computed, true, m/s, before the share
	// Sure is false when the method is outside its validity there: the term still counts.
	Sure bool
}

// Permitted returns the speed that may be flown, m/s.
func (t Term) Permitted() float64 { return t.Speed * t.Kind.Share() }

// Limit is the speed never to exceed.
type Limit struct {
	Known   bool    // false without a term
	Speed   float64 // true, m/s
	Governs Term
	Terms   []Term // by permitted speed, least first
	Sure    bool   // false when a term is outside its method's validity
}

// NeverExceed returns the least permitted speed of all terms and which governs it; of equal ones the first counts. Errors name the impossible field.
//
// Formula: least of share times speed.
// Valid for: the terms given; what is not given (a control without linkage, a wing without stiffness) is not covered, so list it beside the figure.
// Source: CS-VLA 335 and 1505, from memory: the never-exceed speed lies below the least demonstrated one.
func NeverExceed(terms []Term) (Limit, error) {
	for _, t := range terms {
		if err := checkNotNegative(named{"speed of " + string(t.Kind), t.Speed}); err != nil {
			return Limit{}, err
		}
	}
	if len(terms) == 0 {
		return Limit{}, nil
	}
	sorted := slices.Clone(terms)
	order.Stable(sorted, func(a, b Term) int { return cmp.Compare(a.Permitted(), b.Permitted()) })
	l := Limit{Known: true, Speed: sorted[0].Permitted(), Governs: sorted[0], Terms: sorted, Sure: true}
	for _, t := range sorted {
		l.Sure = l.Sure && t.Sure
	}
	return l, nil
}

// DiveReserve returns the speed never to exceed over the greatest level speed; false when either is not known. Below 1.25 a shallow dive at full thrust
// passes it: a caution of its
// own.
//
// Formula: V_ne/V_top.
// Valid for: true speeds of the same air.
// Source: 14 CFR 23.335(b) before 2017: the dive speed is at least 1.25 times the cruising speed.
func (l Limit) DiveReserve(topSpeed float64) (float64, bool) {
	if !l.Known || !(topSpeed > 0) {
		return 0, false
	}
	ratio := l.Speed / topSpeed
	return ratio, checkResult(ratio) == nil
}
