package assess_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"pitgate/server/document"
	"pitgate/server/physics/assess"
	"pitgate/testdata/demo"
)

var update = flag.Bool("update", false, "write the golden reports anew")

const goldenFolder = "../../../testdata/golden"

// demoInput reads one of the demonstration documents.
func demoInput(t testing.TB, name string) assess.Input {
	t.Helper()
	data, err := demo.Files.ReadFile(name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	in, err := document.Decode(data)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return in
}

// assessed runs an input through the core.
func assessed(t testing.TB, in assess.Input) assess.Report {
	t.Helper()
	report, err := document.Assess(in)
	if err != nil {
		t.Fatal(err)
	}
	return report
}

// findingOf returns the finding with an id.
func findingOf(t testing.TB, report assess.Report, id string) assess.Finding {
	t.Helper()
	for _, finding := range report.Findings {
		if finding.ID == id {
			return finding
		}
	}
	t.Fatalf("report has no finding %s", id)
	return assess.Finding{}
}

// demoVerdicts names for each whole document the findings that do not simply hold.
var demoVerdicts = []struct {
	name  string
	other map[string]assess.Verdict
}{
	{"dabchick_long_acre", nil},
	{"nightjar_long_acre", map[string]assess.Verdict{"engine_out.footprint": assess.VerdictTight}},
	{"sandmartin_long_acre", nil},
	{"sandmartin_long_acre_wet", map[string]assess.Verdict{
		"launch.distance": assess.VerdictTight, "landing.distance": assess.VerdictTight,
	}},
	{"redshank_quarry_top", map[string]assess.Verdict{
		"launch.end_speed": assess.VerdictFails, "climb.clearance": assess.VerdictFails, "launch.sink": assess.VerdictTight,
		"landing.distance": assess.VerdictFails, "pitch.sensitivity": assess.VerdictTight, "heat.skin": assess.VerdictTight,
	}},
	{"redshank_quarry_top_long_ramp", map[string]assess.Verdict{
		"heat.skin": assess.VerdictTight, "launch.end_speed": assess.VerdictTight, "landing.distance": assess.VerdictFails, "pitch.sensitivity": assess.VerdictTight,
	}},
	{"redshank_quarry_top_headwind", map[string]assess.Verdict{
		"heat.skin": assess.VerdictTight, "launch.end_speed": assess.VerdictTight, "landing.distance": assess.VerdictFails, "pitch.sensitivity": assess.VerdictTight,
	}},
}

func TestDemoVerdicts(t *testing.T) {
	t.Parallel()
	for _, row := range demoVerdicts {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, row.name)
			report, want := assessed(t, in), 69 // with a launch given up on the strip, or the tail over the end of the rails
			if len(in.Model.Structure.Boom) > 0 {
				want++
			}
			if in.LaunchPlan.Ramp != nil { // what its dolly falls on
				want++
			}
			if len(in.Day.WindChanges) > 0 { // the wind to come
				want++
			}
			if in.Model.Engines[0].Kind == assess.EngineKindTurbine {
				want += 10 // fuel, heat and the engine's own figures
			}
			if len(report.Findings) != want {
				t.Errorf("got %d findings, want %d", len(report.Findings), want)
			}
			for _, finding := range report.Findings {
				want, ok := row.other[finding.ID]
				if !ok {
					want = assess.VerdictHolds
				}
				if finding.Verdict != want {
					t.Errorf("%s: got %s, want %s (%s)", finding.ID, finding.Verdict, want, finding.Note)
				}
			}
		})
	}
}

// TestGoldenReports compares whole reports with those kept; -update writes them anew.
func TestGoldenReports(t *testing.T) {
	t.Parallel()
	for _, row := range demoVerdicts {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			got, err := json.MarshalIndent(assessed(t, demoInput(t, row.name)), "", "  ")
			if err != nil {
				t.Fatal(err)
			}
			got = append(got, '\n')
			path := filepath.Join(goldenFolder, row.name+".json")
			if *update {
				if err := os.WriteFile(path, got, 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(got, want) {
				t.Errorf("report differs from %s: run with -update and read the change", path)
			}
		})
	}
}
