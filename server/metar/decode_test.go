package metar

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"
)

// decode reads a report that has to be understood.
func decode(t *testing.T, text string) Report {
	t.Helper()
	report, err := Decode(text)
	if err != nil {
		t.Fatal(err)
	}
	return report
}

func TestRefusalsNameTheGroupAndItsPlace(t *testing.T) {
	t.Parallel()
	cases := []struct {
		text, group string
		at          int
		says        string
	}{
		{"", "", 1, "location indicator"},
		{"METAR", "", 6, "location indicator"},
		{"METAR EGX", "EGX", 7, "location indicator"},
		{"METAR 1GXX", "1GXX", 7, "location indicator"},
		{"TAF EGXX 221650Z 2218/2324 24015KT", "TAF", 1, "forecast"},
		{"EGXX 221650Z 2218/2324 24015KT", "2218/2324", 14, "forecast"},
		{"METAR EGXX 321650Z 24010KT", "321650Z", 12, "day, hour and minute"},
		{"METAR EGXX 222450Z", "222450Z", 12, "day, hour and minute"},
		{"METAR EGXX 221660Z", "221660Z", 12, "day, hour and minute"},
		{"METAR EGXX 2216Z", "2216Z", 12, "day, hour and minute"},
		{"EGXX 221650Z 2401KT", "2401KT", 14, "the wind is"},
		{"EGXX 221650Z 24XXKT", "24XXKT", 14, "the wind is"},
		{"EGXX 221650Z 240100KTX", "240100KTX", 14, "not understood; expected modifier"},
		{"EGXX 221650Z 37010KT", "37010KT", 14, "at most 360"},
		{"EGXX 221650Z 00010KT", "00010KT", 14, "north is 360"},
		{"EGXX 221650Z 24010G10KT", "24010G10KT", 14, "not above the mean"},
		{"EGXX 221650Z 240300KT", "240300KT", 14, "no wind of that speed"},
		{"EGXX 221650Z 24010G300KT", "24010G300KT", 14, "no wind of that speed"},
		{"EGXX 221650Z 24010KT 180V400", "180V400", 22, "at most 360"},
		{"EGXX 221650Z 24010KT 180V180", "180V180", 22, "the same"},
		{"EGXX 221650Z 24010KT 3/2SM", "3/2SM", 22, "statute miles"},
		{"EGXX 221650Z 24010KT 1/0SM", "1/0SM", 22, "statute miles"},
		{"EGXX 221650Z 24010KT 999SM", "999SM", 22, "so many miles"},
		{"EGXX 221650Z 24010KT 9999 +FG", "+FG", 27, "no intensity"},
		{"EGXX 221650Z 24010KT 9999 +TS", "+TS", 27, "no intensity"},
		{"EGXX 221650Z 24010KT 9999 BL", "BL", 27, "needs what it describes"},
		{"EGXX 221650Z 24010KT 9999 RAXX", "RAXX", 27, "not understood"},
		{"EGXX 221650Z 24010KT 9999 12/13 Q1013", "12/13", 27, "above the temperature"},
		{"EGXX 221650Z 24010KT 9999 61/13 Q1013", "61/13", 27, "between -90 and 60"},
		{"EGXX 221650Z 24010KT 9999 12/10 Q0500", "Q0500", 33, "between 850 and 1100"},
		{"EGXX 221650Z 24010KT 9999 12/10 Q101", "Q101", 33, "hectopascals"},
		{"EGXX 221650Z 24010KT 9999 12/10 Q1013 A3100", "A3100", 39, "differ"},
		{"EGXX 221650Z 24010KT 9999 12/10 Q1013 WS", "WS", 39, "names a runway"},
		{"EGXX 221650Z 24010KT 9999 24010KT", "24010KT", 27, "wind stands twice or too late"},
		{"EGXX 221650Z 24010KT 12/10 9999", "9999", 28, "visibility stands twice or too late"},
		{"EGXX 221650Z 24010KT 9999 12/10 Q1013 WHT ?", "?", 43, "expected NOSIG"},
		{"EGXX 221650Z 24010KT 9999 METAR EGXX", "METAR", 27, "second report"},
		{"EGXX 221650Z 24010KT= EGYY", "24010KT=", 14, "one report"},
		{"EGXX 221650Z NIL 24010KT", "24010KT", 18, "nothing may follow NIL"},
		{"EGXX 221650Z é 24010KT", "é", 14, "not understood"},
		{"EGXX é 24010KTX", "é", 6, "not understood"},
		{strings.Repeat(" ", MaximumLength+1), "", MaximumLength + 1, "longer than a report"},
	}
	for _, c := range cases {
		report, err := Decode(c.text)
		var fault *GroupError
		if !errors.As(err, &fault) {
			t.Errorf("%q: error %v, report %+v", c.text, err, report)
			continue
		}
		if fault.Group != c.group || fault.At != c.at || !strings.Contains(fault.Error(), c.says) {
			t.Errorf("%q: got %v, want group %q at %d saying %q", c.text, err, c.group, c.at, c.says)
		}
	}
}

