package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// nearTheNose moves the stated balance point of a document forward of its window.
func nearTheNose(document string) string {
	return strings.Replace(document, `"value": 0.925`, `"value": 0.8`, 1)
}

// onScales is a model alone, or a document without its surfaces, on three scales.
const onScales = `{"mass": {"scaleReadings": [
	{"name": "nose wheel", "xMeters": 0.2, "yMeters": 0, "readingKg": {"value": 1.5, "basis": "BASIS_MEASURED", "spread": 0.01}, "tareKg": 0.1},
	{"name": "left wheel", "xMeters": 1.1, "yMeters": -0.3, "readingKg": {"value": 4.1, "basis": "BASIS_MEASURED"}},
	{"name": "right wheel", "xMeters": 1.1, "yMeters": 0.3, "readingKg": {"value": 4.2, "basis": "BASIS_MEASURED"}}]}}`

func TestWeigh(t *testing.T) {
	t.Parallel()
	redshank := wholeDocument(t, "redshank_quarry_top.json")
	for _, c := range []struct {
		name, stdin string
		args        []string
		status      int
		out, err    string
	}{
		{"holds", redshank, []string{"weigh", "-"}, 0, "no ballast is needed", ""},
		{"model alone", wholeDocument(t, "redshank.json"), []string{"weigh", "-"}, 0, "no ballast is needed", ""},
		{"model on three cradles", wholeDocument(t, "redshank_weigh_in.json"), []string{"weigh", "-"}, 1, "receiver pack", ""},
		{"too far forward", nearTheNose(redshank), []string{"weigh", "-"}, 1, "too far forward", ""},
		{"unknown without surfaces", onScales, []string{"weigh", "-"}, 1, "missing: model.surfaces", ""},
		{"nothing given", "{}", []string{"weigh", "-"}, 1, "UNKNOWN", ""},
		{"as JSON, flag last", redshank, []string{"weigh", "-", "--json"}, 0, `"verdict": "VERDICT_HOLDS"`, ""},
		{"form", "", []string{"weigh", "--form"}, 0, "WEIGH-IN FORM", ""},
		{"bad reading of a model alone", strings.Replace(onScales, `"tareKg": 0.1`, `"tareKg": 9`, 1), []string{"weigh", "-"}, 2, "", "mass.scaleReadings[0].tareKg: takes off more"},
		{"bad reading of a document", `{"model": ` + strings.Replace(onScales, `"tareKg": 0.1`, `"tareKg": 9`, 1) + `}`, []string{"weigh", "-"}, 2, "", "model.mass.scaleReadings[0].tareKg: takes off more"},
		{"bad number", strings.Replace(onScales, `"xMeters": 0.2`, `"xMeters": 200`, 1), []string{"weigh", "-"}, 2, "", "mass.scaleReadings[0].xMeters: must be"},
		{"not JSON", "hello", []string{"weigh", "-"}, 2, "", "document: "},
		{"no file", "", []string{"weigh", filepath.Join(t.TempDir(), "none.json")}, 2, "", "none.json"},
		{"no tilted file", onScales, []string{"weigh", "-", "--tilted", filepath.Join(t.TempDir(), "none.json")}, 2, "", "none.json"},
		{"no argument", "", []string{"weigh"}, 2, "", "give one document"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			status, out, errors := try(t, c.stdin, c.args...)
			if status != c.status || !strings.Contains(out, c.out) || !strings.Contains(errors, c.err) {
				t.Errorf("status %d, out %q, errors %q; want %d, %q, %q", status, out, errors, c.status, c.out, c.err)
			}
		})
	}
}

func TestWeighTilted(t *testing.T) {
	t.Parallel()
	// 9.7 kg, 0.9 m between the supports: 0.5 kg more on the main wheels at 20 degrees is a height of 0.5*0.9/9.7/tan(20 degrees).
	tilted := strings.NewReplacer(`"value": 1.5`, `"value": 1.0`, `"value": 4.1`, `"value": 4.35`, `"value": 4.2`, `"value": 4.45`).Replace(onScales)
	file := filepath.Join(t.TempDir(), "tilted.json")
	if err := os.WriteFile(file, []byte(tilted), 0o600); err != nil {
		t.Fatal(err)
	}
	_, out, errors := try(t, onScales, "weigh", "-", "--json", "--tilted", file, "--tilt", "20")
	var done struct {
		HeightMeters struct{ Value, Spread float64 }
	}
	if err := json.Unmarshal([]byte(out), &done); err != nil {
		t.Fatalf("%v: %s", err, errors)
	}
	if want := 0.5 * 0.9 / 9.7 / 0.36397; done.HeightMeters.Value < want-1e-4 || done.HeightMeters.Value > want+1e-4 {
		t.Errorf("height %g m, want %g", done.HeightMeters.Value, want)
	}
	_, raised, _ := try(t, onScales, "weigh", "-", "--json", "--tilted", file, "--raised", "0.307818", "--between", "0.9") // 0.9 sin(20 degrees)
	var again struct{ HeightMeters struct{ Value float64 } }
	if err := json.Unmarshal([]byte(raised), &again); err != nil || again.HeightMeters.Value < done.HeightMeters.Value-1e-5 || again.HeightMeters.Value > done.HeightMeters.Value+1e-5 {
		t.Errorf("height by raising %v, by angle %v", again, done)
	}
	if status, _, errors := try(t, onScales, "weigh", "-", "--tilted", file, "--raised", "1"); status != exitUsage || !strings.Contains(errors, "raised and between") {
		t.Errorf("raised by more than the distance: status %d, %q", status, errors)
	}
	if status, _, errors := try(t, onScales, "weigh", "-", "--tilted", file); status != exitUsage || !strings.Contains(errors, "tilt") {
		t.Errorf("a tilted weighing without its angle: status %d, %q", status, errors)
	}
}
