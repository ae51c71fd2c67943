package assess_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"pitgate/server/physics/assess"
)

const feet = 0.3048

// publishedValue reads the expected value of a row of Anderson, Introduction to Flight.
func publishedValue(t *testing.T, id string) float64 {
	t.Helper()
	file, err := os.Open("../../../testdata/published/anderson_flight/values.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		if row[0] == id {
			value, err := strconv.ParseFloat(row[2], 64)
			if err != nil {
				t.Fatal(err)
			}
			return value
		}
	}
	t.Fatalf("no row %s", id)
	return 0
}

// textbookJet is the twin jet of Anderson's examples 6.1 to 6.17 as a document: span 16.25 m, area 29.54 m2, weight 88176.75 N,
// zero-lift drag 0.02 and greatest lift 1.0 handed in as measured, thrust 32485 N that does not fall with speed, air of 1.225 kg/m3.
func textbookJet() assess.Input {
	const span, area, weight = 16.25, 29.54, 88176.75
	chord := area / span
	station := func(y float64) assess.Station {
		return assess.Station{LeadingEdgeXMeters: number(0), LeadingEdgeYMeters: &y, LeadingEdgeZMeters: number(0), ChordMeters: &chord}
	}
	measured := func(id string, v float64) assess.MeasuredResult {
		return assess.MeasuredResult{QuantityID: id, Value: quantity(v)}
	}
	return assess.Input{
		Model: &assess.ModelDescription{
			Surfaces:        []assess.LiftingSurface{{Name: "wing", Role: assess.SurfaceRoleWing, Stations: []assess.Station{station(0), station(span / 2)}}},
			Bodies:          []assess.Body{{Name: "fuselage"}},
			Mass:            &assess.MassProperties{EmptyMassKg: quantity(weight / 9.80665)},
			MeasuredResults: []assess.MeasuredResult{measured("drag.zero_lift", 0.02), measured("lift.maximum_coefficient", 1)},
			Engines: []assess.Engine{{
				Name: "pair", Kind: assess.EngineKindTurbine, StaticThrustNewtons: quantity(32485),
				AirMassFlowKgPerSecond: quantity(0), SpoolUpSeconds: quantity(0),
			}},
		},
		Day: &assess.DayConditions{
			TemperatureCelsius: quantity(15), StationPressurePascals: quantity(101325), RelativeHumidityRatio: quantity(0),
			WindSpeedMetersPerSecond: quantity(0),
		},
	}
}

// TestTextbookJetThroughRun compares whole answers with Anderson's: stall speed is his lift-off speed over 1.2, thrust over weight
// follows from the inputs, top speed is the exact root where the book reads a graph.
func TestTextbookJetThroughRun(t *testing.T) {
	t.Parallel()
	report := assessed(t, textbookJet())
	rows := []struct {
		finding   string
		want      float64
		tolerance float64 // relative
		source    string
	}{
		{"stall.speed", publishedValue(t, "lift-off-speed/jet") / 1.2, 5e-4, "example 6.17"},
		{"thrust.ratio", 32485 / 88176.75, 1e-6, "example 6.17, inputs"},
		{"speed.top", publishedValue(t, "top-speed/jet") * feet, 3e-3, "section 6.4"},
	}
	for _, row := range rows {
		finding := findingOf(t, report, row.finding)
		if finding.Value == nil || math.Abs(*finding.Value/row.want-1) > row.tolerance {
			t.Errorf("%s: got %v (missing %v), want %g within %g (%s)", row.finding, finding.Value, finding.Missing, row.want, row.tolerance, row.source)
		}
	}
}
