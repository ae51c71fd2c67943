package assess_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/testdata/demo"
)

// TestMonotone moves one input in steps and wants one value never to move the wrong way.
func TestMonotone(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name, document, finding string
		rising                  bool // the value never falls while the input rises
		from, to                float64
		set                     func(*assess.Input, float64)
	}{
		{"heavier never lowers the stall speed", "sandmartin_long_acre_wet", "stall.speed", true, 5, 20,
			func(in *assess.Input, v float64) { in.Model.Mass.EmptyMassKg = quantity(v) }},
		{"heavier never shortens the take-off", "sandmartin_long_acre_wet", "launch.distance", true, 8, 14,
			func(in *assess.Input, v float64) { in.Model.Mass.EmptyMassKg = quantity(v) }},
		{"heavier never raises thrust over weight", "dabchick_long_acre", "thrust.ratio", false, 1, 6,
			func(in *assess.Input, v float64) { in.Model.Mass.EmptyMassKg = quantity(v) }},
		{"more head wind never lowers the clearance", "redshank_quarry_top", "climb.clearance", true, 0, 8,
			func(in *assess.Input, v float64) {
				in.Day.WindSpeedMetersPerSecond, in.Day.WindDirectionDegrees = quantity(v), quantity(250)
			}},
		{"more head wind never lowers the end speed", "redshank_quarry_top", "launch.end_speed", true, 0, 12,
			func(in *assess.Input, v float64) {
				in.Day.WindSpeedMetersPerSecond, in.Day.WindDirectionDegrees = quantity(v), quantity(250)
			}},
		{"a longer ramp never lowers the end speed", "redshank_quarry_top", "launch.end_speed", true, 3, 40,
			func(in *assess.Input, v float64) { in.LaunchPlan.Ramp.LengthMeters = quantity(v) }},
		{"more thrust never lowers the end speed", "redshank_quarry_top", "launch.end_speed", true, 30, 160,
			func(in *assess.Input, v float64) { in.Model.Engines[0].StaticThrustNewtons = quantity(v) }},
		{"a higher hedge never raises the clearance", "redshank_quarry_top", "climb.clearance", false, 0, 20,
			func(in *assess.Input, v float64) { in.Field.Obstacles[0].HeightMeters = quantity(v) }},
		{"more friction never shortens the take-off at full thrust", "dabchick_long_acre", "launch.distance", true, 0, 0.4,
			func(in *assess.Input, v float64) {
				full := true
				in.Model.Gear.RollingResistanceRatio, in.LaunchPlan.FullThrustBeforeRelease = quantity(v), &full
			}},
		{"a higher thrust setting never lengthens the take-off", "nightjar_long_acre", "launch.distance", false, 0.6, 1,
			func(in *assess.Input, v float64) {
				full := true
				in.LaunchPlan.ThrustSettingRatio, in.LaunchPlan.FullThrustBeforeRelease = &v, &full
			}},
		// Without a share for the take-off to the screen the finding is the run on the ground.
		{"a rising strip never shortens the ground run", "dabchick_long_acre", "launch.distance", true, -8, 20,
			func(in *assess.Input, v float64) {
				in.Limits, in.Field.Strips[0].End.ZMeters = nil, &v
			}},
		{"a strip that falls the other way never lengthens it", "dabchick_long_acre", "launch.distance", false, -8, 20,
			func(in *assess.Input, v float64) {
				reversed := true
				in.Limits = nil
				in.Field.Strips[0].End.ZMeters, in.LaunchPlan.StripReversed = &v, &reversed
			}},
		{"warmer air never lowers the density altitude", "dabchick_long_acre", "air.density", true, -15, 40,
			func(in *assess.Input, v float64) { in.Day.TemperatureCelsius = quantity(v) }},
		{"more bank never raises the margin in the turn", "dabchick_long_acre", "stall.turn", false, 5, 75,
			func(in *assess.Input, v float64) { in.LaunchPlan.Circuit.BankDegrees = &v }},
		{"a stronger gust never raises the margin in the gust", "dabchick_long_acre", "stall.gust", false, 3, 20,
			func(in *assess.Input, v float64) { in.Day.GustSpeedMetersPerSecond = quantity(v) }},
		{"a balance point farther aft never raises the static margin", "redshank_quarry_top", "balance.margin_empty", false, 0.6, 1.1,
			func(in *assess.Input, v float64) { in.Model.Mass.EmptyBalanceXMeters = quantity(v) }},
		{"a balance point farther aft never raises the stall speed of a model with its tail aft", "sandmartin_long_acre_wet", "stall.speed", false, 0.90, 1.0,
			func(in *assess.Input, v float64) { in.Model.Mass.EmptyBalanceXMeters = quantity(v) }},
		{"a balance point farther aft never makes the pitch control bite less", "sandmartin_long_acre_wet", "pitch.sensitivity", true, 0.90, 1.0,
			func(in *assess.Input, v float64) { in.Model.Mass.EmptyBalanceXMeters = quantity(v) }},
		{"more wash-out never takes from the tips", "sandmartin_long_acre_wet", "stall.tip", false, -4, 2,
			func(in *assess.Input, v float64) { in.Model.Surfaces[0].Stations[1].TwistDegrees = &v }},
		{"a higher fin never steers less", "sandmartin_long_acre_wet", "fin.stiffness", true, 0.25, 0.7,
			func(in *assess.Input, v float64) { in.Model.Surfaces[2].Stations[1].LeadingEdgeZMeters = &v }},
		{"more throw never leaves less of it in level flight", "dabchick_long_acre", "balance.trim", true, 5, 30,
			func(in *assess.Input, v float64) { in.Model.Surfaces[1].Controls[0].ThrowUpDegrees = quantity(v) }},
		{"a higher thrust line never leaves more control at the launch", "redshank_quarry_top_long_ramp", "balance.launch_trim", false, 0.1, 0.6,
			func(in *assess.Input, v float64) { in.Model.Engines[0].ZMeters = &v }},
		{"more aileron never rolls slower", "dabchick_long_acre", "roll.rate", true, 5, 30,
			func(in *assess.Input, v float64) {
				in.Model.Surfaces[0].Controls[0].ThrowUpDegrees, in.Model.Surfaces[0].Controls[0].ThrowDownDegrees = quantity(v), quantity(v)
			}},
		{"a stiffer wing never reverses its ailerons earlier", "dabchick_long_acre", "roll.reversal", true, 5, 200,
			func(in *assess.Input, v float64) {
				in.Model.Structure.WingTwistStiffnessNewtonMetersPerRadian = quantity(v)
			}},
		{"a heavier item never brings a list that was too light closer to what was weighed from above", "dabchick_long_acre", "mass.reconciled", true, 0.6, 1.2,
			func(in *assess.Input, v float64) { in.Model.Mass.Items[0].MassKg = quantity(v) }},
	}
	const steps = 5
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			var before, first float64
			for i := range steps + 1 {
				at := row.from + (row.to-row.from)*float64(i)/steps
				in := demoInput(t, row.document)
				row.set(&in, at)
				finding := findingOf(t, assessed(t, in), row.finding)
				if finding.Value == nil {
					t.Fatalf("no value at %g: %s %s %v", at, finding.Verdict, finding.Note, finding.Missing)
				}
				change := *finding.Value - before
				if !row.rising {
					change = -change
				}
				if i > 0 && change < -2e-3 {
					t.Errorf("at %g: value %g after %g", at, *finding.Value, before)
				}
				if i == 0 {
					first = *finding.Value
				}
				before = *finding.Value
			}
			if before == first {
				t.Errorf("the input does not move %s: %g throughout", row.finding, first)
			}
		})
	}
}

