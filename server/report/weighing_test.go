package report_test

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/physics/weighing"
	"pitgate/server/report"
	"pitgate/testdata/demo"
)

func number(value float64) *float64 { return &value }

func measured(value, spread float64) *assess.Quantity {
	return &assess.Quantity{Value: &value, Basis: assess.BasisMeasured, Spread: &spread}
}

// bench is Redshank on three cradles instead of a stated mass, nose-heavy.
func bench(t *testing.T) assess.Input {
	t.Helper()
	data, err := demo.Files.ReadFile("redshank_quarry_top.json")
	if err != nil {
		t.Fatal(err)
	}
	in, err := document.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	yes := true
	m := in.Model.Mass
	m.EmptyMassKg, m.EmptyBalanceXMeters = nil, nil
	m.ScaleReadings = []assess.ScaleReading{
		{Name: "front cradle", XMeters: number(0.5), YMeters: number(0), ReadingKg: measured(2.62, 0.005), TareKg: number(0.12),
			Repeats: []assess.RepeatReading{{ReadingKg: number(2.615)}, {ReadingKg: number(2.625)}}},
		{Name: "rear cradle left", XMeters: number(1.05), YMeters: number(-0.2), ReadingKg: measured(2.5, 0.005), TareKg: number(0.1)},
		{XMeters: number(1.05), YMeters: number(0.2), ReadingKg: measured(2.52, 0.005), TareKg: number(0.1)},
	}
	m.Items = []assess.MassItem{
		{Name: "airframe", MassKg: measured(4.2, 0.02), XMeters: number(0.86), YMeters: number(0), ZMeters: number(0)},
		{Name: "turbine", MassKg: measured(1.45, 0.01), XMeters: number(1.25), YMeters: number(0), ZMeters: number(0.05)},
		{Name: "servos", MassKg: measured(1.1, 0.01), XMeters: number(0.55), YMeters: number(0), ZMeters: number(0), Movable: &yes},
	}
	m.BallastPlaces = []assess.BallastPlace{
		{Name: "tail cone", XMeters: number(1.35), MaximumMassKg: number(2)}, {Name: "nose", XMeters: number(0.05)},
		{Name: "behind the turbine", XMeters: number(1.3), MaximumMassKg: number(0.1)},
	}
	return in
}

func workedOut(t *testing.T, in assess.Input) report.Weighing {
	t.Helper()
	computed, err := document.Assess(in)
	if err != nil {
		t.Fatal(err)
	}
	w, err := report.NewWeighing(in, computed, nil)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func weighText(t *testing.T, w report.Weighing) string {
	t.Helper()
	var text strings.Builder
	if err := w.Text(&text); err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(text.String(), "\n") {
		if utf8.RuneCountInString(line) > report.Width || strings.HasSuffix(line, " ") {
			t.Errorf("line of %d columns: %q", utf8.RuneCountInString(line), line)
		}
	}
	return strings.Join(strings.Fields(text.String()), " ")
}

func TestWeighInOnTheBench(t *testing.T) {
	t.Parallel()
	w := workedOut(t, bench(t))
	if w.Verdict != assess.VerdictFails || w.Used != "scales" || len(w.Supports) != 3 || len(w.Ballast) != 3 || len(w.Moves) != 1 {
		t.Fatalf("got %+v", w)
	}
	if len(w.Notes) != 0 {
		t.Errorf("notes %q", w.Notes)
	}
	if x := w.Scales.XMeters.Value; math.Abs(x-(2.5*0.5+4.82*1.05)/7.32) > 1e-12 {
		t.Errorf("balance point at %g m", x)
	}
	best := w.Ballast[0]
	if !best.Possible || best.Name != "tail cone" || w.Ballast[1].Possible || w.Ballast[2].Possible {
		t.Errorf("ballast %+v", w.Ballast)
	}
	text := weighText(t, w)
	for _, want := range []string{
		"FAILS Mass and balance", "too far forward", "front cradle 3 2.620 0.120 2.500", "scale 3 1 2.520", "from the scales 7.320 +-0.009",
		"Side to side: level within two spreads", "Against the weighed model: Weighed 0.570 kg more than listed", "missing from the list",
		"static margin", "TRAVEL WITH FUEL (resting on mass and balance from the scales)", "tail cone", "Wrong side", "Holds 0.100 kg",
		"or move", "The computation supports a decision and does not make it.",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("text lacks %q", want)
		}
	}
	if strings.Contains(strings.ToLower(text), " safe") {
		t.Error("text calls something safe")
	}
}

