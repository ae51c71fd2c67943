package assess_test

import (
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// plantedFaults are the faults that end first flights, each planted alone in one sound model under two packs of rules, with the findings that get worse by
// it and the words that its own finding, the first, says. A second finding stands only where the fault is one of both.
var plantedFaults = []struct {
	name  string
	day   func(*assess.Input) // the sound model's own day
	plant func(*assess.Input)
	want  []string // the finding meant first
	says  string
}{
	{"no trap", nil, func(in *assess.Input) { no := false; in.Model.FuelSystem.AirTrap = &no }, []string{"fuel.trap"}, "trap"},
	{"long thin line", nil, func(in *assess.Input) {
		lines := slices.Clone(in.Model.FuelSystem.Lines)
		lines[0].LengthMeters, lines[0].BoreMeters = number(1.2), number(0.002)
		in.Model.FuelSystem.Lines = lines
	}, []string{"fuel.suction"}, "of lines"},
	{"tank behind the balance point", nil, func(in *assess.Input) { in.Model.Mass.Tanks[0].XMeters = number(1.13) },
		[]string{"balance.margin_full", "pitch.sensitivity"}, "balance point at"},
	{"vent missing", nil, func(in *assess.Input) { no := false; in.Model.FuelSystem.Vent = &no }, []string{"fuel.vent"}, "vent"},
	{"spar 30 % under", nil, func(in *assess.Input) {
		sparsOf(in, func(p *assess.SparPart) {
			p.WidthMeters, p.WebThicknessMeters = scaled(p.WidthMeters, 0.7), scaled(p.WebThicknessMeters, 0.7)
		})
	}, []string{"loads.wing"}, "spar stands"},
	{"joiner short", nil, func(in *assess.Input) { in.Model.Structure.Joiner.EngagedLengthMeters = quantity(0.07) }, []string{"loads.joiner"}, "70 mm in each panel"},
	{"soft linkage", nil, func(in *assess.Input) {
		l := in.Model.Surfaces[1].Controls[0].Linkage
		l.RodDiameterMeters, l.RodLengthMeters = quantity(0.0024), number(0.25)
	}, []string{"linkage.stiffness"}, "pushrod of the elevator"},
	{"tailpipe 60 mm under a film-covered fin", nil, func(in *assess.Input) {
		in.Model.Engines[0].TailpipeWallCelsius = nil
		in.Model.HeatedParts = append(slices.Clone(in.Model.HeatedParts), assess.HeatedPart{
			Name: "fin", Material: "covering film", BehindNozzleMeters: quantity(-0.1), FromAxisMeters: quantity(0.06),
		})
	}, []string{"heat.skin"}, "Fin (iron-on covering film)"},
	{"one antenna in carbon", nil, func(in *assess.Input) {
		carbon := true
		in.Model.Radio.Antennas[1].InsideCarbon = &carbon
	}, []string{"radio.margin"}, "Inside a closed part of carbon"},
	{"fail-safe hold", nil, func(in *assess.Input) { in.Model.Radio.FailSafeAction = assess.FailSafeActionHold },
		[]string{"radio.failsafe", "link_loss.footprint"}, "the last command held"},
	{"fail-safe 5 s", nil, func(in *assess.Input) { in.Model.Radio.FailSafeDelaySeconds = quantity(5) },
		[]string{"radio.failsafe", "link_loss.footprint", "rule.us-association-turbine.fail-safe"}, "after 5.0 s"},
	{"pack 40 % at -6 C", frosty, func(in *assess.Input) { in.Model.Packs[1].ChargeRatio = quantity(0.4) }, []string{"packs.engine_control"}, "usable at -6 C"},
	{"engine over the association's limit", nil, func(in *assess.Input) { ruleIn(in, "thrust-single").Value = number(90) },
		[]string{"rule.us-association-turbine.thrust-single"}, "90 N is asked"},
	{"model in the wrong mass class", nil, func(in *assess.Input) { in.Limits.MaximumMassKg, ruleIn(in, "mass").Value = number(10), number(10) },
		[]string{"mass.class", "rule.us-recreational.mass"}, "11.80 kg"},
	{"expired permission", nil, func(in *assess.Input) { in.Field.Permission.ValidToDate = "2026-05-15" }, []string{"field.permission"}, "ended 1 day ago"},
}

// TestPlantedFaults wants each fault found by its finding, which says why, and by no other.
func TestPlantedFaults(t *testing.T) {
	t.Parallel()
	for _, row := range plantedFaults {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			sound, faulty := soundModel(t), soundModel(t)
			if row.day != nil {
				row.day(&sound)
				row.day(&faulty)
			}
			row.plant(&faulty)
			report := assessed(t, faulty)
			got := worse(report, assessed(t, sound))
			if want := slices.Sorted(slices.Values(row.want)); !slices.Equal(got, want) {
				t.Errorf("worse by it: %v, want %v", got, want)
			}
			found := findingOf(t, report, row.want[0])
			if found.Verdict != assess.VerdictFails || !strings.Contains(found.Note, row.says) {
				t.Errorf("%s: %s: %q does not say %q", found.ID, found.Verdict, found.Note, row.says)
			}
			t.Logf("%-40s %s: %s", row.name, strings.Join(got, ", "), found.Note)
		})
	}
}

// soundModel is the wheeled jet at Long Acre with nothing amiss: under an association's pack and an authority's, all confirmed, its engine turned down
// so that its top speed keeps its distance from the association's.
func soundModel(t *testing.T) assess.Input {
	t.Helper()
	in := ruled(t, "sandmartin_long_acre", "us-association-turbine", "us-recreational")
	in.Model.Engines[0].StaticThrustNewtons = quantity(96)
	return in
}

// TestSoundModelHolds wants nothing to fail or to be unknown before a fault is planted.
func TestSoundModelHolds(t *testing.T) {
	t.Parallel()
	for id, verdict := range verdictsOf(assessed(t, soundModel(t))) {
		if verdict != assess.VerdictHolds {
			t.Errorf("%s: %s", id, verdict)
		}
	}
}
