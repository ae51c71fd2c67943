package document

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const brokenFolder = "../../testdata/broken"

// brokenDocuments names for each file its one fault.
var brokenDocuments = []struct{ file, path, message string }{
	{"negative_chord", "model.surfaces[0].stations[1].chordMeters", "must be greater than 0, got -0.2"},
	{"zero_chord", "model.surfaces[0].stations[0].chordMeters", "must be greater than 0, got 0"},
	{"huge_chord", "model.surfaces[0].stations[0].chordMeters", "must be at most 5, got 260; in mm? That is 0.26 m"},
	{"unknown_field", "model.wingspan", "is not a field of this document"},
	{"unknown_deep_field", "model.surfaces[0].stations[0].chord", "is not a field of this document"},
	{"text_for_number", "model.surfaces[0].stations[0].chordMeters", "must be a number, got a text"},
	{"not_a_number_text", "model.mass.emptyMassKg.value", "must be a number, got a text"},
	{"infinity_text", "day.windSpeedMetersPerSecond.value", "must be a number, got a text"},
	{"overflowing_number", "day.temperatureCelsius.value", "must be a finite number, got 1e400"},
	{"bare_nan", "document", "is not JSON"},
	{"number_for_list", "model.surfaces", "must be a list, got a number"},
	{"list_for_object", "day", "must be an object, got a list"},
	{"empty_station", "model.surfaces[0].stations[1]", "must be an object, got null"},
	{"unknown_role", "model.surfaces[0].role", "must be one of SURFACE_ROLE_WING"},
	{"nameless_surface", "model.surfaces[0].name", "is required with at least 1"},
	{"one_station", "model.surfaces[0].stations", "must have at least 2 entries, got 1"},
	{"stations_turn_back", "model.surfaces[0].stations[1].leadingEdgeYMeters", "must not lie inboard of the station before"},
	{"stations_coincide", "model.surfaces[0].stations[1]", "lies at the place of the station before"},
	{"letters_in_section", "model.surfaces[0].stations[0].section.designation", "must have the form"},
	{"negative_mass", "model.mass.emptyMassKg.value", "must be at least 0.01, got -2.1"},
	{"negative_spread", "model.mass.emptyMassKg.spread", "must not be negative, got -0.01"},
	{"negative_thrust", "model.engines[0].staticThrustNewtons.value", "must be at least 0.01, got -17.5"},
	{"humidity_in_percent", "day.relativeHumidityRatio.value", "must be at most 1, got 55; in %? That is 0.55"},
	{"below_absolute_zero", "day.temperatureCelsius.value", "must be at least -60, got -300"},
	{"flying_area_crosses", "field.flyingArea", "crosses itself"},
	{"flying_area_of_two", "field.flyingArea", "must have at least 3 corners, got 2"},
	{"strip_without_length", "field.strips[0].end", "is the same place as start"},
	{"two_strips_of_one_name", "field.strips[1].name", "is the same as of field.strips[0]"},
	{"ground_runs_back", "field.launchSpots[0].groundProfile[1].distanceMeters", "must be greater than the point before"},
	{"strip_ground_runs_back", "field.strips[0].groundProfile[1].distanceMeters", "must be greater than the point before"},
	{"pull_test_falls", "launchPlan.bungee.pullTest[1].forceNewtons", "must not be less than at the point before, 60, got 40"},
	{"pull_test_turns_back", "launchPlan.bungee.pullTest[1].stretchMeters", "must be greater than at the point before, 8, got 6"},
	{"stretch_beyond_pull_test", "launchPlan.bungee.stretchMeters.value", "must not be beyond the pull test, which ends at 12, got 20"},
	{"time_in_words", "day.time", "must be a time with its offset"},
	{"wind_change_without_offset", "day.windChanges[1].time", "must be a time with its offset"},
	{"obstacle_nowhere", "field.obstacles[0].points", "is required with at least 1"},
	{"plan_names_no_strip", "launchPlan.strip", "names no strip of the field: 09/27"},
	{"plan_names_no_spot", "launchPlan.launchSpot", "names no launch spot of the field: hill"},
	{"margin_window_reversed", "limits.maximumStaticMarginRatio", "must be greater than minimumStaticMarginRatio 0.2, got 0.05"},
	{"margin_window_against_default", "limits.maximumStaticMarginRatio", "must be greater than minimumStaticMarginRatio 0.3, got 0.2"},
	{"key_twice", "model.displayName", "stands twice"},
	{"both_spellings", "model.display_name", "stands twice"},
	{"heading_of_360", "launchPlan.headingDegrees", "must be less than 360, got 360"},
	{"half_a_document", "document", "ends too early"},
	{"second_document", "document", "has something after its end"},
}

func TestBrokenDocuments(t *testing.T) {
	t.Parallel()
	for _, row := range brokenDocuments {
		t.Run(row.file, func(t *testing.T) {
			t.Parallel()
			data, err := os.ReadFile(filepath.Join(brokenFolder, row.file+".json"))
			if err != nil {
				t.Fatal(err)
			}
			_, err = Decode(data)
			var found Errors
			if !errors.As(err, &found) {
				t.Fatalf("got %v, want a fault at %s", err, row.path)
			}
			if len(found) != 1 || found[0].Path != row.path || !strings.Contains(found[0].Message, row.message) {
				t.Errorf("got %v, want only %s: ...%s...", found, row.path, row.message)
			}
		})
	}
}

// TestBrokenFolderIsWholeInTable fails when a file of the folder has no row.
func TestBrokenFolderIsWholeInTable(t *testing.T) {
	t.Parallel()
	files, err := filepath.Glob(filepath.Join(brokenFolder, "*.json"))
	if err != nil {
		t.Fatal(err)
	}
	if len(files) != len(brokenDocuments) {
		t.Errorf("folder has %d files, table %d rows", len(files), len(brokenDocuments))
	}
}