func TestPlaceIsCountedInCharacters(t *testing.T) {
	t.Parallel()
	var fault *GroupError
	if _, err := Decode("EGXX\u00a0\u2003221650Z  WRONG"); !errors.As(err, &fault) || fault.At != 16 {
		t.Errorf("got %v, want character 16", fault)
	}
}

func TestWindForms(t *testing.T) {
	t.Parallel()
	cases := []struct {
		group                      string
		speed, gust, direction     Value
		variable, calm, sectorless bool
	}{
		{"24004MPS", known(4), Value{}, known(240), false, false, true},
		{"24036KMH", known(10), Value{}, known(240), false, false, true},
		{"36010G15MPS", known(10), known(15), known(360), false, false, true},
		{"VRB02MPS", known(2), Value{}, Value{}, true, false, true},
		{"00000MPS", known(0), Value{}, Value{}, false, true, true},
		{"VRB00MPS", known(0), Value{}, Value{}, false, true, true},
		{"240//MPS", Value{}, Value{}, known(240), false, false, true},
		{"///05MPS", known(5), Value{}, Value{}, false, false, true},
		{"/////MPS", Value{}, Value{}, Value{}, false, false, true},
		{"/////", Value{}, Value{}, Value{}, false, false, true},
		{"24010G//MPS", known(10), Value{}, known(240), false, false, true},
		{"240100MPS", known(100), Value{}, known(240), false, false, true},
	}
	for _, c := range cases {
		wind := decode(t, "EGXX 010000Z "+c.group).Wind
		if math.Abs(wind.Speed.Number-c.speed.Number) > 1e-12 || wind.Speed.Known != c.speed.Known || wind.Gust != c.gust ||
			wind.Direction != c.direction || wind.Variable != c.variable || wind.Calm != c.calm {
			t.Errorf("%s: got %+v", c.group, wind)
		}
	}
}

func TestDirectionIsRefusedOnlyWhereItIsNeeded(t *testing.T) {
	t.Parallel()
	for group, says := range map[string]string{"00000KT": "calm", "VRB03KT": "variable", "///05KT": "not in the report", "9999": "not in the report"} {
		report := decode(t, "EGXX 010000Z "+group)
		if _, err := report.Wind.Fixed(); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: error %v, want one that says %q", group, err, says)
		}
	}
	if from, err := decode(t, "EGXX 24015KT").Wind.Fixed(); err != nil || from != 240 {
		t.Errorf("got %g, %v", from, err)
	}
}

