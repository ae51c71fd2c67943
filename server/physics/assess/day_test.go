package assess_test

import (
	"math"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// dayFindings are the findings of link loss, separation, rules and weather.
var dayFindings = []string{
	"link_loss.footprint", "separation.people", "separation.structures", "height.limit", "mass.class", "field.permission", "visual.range", "weather.crosswind", "weather.gust",
	"weather.visibility", "weather.temperature", "weather.frost", "weather.age", "weather.sun", "weather.light", "weather.wake",
}

// toldValue returns the value of a quantity of a report.
func toldValue(t testing.TB, report assess.Report, id string) float64 {
	t.Helper()
	for _, q := range report.Quantities {
		if q.ID == id && q.Value != nil {
			return *q.Value
		}
	}
	t.Fatalf("report has no quantity %s", id)
	return 0
}

// unbanded runs the base pass alone.
func unbanded(t testing.TB, in assess.Input) assess.Report {
	t.Helper()
	report, err := assess.Unbanded(in)
	if err != nil {
		t.Fatal(err)
	}
	return report
}

// TestDayNumbers holds values against what their definitions give by hand.
func TestDayNumbers(t *testing.T) {
	t.Parallel()
	report := unbanded(t, demoInput(t, "dabchick_long_acre"))
	rows := []struct {
		id               string
		value, tolerance float64
	}{
		{"height.limit", 45, 1e-9}, {"mass.class", 2.1, 1e-9}, {"weather.gust", 4.5, 1e-9}, {"weather.visibility", 12000, 1e-9}, {"weather.temperature", 14, 1e-9},
		// 4.5 m/s from 50 degrees over a strip between (-123.41, -71.25) and (123.41, 71.25): sin(59.9985 - 50 degrees).
		{"weather.crosswind", 4.5 * 0.17362, 2e-4},
		// 10:30 British summer time is 09:30 UTC, the report is of 09:20.
		{"weather.age", 10, 1e-9},
	}
	for _, row := range rows {
		finding := findingOf(t, report, row.id)
		if finding.Value == nil || math.Abs(*finding.Value-row.value) > row.tolerance {
			t.Errorf("%s: got %v, want %v", row.id, finding.Value, row.value)
		}
	}
	if got := toldValue(t, report, "visual.attitude_range"); math.Abs(got-(490*1.32+30)) > 1e-9 {
		t.Errorf("attitude range %v", got)
	}
}

// TestDayVerdicts changes one thing of a demo document and wants the finding that minds it to change.
func TestDayVerdicts(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name, finding string
		want          assess.Verdict
		note          string
		change        func(*assess.Input)
	}{
		{"frost", "weather.frost", assess.VerdictFails, "take it off", func(in *assess.Input) { in.Day.Frost = assess.FrostPresent }},
		{"cold and damp", "weather.frost", assess.VerdictHolds, "look again", func(in *assess.Input) {
			in.Day.TemperatureCelsius, in.Day.DewPointCelsius = quantity(2), quantity(1)
		}},
		{"old report", "weather.age", assess.VerdictFails, "130 minutes older", func(in *assess.Input) { in.Day.Time = "2026-05-16T11:30:00Z" }},
		{"report of the day after", "weather.age", assess.VerdictFails, "later", func(in *assess.Input) { in.Day.Time = "2026-05-15T09:20:00Z" }},
		{"no report", "weather.age", assess.VerdictHolds, "typed", func(in *assess.Input) { in.Day.Metar = "" }},
		{"night", "weather.light", assess.VerdictFails, "horizon", func(in *assess.Input) { in.Day.Time = "2026-05-16T23:30:00Z" }},
		{"sun low in the east", "weather.sun", assess.VerdictFails, "beside the line of sight", func(in *assess.Input) { in.Day.Time = "2026-05-16T04:40:00Z" }},
		{"sun low, landing across it", "weather.sun", assess.VerdictHolds, "beside the line of sight", func(in *assess.Input) {
			in.Day.Time = "2026-05-16T04:40:00Z"
			in.LaunchPlan.Landing = &assess.LandingPlan{HeadingDegrees: number(330)}
		}},
		{"too warm", "weather.temperature", assess.VerdictFails, "", func(in *assess.Input) { in.Limits.MaximumTemperatureCelsius = number(10) }},
		{"too cold", "weather.temperature", assess.VerdictFails, "", func(in *assess.Input) { in.Limits.MinimumTemperatureCelsius = number(20) }},
		{"between", "weather.temperature", assess.VerdictHolds, "", func(in *assess.Input) {
			in.Limits.MinimumTemperatureCelsius, in.Limits.MaximumTemperatureCelsius = number(5), number(25)
		}},
		{"gust above the limit", "weather.gust", assess.VerdictFails, "", func(in *assess.Input) { in.Limits.MaximumGustMetersPerSecond = number(4) }},
		{"hazy", "weather.visibility", assess.VerdictFails, "", func(in *assess.Input) { in.Limits.MinimumVisibilityMeters = number(15000) }},
		{"fog hides the circuit", "visual.range", assess.VerdictFails, "found as far as 150 m", func(in *assess.Input) { in.Day.VisibilityMeters = quantity(500) }},
		{"lower than the field", "height.limit", assess.VerdictFails, "", func(in *assess.Input) { in.Limits.MaximumHeightMeters = number(40) }},
		{"too heavy a class", "mass.class", assess.VerdictFails, "", func(in *assess.Input) { in.Limits.MaximumMassKg = number(2) }},
		{"people too near", "separation.people", assess.VerdictFails, "pits", func(in *assess.Input) { in.Limits.MinimumPeopleDistanceMeters = number(300) }},
		{"roads too near", "separation.structures", assess.VerdictFails, "farm track", func(in *assess.Input) { in.Limits.MinimumStructureDistanceMeters = number(30) }},
		{"wind across beyond the rudder", "weather.crosswind", assess.VerdictFails, "Full rudder", func(in *assess.Input) {
			in.Day.WindSpeedMetersPerSecond, in.Day.GustSpeedMetersPerSecond, in.Day.WindDirectionDegrees = quantity(9), quantity(12), quantity(150)
		}},
		{"wind across within a given limit", "weather.crosswind", assess.VerdictHolds, "", func(in *assess.Input) {
			in.Day.WindDirectionDegrees, in.Limits.MaximumCrosswindMetersPerSecond = quantity(150), number(8)
		}},
		{"no fail-safe", "link_loss.footprint", assess.VerdictFails, "No fail-safe is declared", func(in *assess.Input) {
			in.Model.Radio = nil
			in.Model.Packs = []assess.Pack{{Name: "flight", Use: assess.PackUsePropulsion, CapacityAmpereHours: quantity(4), MeanCurrentAmperes: quantity(40)}}
		}},
		{"surfaces neutral", "link_loss.footprint", assess.VerdictFails, "reaches", func(in *assess.Input) { in.Model.Radio.FailSafeAction = assess.FailSafeActionCutNeutral }},
		{"people have to be farther", "link_loss.footprint", assess.VerdictFails, "", func(in *assess.Input) { in.Limits.MinimumPeopleDistanceMeters = number(300) }},
		{"nobody under the wind", "weather.wake", assess.VerdictHolds, "No hedge", func(in *assess.Input) { in.Field.Obstacles = nil }},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, "dabchick_long_acre")
			row.change(&in)
			finding := findingOf(t, unbanded(t, in), row.finding)
			if finding.Verdict != row.want || !strings.Contains(finding.Note, row.note) {
				t.Errorf("%s: %s, %q; want %s, %q", row.finding, finding.Verdict, finding.Note, row.want, row.note)
			}
		})
	}
}

