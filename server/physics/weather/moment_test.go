package weather

import (
	"math"
	"testing"
	"time"
)

func TestMomentAgreesWithTheCalendar(t *testing.T) {
	t.Parallel()
	for _, text := range []string{
		"1970-01-01T00:00:00Z", "2026-11-25T14:30:00+01:00", "2026-11-25T13:30:00.25Z", "2000-02-29T23:59:59-11:30", "1900-03-01T00:00:00Z",
		"2100-02-28T12:00:00Z", "0000-01-01T00:00:00Z", "9999-12-31T23:59:59Z",
	} {
		want, err := time.Parse(time.RFC3339Nano, text)
		if err != nil {
			t.Fatal(err)
		}
		got, err := Moment(text)
		if err != nil || math.Abs(got-float64(want.Unix())-float64(want.Nanosecond())/1e9) > 1e-4 {
			t.Errorf("%s: %g, %v, want %d", text, got, err, want.Unix())
		}
	}
}

func TestEveryDayOfFourHundredYears(t *testing.T) {
	t.Parallel()
	for day := time.Date(1800, 1, 1, 0, 0, 0, 0, time.UTC); day.Year() < 2201; day = day.AddDate(0, 0, 1) {
		if got := daysSince1970(day.Year(), int(day.Month()), day.Day()); int64(got)*86400 != day.Unix() {
			t.Fatalf("%s: day %d", day.Format(time.DateOnly), got)
		}
	}
}

func TestTimesThatAreNoneAreRefused(t *testing.T) {
	t.Parallel()
	for _, text := range []string{
		"", "2026-11-25", "2026-11-25T14:30:00", "2026-11-25T14:30Z", "2026-13-25T14:30:00Z", "2026-02-29T14:30:00Z", "2026-04-31T14:30:00Z",
		"2026-11-25T24:30:00Z", "2026-11-25T14:30:61Z", "2026-11-25T14:30:00.Z", "2026-11-25T14:30:00+1:00", "2026-11-25T14:30:00Zx",
		"2026-11-2XT14:30:00Z", "2026/11/25T14:30:00Z", "2026-11-25_14:30:00Z", "2026-11-25T14:30:00+24:00",
	} {
		if got, err := Moment(text); err == nil {
			t.Errorf("%q is taken as %g", text, got)
		}
	}
	leap, err := Moment("2016-12-31T23:59:60Z")
	if next, _ := Moment("2017-01-01T00:00:00Z"); err != nil || leap != next {
		t.Errorf("a leap second is %g, %v", leap, err)
	}
}

func FuzzMoment(f *testing.F) {
	f.Add("2026-11-25T13:30:00.25Z")
	f.Add("2000-02-29t23:59:59-11:30")
	f.Fuzz(func(t *testing.T, text string) {
		got, err := Moment(text)
		want, refused := time.Parse(time.RFC3339Nano, text)
		if err == nil && math.IsNaN(got) || refused == nil && err == nil && math.Abs(got-float64(want.Unix())) >= 1 {
			t.Errorf("%q: %g, %v; want %d, %v", text, got, err, want.Unix(), refused)
		}
	})
}
