package document_test

import (
	"strings"
	"testing"
	"time"

	"pitgate/server/document"
	"pitgate/server/metar"
)

// TestDayOfKeepsAbsentAbsent reads reports that leave things out, and wants nothing in their place.
func TestDayOfKeepsAbsentAbsent(t *testing.T) {
	t.Parallel()
	near := time.Date(2026, 3, 1, 9, 0, 0, 0, time.UTC)
	for _, row := range []struct {
		text, note       string
		wind, from, gust bool
	}{
		{"EGXX 281950Z 00000KT 9999 10/05 Q1019", "", true, false, false},
		{"EGXX 281950Z VRB02KT 9999 10/05 Q1019", "look at every direction", true, false, false},
		{"EGXX 281950Z 24015G28KT 9999 10/05 Q1019", "", true, true, true},
		{"EGXX 281950Z 24010KT 9999 10/05 Q1019", "No gust is reported", true, true, false},
		{"EGXX 281950Z /////KT 9999 10/05 Q1019", "", false, false, false},
		{"EGXX 281950Z 24010KT 9999 TSRA BKN010CB 10/05 Q1019", "Thunderclouds", true, true, false},
	} {
		report, err := metar.Decode(row.text)
		if err != nil {
			t.Fatalf("%s: %v", row.text, err)
		}
		day, notes := document.DayOf(report, row.text, near)
		if (day.WindSpeedMetersPerSecond != nil) != row.wind || (day.WindDirectionDegrees != nil) != row.from || (day.GustSpeedMetersPerSecond != nil) != row.gust {
			t.Errorf("%s: wind %v, direction %v, gust %v", row.text, day.WindSpeedMetersPerSecond, day.WindDirectionDegrees, day.GustSpeedMetersPerSecond)
		}
		// The last day of February lies nearest.
		if day.Time != "2026-02-28T19:50:00Z" || day.Metar != row.text || !strings.Contains(strings.Join(notes, " "), row.note) {
			t.Errorf("%s: time %s, notes %q", row.text, day.Time, notes)
		}
	}
}
