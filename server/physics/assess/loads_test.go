package assess_test

import (
	"cmp"
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// loadFindings are the findings of structure and of the speeds not to pass.
var loadFindings = []string{
	"loads.wing", "loads.joiner", "loads.gust", "loads.bolts", "loads.skin", "servo.torque", "linkage.stiffness", "speed.never_exceed", "controls.free_play",
}

// sparsOf changes every part of the spar of a model.
func sparsOf(in *assess.Input, change func(*assess.SparPart)) {
	spar := in.Model.Structure.WingSpar
	for i := range spar {
		for k := range spar[i].Parts {
			change(&spar[i].Parts[k])
		}
	}
}

// linkagesOf changes every linkage of a model.
func linkagesOf(in *assess.Input, change func(*assess.Linkage)) {
	for i := range in.Model.Surfaces {
		for k := range in.Model.Surfaces[i].Controls {
			if l := in.Model.Surfaces[i].Controls[k].Linkage; l != nil {
				change(l)
			}
		}
	}
}

func scaled(q *assess.Quantity, by float64) *assess.Quantity { return quantity(by * *q.Value) }

// TestMissingStructureIsNamed takes one part away at a time.
func TestMissingStructureIsNamed(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name, finding, missing string
		take                   func(*assess.Input)
	}{
		{"no spar", "loads.wing", "model.structure.wingSpar", func(in *assess.Input) { in.Model.Structure.WingSpar = nil }},
		{"no spar, gust", "loads.gust", "model.structure.wingSpar", func(in *assess.Input) { in.Model.Structure.WingSpar = nil }},
		{"unknown material", "loads.wing", "model.structure.wingSpar[0].parts[0].material", func(in *assess.Input) {
			in.Model.Structure.WingSpar[0].Parts[0].Material = "unobtainium"
		}},
		{"no depth", "loads.wing", "model.structure.wingSpar[1].parts[0].depthMeters", func(in *assess.Input) {
			in.Model.Structure.WingSpar[1].Parts[0].DepthMeters = nil
		}},
		{"no web", "loads.wing", "model.structure.wingSpar[0].parts[].webThicknessMeters", func(in *assess.Input) {
			in.Model.Structure.WingSpar[0].Parts[0].WebThicknessMeters = nil
		}},
		{"no joiner", "loads.joiner", "model.structure.joiner", func(in *assess.Input) { in.Model.Structure.Joiner = nil }},
		{"no engaged length", "loads.joiner", "model.structure.joiner.engagedLengthMeters", func(in *assess.Input) {
			in.Model.Structure.Joiner.EngagedLengthMeters = nil
		}},
		{"no stiffness", "speed.never_exceed", "model.structure.wingTwistStiffnessNewtonMetersPerRadian", func(in *assess.Input) {
			in.Model.Structure.WingTwistStiffnessNewtonMetersPerRadian, in.Model.Structure.TorsionBox = nil, nil
		}},
		{"fin of nothing known", "speed.never_exceed", "model.structure.finPlate.material", func(in *assess.Input) {
			in.Model.Structure.FinPlate = &assess.FinPlate{ThicknessMeters: quantity(0.006), Material: "unobtainium"}
		}},
		{"no servo arm", "servo.torque", "model.surfaces[0].controls[0].linkage.servoArmMeters", func(in *assess.Input) {
			in.Model.Surfaces[0].Controls[0].Linkage.ServoArmMeters = nil
		}},
		{"no linkage at all", "servo.torque", "model.surfaces[2].controls[0].linkage", func(in *assess.Input) {
			for i := range in.Model.Surfaces {
				in.Model.Surfaces[i].Controls[0].Linkage = nil
			}
		}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, "sandmartin_long_acre")
			row.take(&in)
			f := findingOf(t, assessed(t, in), row.finding)
			if f.Verdict != assess.VerdictUnknown || !slices.Contains(f.Missing, row.missing) {
				t.Errorf("%s, missing %v, want %s", f.Verdict, f.Missing, row.missing)
			}
		})
	}
	in := demoInput(t, "sandmartin_long_acre")
	in.Model.Structure = nil
	report := assessed(t, in)
	for _, id := range []string{"loads.wing", "loads.joiner", "loads.gust", "speed.never_exceed"} {
		if f := findingOf(t, report, id); f.Verdict != assess.VerdictUnknown || !strings.HasPrefix(f.Missing[0], "model.structure.") {
			t.Errorf("without structure %s: %s, missing %v", id, f.Verdict, f.Missing)
		}
	}
}