// TestMoreInertiaSlowsTheMotions raises all moments of inertia.
func TestMoreInertiaSlowsTheMotions(t *testing.T) {
	t.Parallel()
	before := map[string]float64{}
	for i := range 5 {
		in := demoInput(t, "dabchick_long_acre")
		for _, q := range []*assess.Quantity{in.Model.Inertia.RollKgSquareMeters, in.Model.Inertia.PitchKgSquareMeters, in.Model.Inertia.YawKgSquareMeters} {
			*q.Value *= 1 + 0.5*float64(i)
		}
		report := assessed(t, in)
		for _, id := range []string{"motion.short_period_frequency", "motion.dutch_roll_frequency"} {
			now := toldOf(t, report, id)
			if i > 0 && !(now < before[id]) {
				t.Errorf("%s: %g after %g", id, now, before[id])
			}
			before[id] = now
		}
	}
}

// TestMoreSweepLowersTheLiftSlope draws the tip aft at one area and span.
func TestMoreSweepLowersTheLiftSlope(t *testing.T) {
	t.Parallel()
	before := 0.0
	for i := range 6 {
		in, err := document.Decode([]byte(wingAlone))
		if err != nil {
			t.Fatal(err)
		}
		in.Model.Surfaces[0].Stations[1].LeadingEdgeXMeters = number(0.18 * float64(i))
		slope := toldOf(t, assessed(t, in), "lift.slope")
		if i > 0 && !(slope < before) {
			t.Errorf("tip %g m aft: slope %g after %g", 0.18*float64(i), slope, before)
		}
		before = slope
	}
}

