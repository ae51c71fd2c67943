package footprint

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pitgate/server/physics/weather"
)

// separateActions are the words of the rows for the actions.
var separateActions = map[string]Action{"cut": CutNeutral, "spiral": CutSpiral, "idle": IdleNeutral, "hold": Hold, "breakup": Breakup}

// separateLoss is the loss of a row.
func separateLoss(action Action, in inputs) Loss {
	return Loss{
		Action: action, Delay: in["delay"], Density: 1.2, Precision: 1e-11,
		Model: Model{
			Mass: 12, Area: 0.65, Width: 2, CD0: 0.035, StoppedDrag: 0.01, InducedFactor: 0.068967, CLMax: 1.1, NeutralLift: in["neutral"],
			LevelTime: in["level"], SpiralBank: degrees(in["spiral"]), RollTime: in["roll"], RunDown: in["rundown"], DragArea: in["tumble"],
			IdleThrust: in["idle"], IdleEndurance: in["endurance"], HoldEndurance: in["endurance"],
		},
		Wind: Wind{Speed: in["wind"], From: degrees(in["from"]), Profile: weather.Profile{RoughnessLength: in["roughness"]}},
	}
}

// separateValue is what a row of a kind is compared with.
func separateValue(kind string, impact Impact) float64 {
	return map[string]float64{"east": impact.Place.X, "north": impact.Place.Y, "time": impact.Time, "speed": impact.Speed}[kind]
}

func TestSeparateProgramAgrees(t *testing.T) {
	t.Parallel()
	for _, row := range readPublished(t, "separate_fall") {
		t.Run(row[0], func(t *testing.T) {
			t.Parallel()
			word, rest, _ := strings.Cut(strings.TrimPrefix(row[1], "action="), " ")
			action, known := separateActions[word]
			if !known {
				t.Fatalf("action %q", word)
			}
			in := parseInputs(t, rest)
			impact, err := separateLoss(action, in).From(Release{
				Height: in["height"], Heading: degrees(in["heading"]), Speed: in["speed"], Climb: degrees(in["climb"]), Bank: degrees(in["bank"]),
			})
			if err != nil {
				t.Fatal(err)
			}
			kind, _, _ := strings.Cut(row[0], "/")
			compare(t, separateValue(kind, impact), parse(t, row[2]), row[3])
		})
	}
}

func TestSeparateRowsAreThere(t *testing.T) {
	t.Parallel()
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "testdata", "published", "separate_fall", "values.csv"))
	if err != nil {
		t.Fatal(err)
	}
	for word := range separateActions {
		if !strings.Contains(string(text), "action="+word+" ") {
			t.Errorf("no flight with action %s", word)
		}
	}
}
