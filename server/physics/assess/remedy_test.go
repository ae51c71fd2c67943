package assess_test

import (
	"math"
	"testing"

	"pitgate/server/physics/assess"
)

// brokenDocument is a sound document that one known change breaks.
type brokenDocument struct {
	name, document, finding, knob string
	// set writes the one number that is broken.
	set func(in *assess.Input, x float64)
	// sound and broken are its values, between which the cure lies; before is what else the case asks of the document.
	sound, broken float64
	before        func(in *assess.Input)
}

// onEvenOdds asks every finding to hold in half of the cases: its middle decides, and the cure is where the limit is just met.
func onEvenOdds(in *assess.Input) {
	if in.Limits == nil {
		in.Limits = &assess.Limits{}
	}
	in.Limits.RequiredThirdPartyProbability, in.Limits.RequiredModelLossProbability = number(0.5), number(0.5)
	in.Limits.RequiredHandlingProbability = number(0.5)
}

func known(x float64) *assess.Quantity {
	return &assess.Quantity{Value: &x, Basis: assess.BasisMeasured}
}

var brokenDocuments = []brokenDocument{
	{
		name: "trap shrunk", document: "sandmartin_long_acre", finding: "fuel.trap", knob: "trap.volume", sound: 0.5, broken: 0.02,
		set: func(in *assess.Input, x float64) { in.Model.FuelSystem.AirTrapVolumeLiters = known(x) },
	},
	{
		name: "line narrowed", document: "sandmartin_long_acre", finding: "fuel.suction", knob: "line.bore", sound: 0.004, broken: 0.0015,
		set: func(in *assess.Input, x float64) { in.Model.FuelSystem.Lines[0].BoreMeters = &x },
	},
	{
		name: "vent narrowed", document: "sandmartin_long_acre", finding: "fuel.vent", knob: "vent.bore", sound: 0.004, broken: 0.001,
		set: func(in *assess.Input, x float64) { in.Model.FuelSystem.VentBoreMeters = known(x) },
	},
	{
		name: "fail-safe late", document: "sandmartin_long_acre", finding: "radio.failsafe", knob: "failsafe.delay", sound: 0.2, broken: 5,
		set: func(in *assess.Input, x float64) { in.Model.Radio.FailSafeDelaySeconds = known(x) },
	},
	{
		name: "charge lowered", document: "sandmartin_long_acre", finding: "packs.energy", knob: "pack.charge", sound: 1, broken: 0.02,
		set: func(in *assess.Input, x float64) { in.Model.Packs[0].ChargeRatio = known(x) },
	},
	{
		name: "throw reduced", document: "sandmartin_long_acre", finding: "roll.rate", knob: "throw", sound: 20, broken: 5,
		set: func(in *assess.Input, x float64) {
			c := &in.Model.Surfaces[0].Controls[0]
			c.ThrowDownDegrees, c.ThrowUpDegrees = known(x), known(x)
		},
	},
	{
		name: "circuit raised", document: "sandmartin_long_acre", finding: "height.limit", knob: "circuit.height", sound: 60, broken: 150,
		set: func(in *assess.Input, x float64) { in.LaunchPlan.Circuit.HeightMeters = known(x) },
	},
	{
		name: "mass added", document: "sandmartin_long_acre", finding: "mass.class", knob: "mass", sound: 8, broken: 13.5,
		set:    func(in *assess.Input, x float64) { in.Model.Mass.EmptyMassKg = known(x) },
		before: func(in *assess.Input) { in.Limits.MaximumMassKg = number(12) },
	},
	{
		name: "spar thinned", document: "redshank_quarry_top", finding: "loads.wing", knob: "spar.diameter", sound: 0.022, broken: 0.013,
		set: func(in *assess.Input, x float64) {
			in.Model.Structure.WingSpar[0].Parts[0].OuterDiameterMeters = known(x)
		},
	},
	{
		name: "joiner shortened", document: "sandmartin_long_acre", finding: "loads.joiner", knob: "joiner.length", sound: 0.2, broken: 0.05,
		set: func(in *assess.Input, x float64) { in.Model.Structure.Joiner.EngagedLengthMeters = known(x) },
	},
	{
		name: "headwind gone", document: "redshank_quarry_top_headwind", finding: "launch.end_speed", knob: "wind.head", sound: 10, broken: 1,
		set: func(in *assess.Input, x float64) {
			in.Day.WindDirectionDegrees, in.Day.WindSpeedMetersPerSecond = known(250), known(x)
			in.Day.GustSpeedMetersPerSecond = known(x + 1)
		},
	},
	{
		name: "ramp shortened", document: "redshank_quarry_top", finding: "launch.end_speed", knob: "ramp.length", sound: 25, broken: 3,
		set: func(in *assess.Input, x float64) { in.LaunchPlan.Ramp.LengthMeters = known(x) },
	},
	{
		name: "bolts thinned", document: "redshank_quarry_top", finding: "loads.bolts", knob: "bolt.diameter", sound: 0.01, broken: 0.004,
		set: func(in *assess.Input, x float64) { in.Model.Structure.WingBoltDiameterMeters = known(x) },
	},
	{
		name: "slack grown", document: "sandmartin_long_acre", finding: "controls.free_play", knob: "control.play", sound: 0.0001, broken: 0.006,
		set: func(in *assess.Input, x float64) { in.Model.Surfaces[0].Controls[0].FreePlayMeters = known(x) },
	},
	{
		name: "balance moved aft", document: "sandmartin_long_acre", finding: "balance.margin_full", knob: "balance.shift", sound: 0.967, broken: 1.06,
		set: func(in *assess.Input, x float64) { in.Model.Mass.EmptyBalanceXMeters = known(x) },
	},
}