// TestDayNamesWhatIsMissing takes away one input at a time and wants the finding to name it and nothing to be taken in its place.
func TestDayNamesWhatIsMissing(t *testing.T) {
	t.Parallel()
	rows := []struct {
		path, finding string
		remove        func(*assess.Input)
	}{
		{"model.radio.failSafeDelaySeconds", "link_loss.footprint", func(in *assess.Input) { in.Model.Radio.FailSafeDelaySeconds = nil }},
		{"model.packs", "link_loss.footprint", func(in *assess.Input) { in.Model.Radio, in.Model.Packs = nil, nil }},
		{"field.peopleLines", "link_loss.footprint", nobody}, {"field.peopleLines", "separation.people", nobody},
		{"launchPlan.circuit", "separation.structures", func(in *assess.Input) { in.LaunchPlan.Circuit = nil }},
		{"launchPlan.circuit.heightMeters", "height.limit", func(in *assess.Input) { in.LaunchPlan.Circuit.HeightMeters = nil }},
		{"field.pilotPosition", "visual.range", func(in *assess.Input) { in.Field.PilotPosition = nil }},
		{"day.windDirectionDegrees", "weather.crosswind", func(in *assess.Input) { in.Day.WindDirectionDegrees = nil }},
		{"day.windSpeedMetersPerSecond", "weather.gust", func(in *assess.Input) { in.Day.WindSpeedMetersPerSecond = nil }},
		{"day.visibilityMeters", "weather.visibility", func(in *assess.Input) { in.Day.VisibilityMeters = nil }},
		{"day.temperatureCelsius", "weather.temperature", func(in *assess.Input) { in.Day.TemperatureCelsius = nil }},
		{"day.frost", "weather.frost", func(in *assess.Input) { in.Day.Frost = "" }},
		{"day.time", "weather.age", func(in *assess.Input) { in.Day.Time = "" }},
		{"day.time", "weather.light", func(in *assess.Input) { in.Day.Time = "yesterday" }},
		{"field.datumLongitudeDegrees", "weather.sun", func(in *assess.Input) { in.Field.DatumLongitudeDegrees = nil }},
		{"launchPlan.method", "weather.wake", func(in *assess.Input) { in.LaunchPlan.Method = "" }},
		{"model.mass.emptyMassKg", "mass.class", func(in *assess.Input) { in.Model.Mass = nil }},
	}
	for _, row := range rows {
		t.Run(row.finding+" "+row.path, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, "dabchick_long_acre")
			row.remove(&in)
			finding := findingOf(t, unbanded(t, in), row.finding)
			if finding.Verdict != assess.VerdictUnknown || !strings.Contains(strings.Join(finding.Missing, " "), row.path) {
				t.Errorf("%s: %s, missing %v", row.finding, finding.Verdict, finding.Missing)
			}
		})
	}
}