func TestVisibilityForms(t *testing.T) {
	t.Parallel()
	cases := []struct {
		groups                        string
		meters                        float64
		known, atLeast, less, without bool
		least                         float64
	}{
		{"9999", 10000, true, true, false, false, 10000},
		{"9999NDV", 10000, true, true, false, true, 10000},
		{"0000", 50, true, false, true, false, 50},
		{"1200 0900NW", 1200, true, false, false, false, 900},
		{"4000 1500N 3000SE", 4000, true, false, false, false, 1500},
		{"2000NE", 2000, true, false, false, false, 2000},
		{"CAVOK", 10000, true, true, false, false, 10000},
		{"////", 0, false, false, false, false, 0},
		{"////SM", 0, false, false, false, false, 0},
		{"10SM", 16093.44, true, false, false, false, 16093.44},
		{"M1/4SM", 402.336, true, false, true, false, 402.336},
		{"P6SM", 9656.064, true, true, false, false, 9656.064},
		{"1 1/2SM", 2414.016, true, false, false, false, 2414.016},
		{"5/8SM", 1005.84, true, false, false, false, 1005.84},
	}
	for _, c := range cases {
		report := decode(t, "EGXX 010000Z 24010KT "+c.groups)
		v := report.Visibility
		if math.Abs(v.Meters-c.meters) > 1e-9 || v.Known != c.known || v.AtLeast != c.atLeast || v.LessThan != c.less || v.NoDirection != c.without {
			t.Errorf("%s: got %+v", c.groups, v)
		}
		if least := report.LeastVisibility(); math.Abs(least.Number-c.least) > 1e-9 || least.Known != c.known {
			t.Errorf("%s: least %+v, want %g", c.groups, least, c.least)
		}
	}
}

func TestGroupsKeptAsText(t *testing.T) {
	t.Parallel()
	report := decode(t, "speci egxx 010000z 24010kt 0800 r12/1000u R27L/P1500 R10/M0050 R09///// R28L/////FT R28L////// R36/0600V1200FT/D RVRNO "+
		"+TSRAGR FZFG VCSH // FEW005 SCT010CB ///015 FEW///TCU //////CB VV001 12/M01 Q1013 A2992 RESN RE// WS ALL RWY WS R24 WS TKOF RWY20 "+
		"W15/S4 W19/H20 W///S/ R06L/590230 R12/CLRD70 24421594 R/SNOCLO BLACKBLU TEMPO 3000 RMK q tempo")
	if got := len(report.RunwayRange); got != 8 {
		t.Errorf("%d runway ranges: %v", got, report.RunwayRange)
	}
	if got := strings.Join(report.WindShear, ", "); got != "WS ALL RWY, WS R24, WS TKOF RWY20" {
		t.Errorf("wind shear %q", got)
	}
	if got := len(report.Surface); got != 7 {
		t.Errorf("%d states of sea and runway: %v", got, report.Surface)
	}
	if report.Trend != "TEMPO 3000" || report.Remarks != "Q TEMPO" || report.Colour != "BLACKBLU" || report.Kind != Special {
		t.Errorf("trend %q, remarks %q, colour %q, kind %q", report.Trend, report.Remarks, report.Colour, report.Kind)
	}
	if !report.Has("TS") || !report.Has("GR") || !report.Has("SH") || report.Has("DZ") || !report.WeatherUnknown || !report.Weather[2].Vicinity {
		t.Errorf("weather %+v", report.Weather)
	}
	if len(report.Clouds) != 6 || report.Clouds[2].Amount != UnknownAmount || report.Clouds[3].Base.Known || report.Clouds[4].Convective != "CB" {
		t.Errorf("cloud %+v", report.Clouds)
	}
	if report.QNH.Number != 101300 || len(report.Recent) != 1 {
		t.Errorf("pressure %v, recent %v", report.QNH, report.Recent)
	}
}

