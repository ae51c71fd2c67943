package assess

import "math"

const massGroup = "Mass and balance"

// repeatFactor is how many standard deviations two readings of one thing by one hand may differ in 95 of 100 pairs: 1.96 sqrt 2.
//
// Source: ISO 5725-6, repeatability limit.
const repeatFactor = 2.77

var benchMassRows = []benchRow{
	{id: "bench.mass.weighing", group: massGroup, title: "Mass with tanks empty", input: "model.mass.emptyMassKg", unit: "kg", photo: true,
		how:      "Complete and ready for flight, packs and canopy on, tanks drained. Zero the scales, set the model down, read, note each scale.",
		why:      "Every speed, distance and load goes with the mass.",
		findings: []string{"stall.speed", "launch.distance", "launch.end_speed", "thrust.ratio", "mass.class", "mass.reconciled"},
		wanted:   wantedMass},
	{id: "bench.mass.repeat", group: massGroup, title: "Weighed twice, scales changed over", unit: "kg", input: "model.mass.scaleReadings",
		how:      "Lift the model off, exchange the scales front and rear, set it down again: the sums may differ by no more than this.",
		why:      "A scale that is wrong shows only when it stands somewhere else.",
		findings: []string{"mass.reconciled", "balance.margin_full"}, wanted: wantedRepeat},
	{id: "bench.mass.balance", group: massGroup, title: "Balance point with tanks empty", input: "model.mass.emptyBalanceXMeters", unit: "m", photo: true,
		how:      "From the readings and the measured places of the supports, or on a balancing stand; wheels as in flight. Measure aft from the datum.",
		why:      "Ahead of the window the pitch control runs out, behind it the model cannot be flown.",
		findings: []string{"balance.margin_full", "balance.margin_empty", "balance.margin_burn", "balance.launch_trim", "pitch.sensitivity"},
		wanted:   wantedBalance},
	{id: "bench.mass.sides", group: massGroup, title: "Balance from side to side",
		how:      "Hold it up at nose and tail on its centre line, tanks empty, then full: neither wing may drop.",
		why:      "A heavy wing drops first at the stall.",
		findings: []string{"stall.tip", "roll.rate"}, wanted: state("the wings stay level, tanks empty and full")},
	{id: "bench.mass.fixed", group: massGroup, title: "Packs, tanks and ballast cannot move", photo: true,
		how:      "Turn the model over and shake it; pull at each pack and tank.",
		why:      "What slides in a pull-up takes the balance point with it.",
		findings: []string{"balance.margin_burn"}, wanted: state("nothing moves, nothing rattles")},
	{id: "bench.mass.ballast", group: massGroup, title: "Ballast", unit: "kg", input: "model.mass.items", photo: true,
		how:      "Fix it where the report says, by screws or glue and not by tape, and weigh the model again.",
		why:      "Without it the balance point lies outside its window.",
		findings: []string{"balance.margin_full", "balance.margin_empty"},
		applies:  func(v *benchView, _ *benchSubject) bool { return v.leastBallast() != nil }, wanted: wantedBallast},
}

// wantedMass is the band of the mass as the report takes it, capped by what the class of masses leaves beside the fuel.
func wantedMass(v *benchView, s *benchSubject) benchWanted {
	var given *Quantity
	if v.model.Mass != nil {
		given = v.model.Mass.EmptyMassKg
	}
	wanted := bandOf(given, s.input)
	if taken := v.number("mass.empty"); given == nil && taken != nil {
		wanted = benchWanted{text: "as the report adds it up from the scales or the items", high: taken}
	}
	if class := v.limitOf("mass.class"); class != nil && wanted.high != nil {
		if most := *class - v.value["mass.fuel"]; most < *wanted.high {
			wanted.high, wanted.text = &most, "the class of masses leaves no more beside the fuel"
		}
	}
	return wanted
}

// wantedRepeat is the repeatability limit of the mass: r = 2.77 s, s its standard deviation in kg.
//
// Source: ISO 5725-6.
func wantedRepeat(v *benchView, _ *benchSubject) benchWanted {
	taken := v.number("mass.empty")
	if taken == nil {
		return benchWanted{text: noFigureYet}
	}
	deviation := *taken * measuredSpread("model.mass.emptyMassKg")
	if m := v.model.Mass; m != nil && m.EmptyMassKg != nil && m.EmptyMassKg.Value != nil && m.EmptyMassKg.Basis == BasisMeasured {
		deviation = m.EmptyMassKg.Deviation("model.mass.emptyMassKg")
	}
	high := float64(repeatFactor * deviation)
	return benchWanted{text: "difference of the two sums", high: &high}
}

// wantedBalance is the window that keeps the empty model inside its static margins.
func wantedBalance(v *benchView, _ *benchSubject) benchWanted {
	x, known := v.value["balance.empty_x"]
	ahead, aheadKnown := v.value["balance.margin_empty.room_forward"]
	behind, behindKnown := v.value["balance.margin_empty.room_aft"]
	if !known || !aheadKnown || !behindKnown {
		return benchWanted{text: "the window is not computed yet, an input is missing"}
	}
	low, high := math.Min(x-ahead, x+behind), math.Max(x-ahead, x+behind)
	return benchWanted{text: "window of the static margin, tanks empty", low: &low, high: &high}
}

// leastBallast is the first place where a mass brings the balance into its window.
func (v *benchView) leastBallast() *BallastOption {
	for i := range v.pass.ballast {
		if v.pass.ballast[i].MassKg != nil {
			return &v.pass.ballast[i]
		}
	}
	return nil
}

func wantedBallast(v *benchView, _ *benchSubject) benchWanted {
	option := v.leastBallast()
	return benchWanted{text: say("at %s, %.3f m behind the datum", option.Place, option.XMeters), low: option.MassKg}
}