// TestMeasuringNarrowsTheBand gives one input its measured basis and wants a narrower band and no estimate left.
func TestMeasuringNarrowsTheBand(t *testing.T) {
	t.Parallel()
	width := func(basis assess.Basis) (float64, assess.Finding) {
		in := demoInput(t, "dabchick_long_acre")
		in.Model.Engines[0].StaticThrustNewtons.Basis = basis
		finding := findingOf(t, assessed(t, in), "thrust.ratio")
		return *finding.BandHigh - *finding.BandLow, finding
	}
	measured, byScale := width(assess.BasisMeasured)
	maker, _ := width(assess.BasisMakersFigure)
	guessed, byGuess := width(assess.BasisEstimated)
	if !(measured < maker && maker < guessed) {
		t.Errorf("bands: measured %g, maker's figure %g, estimated %g", measured, maker, guessed)
	}
	if byScale.RestsOnEstimate || !byGuess.RestsOnEstimate {
		t.Errorf("rests on estimate: measured %v, estimated %v", byScale.RestsOnEstimate, byGuess.RestsOnEstimate)
	}
	if got := byGuess.SpreadShares[0].Input; got != "model.engines[0].staticThrustNewtons" {
		t.Errorf("largest share of the spread: %s", got)
	}
}

// TestBandOfAKnownProduct checks the propagation where it is known in closed form: thrust over weight of a fan with thrust off by
// 10 % and mass by 5 % has a relative spread of sqrt(0.1^2 + 0.05^2 + 0.01^2/0.96^2), the last from the installation loss
// (JCGM 100:2008, 5.1.6: relative variances of a product add).
func TestBandOfAKnownProduct(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "dabchick_long_acre")
	in.Model.Engines[0].StaticThrustNewtons.Spread = number(1.75)
	in.Model.Mass.EmptyMassKg.Spread = number(0.105)
	in.Model.Engines[0].TestPressurePascals, in.Model.Engines[0].TestTemperatureCelsius = nil, nil
	in.Day.TemperatureCelsius.Spread, in.Day.QnhPascals.Spread = number(0), number(0)
	in.Field.ElevationMeters.Spread, in.Day.RelativeHumidityRatio.Spread = number(0), number(0)
	finding := findingOf(t, assessed(t, in), "thrust.ratio")
	const want = 0.1122864 * 1.6448536
	if got := (*finding.BandHigh - *finding.BandLow) / 2 / *finding.Value; got < want*0.995 || got > want*1.005 {
		t.Errorf("relative half band %g, want %g", got, want)
	}
}

// TestLimitsDecide gives one finding a limit on either side of its value.
func TestLimitsDecide(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name  string
		limit float64
		want  assess.Verdict
	}{
		{"far", 20, assess.VerdictHolds}, {"within the band", 10.8, assess.VerdictTight}, {"below", 9, assess.VerdictFails},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, "dabchick_long_acre")
			in.Limits.MaximumStallSpeedMetersPerSecond = &row.limit
			in.Limits.Rules = []assess.AppliedRule{{FindingID: "stall.speed", Authority: "Larkmoor", Citation: "rule 4", Date: "2026-01-10"}}
			finding := findingOf(t, assessed(t, in), "stall.speed")
			if finding.Verdict != row.want || finding.LimitSense != assess.LimitSenseAtMost {
				t.Errorf("verdict %s, sense %s, want %s", finding.Verdict, finding.LimitSense, row.want)
			}
			if finding.Rule != "Larkmoor, rule 4, 2026-01-10 (unverified)" {
				t.Errorf("rule %q", finding.Rule)
			}
		})
	}
}

