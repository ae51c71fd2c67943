package assess_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// windAt is one change of the wind, m/s and degrees.
func windAt(time string, speed, gust, from float64) assess.WindChange {
	return assess.WindChange{Time: time, WindSpeedMetersPerSecond: quantity(speed), GustSpeedMetersPerSecond: quantity(gust), WindDirectionDegrees: quantity(from)}
}

// breeze is a document with plain limits: 6 m/s across and gusts of 10 m/s, at 10:30 with a gust of 4.5 m/s from 50 degrees.
func breeze(t testing.TB, changes ...assess.WindChange) assess.Input {
	in := demoInput(t, "dabchick_long_acre")
	in.Limits.MaximumCrosswindMetersPerSecond, in.Limits.MaximumGustMetersPerSecond = number(6), number(10)
	in.Day.WindChanges = changes
	return in
}

// TestLaterWind plants one list of changes at a time and wants this finding alone to turn.
func TestLaterWind(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name    string
		want    assess.Verdict
		minutes float64 // until a limit is no longer held; below 0 where it is not told
		note    string
		changes []assess.WindChange
	}{
		{"steady", assess.VerdictHolds, -1, "until 12:30", []assess.WindChange{windAt("2026-05-16T12:30:00+01:00", 3, 4.5, 50)}},
		// The gust grows from 4.5 to 15.5 m/s in two hours: 10 m/s after half of that.
		{"gusts grow", assess.VerdictFails, 60, "From 11:30", []assess.WindChange{windAt("2026-05-16T12:30:00+01:00", 6, 15.5, 50)}},
		{"gusts grow, told in UTC", assess.VerdictFails, 60, "From 11:30", []assess.WindChange{windAt("2026-05-16T11:30:00Z", 6, 15.5, 50)}},
		{"over and calm again", assess.VerdictFails, 60, "worst at 12:30", []assess.WindChange{
			windAt("2026-05-16T12:30:00+01:00", 6, 15.5, 50), windAt("2026-05-16T13:30:00+01:00", 2, 3, 50),
		}},
		{"turns across", assess.VerdictFails, 120, "From 12:30", []assess.WindChange{
			windAt("2026-05-16T11:30:00+01:00", 4, 6, 59.9985), windAt("2026-05-16T12:30:00+01:00", 4, 6, 149.9985), windAt("2026-05-16T12:30:01+01:00", 4, 6.1, 149.9985),
		}},
		{"next day", assess.VerdictFails, 24 * 60 / 2, "22:30", []assess.WindChange{windAt("2026-05-17T10:30:00+01:00", 6, 15.5, 50)}},
		{"past changes do not count", assess.VerdictHolds, -1, "until 12:30", []assess.WindChange{
			windAt("2026-05-16T08:30:00+01:00", 12, 20, 150), windAt("2026-05-16T12:30:00+01:00", 3, 4.5, 50),
		}},
	}
	base := unbanded(t, breeze(t))
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			report := unbanded(t, breeze(t, row.changes...))
			f := findingOf(t, report, "weather.later")
			if f.Verdict != row.want || !strings.Contains(f.Note, row.note) || f.Value == nil || (*f.Value < 0) != (row.want == assess.VerdictFails) {
				t.Errorf("%s, %v, %q", f.Verdict, f.Value, f.Note)
			}
			told := slices.ContainsFunc(report.Quantities, func(q assess.ReportQuantity) bool { return q.ID == "weather.later_time" })
			if told != (row.minutes >= 0) || told && math.Abs(toldValue(t, report, "weather.later_time")-row.minutes) > 2.0/60 {
				t.Errorf("told %v, %q", told, f.Note)
			}
			wantSameBut(t, report, base, "weather.later")
			wantChain(t, report)
		})
	}
}

