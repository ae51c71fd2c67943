package report

import (
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"pitgate/server/metar"
	"pitgate/server/physics/assess"
)

// Weather writes a decoded aerodrome report and the conditions of the day that it gives. Its error is that of the writer.
func Weather(w io.Writer, report metar.Report, day assess.DayConditions, notes []string) error {
	p := page{to: w}
	p.line("AERODROME REPORT%*s", Width-len("AERODROME REPORT"), strings.TrimSpace(string(report.Kind)+" "+report.Station))
	p.paragraph("", day.Metar)
	p.line("%s", strings.Repeat("-", Width))
	for _, f := range skyFields(report) {
		p.valued(f.name, f.text)
	}
	for _, f := range dayFields(day) {
		p.valued(f.name, f.text)
	}
	p.line("%s", strings.Repeat("-", Width))
	for _, note := range notes {
		p.paragraph("", note)
	}
	if absent := report.Absent(); len(absent) > 0 {
		p.paragraph("", "Not in the report: "+strings.Join(absent, ", ")+".")
	}
	p.paragraph("", "Look at frost and the state of the surface yourself: a report says nothing of them.")
	return p.err
}

// valued writes a value right of its name.
func (p *page) valued(name, value string) {
	if utf8.RuneCountInString(name)+1+utf8.RuneCountInString(value) > Width {
		p.line("%s", name)
		p.paragraph(indent, value)
		return
	}
	p.line("%s%*s", name, max(1, Width-utf8.RuneCountInString(name)), value)
}

// namedText is a field of the document and its value in words.
type namedText struct{ name, text string }

// skyFields lists what a report says that the document has no field for.
func skyFields(report metar.Report) []namedText {
	var fields []namedText
	add := func(name, text string) {
		if text != "" {
			fields = append(fields, namedText{name, text})
		}
	}
	for _, w := range report.Weather {
		add("present weather", w.Text)
	}
	for _, w := range report.Recent {
		add("weather of the last hour", w.Text)
	}
	for _, c := range report.Clouds {
		text := string(c.Amount)
		if c.Base.Known {
			text += " at " + strconv.FormatFloat(c.Base.Number, 'f', 0, 64) + " m"
		}
		add("cloud", strings.TrimSpace(text+" "+c.Convective))
	}
	add("sky", string(report.Sky))
	add("trend", report.Trend)
	add("remarks", report.Remarks)
	return fields
}

// dayFields lists what a day holds, by the names of the document.
func dayFields(day assess.DayConditions) []namedText {
	var fields []namedText
	if day.Time != "" {
		fields = append(fields, namedText{"day.time", day.Time})
	}
	for _, q := range []struct {
		name string
		q    *assess.Quantity
		unit string
	}{
		{"windSpeedMetersPerSecond", day.WindSpeedMetersPerSecond, "m/s"}, {"gustSpeedMetersPerSecond", day.GustSpeedMetersPerSecond, "m/s"},
		{"windDirectionDegrees", day.WindDirectionDegrees, "degrees"}, {"visibilityMeters", day.VisibilityMeters, "m"},
		{"cloudBaseMeters", day.CloudBaseMeters, "m"}, {"temperatureCelsius", day.TemperatureCelsius, "C"},
		{"dewPointCelsius", day.DewPointCelsius, "C"}, {"relativeHumidityRatio", day.RelativeHumidityRatio, ""}, {"qnhPascals", day.QnhPascals, "Pa"},
	} {
		if q.q != nil && q.q.Value != nil {
			text := strconv.FormatFloat(*q.q.Value, 'g', 4, 64)
			if *q.q.Value >= 1000 {
				text = strconv.FormatFloat(*q.q.Value, 'f', 0, 64)
			}
			fields = append(fields, namedText{"day." + q.name, strings.TrimSpace(text + " +- " + strconv.FormatFloat(*q.q.Spread, 'g', 2, 64) + " " + q.unit)})
		}
	}
	return fields
}
