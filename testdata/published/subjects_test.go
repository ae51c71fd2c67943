package published

import (
	"slices"
	"testing"
)

// heldSubjects are what structure, speeds, fuel, heat, radio, packs and engine are held against outside this project, and where it stands.
var heldSubjects = []struct {
	name    string
	folders []string
}{
	{"gust formula of the regulations", []string{"gust_and_manoeuvre"}},
	{"elliptic and Schrenk moments", []string{"span_load_theory"}},
	{"section properties", []string{"section_formulas", "hollow_sections", "strength_of_materials"}},
	{"hinge moments of thin aerofoils", []string{"flap_hinge_moments"}},
	{"flutter of a thin fin", []string{"thin_fin_flutter"}},
	{"divergence", []string{"torsional_divergence"}},
	{"decay of a round jet", []string{"round_jet", "exhaust_plumes"}},
	{"radiation and convection", []string{"heat_transfer_textbooks"}},
	{"flow in pipes", []string{"pipe_flow_handbook", "fuel_suction"}},
	{"loss in free space", []string{"free_space_loss"}},
	{"two rays over ground", []string{"two_ray_ground", "ground_constants", "ground_reflection"}},
	{"resistance of leads", []string{"wire_gauge_tables", "iec_60228", "direct_current_circuits"}},
	{"strength of materials", []string{"material_strength"}},
	{"temperatures that materials stand", []string{"material_temperatures"}},
	{"momentum theory", []string{"momentum_theory", "propulsion_textbooks"}},
	{"engine in the air of the day", []string{"turbine_corrections"}},
	{"bolts and pushrods", []string{"bolt_threads", "bent_struts", "strength_of_materials"}},
	{"servos and packs", []string{"servo_currents", "polymer_cell_model"}},
}

// TestSubjectsAreHeld wants rows for every subject, and 40 printed ones of 12 sources over all.
func TestSubjectsAreHeld(t *testing.T) {
	t.Parallel()
	var whole tally
	all, counted := sources(t), map[string]bool{}
	t.Logf("%-36s %8s %8s %9s %12s %16s", "subject", "folders", "printed", "computed", "from memory", "common practice")
	for _, subject := range heldSubjects {
		var one tally
		for _, folder := range subject.folders {
			i := slices.IndexFunc(all, func(s source) bool { return s.name == folder })
			if i < 0 || len(all[i].rows) == 0 || len(all[i].readers) == 0 {
				t.Errorf("%s: %s has no rows that a test reads", subject.name, folder)
				continue
			}
			one.add(all[i].rows)
			if !counted[folder] {
				whole.add(all[i].rows)
			}
			counted[folder] = true
		}
		t.Logf("%-36s %8d %8d %9d %12d %16d", subject.name, one.folders, one.printed, one.computed, one.memory, one.practice)
	}
	t.Logf("%-36s %8d %8d %9d %12d %16d", "all", whole.folders, whole.printed, whole.computed, whole.memory, whole.practice)
	if whole.printed < 40 || whole.sources < 12 {
		t.Errorf("%d printed rows in %d sources, want 40 in 12", whole.printed, whole.sources)
	}
}
