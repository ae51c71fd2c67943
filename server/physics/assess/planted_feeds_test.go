package assess_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// worsened returns the findings whose verdict got worse, with the new verdict.
func worsened(before, after assess.Report) map[string]assess.Verdict {
	was := map[string]assess.Verdict{}
	for i := range before.Findings {
		was[before.Findings[i].ID] = before.Findings[i].Verdict
	}
	out := map[string]assess.Verdict{}
	for i := range after.Findings {
		f := &after.Findings[i]
		if severity[f.Verdict] > severity[was[f.ID]] {
			out[f.ID] = f.Verdict
		}
	}
	return out
}

// TestPlantedFeedFaults plants one fault each in a sound model and wants its own finding to get worse, and no other.
func TestPlantedFeedFaults(t *testing.T) {
	t.Parallel()
	no := false
	rows := []struct {
		name string
		set  func(*assess.Input)
		want map[string]assess.Verdict
	}{
		{"no air trap", func(in *assess.Input) { in.Model.FuelSystem.AirTrap = &no }, map[string]assess.Verdict{"fuel.trap": assess.VerdictFails}},
		{"air trap of a thimble", func(in *assess.Input) { in.Model.FuelSystem.AirTrapVolumeLiters = quantity(0.015) },
			map[string]assess.Verdict{"fuel.trap": assess.VerdictFails}},
		{"long thin line", func(in *assess.Input) {
			lines := slices.Clone(in.Model.FuelSystem.Lines)
			lines[0].LengthMeters, lines[0].BoreMeters = number(1.2), number(0.002)
			in.Model.FuelSystem.Lines = lines
		}, map[string]assess.Verdict{"fuel.suction": assess.VerdictFails}},
		{"pump far above the tank", func(in *assess.Input) { in.Model.FuelSystem.PumpHeightMeters = quantity(0.2) },
			map[string]assess.Verdict{"fuel.suction": assess.VerdictFails}},
		// A balance point too far aft also makes the pitch control bite too hard: the same fault.
		{"tank behind the balance point", func(in *assess.Input) { in.Model.Mass.Tanks[0].XMeters = number(1.13) },
			map[string]assess.Verdict{"balance.margin_full": assess.VerdictFails, "pitch.sensitivity": assess.VerdictFails}},
		{"no vent", func(in *assess.Input) { in.Model.FuelSystem.Vent = &no }, map[string]assess.Verdict{"fuel.vent": assess.VerdictFails}},
		{"vent closed to a pinhole", func(in *assess.Input) { in.Model.FuelSystem.VentBoreMeters = quantity(0.0012) },
			map[string]assess.Verdict{"fuel.vent": assess.VerdictFails}},
		{"no filter", func(in *assess.Input) { in.Model.FuelSystem.Filter = &no }, map[string]assess.Verdict{"fuel.filter": assess.VerdictFails}},
		{"most of the tank out of reach", func(in *assess.Input) { in.Model.FuelSystem.UnusableLiters = quantity(1.62) },
			map[string]assess.Verdict{"fuel.reserve": assess.VerdictFails, "fuel.endurance": assess.VerdictTight}},
		{"tailpipe of one wall 60 mm under a film-covered fin", func(in *assess.Input) {
			in.Model.Engines[0].TailpipeWallCelsius = nil
			in.Model.HeatedParts = append(slices.Clone(in.Model.HeatedParts), assess.HeatedPart{
				Name: "fin", Material: "covering film", BehindNozzleMeters: quantity(-0.1), FromAxisMeters: quantity(0.06),
			})
		}, map[string]assess.Verdict{"heat.skin": assess.VerdictFails}},
		{"a tailpipe that ends under the tailplane", func(in *assess.Input) { in.Model.Engines[0].TailpipeLengthMeters = number(0.2) },
			map[string]assess.Verdict{"heat.plume": assess.VerdictFails}},
		{"fuel flow that does not fit the exhaust", func(in *assess.Input) { in.Model.Engines[0].FullFuelFlowGramsPerMinute = quantity(460) },
			map[string]assess.Verdict{"engine.consistency": assess.VerdictFails}},
		{"exhaust over the maker's limit", func(in *assess.Input) { in.Model.Engines[0].MaximumExhaustCelsius = number(650) },
			map[string]assess.Verdict{"engine.exhaust_temperature": assess.VerdictFails}},
	}
	before := assessed(t, demoInput(t, "sandmartin_long_acre"))
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, "sandmartin_long_acre")
			row.set(&in)
			report := assessed(t, in)
			if got := worsened(before, report); !maps.Equal(got, row.want) {
				t.Errorf("got worse: %v, want %v", got, row.want)
				for id := range got {
					t.Log(id, findingOf(t, report, id).Note)
				}
			}
			wantChain(t, report)
		})
	}
}

// TestUndeclaredSurfaceIsNamed wants a surface in the plume to be named by the plume's finding.
func TestUndeclaredSurfaceIsNamed(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre")
	in.Model.Engines[0].TailpipeLengthMeters = number(0.2)
	note := findingOf(t, assessed(t, in), "heat.plume").Note
	if !strings.Contains(note, "tailplane") || !strings.Contains(note, "not declared") {
		t.Errorf("note %q does not name the tailplane", note)
	}
	in.Model.HeatedParts = append(in.Model.HeatedParts, assess.HeatedPart{
		Name: "tailplane root", Material: "stainless steel", BehindNozzleMeters: quantity(0.2), FromAxisMeters: quantity(0.06),
	})
	if note := findingOf(t, assessed(t, in), "heat.plume").Note; strings.Contains(note, "tailplane (") {
		t.Errorf("a declared tailplane is still said to be missing: %q", note)
	}
}
