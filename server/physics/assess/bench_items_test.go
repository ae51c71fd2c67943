package assess_test

import (
	"maps"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// told is a report with drawings and without bands.
func told(t *testing.T, in assess.Input) assess.Report {
	t.Helper()
	whole, err := assess.Prepare(in)
	if err != nil {
		t.Fatal(err)
	}
	report, err := whole.RunWith(in, assess.Options{Drawings: true})
	if err != nil {
		t.Fatal(err)
	}
	return report
}

// itemsOf lists the bench items by id.
func itemsOf(report assess.Report) map[string]assess.BenchItem {
	out := map[string]assess.BenchItem{}
	for _, item := range report.BenchItems {
		out[item.ID] = item
	}
	return out
}

// isPath reports whether a path such as "model.packs[0].chargeRatio" names a field of the document.
func isPath(path string) bool {
	at := reflect.TypeFor[assess.Input]()
	for part := range strings.SplitSeq(path, ".") {
		name, _, _ := strings.Cut(part, "[")
		for at.Kind() == reflect.Pointer || at.Kind() == reflect.Slice {
			at = at.Elem()
		}
		if at.Kind() != reflect.Struct {
			return false
		}
		found := false
		for i := range at.NumField() {
			if tag, _, _ := strings.Cut(at.Field(i).Tag.Get("json"), ","); tag == name {
				at, found = at.Field(i).Type, true
				break
			}
		}
		if !found {
			return false
		}
	}
	return true
}

func TestPathsAreTold(t *testing.T) {
	t.Parallel()
	for path, want := range map[string]bool{
		"model.packs[0].chargeRatio": true, "confirmations": true, "model.packs[0].charge": false, "model.mass.emptyMassKg.value.more": false,
	} {
		if isPath(path) != want {
			t.Errorf("%s: %v", path, !want)
		}
	}
}

var benchDocuments = []string{"dabchick_long_acre", "sandmartin_long_acre", "sandmartin_long_acre_wet", "redshank_quarry_top", "nightjar_long_acre"}

// TestEveryBenchItemIsWhole wants each point to say how, what and why, to name findings of the report and a field of the document.
func TestEveryBenchItemIsWhole(t *testing.T) {
	t.Parallel()
	for _, name := range benchDocuments {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			report := told(t, demoInput(t, name))
			if len(report.BenchItems) < 40 || len(itemsOf(report)) != len(report.BenchItems) {
				t.Errorf("%d items, %d ids", len(report.BenchItems), len(itemsOf(report)))
			}
			for _, item := range report.BenchItems {
				if item.Group == "" || item.Title == "" || item.How == "" || item.Wanted == "" || item.Why == "" {
					t.Errorf("not whole: %+v", item)
				}
				if item.Input != "" && !isPath(item.Input) {
					t.Errorf("%s: %s is no field", item.ID, item.Input)
				}
				for _, id := range item.FindingIDs {
					if !strings.Contains(item.Why, findingOf(t, report, id).Title) {
						t.Errorf("%s does not say that %s rests on it", item.ID, id)
					}
				}
				wantEnds(t, item)
			}
		})
	}
}

// wantEnds wants a figure's ends to be numbers in order, with their unit.
func wantEnds(t *testing.T, item assess.BenchItem) {
	t.Helper()
	if (item.Low != nil || item.High != nil) != (item.Unit != "") {
		t.Errorf("%s: unit %q", item.ID, item.Unit)
	}
	for _, end := range []*float64{item.Low, item.High} {
		if end != nil && (math.IsNaN(*end) || math.IsInf(*end, 0)) {
			t.Errorf("%s: %v", item.ID, *end)
		}
	}
	if item.Low != nil && item.High != nil && *item.Low > *item.High {
		t.Errorf("%s: from %v to %v", item.ID, *item.Low, *item.High)
	}
}

