package metar

import (
	"errors"
	"math"
	"testing"
)

func FuzzDecode(f *testing.F) {
	for _, text := range readReports(f) {
		f.Add(text)
	}
	for _, text := range []string{"", "=", "METAR COR EGXX", "EGXX 1", "EGXX 1 /SM", "EGXX WS", "EGXX VV", "EGXX RE", "EGXX R12/", "EGXX W/", "EGXX Q",
		"EGXX /", "EGXX P", "EGXX VRBP99KT", "EGXX ///", "EGXX \xff\xfe", "EGXX SM", "EGXX KT", "EGXX CC", "EGXX -", "EGXX //////Z"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		report, err := Decode(text)
		if err != nil {
			checkFault(t, text, err)
			return
		}
		checkReport(t, report)
	})
}

// checkFault fails when an error does not name a place within the text.
func checkFault(t *testing.T, text string, err error) {
	t.Helper()
	var fault *GroupError
	if !errors.As(err, &fault) || fault.At < 1 || fault.At > len(text)+1 || fault.Problem == "" {
		t.Errorf("%q: %#v", text, err)
	}
}

// checkReport fails when a report holds what cannot be.
func checkReport(t *testing.T, r Report) {
	t.Helper()
	if len(r.Station) != 4 {
		t.Errorf("station %q", r.Station)
	}
	for name, value := range map[string]Value{
		"wind": r.Wind.Speed, "gust": r.Wind.Gust, "direction": r.Wind.Direction, "temperature": r.Temperature, "dew point": r.DewPoint,
		"pressure": r.QNH, "ceiling": r.Ceiling(), "base": r.LowestBase(), "visibility": r.LeastVisibility(),
	} {
		if math.IsNaN(value.Number) || math.IsInf(value.Number, 0) || !value.Known && value.Number != 0 {
			t.Errorf("%s %+v", name, value)
		}
	}
	if h, err := r.RelativeHumidity(); err == nil && !(h > 0 && h <= 1) {
		t.Errorf("relative humidity %g", h)
	}
	if r.Wind.Direction.Known && (r.Wind.Direction.Number <= 0 || r.Wind.Direction.Number > 360 || r.Wind.Variable || r.Wind.Calm) {
		t.Errorf("direction %+v", r.Wind)
	}
}

func BenchmarkDecode(b *testing.B) {
	const text = "METAR YUDO 221630Z 24004MPS 0600 R12/1000U DZ FG SCT010 OVC020 17/16 Q1018 BECMG TL1700 0800 FG BECMG AT1800 9999 NSW"
	for b.Loop() {
		if _, err := Decode(text); err != nil {
			b.Fatal(err)
		}
	}
}
