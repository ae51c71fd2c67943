package assess_test

import (
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// TestPermission plants one state at a time and wants this finding alone to differ by it.
func TestPermission(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name    string
		want    assess.Verdict
		value   float64 // days left; none where it is below -900
		note    string
		planted func(*assess.Permission)
	}{
		{"as granted", assess.VerdictHolds, 198, "Granted by the farm from 2026-03-01 to 2026-11-30. 198 days left.", func(*assess.Permission) {}},
		{"last day", assess.VerdictHolds, 0, "0 days left", func(p *assess.Permission) { p.ValidToDate = "2026-05-16" }},
		{"ended", assess.VerdictFails, -1, "ended 1 day ago", func(p *assess.Permission) { p.ValidToDate = "2026-05-15" }},
		{"first day", assess.VerdictHolds, 198, "left", func(p *assess.Permission) { p.ValidFromDate = "2026-05-16" }},
		{"not yet", assess.VerdictFails, -999, "begins in 1 day.", func(p *assess.Permission) { p.ValidFromDate = "2026-05-17" }},
		{"quiet to the minute of the flight", assess.VerdictHolds, 198, "left", func(p *assess.Permission) { p.QuietTo = "10:30" }},
		{"quiet over midnight into the flight", assess.VerdictFails, -999, "from 19:00 to 10:31 local time, and the day is planned for 10:30",
			func(p *assess.Permission) { p.QuietTo = "10:31" }},
		{"quiet over midnight from the flight on", assess.VerdictFails, -999, "Nothing may fly", func(p *assess.Permission) { p.QuietFrom, p.QuietTo = "10:30", "08:00" }},
		{"quiet by day", assess.VerdictFails, -999, "Nothing may fly", func(p *assess.Permission) { p.QuietFrom, p.QuietTo = "10:00", "11:00" }},
		{"quiet later by day", assess.VerdictHolds, 198, "left", func(p *assess.Permission) { p.QuietFrom, p.QuietTo = "12:00", "14:00" }},
		{"no quiet hours", assess.VerdictHolds, 198, "left", func(p *assess.Permission) { p.QuietFrom, p.QuietTo = "", "" }},
		{"nobody named", assess.VerdictHolds, 198, "names nobody", func(p *assess.Permission) { p.GrantedBy = "" }},
	}
	base := unbanded(t, demoInput(t, "dabchick_long_acre"))
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, "dabchick_long_acre")
			row.planted(in.Field.Permission)
			report := unbanded(t, in)
			f := findingOf(t, report, "field.permission")
			if f.Verdict != row.want || !strings.Contains(f.Note, row.note) || (f.Value != nil) != (row.value > -900) || f.Value != nil && *f.Value != row.value {
				t.Errorf("%s, %v, %q", f.Verdict, f.Value, f.Note)
			}
			wantSameBut(t, report, base, "field.permission")
		})
	}
}

// wantSameBut wants all verdicts of two reports to be the same but that of one finding, which both or only the first may have.
func wantSameBut(t *testing.T, got, want assess.Report, but string) {
	t.Helper()
	verdicts := map[string]assess.Verdict{}
	for _, f := range want.Findings {
		verdicts[f.ID] = f.Verdict
	}
	for _, f := range got.Findings {
		if f.ID != but && f.Verdict != verdicts[f.ID] {
			t.Errorf("%s turned from %s to %s", f.ID, verdicts[f.ID], f.Verdict)
		}
	}
}

// TestPermissionByLocalTime wants the clock of the field to count, not that of Greenwich.
func TestPermissionByLocalTime(t *testing.T) {
	t.Parallel()
	rows := []struct {
		time string
		want assess.Verdict
	}{
		{"2026-05-16T10:30:00+01:00", assess.VerdictHolds}, {"2026-05-16T09:30:00Z", assess.VerdictFails}, {"2026-05-16T19:00:00+09:00", assess.VerdictFails},
		{"2026-05-16T18:59:59-05:00", assess.VerdictHolds}, {"2026-12-01T10:30:00+14:00", assess.VerdictFails}, {"2026-11-30T18:30:00-09:00", assess.VerdictHolds},
	}
	for _, row := range rows {
		in := demoInput(t, "dabchick_long_acre")
		in.Day.Time = row.time
		if f := findingOf(t, unbanded(t, in), "field.permission"); f.Verdict != row.want {
			t.Errorf("%s: %s, %q", row.time, f.Verdict, f.Note)
		}
	}
}

// TestPermissionNamesWhatIsMissing takes away or spoils one input at a time.
func TestPermissionNamesWhatIsMissing(t *testing.T) {
	t.Parallel()
	rows := map[string]func(*assess.Input){
		"day.time":                       func(in *assess.Input) { in.Day.Time = "" },
		"field.permission":               func(in *assess.Input) { in.Field.Permission = nil },
		"field.permission.validFromDate": func(in *assess.Input) { in.Field.Permission.ValidFromDate = "2026-13-01" },
		"field.permission.validToDate":   func(in *assess.Input) { in.Field.Permission.ValidToDate = "" },
		"field.permission.quietFrom":     func(in *assess.Input) { in.Field.Permission.QuietFrom = "" },
		"field.permission.quietTo":       func(in *assess.Input) { in.Field.Permission.QuietTo = "24:30" },
	}
	for path, spoil := range rows {
		in := demoInput(t, "dabchick_long_acre")
		spoil(&in)
		f := findingOf(t, unbanded(t, in), "field.permission")
		if f.Verdict != assess.VerdictUnknown || len(f.Missing) != 1 || f.Missing[0] != path {
			t.Errorf("%s: %s, missing %v", path, f.Verdict, f.Missing)
		}
	}
}
