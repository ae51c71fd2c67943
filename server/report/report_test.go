package report_test

import (
	"errors"
	"strings"
	"testing"
	"unicode/utf8"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/report"
	"pitgate/testdata/demo"
)

func demoReport(t *testing.T, name string) assess.Report {
	t.Helper()
	data, err := demo.Files.ReadFile(name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	in, err := document.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	r, err := document.Assess(in)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestTextFitsEightyColumns(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"dabchick_long_acre", "redshank_quarry_top"} {
		r := demoReport(t, name)
		r.Findings[0].Missing = []string{"model." + strings.Repeat("veryLongName", 12)}
		r.Findings[1].Title = strings.Repeat("a long title ", 12)
		var text strings.Builder
		if err := report.Write(&text, r, report.Options{Quantities: true, Methods: true}); err != nil {
			t.Fatal(err)
		}
		for _, line := range strings.Split(text.String(), "\n") {
			if utf8.RuneCountInString(line) > report.Width || strings.HasSuffix(line, " ") {
				t.Errorf("%s: line of %d columns: %q", name, utf8.RuneCountInString(line), line)
			}
		}
	}
}

func TestTextSaysWhatMatters(t *testing.T) {
	t.Parallel()
	var text strings.Builder
	r := demoReport(t, "redshank_quarry_top")
	if err := report.Text(&text, r); err != nil {
		t.Fatal(err)
	}
	flat := strings.Join(strings.Fields(text.String()), " ")
	for _, want := range []string{
		"3 fail, 3 tight, 0 unknown, 74 hold", "FAILS Airspeed at the end of the launcher over stall speed launch.end_speed",
		"least 1.100; margin -0.", "Rests on an estimated input.", "near gorse bank decides", r.InputDigest,
		"The computation supports a decision and does not make it.", "National law",
	} {
		if !strings.Contains(flat, want) {
			t.Errorf("text lacks %q", want)
		}
	}
	if strings.Index(flat, "FAILS") > strings.Index(flat, "TIGHT") || strings.Index(flat, "TIGHT") > strings.Index(flat, "holds ") {
		t.Error("findings are not worst first")
	}
	if strings.Contains(strings.ToLower(flat), " safe") {
		t.Error("text calls something safe")
	}
}

func TestQuantitiesOnRequest(t *testing.T) {
	t.Parallel()
	r := demoReport(t, "dabchick_long_acre")
	var short, long strings.Builder
	if err := report.Text(&short, r); err != nil {
		t.Fatal(err)
	}
	if err := report.Write(&long, r, report.Options{Quantities: true}); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(short.String(), "lift.slope") || !strings.Contains(long.String(), "lift.slope") {
		t.Error("quantities must stand in the text only when asked for")
	}
}

func TestExitStatus(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name     string
		verdicts []assess.Verdict
		want     int
	}{
		{"all hold", []assess.Verdict{assess.VerdictHolds, assess.VerdictHolds}, report.ExitHolds},
		{"tight counts as holding", []assess.Verdict{assess.VerdictTight, assess.VerdictHolds}, report.ExitHolds},
		{"unknown is never good", []assess.Verdict{assess.VerdictUnknown, assess.VerdictHolds}, report.ExitDecision},
		{"fails", []assess.Verdict{assess.VerdictFails}, report.ExitDecision},
		{"not said", []assess.Verdict{""}, report.ExitDecision},
		{"nothing asked", nil, report.ExitDecision},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			var r assess.Report
			for _, verdict := range row.verdicts {
				r.Findings = append(r.Findings, assess.Finding{Verdict: verdict})
			}
			if got := report.ExitStatus(r); got != row.want {
				t.Errorf("got %d, want %d", got, row.want)
			}
		})
	}
}

var errFull = errors.New("disk is full")

// fullDisk refuses every write.
type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errFull }

func TestWriterErrorIsReturned(t *testing.T) {
	t.Parallel()
	if err := report.Text(fullDisk{}, assess.Report{}); !errors.Is(err, errFull) {
		t.Errorf("got %v", err)
	}
}