// nobody takes people from the field.
func nobody(in *assess.Input) { in.Field.PeopleLines, in.Field.Pits, in.Field.Parking = nil, nil, nil }

// TestSeparationFollowsThePeople moves all people away from the flight and wants the distance to grow by as much.
func TestSeparationFollowsThePeople(t *testing.T) {
	t.Parallel()
	apart := func(moved float64) float64 {
		in := demoInput(t, "dabchick_long_acre")
		in.Field.Pits, in.Field.KeepOuts = nil, nil
		// A line along the strip's heading of 59.9985 degrees, to its right.
		in.Field.PeopleLines = []assess.NamedLine{{Name: "people", Points: []assess.Point{
			{XMeters: number(0.50002*moved - 10*0.86602), YMeters: number(-0.86602*moved - 10*0.50002)},
			{XMeters: number(0.50002*moved + 10*0.86602), YMeters: number(-0.86602*moved + 10*0.50002)},
		}}}
		return *findingOf(t, unbanded(t, in), "separation.people").Value
	}
	near, far := apart(60), apart(110)
	if math.Abs(far-near-50) > 0.05 || near > 60.1 {
		t.Errorf("%.2f m and %.2f m", near, far)
	}
	if under := apart(0); under != 0 {
		t.Errorf("a line under the launch is %.2f m away", under)
	}
}

// TestLeeIsMarked wants the climb behind a bank and the day to say so, and neither in calm air.
func TestLeeIsMarked(t *testing.T) {
	t.Parallel()
	report := unbanded(t, demoInput(t, "redshank_quarry_top"))
	wake, climb := findingOf(t, report, "weather.wake"), findingOf(t, report, "climb.clearance")
	if wake.Value == nil || *wake.Value > 0.9 || wake.Verdict != assess.VerdictHolds || !strings.Contains(climb.Note, "crosses the lee of near gorse bank") {
		t.Errorf("wake %v: %s; climb: %s", wake.Value, wake.Note, climb.Note)
	}
	calm := demoInput(t, "redshank_quarry_top")
	calm.Day.WindSpeedMetersPerSecond, calm.Day.GustSpeedMetersPerSecond = quantity(0), nil
	if wake := findingOf(t, unbanded(t, calm), "weather.wake"); wake.Value != nil {
		t.Errorf("calm air: %s", wake.Note)
	}
}

