package assess_test

import (
	"slices"
	"testing"

	"pitgate/server/physics/assess"
)

// severity orders verdicts from sound to failing.
var severity = map[assess.Verdict]int{assess.VerdictHolds: 0, assess.VerdictTight: 1, assess.VerdictUnknown: 2, assess.VerdictFails: 3}

// plantedStructure lists changes of a sound model and exactly those findings that get worse by them.
var plantedStructure = []struct {
	name, model string
	plant       func(*assess.Input)
	worse       []string
}{
	{"spar 30 % under", "sandmartin_long_acre", func(in *assess.Input) {
		sparsOf(in, func(p *assess.SparPart) {
			p.WidthMeters, p.WebThicknessMeters = scaled(p.WidthMeters, 0.7), scaled(p.WebThicknessMeters, 0.7)
		})
	}, []string{"loads.wing"}},
	{"joiner short", "sandmartin_long_acre", func(in *assess.Input) {
		in.Model.Structure.Joiner.EngagedLengthMeters = quantity(0.07)
	}, []string{"loads.joiner"}},
	{"soft linkage", "sandmartin_long_acre", func(in *assess.Input) {
		in.Model.Surfaces[1].Controls[0].Linkage.RodDiameterMeters = quantity(0.0024)
		in.Model.Surfaces[1].Controls[0].Linkage.RodLengthMeters = number(0.25)
	}, []string{"linkage.stiffness"}},
	{"wing bolts one size under", "sandmartin_long_acre", func(in *assess.Input) {
		in.Model.Structure.WingBoltDiameterMeters = quantity(0.006)
	}, []string{"loads.bolts"}},
	{"boom wall halved", "nightjar_long_acre", func(in *assess.Input) {
		in.Model.Structure.Boom[0].WallThicknessMeters = scaled(in.Model.Structure.Boom[0].WallThicknessMeters, 0.5)
	}, []string{"loads.boom"}},
	{"canard spar of half the diameter", "redshank_quarry_top", func(in *assess.Input) {
		in.Model.Structure.CanardSpar[0].Parts[0].OuterDiameterMeters = quantity(0.007)
	}, []string{"loads.canard"}},
	{"tailplane spar of wood", "nightjar_long_acre", func(in *assess.Input) {
		in.Model.Structure.TailplaneSpar[0].Parts[0].Material = "spruce"
	}, []string{"loads.tailplane"}},
	{"skin of a third", "sandmartin_long_acre", func(in *assess.Input) {
		in.Model.Structure.TorsionBox.SkinThicknessMeters = scaled(in.Model.Structure.TorsionBox.SkinThicknessMeters, 1.0/3)
	}, []string{"loads.skin"}},
	{"loose elevator", "sandmartin_long_acre", func(in *assess.Input) {
		in.Model.Surfaces[1].Controls[0].FreePlayMeters = quantity(0.003)
	}, []string{"controls.free_play"}},
	{"rudder without balance", "nightjar_long_acre", func(in *assess.Input) {
		no := false
		in.Model.Surfaces[2].Controls[0].MassBalanced = &no
	}, []string{"controls.balance"}},
	{"weak servo", "sandmartin_long_acre", func(in *assess.Input) {
		l := in.Model.Surfaces[2].Controls[0].Linkage
		l.ServoTorqueNewtonMeters = scaled(l.ServoTorqueNewtonMeters, 0.45)
	}, []string{"servo.torque"}},
	{"thin plate fin", "sandmartin_long_acre", func(in *assess.Input) {
		in.Model.Structure.FinPlate = &assess.FinPlate{ThicknessMeters: quantity(0.003), Material: "balsa"}
	}, []string{"speed.never_exceed"}},
	{"design gust of a thunderstorm", "sandmartin_long_acre", func(in *assess.Input) {
		in.Limits = &assess.Limits{DesignGustMetersPerSecond: number(14)}
	}, []string{"loads.gust"}},
}

// TestPlantedStructureFaults wants each fault found by its own finding and by no other of the whole report.
func TestPlantedStructureFaults(t *testing.T) {
	t.Parallel()
	for _, row := range plantedStructure {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, row.model)
			sound := assessed(t, in)
			row.plant(&in)
			report := assessed(t, in)
			if worse := worseOf(t, sound, report); !slices.Equal(worse, row.worse) {
				t.Errorf("worse are %v, want %v", worse, row.worse)
			}
			for _, id := range row.worse {
				if f := findingOf(t, report, id); f.Verdict != assess.VerdictFails || f.Note == "" {
					t.Errorf("%s: %s: %s", id, f.Verdict, f.Note)
				}
			}
			wantChain(t, report)
		})
	}
}

// worseOf returns the findings of a report with a worse verdict than before, in the order of their names.
func worseOf(t *testing.T, before, after assess.Report) []string {
	t.Helper()
	var worse []string
	for _, f := range after.Findings {
		if severity[f.Verdict] > severity[findingOf(t, before, f.ID).Verdict] {
			worse = append(worse, f.ID)
		}
	}
	slices.Sort(worse)
	return worse
}
