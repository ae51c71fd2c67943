package assess_test

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"
	"testing"

	"google.golang.org/protobuf/encoding/protojson"

	pitgatev1 "pitgate/proto/pitgate/v1"
	"pitgate/server/document"
	"pitgate/server/physics/assess"
)

func number(v float64) *float64 { return &v }

func quantity(v float64) *assess.Quantity {
	return &assess.Quantity{Value: &v, Basis: assess.BasisMeasured}
}

func TestRunIsDeterministic(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "redshank_quarry_top")
	first, second := assessed(t, in), assessed(t, in)
	if !reflect.DeepEqual(first, second) {
		t.Error("two runs of one input differ")
	}
	if first.InputDigest != document.Digest(demoInput(t, "redshank_quarry_top")) {
		t.Error("running an input changed it")
	}
}

// TestReportIsContractJSON reads the report's JSON back through the contract's own reader.
func TestReportIsContractJSON(t *testing.T) {
	t.Parallel()
	report := assessed(t, demoInput(t, "sandmartin_long_acre_wet"))
	data, err := json.Marshal(report)
	if err != nil {
		t.Fatal(err)
	}
	var message pitgatev1.AssessmentReport
	if err := protojson.Unmarshal(data, &message); err != nil {
		t.Fatal(err)
	}
	if len(message.GetFindings()) != len(report.Findings) || len(message.GetQuantities()) != len(report.Quantities) ||
		len(message.GetPaths()) != len(report.Paths) || message.GetCounts().GetTightCount() != report.Counts.TightCount || report.Counts.TightCount == 0 {
		t.Errorf("contract reads %d findings, %d quantities, %d paths, %d tight", len(message.GetFindings()),
			len(message.GetQuantities()), len(message.GetPaths()), message.GetCounts().GetTightCount())
	}
}

// wingAlone is a document that holds nothing but one wing.
const wingAlone = `{"model":{"surfaces":[{"name":"wing","role":"SURFACE_ROLE_WING","mirrored":true,"stations":[
 {"leadingEdgeXMeters":0,"leadingEdgeYMeters":0,"leadingEdgeZMeters":0,"chordMeters":0.3,"section":{"family":"SECTION_FAMILY_FOUR_DIGIT","designation":"2412"}},
 {"leadingEdgeXMeters":0,"leadingEdgeYMeters":0.9,"leadingEdgeZMeters":0,"chordMeters":0.3}]}]}}`

func TestWingAloneGivesWhatAWingGives(t *testing.T) {
	t.Parallel()
	in, err := document.Decode([]byte(wingAlone))
	if err != nil {
		t.Fatal(err)
	}
	report := assessed(t, in)
	told := map[string]float64{}
	for _, q := range report.Quantities {
		if q.Value != nil {
			told[q.ID] = *q.Value
		}
	}
	// Area, span, aspect ratio and chord of a rectangle; the slope within 8 % of Helmbold's for A = 6 (Anderson,
	// Aircraft Performance and Design, Eq. 2.18a) with the section slope of 5.8 per rad that sections show at Re 4e5:
	// k = 5.8/(6 pi) = 0.308, 5.8/(sqrt(1 + k^2) + k) = 4.29 per rad.
	rows := []struct {
		id              string
		want, tolerance float64
	}{
		{"wing.area", 0.54, 1e-12}, {"wing.span", 1.8, 1e-12}, {"wing.aspect_ratio", 6, 1e-12}, {"wing.mean_chord", 0.3, 1e-12},
		{"lift.slope", 4.29, 0.34}, {"lift.neutral_point", 0.075, 0.01}, {"drag.span_efficiency", 0.97, 0.05},
	}
	for _, row := range rows {
		if got, ok := told[row.id]; !ok || math.Abs(got-row.want) > row.tolerance {
			t.Errorf("%s: got %v (told %v), want %v within %v", row.id, got, ok, row.want, row.tolerance)
		}
	}
	if told["lift.maximum_coefficient"] <= 0 {
		t.Error("no greatest lift coefficient")
	}
	for _, finding := range report.Findings {
		if finding.Verdict != assess.VerdictUnknown || len(finding.Missing) == 0 || finding.Value != nil {
			t.Errorf("%s: verdict %s, missing %v, value %v", finding.ID, finding.Verdict, finding.Missing, finding.Value)
		}
	}
}

func TestEmptyInputIsUnknown(t *testing.T) {
	t.Parallel()
	report := assessed(t, assess.Input{})
	if len(report.Findings) == 0 || report.Counts.UnknownCount != int32(len(report.Findings)) {
		t.Errorf("counts %+v of %d findings", report.Counts, len(report.Findings))
	}
}