// TestFootprintGrows wants the ground that a lost link may reach never to shrink with height and wind (neutral surfaces: a spiral comes round again),
// and with the delay, by the area of its outline; a hundredth is left for the sampling.
func TestFootprintGrows(t *testing.T) {
	t.Parallel()
	area := func(change func(*assess.Input)) float64 {
		in := demoInput(t, "sandmartin_long_acre")
		change(&in)
		return toldValue(t, unbanded(t, in), "link_loss.outline_area")
	}
	rows := []struct {
		name   string
		values []float64
		set    func(*assess.Input, float64)
	}{
		{"height", []float64{30, 60, 100, 140}, func(in *assess.Input, v float64) {
			in.Model.Radio.FailSafeAction, in.LaunchPlan.Circuit.HeightMeters = assess.FailSafeActionCutNeutral, quantity(v)
		}},
		{"wind", []float64{1, 5, 10}, func(in *assess.Input, v float64) {
			in.Model.Radio.FailSafeAction = assess.FailSafeActionCutNeutral
			in.Day.WindSpeedMetersPerSecond, in.Day.GustSpeedMetersPerSecond = quantity(v), nil
		}},
		{"delay", []float64{0, 1, 2, 4}, func(in *assess.Input, v float64) { in.Model.Radio.FailSafeDelaySeconds = quantity(v) }},
	}
	for _, row := range rows {
		last := 0.0
		for _, v := range row.values {
			got := area(func(in *assess.Input) { row.set(in, v) })
			if got < 0.92*last { // outlines of few losses scatter by some metres on all sides
				t.Errorf("%s %g: %.0f m2 after %.0f m2", row.name, v, got, last)
			}
			last = got
		}
	}
}

// TestOutlinesAreDrawn wants both outlines closed and the larger one to hold the smaller.
func TestOutlinesAreDrawn(t *testing.T) {
	t.Parallel()
	report := unbanded(t, demoInput(t, "redshank_quarry_top"))
	seen := map[string][]assess.PathPoint{}
	for _, path := range report.Paths {
		seen[path.ID] = path.Points
	}
	for _, id := range []string{"area.link_loss_50", "area.link_loss_95"} {
		points := seen[id]
		if len(points) < 4 || points[0] != points[len(points)-1] {
			t.Errorf("%s: %d points, or not closed", id, len(points))
		}
	}
	outer := seen["area.link_loss_95"]
	for _, p := range seen["area.link_loss_50"] {
		for i := 1; i < len(outer); i++ {
			a, b := outer[i-1], outer[i]
			if (b.XMeters-a.XMeters)*(p.YMeters-a.YMeters)-(b.YMeters-a.YMeters)*(p.XMeters-a.XMeters) < -1e-6 {
				t.Fatalf("%v of the inner outline lies outside the outer one", p)
			}
		}
	}
}

// TestDayFindingsHaveTheirBands wants every day finding exactly once, bands where an input moves it and none where none does.
func TestDayFindingsHaveTheirBands(t *testing.T) {
	t.Parallel()
	report := assessed(t, demoInput(t, "sandmartin_long_acre"))
	count := map[string]int{}
	for _, f := range report.Findings {
		count[f.ID]++
	}
	for _, id := range dayFindings {
		if count[id] != 1 {
			t.Errorf("%s stands %d times", id, count[id])
		}
	}
	for id, banded := range map[string]bool{"link_loss.footprint": false, "weather.light": false, "height.limit": true, "weather.gust": true, "visual.range": true} {
		if f := findingOf(t, report, id); (f.BandLow != nil) != banded {
			t.Errorf("%s: band from %v", id, f.BandLow)
		}
	}
}