func TestAbsentIsNeverZero(t *testing.T) {
	t.Parallel()
	report := decode(t, "METAR EGXX ////// AUTO /////KT //// // ////// ///// Q////")
	want := "time, wind speed, wind direction, visibility, present weather, cloud, temperature, dew point, pressure"
	if got := strings.Join(report.Absent(), ", "); got != want || !report.Automatic {
		t.Errorf("absent %q, want %q", got, want)
	}
	if auto := decode(t, "EGXX 010000Z AUTO 24010KT 9999 ///////// 10/05 Q1013 RF00.2/001.4 q"); !auto.CloudUnknown || len(auto.Clouds) != 0 ||
		auto.Remarks != "RF00.2/001.4 Q" {
		t.Errorf("cloud that no sensor saw, or rain: %+v", auto)
	}
	if full := decode(t, "EGXX 010000Z 24010KT CAVOK 10/05 Q1013").Absent(); len(full) > 0 {
		t.Errorf("absent %v in a full report", full)
	}
	if !decode(t, "METAR EGXX 010000Z NIL=").Nil {
		t.Error("NIL is not taken")
	}
	if half := decode(t, "EGXX 24010KT ///M02"); half.Temperature.Known || half.DewPoint.Number != -2 {
		t.Errorf("temperature %v, dew point %v", half.Temperature, half.DewPoint)
	}
}

func TestOktas(t *testing.T) {
	t.Parallel()
	before := 0
	for _, amount := range []Amount{Few, Scattered, Broken, Overcast} {
		least, most := amount.Oktas()
		if least != before+1 || most < least {
			t.Errorf("%s is %d to %d eighths after %d", amount, least, most, before)
		}
		before = most
	}
	if least, most := UnknownAmount.Oktas(); least != 0 || most != 0 || before != 8 {
		t.Errorf("unknown amount is %d to %d eighths, overcast %d", least, most, before)
	}
}

func TestMomentNearestToTheReference(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ clock, reference, want string }{
		{"251650Z", "2026-11-25T17:00:00Z", "2026-11-25T16:50:00Z"},
		{"302350Z", "2026-12-01T00:20:00Z", "2026-11-30T23:50:00Z"},
		{"010020Z", "2026-11-30T23:50:00Z", "2026-12-01T00:20:00Z"},
		{"312350Z", "2027-01-01T00:20:00Z", "2026-12-31T23:50:00Z"},
		{"291200Z", "2028-03-01T12:00:00Z", "2028-02-29T12:00:00Z"},
		{"311200Z", "2026-11-25T12:00:00Z", "2026-10-31T12:00:00Z"},
		{"311200Z", "2027-02-28T12:00:00Z", "2027-01-31T12:00:00Z"},
	} {
		reference, err := time.Parse(time.RFC3339, c.reference)
		if err != nil {
			t.Fatal(err)
		}
		got, err := decode(t, "EGXX "+c.clock).Time.Near(reference.Unix())
		if when := time.Unix(got, 0).UTC().Format(time.RFC3339); err != nil || when != c.want {
			t.Errorf("%s near %s: %s, %v, want %s", c.clock, c.reference, when, err, c.want)
		}
	}
	if _, err := decode(t, "EGXX 24010KT").Time.Near(0); err == nil {
		t.Error("a report without time has a moment")
	}
}

func TestRelativeHumidity(t *testing.T) {
	t.Parallel()
	if h, err := decode(t, "EGXX 010000Z 20/20").RelativeHumidity(); err != nil || h != 1 {
		t.Errorf("saturated air: %g, %v", h, err)
	}
	last := 0.0
	for dew := range 21 {
		report := Report{Temperature: known(20), DewPoint: known(float64(dew - 10))}
		h, err := report.RelativeHumidity()
		if err != nil || h <= last || h > 1 {
			t.Errorf("dew point %d: %g after %g, %v", dew-10, h, last, err)
		}
		last = h
	}
	if _, err := decode(t, "EGXX 010000Z 20///").RelativeHumidity(); err == nil {
		t.Error("humidity without a dew point")
	}
}
