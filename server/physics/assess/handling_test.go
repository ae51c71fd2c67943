package assess_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// TestWindowFollowsTheKindOfFlying wants the recommended window where the document gives none, and the document's where it does.
func TestWindowFollowsTheKindOfFlying(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name      string
		change    func(*assess.Input)
		low, high float64
		rule      string
	}{
		{"trainer", func(*assess.Input) {}, 0.10, 0.20, "recommended for the kind of flying"},
		{"fast", func(in *assess.Input) { in.Model.HandlingClass = assess.HandlingClassFast }, 0.05, 0.12, "recommended"},
		{"not said", func(in *assess.Input) { in.Model.HandlingClass = "" }, 0.05, 0.20, "core default"},
		{"the document's", func(in *assess.Input) {
			in.Limits = &assess.Limits{MinimumStaticMarginRatio: number(0.07), MaximumStaticMarginRatio: number(0.18)}
		}, 0.07, 0.18, "limits of the document"},
	}
	for _, row := range rows {
		in := demoInput(t, "dabchick_long_acre")
		row.change(&in)
		f := findingOf(t, assessed(t, in), "balance.margin_full")
		if *f.Limit != row.low || *f.UpperLimit != row.high || !strings.HasPrefix(f.Rule, row.rule) {
			t.Errorf("%s: %g to %g, rule %q", row.name, *f.Limit, *f.UpperLimit, f.Rule)
		}
	}
}

// TestMarginOutsideNamesTheShift moves the balance point by what the note says and wants the margin at its limit.
func TestMarginOutsideNamesTheShift(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "dabchick_long_acre")
	in.Model.Mass.EmptyBalanceXMeters = quantity(0.46)
	report := assessed(t, in)
	f := findingOf(t, report, "balance.margin_empty")
	if f.Verdict != assess.VerdictFails || !strings.Contains(f.Note, "mm forward") || !strings.Contains(f.Note, "Moving flight pack by") || !strings.Contains(f.Note, "builder's own limit of 0.450 m") {
		t.Fatalf("%s: %s", f.Verdict, f.Note)
	}
	shift := (*f.Limit - *f.Value) * toldOf(t, report, "wing.mean_chord")
	in.Model.Mass.EmptyBalanceXMeters = quantity(0.46 - shift)
	if mended := findingOf(t, assessed(t, in), "balance.margin_empty"); math.Abs(*mended.Value-*f.Limit) > 1e-9 {
		t.Errorf("after the shift the margin is %g, want %g", *mended.Value, *f.Limit)
	}
}

// TestBallastIsLeast adds the ballast of an option as an own mass and wants the margin at its limit, and outside with a little less.
func TestBallastIsLeast(t *testing.T) {
	t.Parallel()
	const before = 0.447
	in := demoInput(t, "dabchick_long_acre")
	in.Model.Mass.EmptyBalanceXMeters = quantity(before)
	options := assessed(t, in).BallastOptions
	if len(options) != 2 || options[0].Place != "nose bay" || options[0].MassKg == nil || options[1].MassKg != nil {
		t.Fatalf("options %+v", options)
	}
	margin := func(ballast float64) float64 {
		mass := 2.1 + ballast
		loaded := demoInput(t, "dabchick_long_acre")
		loaded.Model.Mass.EmptyMassKg = quantity(mass)
		loaded.Model.Mass.EmptyBalanceXMeters = quantity((2.1*before + ballast*options[0].XMeters) / mass)
		return *findingOf(t, assessed(t, loaded), "balance.margin_empty").Value
	}
	if got := margin(*options[0].MassKg); math.Abs(got-0.10) > 1e-6 || math.Abs(got-*options[0].MarginEmptyRatio) > 1e-6 {
		t.Errorf("margin with the ballast %g, promised %g", got, *options[0].MarginEmptyRatio)
	}
	if got := margin(0.98 * *options[0].MassKg); got >= 0.10 {
		t.Errorf("2 %% less would do as well: margin %g", got)
	}
	if none := assessed(t, demoInput(t, "dabchick_long_acre")).BallastOptions; len(none) != 0 {
		t.Errorf("ballast for a model in its window: %+v", none)
	}
}

