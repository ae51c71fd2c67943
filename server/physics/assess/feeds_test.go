package assess_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// TestFeedsAskForWhatIsMissing takes one input away and wants the finding that needs it unknown, naming it.
func TestFeedsAskForWhatIsMissing(t *testing.T) {
	t.Parallel()
	rows := []struct {
		path, finding string
		set           func(*assess.Input)
	}{
		{"model.engines[0].fullFuelFlowGramsPerMinute", "fuel.endurance", func(in *assess.Input) { in.Model.Engines[0].FullFuelFlowGramsPerMinute = nil }},
		{"launchPlan.circuit.circuitCount", "fuel.reserve", func(in *assess.Input) { in.LaunchPlan.Circuit.CircuitCount = nil }},
		{"model.fuelSystem.lines", "fuel.suction", func(in *assess.Input) { in.Model.FuelSystem.Lines = nil }},
		{"model.fuelSystem.lines[0].boreMeters", "fuel.suction", func(in *assess.Input) {
			in.Model.FuelSystem.Lines = slices.Clone(in.Model.FuelSystem.Lines)
			in.Model.FuelSystem.Lines[0].BoreMeters = nil
		}},
		{"model.fuelSystem.pumpHeightMeters", "fuel.suction", func(in *assess.Input) { in.Model.FuelSystem.PumpHeightMeters = nil }},
		{"model.fuelSystem.pumpXMeters", "fuel.suction", func(in *assess.Input) { in.Model.FuelSystem.PumpXMeters = nil }},
		{"model.fuelSystem.airTrap", "fuel.trap", func(in *assess.Input) { in.Model.FuelSystem.AirTrap = nil }},
		{"model.fuelSystem.airTrapVolumeLiters", "fuel.trap", func(in *assess.Input) { in.Model.FuelSystem.AirTrapVolumeLiters = nil }},
		{"model.fuelSystem.vent", "fuel.vent", func(in *assess.Input) { in.Model.FuelSystem.Vent = nil }},
		{"model.fuelSystem.ventBoreMeters", "fuel.vent", func(in *assess.Input) { in.Model.FuelSystem.VentBoreMeters = nil }},
		{"model.fuelSystem.filter", "fuel.filter", func(in *assess.Input) { in.Model.FuelSystem.Filter = nil }},
		{"model.fuelSystem.fuel", "fuel.vent", func(in *assess.Input) { in.Model.FuelSystem.Fuel = "" }},
		{"model.engines[0].nozzleDiameterMeters", "heat.plume", func(in *assess.Input) { in.Model.Engines[0].NozzleDiameterMeters = nil }},
		{"model.engines[0].exhaustTemperatureCelsius", "heat.skin", func(in *assess.Input) { in.Model.Engines[0].ExhaustTemperatureCelsius = nil }},
		{"model.engines[0].tailpipeLengthMeters", "heat.plume", func(in *assess.Input) { in.Model.Engines[0].TailpipeLengthMeters = nil }},
		{"model.heatedParts", "heat.skin", func(in *assess.Input) { in.Model.HeatedParts = nil }},
		{"model.heatedParts[0].fromAxisMeters", "heat.skin", func(in *assess.Input) { in.Model.HeatedParts[0].FromAxisMeters = nil }},
		{"day.surfaceState", "heat.ground", func(in *assess.Input) { in.Day.SurfaceState = "" }},
	}
	for _, row := range rows {
		t.Run(row.path, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, "sandmartin_long_acre")
			row.set(&in)
			f := findingOf(t, unbanded(t, in), row.finding)
			if f.Verdict != assess.VerdictUnknown || !slices.Contains(f.Missing, row.path) {
				t.Errorf("%s: %s, missing %v, want %s", row.finding, f.Verdict, f.Missing, row.path)
			}
		})
	}
}

// TestElectricModelHasNoFuel wants nothing about fuel, exhaust or turbine of a model that burns none.
func TestElectricModelHasNoFuel(t *testing.T) {
	t.Parallel()
	for _, f := range unbanded(t, demoInput(t, "dabchick_long_acre")).Findings {
		for _, stem := range []string{"fuel.suction", "fuel.trap", "fuel.vent", "fuel.filter", "heat.", "engine."} {
			if strings.HasPrefix(f.ID, stem) && !strings.HasPrefix(f.ID, "engine_") {
				t.Errorf("an electric model is asked for %s", f.ID)
			}
		}
	}
}