// cureOf finds by halves, on the report itself, the value between sound and broken at which the limit is just met.
func (b *brokenDocument) cureOf(t *testing.T) float64 {
	t.Helper()
	holds := func(x float64) bool {
		return findingOf(t, runWith(t, b.input(t, x), assess.Options{}), b.finding).Verdict == assess.VerdictHolds
	}
	good, bad := b.sound, b.broken
	if !holds(good) || holds(bad) {
		t.Fatalf("%s does not turn between %g and %g", b.finding, good, bad)
	}
	for range 25 {
		if middle := (good + bad) / 2; holds(middle) {
			good = middle
		} else {
			bad = middle
		}
	}
	return good
}

func (b *brokenDocument) input(t *testing.T, x float64) assess.Input {
	in := demoInput(t, b.document)
	onEvenOdds(&in)
	if b.before != nil {
		b.before(&in)
	}
	b.set(&in, x)
	return in
}

func remediesOf(t testing.TB, in assess.Input, options assess.RemedyOptions) []assess.Remedy {
	t.Helper()
	geometry, err := assess.Prepare(in)
	if err != nil {
		t.Fatal(err)
	}
	found, err := geometry.Remedies(in, options)
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// TestKnownCureIsFoundFirst breaks sound documents by one known amount and wants its cure to 1 %, first in rank.
func TestKnownCureIsFoundFirst(t *testing.T) {
	t.Parallel()
	for _, b := range brokenDocuments {
		t.Run(b.name, func(t *testing.T) {
			t.Parallel()
			want := b.cureOf(t)
			found := remediesOf(t, b.input(t, b.broken), assess.RemedyOptions{FindingID: b.finding, Workers: 2})
			if len(found) == 0 || len(found[0].Changes) != 1 {
				t.Fatalf("got %+v, want %s to %g", found, b.knob, want)
			}
			first := found[0].Changes[0]
			if first.Knob != b.knob || first.To == nil || math.Abs(*first.To-want) > 0.01*math.Abs(want) {
				t.Errorf("got %s to %v (%s, %s), want %s to %g", first.Knob, value(first.To), first.Title, found[0].Note, b.knob, want)
			}
		})
	}
}

func value(x *float64) float64 {
	if x == nil {
		return math.NaN()
	}
	return *x
}