// TestScalesTakeOffTareAndUseRepeats weighs a model whose whole mass is not given.
func TestScalesTakeOffTareAndUseRepeats(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "dabchick_long_acre")
	in.Model.Mass.EmptyMassKg, in.Model.Mass.EmptyBalanceXMeters = nil, nil
	in.Model.Mass.ScaleReadings[0].TareKg = number(0.05)
	report := assessed(t, in)
	// Means of three readings each: 0.278 less 0.05, 0.91267, 0.909.
	nose, mains := 0.228, (0.913+0.911+0.914)/3+(0.909+0.91+0.908)/3
	if got := toldOf(t, report, "mass.empty"); math.Abs(got-nose-mains) > 1e-9 {
		t.Errorf("mass %g, want %g", got, nose+mains)
	}
	if got, want := toldOf(t, report, "balance.empty_x"), (nose*0.15+mains*0.47)/(nose+mains); math.Abs(got-want) > 1e-9 {
		t.Errorf("balance %g, want %g", got, want)
	}
	in.Model.Mass.ScaleReadings[0].TareKg = number(9)
	if _, err := assess.Run(in); err == nil || !strings.Contains(err.Error(), "model.mass.scaleReadings[0].tareKg") {
		t.Errorf("got %v, want an error that names the tare", err)
	}
}

// TestTanksInTurnHaveTheirOwnFinding empties an aft tank first, so that the balance point lies foremost in the middle of the burn.
func TestTanksInTurnHaveTheirOwnFinding(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre")
	first, second := int32(1), int32(2)
	in.Model.Mass.Tanks = []assess.Tank{
		{Name: "aft", CapacityLiters: quantity(1.5), XMeters: number(1.3), ZMeters: number(0), BurnOrder: &first},
		{Name: "fore", CapacityLiters: quantity(1.5), XMeters: number(0.62), ZMeters: number(0), BurnOrder: &second},
	}
	report := assessed(t, in)
	burn := findingOf(t, report, "balance.margin_burn")
	full, empty := findingOf(t, report, "balance.margin_full"), findingOf(t, report, "balance.margin_empty")
	if !(*burn.Value > max(*full.Value, *empty.Value)+0.03) {
		t.Errorf("burn %g, full %g, empty %g", *burn.Value, *full.Value, *empty.Value)
	}
	points := curveOf(t, report, "balance.burn").Series[0].Points
	most := slices.MaxFunc(points, func(a, b assess.CurvePoint) int {
		if a.Y < b.Y {
			return -1
		}
		return 1
	})
	if math.Abs(most.Y-*burn.Value) > 1e-9 {
		t.Errorf("the drawn burn peaks at %g, the finding says %g", most.Y, *burn.Value)
	}
}

// TestThrustLineAboveTurnsTheNoseDown puts the engine above and below the balance point.
func TestThrustLineAboveTurnsTheNoseDown(t *testing.T) {
	t.Parallel()
	for z, want := range map[float64]string{0.25: "above the balance point and turns the nose down", -0.25: "below the balance point and turns the nose up"} {
		in := demoInput(t, "redshank_quarry_top_long_ramp")
		in.Model.Engines[0].ZMeters = &z
		report := assessed(t, in)
		if f := findingOf(t, report, "balance.launch_trim"); !strings.Contains(f.Note, want) {
			t.Errorf("engine at %g m: %s", z, f.Note)
		}
		if moment := toldOf(t, report, "launch.thrust_moment"); moment*z >= 0 {
			t.Errorf("engine at %g m: moment %g N m", z, moment)
		}
	}
}