// TestMoreMaterialNeverStandsLess moves one size or demand at a time and wants the finding to follow.
func TestMoreMaterialNeverStandsLess(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name, finding string
		falls         bool
		set           func(in *assess.Input, by float64)
	}{
		{"caps", "loads.wing", false, func(in *assess.Input, by float64) {
			sparsOf(in, func(p *assess.SparPart) { p.CapThicknessMeters = scaled(p.CapThicknessMeters, by) })
		}},
		{"wing mass relieves", "loads.wing", false, func(in *assess.Input, by float64) {
			in.Model.Surfaces[0].MassKg = scaled(in.Model.Surfaces[0].MassKg, by)
		}},
		{"design load factor", "loads.wing", true, func(in *assess.Input, by float64) { in.Model.Structure.DesignLoadFactor = number(9 * by) }},
		{"engaged length", "loads.joiner", false, func(in *assess.Input, by float64) {
			in.Model.Structure.Joiner.EngagedLengthMeters = quantity(0.08 * by)
		}},
		{"design gust", "loads.gust", true, func(in *assess.Input, by float64) {
			in.Limits = &assess.Limits{DesignGustMetersPerSecond: number(5 * by)}
		}},
		{"torque", "servo.torque", false, func(in *assess.Input, by float64) {
			linkagesOf(in, func(l *assess.Linkage) { l.ServoTorqueNewtonMeters = scaled(l.ServoTorqueNewtonMeters, by/2) })
		}},
		{"horn arm", "servo.torque", true, func(in *assess.Input, by float64) {
			linkagesOf(in, func(l *assess.Linkage) { l.ServoArmMeters = number(*l.ServoArmMeters * by) })
		}},
		{"twist stiffness", "speed.never_exceed", false, func(in *assess.Input, by float64) {
			in.Model.Structure.WingTwistStiffnessNewtonMetersPerRadian = quantity(300 * by)
		}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			var last float64
			for i, by := range []float64{0.9, 1, 1.1} {
				in := demoInput(t, "sandmartin_long_acre")
				row.set(&in, by)
				report, err := assess.Unbanded(in)
				if err != nil {
					t.Fatal(err)
				}
				f := findingOf(t, report, row.finding)
				if f.Value == nil || i > 0 && (row.falls != (*f.Value < last) || *f.Value == last) {
					t.Fatalf("times %g: %v after %g: %s", by, f.Value, last, f.Note)
				}
				last = *f.Value
			}
		})
	}
}

// TestSandbagTestReplacesTheComputation and needs no spar at all.
func TestSandbagTestReplacesTheComputation(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre")
	in.Model.Structure.WingSpar, in.Model.Structure.Joiner, in.Model.Structure.ProofLoadFactor = nil, nil, quantity(8)
	report := assessed(t, in)
	for _, id := range []string{"loads.wing", "loads.joiner"} {
		if f := findingOf(t, report, id); f.Verdict != assess.VerdictFails || *f.Value != 8.0/9 || !strings.Contains(f.Note, "sandbag") {
			t.Errorf("%s: %s %v: %s", id, f.Verdict, f.Value, f.Note)
		}
	}
	wantChain(t, report)
}

// TestShortSparNamesTheThickness takes the cap that the note names and wants the wing to stand what is asked.
func TestShortSparNamesTheThickness(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "sandmartin_long_acre")
	sparsOf(&in, func(p *assess.SparPart) { p.CapThicknessMeters = scaled(p.CapThicknessMeters, 0.6) })
	if f := findingOf(t, assessed(t, in), "loads.wing"); f.Verdict != assess.VerdictFails || !strings.Contains(f.Note, "would reach it") {
		t.Errorf("%s: %s", f.Verdict, f.Note)
	}
}