// TestBallastAsFoundBringsItIn fixes the ballast found as an item and weighs again.
func TestBallastAsFoundBringsItIn(t *testing.T) {
	t.Parallel()
	in := bench(t)
	best := workedOut(t, in).Ballast[0]
	before := in.Model.Mass.ScaleReadings
	var mass, moment float64
	for i := range before {
		net := *before[i].ReadingKg.Value - *before[i].TareKg
		mass, moment = mass+net, moment+net**before[i].XMeters
	}
	in.Model.Mass.ScaleReadings = nil
	in.Model.Mass.EmptyMassKg = measured(mass+*best.MassKg, 0)
	in.Model.Mass.EmptyBalanceXMeters = measured((moment+*best.MassKg*best.XMeters)/(mass+*best.MassKg), 0)
	after := workedOut(t, in)
	if after.Ballast != nil || !strings.Contains(after.Correction, "no ballast is needed") {
		t.Errorf("after %.4f kg at %s: %s", *best.MassKg, best.Name, after.Correction)
	}
	last := after.Travel.Points[len(after.Travel.Points)-1]
	if full := *after.Travel.Points[0].MarginRatio; math.Abs(full-*best.MarginFullRatio) > 1e-9 || math.Abs(*last.MarginRatio-*best.MarginEmptyRatio) > 1e-9 {
		t.Errorf("margins %g and %g, promised %g and %g", full, *last.MarginRatio, *best.MarginFullRatio, *best.MarginEmptyRatio)
	}
}

func TestWeighInOfStatedMass(t *testing.T) {
	t.Parallel()
	in := bench(t)
	in.Model.Mass.EmptyMassKg, in.Model.Mass.EmptyBalanceXMeters = measured(7.3, 0.04), measured(0.925, 0.004)
	w := workedOut(t, in)
	if w.Used != "stated" || w.Verdict != assess.VerdictFails || w.ScalesAgainstStated == nil || w.ScalesAgainstStated.Agrees {
		t.Errorf("scales that disagree with the stated balance must be told: %+v", w)
	}
	in.Model.Mass.ScaleReadings[0].Repeats = nil
	if text := weighText(t, workedOut(t, in)); !strings.Contains(text, "Each scale was read once") || !strings.Contains(text, "Scales against what is stated") {
		t.Error("a single reading and the comparison must be told")
	}
	in.Model.Mass.ScaleReadings, in.Model.Mass.Items = nil, nil
	if w = workedOut(t, in); w.Verdict != assess.VerdictHolds {
		t.Errorf("got %s, %v", w.Verdict, w.Reasons)
	}
	in.Model.Mass.EmptyBalanceXMeters = measured(0.925, 0.05)
	if w = workedOut(t, in); w.Verdict != assess.VerdictTight || !strings.Contains(weighText(t, w), "reaches beyond the window") {
		t.Errorf("got %s, %v", w.Verdict, w.Reasons)
	}
}

func TestWeighInNamesWhatIsMissing(t *testing.T) {
	t.Parallel()
	rows := map[string]func(*assess.Input){
		"model.mass.emptyMassKg":                  func(in *assess.Input) { in.Model.Mass = nil },
		"model.surfaces":                          func(in *assess.Input) { in.Model.Surfaces = nil },
		"model.fuelSystem.densityKgPerCubicMeter": func(in *assess.Input) { in.Model.FuelSystem = nil },
		"model.mass.tanks[0].capacityLiters":      func(in *assess.Input) { in.Model.Mass.Tanks[0].CapacityLiters = nil },
	}
	for path, change := range rows {
		in := bench(t)
		in.Model.Mass.Items = nil
		change(&in)
		w := workedOut(t, in)
		if w.Verdict != assess.VerdictUnknown || !strings.Contains(strings.Join(w.Missing, " "), path) {
			t.Errorf("%s: got %s, missing %v", path, w.Verdict, w.Missing)
		}
		weighText(t, w)
	}
}

