package assess

import (
	"testing"
	"time"
)

func TestReportMoment(t *testing.T) {
	t.Parallel()
	rows := []struct {
		near, report, want string
	}{
		{"2026-05-16T10:30:00+01:00", "METAR EGXX 160920Z 05006KT", "2026-05-16T09:20:00Z"},
		{"2026-03-01T08:00:00Z", "EGXX 282350Z 05006KT", "2026-02-28T23:50:00Z"},
		{"2024-03-01T08:00:00Z", "EGXX 292350Z 05006KT", "2024-02-29T23:50:00Z"},
		{"2026-02-28T08:00:00Z", "EGXX 312350Z 05006KT", "2026-01-31T23:50:00Z"},
		{"2026-12-31T23:30:00Z", "EGXX 010020Z 05006KT", "2027-01-01T00:20:00Z"},
		{"2026-05-16T10:30:00Z", "EGXX 05006KT 9999", ""},
		{"2026-05-16T10:30:00Z", "EGXX 322350Z", ""}, {"2026-05-16T10:30:00Z", "EGXX 162460Z", ""}, {"2026-05-16T10:30:00Z", "16235 Z 1623500Z 16a350Z", ""},
	}
	for _, row := range rows {
		near, err := time.Parse(time.RFC3339, row.near)
		if err != nil {
			t.Fatal(err)
		}
		got, found := reportMoment(row.report, float64(near.Unix()))
		if text := time.Unix(int64(got), 0).UTC().Format(time.RFC3339); found != (row.want != "") || found && text != row.want {
			t.Errorf("%s near %s: %s, %v; want %s", row.report, row.near, text, found, row.want)
		}
	}
}

// FuzzReportMoment holds the day of the month against the calendar, and the nearest against half of the longest gap between two equal days.
func FuzzReportMoment(f *testing.F) {
	f.Add("EGXX 160920Z", int64(1779000000))
	f.Add("312359Z", int64(-1))
	f.Add("290000Z", int64(951782400))
	f.Fuzz(func(t *testing.T, report string, near int64) {
		near %= 1 << 37
		got, found := reportMoment(report, float64(near))
		if !found {
			return
		}
		at := time.Unix(int64(got), 0).UTC()
		day, seconds, _ := dayAndTime(groupOf(report))
		if at.Day() != day || at.Hour()*3600+at.Minute()*60 != seconds || at.Second() != 0 {
			t.Errorf("%q near %d: %s", report, near, at)
		}
		if gap := got - float64(near); gap > 32*86400 || gap < -32*86400 {
			t.Errorf("%q near %d: %g days away", report, near, gap/86400)
		}
	})
}

// groupOf returns the first group that is a day and a time.
func groupOf(report string) string {
	for i := 0; i+7 <= len(report); i++ {
		if _, _, ok := dayAndTime(report[i : i+7]); ok && (i == 0 || isSpace(report[i-1])) && (i+7 == len(report) || isSpace(report[i+7])) {
			return report[i : i+7]
		}
	}
	return ""
}

func isSpace(c byte) bool { return c == ' ' || c >= '\t' && c <= '\r' }