// TestMissingInputIsNamed takes away one input at a time and wants the findings that need it to name it.
func TestMissingInputIsNamed(t *testing.T) {
	t.Parallel()
	rows := []struct {
		path, finding string
		remove        func(*assess.Input)
	}{
		{"model.mass.emptyMassKg", "stall.speed", func(in *assess.Input) { in.Model.Mass.EmptyMassKg = nil }},
		{"model.mass.emptyBalanceXMeters", "balance.margin_empty", func(in *assess.Input) { in.Model.Mass.EmptyBalanceXMeters = nil }},
		{"model.engines[0].staticThrustNewtons", "thrust.ratio", func(in *assess.Input) { in.Model.Engines[0].StaticThrustNewtons = nil }},
		{"model.engines[0].airMassFlowKgPerSecond", "speed.top", func(in *assess.Input) { in.Model.Engines[0].AirMassFlowKgPerSecond = nil }},
		{"model.engines[0].spoolUpSeconds", "launch.distance", func(in *assess.Input) { in.Model.Engines[0].SpoolUpSeconds = nil }},
		{"model.bodies", "speed.top", func(in *assess.Input) { in.Model.Bodies = nil }},
		{"model.gear", "launch.distance", func(in *assess.Input) { in.Model.Gear = nil }},
		{"model.fuelSystem.densityKgPerCubicMeter", "balance.margin_full", func(in *assess.Input) { in.Model.FuelSystem = nil }},
		{"model.mass.tanks[0].xMeters", "balance.margin_full", func(in *assess.Input) { in.Model.Mass.Tanks[0].XMeters = nil }},
		{"day.temperatureCelsius", "air.density", func(in *assess.Input) { in.Day.TemperatureCelsius = nil }},
		{"day.windSpeedMetersPerSecond", "stall.gust", func(in *assess.Input) { in.Day.WindSpeedMetersPerSecond = nil }},
		{"day.surfaceState", "launch.distance", func(in *assess.Input) { in.Day.SurfaceState = "" }},
		{"field.elevationMeters", "air.density", func(in *assess.Input) { in.Field.ElevationMeters = nil }},
		{"field.flyingArea", "circuit.inside", func(in *assess.Input) { in.Field.FlyingArea = nil }},
		{"field.obstacles[0].heightMeters", "climb.clearance", func(in *assess.Input) { in.Field.Obstacles[0].HeightMeters = nil }},
		{"launchPlan.circuit.hand", "circuit.inside", func(in *assess.Input) { in.LaunchPlan.Circuit.Hand = "" }},
		{"model.surfaces[1].controls[0].throwUpDegrees", "balance.trim", func(in *assess.Input) { in.Model.Surfaces[1].Controls[0].ThrowUpDegrees = nil }},
		{"model.surfaces[].controls", "pitch.sensitivity", func(in *assess.Input) { in.Model.Surfaces[1].Controls = nil }},
		{"model.mass.emptyBalanceZMeters", "balance.launch_trim", func(in *assess.Input) { in.Model.Mass.EmptyBalanceZMeters = nil }},
		{"model.mass.tanks[0].zMeters", "balance.launch_trim", func(in *assess.Input) { in.Model.Mass.Tanks[0].ZMeters = nil }},
		{"model.engines[0].zMeters", "balance.launch_trim", func(in *assess.Input) { in.Model.Engines[0].ZMeters = nil }},
		{"model.surfaces[0].controls[0].throwDownDegrees", "roll.rate", func(in *assess.Input) { in.Model.Surfaces[0].Controls[0].ThrowDownDegrees = nil }},
		{"model.structure.wingTwistStiffnessNewtonMetersPerRadian", "roll.reversal", func(in *assess.Input) { in.Model.Structure = nil }},
		{"model.mass.items", "mass.reconciled", func(in *assess.Input) { in.Model.Mass = nil }},
		{"launchPlan.method", "climb.clearance", func(in *assess.Input) { in.LaunchPlan.Method = "" }},
	}
	for _, row := range rows {
		t.Run(row.path, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, "sandmartin_long_acre_wet")
			row.remove(&in)
			finding := findingOf(t, assessed(t, in), row.finding)
			if finding.Verdict != assess.VerdictUnknown || !strings.Contains(strings.Join(finding.Missing, " "), row.path) {
				t.Errorf("%s: verdict %s, missing %v", row.finding, finding.Verdict, finding.Missing)
			}
		})
	}
}

// TestQuantityIdsAreUnique since a reader looks a quantity up by its id.
func TestQuantityIdsAreUnique(t *testing.T) {
	t.Parallel()
	for _, row := range demoVerdicts {
		seen := map[string]bool{}
		for _, q := range assessed(t, demoInput(t, row.name)).Quantities {
			if seen[q.ID] {
				t.Errorf("%s: %s stands twice", row.name, q.ID)
			}
			seen[q.ID] = true
		}
	}
}

func TestSurfaceThatCannotExistIsAnError(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "dabchick_long_acre")
	in.Model.Surfaces[0].Stations[1].LeadingEdgeYMeters = number(-0.5)
	if _, err := assess.Run(in); err == nil || !strings.Contains(err.Error(), "wing") {
		t.Errorf("got %v, want an error that names the wing", err)
	}
}