// ran gives the Sandmartin a static run on the scale.
func ran(in *assess.Input) {
	in.Model.Engines[0].StaticRun = []assess.StaticRunPoint{
		{Rpm: number(38000), ThrustNewtons: measured(5.6), ExhaustTemperatureCelsius: measured(420), FuelFlowGramsPerMinute: measured(92)},
		{Rpm: number(90000), ThrustNewtons: measured(54), ExhaustTemperatureCelsius: measured(520), FuelUsedKg: measured(0.09), DurationSeconds: number(30)},
		{Rpm: number(122000), ThrustNewtons: measured(110), ExhaustTemperatureCelsius: measured(662), FuelUsedKg: measured(0.165), DurationSeconds: number(30)},
	}
}

func measured(v float64) *assess.Quantity {
	return &assess.Quantity{Value: &v, Basis: assess.BasisMeasured}
}

// TestStaticRunReplacesTheMakersFigures wants thrust, exhaust and fuel flow of the run, its own spread, and a chain that says so.
func TestStaticRunReplacesTheMakersFigures(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre")
	before := assessed(t, in)
	ran(&in)
	after := assessed(t, in)
	wantChain(t, after)
	rows := []struct {
		id, from string
		value    float64
	}{
		{"engine.1.static_thrust", "model.engines[0].staticRun[2].thrustNewtons", 110},
		{"engine.1.exhaust_temperature", "model.engines[0].staticRun[2].exhaustTemperatureCelsius", 662},
		{"engine.1.fuel_flow", "model.engines[0].staticRun[2].fuelUsedKg", 330},
		{"fuel.full_flow", "", 0.0055},
	}
	for _, row := range rows {
		q := quantityOf(t, after, row.id)
		if math.Abs(*q.Value-row.value) > 1e-9*row.value {
			t.Errorf("%s: got %g, want %g", row.id, *q.Value, row.value)
		}
		if row.from != "" && (!slices.Equal(q.From, []string{row.from}) || !strings.HasPrefix(q.Formula, "measured")) {
			t.Errorf("%s comes from %v by %q, want %s", row.id, q.From, q.Formula, row.from)
		}
	}
	if !slices.Contains(quantityOf(t, after, "thrust.static_day").From, "model.engines[0].staticRun[2].thrustNewtons") {
		t.Errorf("the day's thrust does not name the run: %v", quantityOf(t, after, "thrust.static_day").From)
	}
	wide, narrow := findingOf(t, before, "thrust.ratio"), findingOf(t, after, "thrust.ratio")
	if *narrow.BandHigh-*narrow.BandLow >= (*wide.BandHigh-*wide.BandLow)/2 {
		t.Errorf("a measured thrust narrows the band from %g to %g only", *wide.BandHigh-*wide.BandLow, *narrow.BandHigh-*narrow.BandLow)
	}
	if f := findingOf(t, after, "engine.consistency"); f.Verdict != assess.VerdictHolds {
		t.Errorf("consistency: %s, %s", f.Verdict, f.Note)
	}
}

// TestScaleMeasuresWhatTheDuctLeaves wants nothing taken off a thrust measured behind the model.
func TestScaleMeasuresWhatTheDuctLeaves(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre")
	ran(&in)
	in.Model.Engines[0].TestTemperatureCelsius, in.Model.Engines[0].TestPressurePascals = nil, nil
	first := *findingOf(t, unbanded(t, in), "thrust.ratio").Value
	in.Model.Engines[0].InstallationLossRatio = quantity(0.3)
	if second := *findingOf(t, unbanded(t, in), "thrust.ratio").Value; second != first {
		t.Errorf("an installation loss moves a measured thrust from %g to %g", first, second)
	}
}

// TestMeasuredTemperatureIsEvidence wants a temperature measured in a static run to stand in place of the computed one, and to settle it.
func TestMeasuredTemperatureIsEvidence(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "redshank_quarry_top")
	if f := findingOf(t, assessed(t, in), "heat.skin"); f.Verdict != assess.VerdictTight {
		t.Fatalf("without a measurement: %s, want tight", f.Verdict)
	}
	in.Model.HeatedParts[0].MeasuredTemperatureCelsius = measured(38)
	report := assessed(t, in)
	f := findingOf(t, report, "heat.skin")
	if f.Verdict != assess.VerdictHolds || math.Abs(*f.Value-7) > 1e-9 {
		t.Errorf("measured 38 C of 45 C: %s, %g K", f.Verdict, *f.Value)
	}
	if q := quantityOf(t, report, "heat.best.engine bay"); !slices.Equal(q.From, []string{"model.heatedParts[0].measuredTemperatureCelsius"}) {
		t.Errorf("comes from %v", q.From)
	}
	wantChain(t, report)
}