// TestModelThatCannotMove never leaves the ground and fails rather than staying unknown.
func TestModelThatCannotMove(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "dabchick_long_acre")
	in.Model.Gear.RollingResistanceRatio = quantity(2)
	report := assessed(t, in)
	for _, id := range []string{"launch.distance", "liftoff.margin", "climb.clearance"} {
		finding := findingOf(t, report, id)
		if finding.Verdict != assess.VerdictFails || finding.Value != nil || !strings.Contains(finding.Note, "never leaves") {
			t.Errorf("%s: %s, value %v, note %q", id, finding.Verdict, finding.Value, finding.Note)
		}
	}
}

// TestOtherLaunches wants an answer for hand, bungee and catapult, and says so in the findings that apply.
func TestOtherLaunches(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name string
		plan func(*assess.LaunchPlan)
	}{
		{"hand", func(p *assess.LaunchPlan) {
			p.Method, p.HandSpeedMetersPerSecond, p.HandHeightMeters = assess.LaunchMethodHand, quantity(9), quantity(1.8)
		}},
		{"bungee", func(p *assess.LaunchPlan) {
			p.Method = assess.LaunchMethodBungee
			p.Bungee = &assess.Bungee{StiffnessNewtonsPerMeter: quantity(12), StretchMeters: quantity(20), FrictionRatio: quantity(0.3)}
		}},
		{"catapult", func(p *assess.LaunchPlan) {
			p.Method = assess.LaunchMethodCatapult
			p.Catapult = []assess.CatapultPoint{{TravelMeters: number(0), ForceNewtons: number(200)}, {TravelMeters: number(5), ForceNewtons: number(150)}}
		}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, "redshank_quarry_top")
			row.plan(in.LaunchPlan)
			report := assessed(t, in)
			for _, id := range []string{"launch.end_speed", "launch.sink"} {
				if finding := findingOf(t, report, id); finding.Value == nil {
					t.Errorf("%s: %s, missing %v, note %q", id, finding.Verdict, finding.Missing, finding.Note)
				}
			}
		})
	}
}

// FuzzRun feeds whatever decodes to the core: it must not panic, and no value may leave it that JSON cannot write.
func FuzzRun(f *testing.F) {
	for _, name := range []string{"dabchick_long_acre", "redshank_quarry_top"} {
		data, err := demo.Files.ReadFile(name + ".json")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Add([]byte(wingAlone))
	f.Fuzz(func(t *testing.T, data []byte) {
		in, err := document.Decode(data)
		if err != nil {
			return
		}
		report, err := assess.Run(in)
		if err != nil {
			return
		}
		if _, err := json.Marshal(report); err != nil {
			t.Fatal(err)
		}
	})
}

// TestExtremeQuantities puts every quantity of a document to an extreme, one at a time and in turn; parts of the document beside each other, because it
// is a long way through.
func TestExtremeQuantities(t *testing.T) {
	t.Parallel()
	const beside = 4
	for _, name := range []string{"sandmartin_long_acre_wet", "redshank_quarry_top"} {
		data, err := demo.Files.ReadFile(name + ".json")
		if err != nil {
			t.Fatal(err)
		}
		parts := strings.SplitAfter(string(data), `"value": `)
		for first := range beside {
			t.Run(fmt.Sprintf("%s/%d", name, first), func(t *testing.T) {
				t.Parallel()
				for i := 1 + first; i < len(parts); i += beside {
					atExtreme(t, parts, i)
				}
			})
		}
	}
}

// atExtreme assesses a document whose i-th quantity stands at an extreme; what cannot be decoded or assessed is refused with an error, and what is
// assessed can be written.
func atExtreme(t *testing.T, parts []string, i int) {
	t.Helper()
	extremes := []string{"1e300", "0", "1e-300", "1e6", "-1e6"}
	rest := parts[i][strings.IndexAny(parts[i], ",\n}"):]
	extreme := extremes[i%len(extremes)]
	in, err := document.Decode([]byte(strings.Join(parts[:i], "") + extreme + rest + strings.Join(parts[i+1:], "")))
	if err != nil {
		return
	}
	report, err := assess.Run(in)
	if err != nil {
		return
	}
	if _, err := json.Marshal(report); err != nil {
		t.Errorf("quantity %d at %s: %v", i, extreme, err)
	}
}
