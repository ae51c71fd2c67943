package report_test

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/server/report"
	"pitgate/testdata/demo"
)

func demoInput(t *testing.T, name string) assess.Input {
	t.Helper()
	data, err := demo.Files.ReadFile(name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	in, err := document.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	return in
}

func explained(t *testing.T, in assess.Input, r assess.Report, id string) string {
	t.Helper()
	var text strings.Builder
	if err := report.Explain(&text, in, r, id); err != nil {
		t.Fatal(err)
	}
	return text.String()
}

func TestExplainLeadsDownToInputs(t *testing.T) {
	t.Parallel()
	const name = "sandmartin_long_acre_wet"
	text := explained(t, demoInput(t, name), demoReport(t, name), "stall.speed")
	flat := strings.Join(strings.Fields(text), " ")
	for _, want := range []string{
		"Stall speed, straight flight stall.speed", "Vs = sqrt(2 m g/(rho S CLmax))", "mass.takeoff 11.8 kg", "Source: lift equation",
		"model.mass.emptyMassKg 9.72, measured, spread 0.05", "model.surfaces 3 given", "not given: the core's own",
		"the method's own spread", ", above", "The computation supports a decision and does not make it.",
	} {
		if !strings.Contains(flat, want) {
			t.Errorf("explanation lacks %q:\n%s", want, text)
		}
	}
	if strings.Index(text, "mass.takeoff") > strings.Index(text, "model.mass.emptyMassKg") {
		t.Error("an input stands before the quantity that was computed from it")
	}
}

// TestExplainEveryFinding fits each explanation into the page and ends each at the cautions.
func TestExplainEveryFinding(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"redshank_quarry_top", "dabchick_long_acre"} {
		in, r := demoInput(t, name), demoReport(t, name)
		var ids []string
		for _, f := range r.Findings {
			ids = append(ids, f.ID)
		}
		for _, q := range r.Quantities {
			ids = append(ids, q.ID)
		}
		for _, id := range ids {
			text := explained(t, in, r, id)
			for line := range strings.SplitSeq(text, "\n") {
				if utf8.RuneCountInString(line) > report.Width {
					t.Errorf("%s %s: line of %d columns: %q", name, id, utf8.RuneCountInString(line), line)
				}
			}
			if !strings.Contains(text, id) || !strings.HasSuffix(strings.TrimSpace(text), "evidence.") {
				t.Errorf("%s %s: %s", name, id, text)
			}
		}
	}
}

func TestExplainNamesNearIDs(t *testing.T) {
	t.Parallel()
	in, r := demoInput(t, "dabchick_long_acre"), demoReport(t, "dabchick_long_acre")
	for wrong, want := range map[string]string{"stall.sped": "stall.speed", "neutral_point": "lift.neutral_point", "drag.zero": "drag.zero_lift", "xyzzy": ""} {
		var text strings.Builder
		err := report.Explain(&text, in, r, wrong)
		var unknown report.UnknownIDError
		if !errors.As(err, &unknown) || unknown.ID != wrong || text.Len() > 0 {
			t.Fatalf("%s: got %v, wrote %q", wrong, err, text.String())
		}
		if want == "" && len(unknown.Near) > 0 || want != "" && !slices.Contains(unknown.Near, want) {
			t.Errorf("%s: near it %v, want %q", wrong, unknown.Near, want)
		}
	}
}

func TestExplainReturnsTheWritersError(t *testing.T) {
	t.Parallel()
	if err := report.Explain(fullDisk{}, demoInput(t, "dabchick_long_acre"), demoReport(t, "dabchick_long_acre"), "stall.speed"); !errors.Is(err, errFull) {
		t.Errorf("got %v", err)
	}
}