// TestLaterMargin holds the number against what it is by hand: 10 m/s less 7.5 m/s, with the wind along the strip.
func TestLaterMargin(t *testing.T) {
	t.Parallel()
	in := breeze(t, windAt("2026-05-16T11:30:00+01:00", 5, 7.5, 59.9985), windAt("2026-05-16T13:30:00+01:00", 3, 4, 59.9985))
	report := assessed(t, in)
	f := findingOf(t, report, "weather.later")
	if math.Abs(*f.Value-2.5) > 1e-9 || math.Abs(toldValue(t, report, "weather.later_worst_time")-60) > 1e-9 || f.RestsOnEstimate || f.BandLow != nil {
		t.Errorf("%v, %q, %v", *f.Value, f.Note, f.RestsOnEstimate)
	}
	if !slices.Contains(f.From, "limits.maximumCrosswindMetersPerSecond") || !slices.Contains(f.From, "limits.maximumGustMetersPerSecond") {
		t.Errorf("from %v", f.From)
	}
	in.Day.WindChanges[0].WindSpeedMetersPerSecond.Basis = assess.BasisEstimated
	if f := findingOf(t, unbanded(t, in), "weather.later"); !f.RestsOnEstimate {
		t.Error("an estimated wind to come is not marked")
	}
}

// TestLaterUsesTheFiguresOfTheDay leaves the limit to the rudder, and wants a gust that is not named to be the ground's.
func TestLaterUsesTheFiguresOfTheDay(t *testing.T) {
	t.Parallel()
	in := breeze(t, windAt("2026-05-16T12:30:00+01:00", 12, 12, 149.9985))
	in.Limits.MaximumCrosswindMetersPerSecond, in.Limits.MaximumGustMetersPerSecond = nil, nil
	in.Day.WindChanges[0].GustSpeedMetersPerSecond = nil
	report := unbanded(t, in)
	f := findingOf(t, report, "weather.later")
	rudder := toldValue(t, report, "crosswind.limit")
	if gust := rudder - *f.Value; !(gust > 12*1.3 && gust < 12*1.8) || f.Verdict != assess.VerdictFails || !slices.Contains(f.From, "crosswind.limit") {
		t.Errorf("%s, gust %.2f m/s, %q", f.Verdict, gust, f.Note)
	}
}

// TestLaterNeedsAList wants no finding where no change is listed, and one that names what a list lacks.
func TestLaterNeedsAList(t *testing.T) {
	t.Parallel()
	for _, f := range unbanded(t, breeze(t)).Findings {
		if f.ID == "weather.later" {
			t.Errorf("told without a list: %q", f.Note)
		}
	}
	rows := []struct {
		path  string
		spoil func(*assess.Input)
	}{
		{"day.time", func(in *assess.Input) { in.Day.Time = "" }},
		{"day.windSpeedMetersPerSecond", func(in *assess.Input) { in.Day.WindSpeedMetersPerSecond = nil }},
		{"launchPlan.method", func(in *assess.Input) { in.LaunchPlan.Method = "" }},
		{"day.windChanges[0].time", func(in *assess.Input) { in.Day.WindChanges[0].Time = "noon" }},
		{"day.windChanges[0].windSpeedMetersPerSecond", func(in *assess.Input) { in.Day.WindChanges[0].WindSpeedMetersPerSecond = nil }},
		{"day.windChanges[0].windDirectionDegrees", func(in *assess.Input) { in.Day.WindChanges[0].WindDirectionDegrees = nil }},
		{"day.windChanges", func(in *assess.Input) { in.Day.WindChanges[0].Time = "2026-05-16T10:30:00+01:00" }},
		{"day.windChanges", func(in *assess.Input) { in.Day.WindChanges = append(in.Day.WindChanges, in.Day.WindChanges[0]) }},
		{"limits.maximumGustMetersPerSecond", func(in *assess.Input) { in.Limits, in.Model.Surfaces[2].Controls = nil, nil }},
	}
	for _, row := range rows {
		in := breeze(t, windAt("2026-05-16T12:30:00+01:00", 3, 4.5, 50))
		row.spoil(&in)
		f := findingOf(t, unbanded(t, in), "weather.later")
		if f.Verdict != assess.VerdictUnknown || !slices.Contains(f.Missing, row.path) {
			t.Errorf("%s: %s, missing %v", row.path, f.Verdict, f.Missing)
		}
	}
}