// TestOnlyWhatTheModelNeeds wants points by what a model has, and none of what it has not.
func TestOnlyWhatTheModelNeeds(t *testing.T) {
	t.Parallel()
	for _, row := range []struct {
		name, document string
		change         func(*assess.Input)
		has, lacks     []string
	}{
		{"turbine on wheels", "sandmartin_long_acre", nil, []string{"bench.fuel.trap", "bench.gear.pull", "bench.engine.exhaust.1", "bench.heat.part.1", "bench.fuel.fire"},
			[]string{"bench.launcher.length", "bench.gear.belly", "bench.engine.current.1", "bench.radio.receivers"}},
		{"electric", "dabchick_long_acre", nil, []string{"bench.engine.current.1", "bench.engine.static_run.1", "bench.packs.load.2"},
			[]string{"bench.fuel.trap", "bench.fuel.leaks", "bench.engine.exhaust.1", "bench.heat.ground", "bench.fuel.fire", "bench.gear.belly"}},
		{"turbine from a ramp", "redshank_quarry_top", nil, []string{"bench.launcher.length", "bench.launcher.pin", "bench.gear.belly", "bench.fuel.clunk.1"},
			[]string{"bench.gear.pull", "bench.gear.retracts", "bench.launcher.bungee"}},
		{"booms", "nightjar_long_acre", nil, []string{"bench.structure.boom"}, []string{"bench.launcher.length"}},
		{"two receivers", "sandmartin_long_acre", func(in *assess.Input) { two := int32(2); in.Model.Radio.ReceiverCount = &two }, []string{"bench.radio.receivers"}, nil},
		{"one antenna", "sandmartin_long_acre", func(in *assess.Input) { in.Model.Radio.Antennas = in.Model.Radio.Antennas[:1] },
			[]string{"bench.radio.antenna.1"}, []string{"bench.radio.angle", "bench.radio.antenna.2"}},
		{"bladder", "sandmartin_long_acre", func(in *assess.Input) { yes := true; in.Model.FuelSystem.BladderTank = &yes },
			[]string{"bench.fuel.trap"}, []string{"bench.fuel.vent", "bench.fuel.clunk.1", "bench.fuel.felt"}},
		{"no radio described", "sandmartin_long_acre", func(in *assess.Input) { in.Model.Radio = nil }, nil, []string{"bench.radio.failsafe", "bench.radio.range"}},
	} {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, row.document)
			if row.change != nil {
				row.change(&in)
			}
			items := itemsOf(told(t, in))
			for _, id := range row.has {
				if _, there := items[id]; !there {
					t.Errorf("%s is missing", id)
				}
			}
			for _, id := range row.lacks {
				if _, there := items[id]; there {
					t.Errorf("%s is asked of a model that has none", id)
				}
			}
		})
	}
}

// TestBenchFiguresComeFromTheModel holds figures against hand work on the document and the report.
func TestBenchFiguresComeFromTheModel(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre")
	report := told(t, in)
	items := itemsOf(report)
	for _, row := range []struct {
		id        string
		low, high float64 // NaN: none
		unit      string
	}{
		// 9.72 kg measured, 0.05 kg of spread each side times 1.645.
		{"bench.mass.weighing", 9.72 - 1.6448536*0.05, 9.72 + 1.6448536*0.05, "kg"},
		{"bench.mass.repeat", math.NaN(), 2.77 * 0.05, "kg"},
		{"bench.structure.sandbags", 9, math.NaN(), "1"},
		{"bench.fuel.trap_volume", 1000 * toldNumber(t, report, "fuel.least_trap"), math.NaN(), "l"},
		{"bench.fuel.vent", toldNumber(t, report, "fuel.least_vent"), math.NaN(), "m"},
		{"bench.fuel.leaks", toldNumber(t, report, "fuel.suction"), math.NaN(), "Pa"},
		{"bench.radio.failsafe", math.NaN(), 2, "s"},
		{"bench.radio.range", toldNumber(t, report, "radio.check_needed"), math.NaN(), "m"},
		{"bench.heat.part.1", math.NaN(), 60, "C"},
		{"bench.engine.speed.1", math.NaN(), 123000, "1/min"},
		{"bench.controls.servo.1.1", 2, 2, "1"},
		// 8.24 V at rest, 7.99 V under 5 A: 50 mOhm, 1.337 times new; twice new is 74.8 mOhm, 0.374 V under 5 A.
		{"bench.packs.load.1", 7.866, math.NaN(), "V"},
		{"bench.controls.free_play.1.1", math.NaN(), 0.02 * 0.064933, "m"},
		{"bench.gear.pull", math.NaN(), toldNumber(t, report, "launch.rolling_friction"), "1"},
	} {
		item, there := items[row.id]
		if !there || item.Unit != row.unit || !isEnd(item.Low, row.low) || !isEnd(item.High, row.high) {
			t.Errorf("%s: %v to %v %s, want %v to %v %s", row.id, text(item.Low), text(item.High), item.Unit, row.low, row.high, row.unit)
		}
	}
	if wanted := items["bench.structure.sandbags"].Wanted; !strings.Contains(wanted, "85.2 kg of bags") {
		t.Error(wanted)
	}
}

// isEnd compares an end of a wanted figure to three parts in ten thousand; NaN wants none.
func isEnd(got *float64, want float64) bool {
	if math.IsNaN(want) {
		return got == nil
	}
	return got != nil && math.Abs(*got-want) <= 3e-4*math.Abs(want)
}

func text(value *float64) any {
	if value == nil {
		return "none"
	}
	return *value
}