// TestFeedsMoveTheRightWay moves one input in steps and wants one value never to move the wrong way.
func TestFeedsMoveTheRightWay(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name, finding string
		rising        bool
		from, to      float64
		set           func(*assess.Input, float64)
	}{
		{"a wider vent is never worse", "fuel.vent", true, 0.001, 0.006, func(in *assess.Input, v float64) { in.Model.FuelSystem.VentBoreMeters = quantity(v) }},
		{"a larger trap never feeds shorter", "fuel.trap", true, 0.01, 0.3, func(in *assess.Input, v float64) { in.Model.FuelSystem.AirTrapVolumeLiters = quantity(v) }},
		{"a higher pump never sucks less", "fuel.suction", true, 0, 0.3, func(in *assess.Input, v float64) { in.Model.FuelSystem.PumpHeightMeters = quantity(v) }},
		{"a longer line never sucks less", "fuel.suction", true, 0.05, 3, func(in *assess.Input, v float64) { in.Model.FuelSystem.Lines[0].LengthMeters = &v }},
		{"a wider line never sucks more", "fuel.suction", false, 0.002, 0.008, func(in *assess.Input, v float64) { in.Model.FuelSystem.Lines[0].BoreMeters = &v }},
		{"a thirstier engine never flies longer", "fuel.endurance", false, 150, 800, func(in *assess.Input, v float64) { in.Model.Engines[0].FullFuelFlowGramsPerMinute = quantity(v) }},
		{"a fuller tank never lands emptier", "fuel.reserve", true, 0.3, 1, func(in *assess.Input, v float64) { in.Model.Mass.Tanks[0].FillRatio = &v }},
		{"fuel out of reach never helps", "fuel.reserve", false, 0, 0.5, func(in *assess.Input, v float64) { in.Model.FuelSystem.UnusableLiters = quantity(v) }},
		{"a hotter wall never leaves more room", "heat.skin", false, 50, 700, func(in *assess.Input, v float64) {
			in.Model.HeatedParts[0].MeasuredTemperatureCelsius, in.Model.Engines[0].TailpipeWallCelsius = nil, quantity(v)
		}},
		{"a higher nozzle never leaves less room over grass", "heat.ground", true, 0.02, 0.6, func(in *assess.Input, v float64) {
			in.Model.Bodies, in.Model.Gear.Wheels = nil, []assess.Wheel{{ZMeters: number(*in.Model.Engines[0].ZMeters - v), DiameterMeters: number(0.001)}}
		}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			last, seen := math.Inf(-1), 0.0
			if !row.rising {
				last = math.Inf(1)
			}
			for i := range 6 {
				in := demoInput(t, "sandmartin_long_acre")
				row.set(&in, row.from+(row.to-row.from)*float64(i)/5)
				f := findingOf(t, unbanded(t, in), row.finding)
				if f.Value == nil {
					t.Fatalf("%s: %s, missing %v, %s", row.finding, f.Verdict, f.Missing, f.Note)
				}
				if row.rising && *f.Value < last-1e-9 || !row.rising && *f.Value > last+1e-9 {
					t.Errorf("step %d: %g after %g", i, *f.Value, last)
				}
				if i > 0 {
					seen += math.Abs(*f.Value - last)
				}
				last = *f.Value
			}
			if seen == 0 {
				t.Errorf("%s does not move", row.finding)
			}
		})
	}
}

// TestStricterTrapLimitCounts wants the document's own figures to be held against trap and reserve.
func TestStricterTrapLimitCounts(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre")
	limits := *in.Limits
	limits.MinimumAirTrapSeconds, limits.MinimumFuelReserveRatio = number(60), number(0.9)
	in.Limits = &limits
	report := unbanded(t, in)
	for id, path := range map[string]string{"fuel.trap": "limits.minimumAirTrapSeconds", "fuel.reserve": "limits.minimumFuelReserveRatio"} {
		if f := findingOf(t, report, id); f.Verdict != assess.VerdictFails || !slices.Contains(f.From, path) {
			t.Errorf("%s: %s from %v, want it to fail by %s", id, f.Verdict, f.From, path)
		}
	}
}