func TestWeighInNamesWhatCannotBe(t *testing.T) {
	t.Parallel()
	rows := map[string]func(*assess.MassProperties){
		"model.mass.scaleReadings[1].tareKg":    func(m *assess.MassProperties) { m.ScaleReadings[1].TareKg = number(3) },
		"model.mass.scaleReadings[0].readingKg": func(m *assess.MassProperties) { m.ScaleReadings[0].ReadingKg = nil },
		"model.mass.tanks[0].xMeters":           func(m *assess.MassProperties) { m.Tanks[0].XMeters = nil },
		"model.mass.ballastPlaces[1].xMeters":   func(m *assess.MassProperties) { m.BallastPlaces[1].XMeters = nil },
	}
	for path, change := range rows {
		in := bench(t)
		computed, err := document.Assess(in)
		if err != nil {
			t.Fatal(err)
		}
		change(in.Model.Mass)
		_, err = report.NewWeighing(in, computed, nil)
		var field *weighing.FieldError
		if !errors.As(err, &field) || field.Path() != path {
			t.Errorf("got %v, want a fault at %s", err, path)
		}
	}
}

func TestWeighInWithATiltedWeighing(t *testing.T) {
	t.Parallel()
	in := bench(t)
	computed, err := document.Assess(in)
	if err != nil {
		t.Fatal(err)
	}
	const height, tilt = 0.08, 0.3
	readings := report.Readings(in.Model.Mass)
	shift := 7.32 * height * math.Tan(tilt) / 0.55 // from the front cradle to the two rear ones, kg
	for i, by := range []float64{-shift, shift / 2, shift / 2} {
		for k := range readings[i].Shown {
			readings[i].Shown[k] += by
		}
	}
	w, err := report.NewWeighing(in, computed, &report.Tilted{Readings: readings, Angle: tilt, Spread: 0.01})
	if err != nil {
		t.Fatal(err)
	}
	if w.HeightMeters == nil || math.Abs(w.HeightMeters.Value-height) > 1e-9 || !strings.Contains(weighText(t, w), "Height above the supports 0.0800") || !strings.Contains(weighText(t, w), "seem to balance 1.4 mm") {
		t.Errorf("height %+v", w.HeightMeters)
	}
	if _, err := report.NewWeighing(in, computed, &report.Tilted{Readings: readings}); err == nil {
		t.Error("a tilted weighing without tilt must be refused")
	}
}

func TestWeighInAsJSONNamesItsUnits(t *testing.T) {
	t.Parallel()
	text, err := json.Marshal(workedOut(t, bench(t)))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"verdict":"VERDICT_FAILS"`, `"netKg":{"value":2.5`, `"marginFullRatio":`, `"forwardXMeters":`, `"massScore":`, `"cautions":[`} {
		if !strings.Contains(string(text), want) {
			t.Errorf("JSON lacks %s", want)
		}
	}
}

func TestWeighingForm(t *testing.T) {
	t.Parallel()
	var text strings.Builder
	if err := report.WeighingForm(&text); err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSuffix(text.String(), "\n"), "\n")
	if len(lines) > 60 {
		t.Errorf("%d lines do not fit a page", len(lines))
	}
	for _, line := range lines {
		if utf8.RuneCountInString(line) > report.Width || strings.HasSuffix(line, " ") {
			t.Errorf("line of %d columns: %q", utf8.RuneCountInString(line), line)
		}
	}
	for _, want := range []string{"Datum", "lift the model OFF", "three times", "tare", "Witness", "supports a decision"} {
		if !strings.Contains(text.String(), want) {
			t.Errorf("form lacks %q", want)
		}
	}
	if err := report.WeighingForm(fullDisk{}); !errors.Is(err, errFull) {
		t.Errorf("got %v", err)
	}
	empty := report.Weighing{}
	if err := empty.Text(fullDisk{}); !errors.Is(err, errFull) {
		t.Errorf("got %v", err)
	}
}

func TestHeavySideLongNamesAndItemsWithoutPlace(t *testing.T) {
	t.Parallel()
	in := bench(t)
	m := in.Model.Mass
	m.ScaleReadings[1].ReadingKg, m.ScaleReadings[2].ReadingKg = measured(2.7, 0.005), measured(2.3, 0.005)
	m.ScaleReadings[0].Name = strings.Repeat("front cradle ", 4)
	m.Items[0].Name, m.Items[0].YMeters = "", nil
	m.BallastPlaces[0].Name = strings.Repeat("long name ", 6)
	text := weighText(t, workedOut(t, in))
	for _, want := range []string{"heavy on the left; 0.0800 kg m on the other side", "item 1 4.200 0.860 -", "front cradle fron."} {
		if !strings.Contains(text, want) {
			t.Errorf("text lacks %q in %s", want, text)
		}
	}
}