func toldNumber(t *testing.T, report assess.Report, id string) float64 {
	t.Helper()
	for _, q := range report.Quantities {
		if q.ID == id && q.Value != nil {
			return *q.Value
		}
	}
	t.Fatalf("no quantity %s", id)
	return 0
}

// TestDirectionsFollowThePlace wants the pitch control of a canard to move the other way.
func TestDirectionsFollowThePlace(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre")
	const id = "bench.controls.direction.2.1"
	if wanted := itemsOf(told(t, in))[id].Wanted; wanted != "stick back: trailing edge up" {
		t.Error(wanted)
	}
	in.Model.Surfaces[1].Role = assess.SurfaceRoleCanard
	if wanted := itemsOf(told(t, in))[id].Wanted; !strings.HasPrefix(wanted, "stick back: trailing edge down") {
		t.Error(wanted)
	}
}

// TestMissingFigureIsSaid wants a point without a figure to stay on the list and to say so.
func TestMissingFigureIsSaid(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre")
	in.Model.Surfaces[1].Controls[0].ThrowUpDegrees, in.Model.Mass.EmptyBalanceXMeters = nil, nil
	items := itemsOf(told(t, in))
	for id, want := range map[string]string{"bench.controls.throw_up.2.1": "no figure yet", "bench.mass.balance": "not computed yet", "bench.engine.run_down.1": "no figure yet"} {
		if item := items[id]; item.Low != nil || item.High != nil || !strings.Contains(item.Wanted, want) {
			t.Errorf("%s: %+v", id, item)
		}
	}
}

// TestMassClassCapsTheWeighing wants the wanted mass to leave room for the fuel under the limit.
func TestMassClassCapsTheWeighing(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre")
	in.Limits = &assess.Limits{MaximumMassKg: number(11.85)}
	if high := itemsOf(told(t, in))["bench.mass.weighing"].High; !isEnd(high, 11.85-2.08) {
		t.Errorf("up to %v kg", text(high))
	}
}

// TestConfirmationsAreOnTheList wants each confirmation that applies, and none that does not.
func TestConfirmationsAreOnTheList(t *testing.T) {
	t.Parallel()
	for document, turbine := range map[string]bool{"dabchick_long_acre": false, "sandmartin_long_acre": true} {
		items := itemsOf(told(t, ruled(t, document, "us-recreational", "us-association-turbine")))
		if _, there := items["bench.documents.us-recreational.registration"]; !there {
			t.Errorf("%s: registration is missing from %v", document, slices.Sorted(maps.Keys(items)))
		}
		if _, there := items["bench.documents.us-association-turbine.fire"]; there != turbine {
			t.Errorf("%s: fire cover %v", document, there)
		}
	}
}

// TestBenchCostsNoVerdict wants no list where no drawings are asked for, nor verdicts that differ.
func TestBenchCostsNoVerdict(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre")
	whole, err := assess.Prepare(in)
	if err != nil {
		t.Fatal(err)
	}
	bare, err := whole.RunWith(in, assess.Options{})
	if err != nil || len(bare.BenchItems)+len(bare.Cards) != 0 {
		t.Errorf("%d items, %d cards, %v", len(bare.BenchItems), len(bare.Cards), err)
	}
	if got := worseOf(t, bare, told(t, in)); len(got) != 0 {
		t.Error(got)
	}
}

// TestBenchOfHalfADocument takes every part of the model away in turn and wants a list of whole points still.
func TestBenchOfHalfADocument(t *testing.T) {
	t.Parallel()
	fields := reflect.TypeFor[assess.ModelDescription]()
	for _, name := range []string{"sandmartin_long_acre", "redshank_quarry_top", "dabchick_long_acre"} {
		for i := range fields.NumField() {
			in := demoInput(t, name)
			reflect.ValueOf(in.Model).Elem().Field(i).SetZero()
			wantWholeLists(t, fields.Field(i).Name, told(t, in))
		}
		in := demoInput(t, name)
		in.LaunchPlan, in.Field, in.Day = nil, nil, nil
		wantWholeLists(t, "plan, field and day", told(t, in))
	}
	if report := told(t, assess.Input{}); len(report.BenchItems)+len(report.Cards) != 0 {
		t.Errorf("an empty document has %d items and %d cards", len(report.BenchItems), len(report.Cards))
	}
}

func wantWholeLists(t *testing.T, without string, report assess.Report) {
	t.Helper()
	for _, item := range report.BenchItems {
		if item.Wanted == "" || item.Why == "" {
			t.Errorf("without %s: %+v", without, item)
		}
		wantEnds(t, item)
	}
	for _, card := range report.Cards {
		wantWholeCard(t, report, card)
	}
}