// TestEnvelopeMeetsTheFindings wants the drawn load factors to be those of the findings.
func TestEnvelopeMeetsTheFindings(t *testing.T) {
	t.Parallel()
	report := assessed(t, demoInput(t, "sandmartin_long_acre"))
	curve := curveOf(t, report, "loads.envelope")
	stands, most := toldOf(t, report, "loads.stands"), 0.0
	for _, s := range curve.Series {
		for _, point := range s.Points {
			if s.Name == "Manoeuvre, up" {
				most = max(most, point.Y)
			}
			if s.Name == "The wing stands" && point.Y != stands {
				t.Errorf("the wing is drawn to stand %g, told %g", point.Y, stands)
			}
		}
	}
	if most != toldOf(t, report, "loads.asked") || len(curve.Series) != 5 || len(curve.Marks) != 2 {
		t.Errorf("manoeuvres up to %g, %d lines, %d marks", most, len(curve.Series), len(curve.Marks))
	}
	if top := curve.Marks[1]; top.Y != toldOf(t, report, "loads.gust_factor") || top.X != toldOf(t, report, "speed.top") {
		t.Errorf("gust drawn at %+v", top)
	}
}

// TestEveryLoadFindingHasItsPlace wants all of them in every whole report.
func TestEveryLoadFindingHasItsPlace(t *testing.T) {
	t.Parallel()
	for _, row := range demoVerdicts {
		report := assessed(t, demoInput(t, row.name))
		for _, id := range loadFindings {
			if f := findingOf(t, report, id); f.Value == nil || f.BandLow == nil || len(f.SpreadShares) == 0 {
				t.Errorf("%s: %s has value %v, band %v", row.name, id, f.Value, f.BandLow)
			}
		}
	}
}

// TestImpossibleSizesGiveNoNumber wants extreme sizes to end in a verdict without a value that is no number, and never in a panic.
func TestImpossibleSizesGiveNoNumber(t *testing.T) {
	t.Parallel()
	byPart := map[string]string{"spar width": "loads.wing", "spar cap": "loads.wing", "joiner": "loads.joiner", "engaged": "loads.joiner",
		"torsion box": "loads.skin", "fin plate": "speed.never_exceed", "torque": "servo.torque", "rod": "servo.torque"}
	for _, size := range []float64{-1, 0, 1e-9, 1e3, 1e150} {
		for name, set := range map[string]func(*assess.Input){
			"spar width": func(in *assess.Input) {
				sparsOf(in, func(p *assess.SparPart) { p.WidthMeters = quantity(size) })
			},
			"spar cap": func(in *assess.Input) {
				sparsOf(in, func(p *assess.SparPart) { p.CapThicknessMeters = quantity(size) })
			},
			"joiner":      func(in *assess.Input) { in.Model.Structure.Joiner.Part.OuterDiameterMeters = quantity(size) },
			"engaged":     func(in *assess.Input) { in.Model.Structure.Joiner.EngagedLengthMeters = quantity(size) },
			"torsion box": func(in *assess.Input) { in.Model.Structure.TorsionBox.DepthMeters = quantity(size) },
			"fin plate": func(in *assess.Input) {
				in.Model.Structure.FinPlate = &assess.FinPlate{ThicknessMeters: quantity(size), Material: "birch ply"}
			},
			"torque": func(in *assess.Input) {
				linkagesOf(in, func(l *assess.Linkage) { l.ServoTorqueNewtonMeters = quantity(size) })
			},
			"rod": func(in *assess.Input) {
				linkagesOf(in, func(l *assess.Linkage) { l.RodDiameterMeters = quantity(size) })
			},
			"wing mass": func(in *assess.Input) { in.Model.Surfaces[0].MassKg = quantity(size) },
		} {
			in := demoInput(t, "sandmartin_long_acre")
			set(&in)
			report, err := assess.Unbanded(in)
			if err != nil {
				continue
			}
			for _, id := range loadFindings {
				if f := findingOf(t, report, id); f.Value != nil && !(*f.Value >= 0) {
					t.Errorf("%s of %g: %s is %g", name, size, id, *f.Value)
				}
			}
			if f := findingOf(t, report, cmp.Or(byPart[name], "loads.wing")); size <= 0 && byPart[name] != "" && f.Verdict == assess.VerdictHolds {
				t.Errorf("%s of %g: %s holds: %s", name, size, f.ID, f.Note)
			}
		}
	}
}
