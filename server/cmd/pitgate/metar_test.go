package main

import (
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf8"

	"pitgate/server/document"
	"pitgate/server/report"
)

const reported = "METAR EGXX 160950Z 05012G24KT 020V080 6000 -RA BKN014 09/07 Q1009 TEMPO 3000"

func TestMetar(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name, stdin string
		args        []string
		status      int
		out, err    string
	}{
		{"one argument", "", []string{"metar", reported, "--near", "2026-05-16T11:00:00+01:00"}, 0, "2026-05-16T09:50:00Z", ""},
		{"many arguments", "", append([]string{"metar"}, strings.Fields(reported)...), 0, "Present weather: -RA.", ""},
		{"standard input", reported + "\n", []string{"metar", "-"}, 0, "turns between 20 and 80 degrees", ""},
		{"cloud", "", []string{"metar", reported}, 0, "BKN at 427 m", ""},
		{"long remarks", "", []string{"metar", reported + " RMK " + strings.Repeat("LONG ", 40)}, 0, "remarks", ""},
		{"not understood", "", []string{"metar", "METAR EGXX 160950Z 05012"}, 2, "", `"05012" at character 20`},
		{"nothing", "", []string{"metar"}, 2, "", "give one report"},
		{"bad time", "", []string{"metar", reported, "--near", "noon"}, 2, "", "near: has to be"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			status, out, errors := try(t, c.stdin, c.args...)
			if status != c.status || !strings.Contains(out, c.out) || !strings.Contains(errors, c.err) {
				t.Errorf("status %d, out %q, errors %q; want %d, %q, %q", status, out, errors, c.status, c.out, c.err)
			}
			wantNarrow(t, out)
		})
	}
}

// wantNarrow wants lines of no more than 80 columns.
func wantNarrow(t *testing.T, out string) {
	t.Helper()
	for line := range strings.Lines(out) {
		if utf8.RuneCountInString(strings.TrimSuffix(line, "\n")) > report.Width {
			t.Errorf("too wide: %q", line)
		}
	}
}

// TestMetarWritesAPartOfTheDocument wants the JSON to be conditions of the day that the document takes.
func TestMetarWritesAPartOfTheDocument(t *testing.T) {
	t.Parallel()
	_, out, errors := try(t, "", "metar", reported, "--json", "--near", "2026-05-16T11:00:00+01:00")
	day, err := document.DecodeDay([]byte(out))
	if err != nil {
		t.Fatalf("%v: %s", err, errors)
	}
	// 12 and 24 knots of 1852/3600 m/s; the cloud base of 1400 feet is 426.72 m.
	for name, row := range map[string]struct{ got, want float64 }{
		"wind": {*day.WindSpeedMetersPerSecond.Value, 6.1733}, "gust": {*day.GustSpeedMetersPerSecond.Value, 12.3467},
		"direction": {*day.WindDirectionDegrees.Value, 50}, "visibility": {*day.VisibilityMeters.Value, 6000},
		"cloud": {*day.CloudBaseMeters.Value, 426.72}, "temperature": {*day.TemperatureCelsius.Value, 9}, "dew point": {*day.DewPointCelsius.Value, 7},
		"pressure": {*day.QnhPascals.Value, 100900},
	} {
		if row.got < row.want-1e-3 || row.got > row.want+1e-3 {
			t.Errorf("%s: %g, want %g", name, row.got, row.want)
		}
	}
	if day.Frost != "" || day.SurfaceState != "" || !json.Valid([]byte(out)) {
		t.Errorf("a report says nothing of frost and surface: %q, %q", day.Frost, day.SurfaceState)
	}
}

func TestAssessWindow(t *testing.T) {
	t.Parallel()
	redshank := wholeDocument(t, "redshank_quarry_top.json")
	for _, c := range []struct {
		name, stdin string
		args        []string
		status      int
		out         string
	}{
		{"holds", wholeDocument(t, "dabchick_long_acre.json"), []string{"assess", "-", "--window"}, 0, "06/24 to 60 degrees"},
		{"a ramp that needs wind", redshank, []string{"assess", "-", "--window"}, 0, "wind from  70  none        launch.end_speed"},
		{"wind from behind", strings.Replace(redshank, "\"windDirectionDegrees\": {\n      \"value\": 240", "\"windDirectionDegrees\": {\n      \"value\": 60", 1), []string{"assess", "-", "--window"}, 1, "no way holds"},
		{"nothing given", "{}", []string{"assess", "-", "--window"}, 1, "Missing: model.surfaces"},
		{"as JSON", wholeDocument(t, "dabchick_long_acre.json"), []string{"assess", "-", "--window", "--json"}, 0, `"fromDegrees": 350`},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			status, out, errors := try(t, c.stdin, c.args...)
			if status != c.status || !strings.Contains(out, c.out) {
				t.Errorf("status %d, out %q, errors %q; want %d, %q", status, out, errors, c.status, c.out)
			}
			if c.name != "as JSON" {
				wantNarrow(t, out)
			}
		})
	}
}