// TestAftOfTheManoeuvrePointFails rather than staying unknown.
func TestAftOfTheManoeuvrePointFails(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "dabchick_long_acre")
	in.Model.Mass.EmptyBalanceXMeters = quantity(0.62)
	report := assessed(t, in)
	for _, id := range []string{"pitch.sensitivity", "pitch.damping"} {
		if f := findingOf(t, report, id); f.Verdict != assess.VerdictFails || f.Value != nil || f.Note == "" {
			t.Errorf("%s: %s, value %v, note %q", id, f.Verdict, f.Value, f.Note)
		}
	}
}

// TestSmallFinNamesTheArea replaces the fin by one of the area that the note names and wants the stiffness near its limit.
func TestSmallFinNamesTheArea(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre")
	in.Model.Surfaces[2].Stations[0].ChordMeters, in.Model.Surfaces[2].Stations[1].ChordMeters = number(0.17), number(0.09)
	f := findingOf(t, assessed(t, in), "fin.stiffness")
	if f.Verdict != assess.VerdictFails || !strings.Contains(f.Note, "Fins of") {
		t.Errorf("%s: %s", f.Verdict, f.Note)
	}
	in.Model.Surfaces = in.Model.Surfaces[:2]
	if f := findingOf(t, assessed(t, in), "fin.stiffness"); f.Verdict != assess.VerdictFails || !strings.Contains(f.Note, "no fin behind") {
		t.Errorf("without fin: %s: %s", f.Verdict, f.Note)
	}
}

// TestElevatorThrowEndsTheLift lets the pitch control run out before the wing stalls, and says so.
func TestElevatorThrowEndsTheLift(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "dabchick_long_acre")
	free := findingOf(t, assessed(t, in), "stall.speed")
	in.Model.Surfaces[1].Controls[0].ThrowUpDegrees = quantity(1.5)
	f := findingOf(t, assessed(t, in), "stall.speed")
	if !strings.Contains(f.Note, "the pitch control runs out before any strip stalls") || !(*f.Value > *free.Value) {
		t.Errorf("%g m/s after %g: %s", *f.Value, *free.Value, f.Note)
	}
	if !strings.Contains(free.Note, "in balance") || !strings.Contains(free.Note, "stalls first") {
		t.Error(free.Note)
	}
	in.Model.Surfaces[1].Controls = nil
	if f := findingOf(t, assessed(t, in), "stall.speed"); !strings.Contains(f.Note, "cannot be trimmed") {
		t.Error(f.Note)
	}
}

// TestFrostRaisesTheStall and names no other finding's input.
func TestFrostRaisesTheStall(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "dabchick_long_acre")
	clean := *findingOf(t, assessed(t, in), "stall.speed").Value
	in.Day.Frost = assess.FrostPresent
	if frosted := *findingOf(t, assessed(t, in), "stall.speed").Value; !(frosted > 1.08*clean) {
		t.Errorf("with frost %g m/s, clean %g m/s", frosted, clean)
	}
}

// TestOutlineIsReadAndRefusedByName gives a section its points, then breaks one.
func TestOutlineIsReadAndRefusedByName(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "dabchick_long_acre")
	in.Model.Surfaces[0].Stations[0].Section = &assess.Section{Family: assess.SectionFamilyOwn, Points: diamond(24, 0.06)}
	if q := toldOf(t, assessed(t, in), "lift.maximum_coefficient"); !(q > 0.3 && q < 1.6) {
		t.Errorf("greatest lift %g", q)
	}
	in.Model.Surfaces[0].Stations[0].Section.Points[5].XRatio = number(0.99)
	if _, err := assess.Run(in); err == nil || !strings.Contains(err.Error(), "model.surfaces[0].stations[0].section.points[") {
		t.Errorf("got %v, want an error that names the point", err)
	}
}

// diamond returns an outline of a half thickness that is a sine of the chord.
func diamond(count int, half float64) []assess.SectionPoint {
	var points []assess.SectionPoint
	for i := range 2*count + 1 {
		angle := math.Pi * float64(i) / float64(count)
		points = append(points, assess.SectionPoint{XRatio: number((1 + math.Cos(angle)) / 2), ZRatio: number(half * math.Sin(angle))})
	}
	return points
}
