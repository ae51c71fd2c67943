package metar

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// published is the folder with the reports and their meaning.
const published = "wmo_fm15_samples"

// numbers read a value of a report in the unit its source prints.
var numbers = map[string]func(Report) Value{
	"day":               func(r Report) Value { return known(float64(r.Time.Day)) },
	"hour":              func(r Report) Value { return known(float64(r.Time.Hour)) },
	"minute":            func(r Report) Value { return known(float64(r.Time.Minute)) },
	"wind-direction":    func(r Report) Value { return r.Wind.Direction },
	"wind-speed-mps":    func(r Report) Value { return r.Wind.Speed },
	"wind-speed-knots":  func(r Report) Value { return scaled(r.Wind.Speed, 3600.0/1852) },
	"wind-speed-kmh":    func(r Report) Value { return scaled(r.Wind.Speed, 3.6) },
	"gust-knots":        func(r Report) Value { return scaled(r.Wind.Gust, 3600.0/1852) },
	"sector-from":       func(r Report) Value { return Value{r.Wind.SectorFrom, r.Wind.HasSector} },
	"sector-to":         func(r Report) Value { return Value{r.Wind.SectorTo, r.Wind.HasSector} },
	"visibility-meters": func(r Report) Value { return Value{r.Visibility.Meters, r.Visibility.Known} },
	"visibility-miles":  func(r Report) Value { return scaled(Value{r.Visibility.Meters, r.Visibility.Known}, 1/1609.344) },
	"base-feet":         func(r Report) Value { return scaled(r.LowestBase(), 1/0.3048) },
	"ceiling-feet":      func(r Report) Value { return scaled(r.Ceiling(), 1/0.3048) },
	"temperature":       func(r Report) Value { return r.Temperature },
	"dew-point":         func(r Report) Value { return r.DewPoint },
	"qnh-hectopascals":  func(r Report) Value { return scaled(r.QNH, 0.01) },
	"pressure-inches":   func(r Report) Value { return scaled(r.QNH, 1/3386.389) },
}

// words read a text of a report.
var words = map[string]func(Report) string{
	"kind":         func(r Report) string { return string(r.Kind) },
	"station":      func(r Report) string { return r.Station },
	"automatic":    func(r Report) string { return yes(r.Automatic) },
	"corrected":    func(r Report) string { return yes(r.Corrected) },
	"calm":         func(r Report) string { return yes(r.Wind.Calm) },
	"variable":     func(r Report) string { return yes(r.Wind.Variable) },
	"at-least":     func(r Report) string { return yes(r.Wind.SpeedAtLeast) },
	"fine":         func(r Report) string { return yes(r.FineWeather) },
	"convective":   func(r Report) string { return yes(r.Convective()) },
	"heavy":        func(r Report) string { return yes(r.Heavy()) },
	"obscured":     func(r Report) string { return yes(r.Clouds[0].Amount == Obscured) },
	"descriptor":   func(r Report) string { return r.Weather[0].Descriptor },
	"weather":      func(r Report) string { return texts(r.Weather) },
	"recent":       func(r Report) string { return texts(r.Recent) },
	"sky":          func(r Report) string { return string(r.Sky) },
	"runway-range": func(r Report) string { return strings.Join(r.RunwayRange, " ") },
	"wind-shear":   func(r Report) string { return strings.Join(r.WindShear, ", ") },
	"colour":       func(r Report) string { return r.Colour },
	"trend":        func(r Report) string { return r.Trend },
	"remarks":      func(r Report) string { return r.Remarks },
	"absent":       func(r Report) string { return strings.Join(r.Absent(), ", ") },
	"visibility-at-least": func(r Report) string {
		return yes(r.Visibility.AtLeast)
	},
}

// scaled returns a value in another unit.
func scaled(v Value, factor float64) Value { return Value{v.Number * factor, v.Known} }

// yes says yes or no.
func yes(value bool) string {
	if value {
		return "yes"
	}
	return "no"
}

// texts joins groups of weather as reported.
func texts(groups []Weather) string {
	var out []string
	for _, g := range groups {
		out = append(out, g.Text)
	}
	return strings.Join(out, " ")
}

// readRows returns the rows of a file of the published folder below its head.
func readRows(t testing.TB, name string) [][]string {
	t.Helper()
	file, err := os.Open(filepath.Join("..", "..", "testdata", "published", published, name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

// readReports returns the published reports by their id.
func readReports(t testing.TB) map[string]string {
	t.Helper()
	reports := map[string]string{}
	for _, row := range readRows(t, "reports.csv") {
		reports[row[0]] = row[1]
	}
	return reports
}

func TestPublishedReports(t *testing.T) {
	t.Parallel()
	reports, used := readReports(t), map[string]bool{}
	for _, row := range readRows(t, "values.csv") {
		id, field, _ := strings.Cut(row[0], "/")
		if id == "humidity" {
			continue
		}
		report, err := Decode(reports[id])
		if err != nil {
			t.Errorf("%s: %v", row[0], err)
			continue
		}
		used[id], used[field] = true, true
		if fault := differs(report, field, row[2]); fault != "" {
			t.Errorf("%s: %s, published %q", row[0], fault, row[2])
		}
	}
	for id := range reports {
		if !used[id] {
			t.Errorf("no row for report %s", id)
		}
	}
	for field := range numbers {
		if !used[field] {
			t.Errorf("no row for field %s", field)
		}
	}
}

// differs returns how a field differs from what is published.
func differs(report Report, field, expected string) string {
	if read, isWord := words[field]; isWord {
		if got := read(report); got != expected {
			return "got " + got
		}
		return ""
	}
	read, isNumber := numbers[field]
	if !isNumber {
		return "no such field"
	}
	value := read(report)
	if expected == "absent" || !value.Known {
		if (expected == "absent") == value.Known {
			return "known or absent"
		}
		return ""
	}
	want, err := strconv.ParseFloat(expected, 64)
	if err != nil || math.Abs(value.Number-want) > 1e-9 {
		return "got " + strconv.FormatFloat(value.Number, 'g', -1, 64)
	}
	return ""
}

func TestPublishedHumidity(t *testing.T) {
	t.Parallel()
	checked := 0
	for _, row := range readRows(t, "values.csv") {
		if !strings.HasPrefix(row[0], "humidity/") {
			continue
		}
		temperature, dewPoint, _ := strings.Cut(strings.TrimPrefix(row[1], "temperature="), " dew-point=")
		report := Report{Temperature: known(parse(t, temperature)), DewPoint: known(parse(t, dewPoint))}
		got, err := report.RelativeHumidity()
		allowed := parse(t, strings.TrimSuffix(row[3], " rel")) * parse(t, row[2])
		if err != nil || math.Abs(got-parse(t, row[2])) > allowed {
			t.Errorf("%s: got %g, %v, published %s", row[0], got, err, row[2])
		}
		checked++
	}
	if checked == 0 {
		t.Error("no row of humidity")
	}
}

// parse reads a number.
func parse(t *testing.T, text string) float64 {
	t.Helper()
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return value
}
