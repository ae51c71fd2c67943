package assess_test

import (
	"math"
	"testing"

	"pitgate/server/physics/assess"
)

// layouts are kinds of aeroplane made from the Dabchick and the Redshank.
var layouts = []struct {
	name, document string
	change         func(*assess.Input)
	control        string // that trims
}{
	{"tail aft", "dabchick_long_acre", func(*assess.Input) {}, "elevator"},
	{"V-tail", "dabchick_long_acre", func(in *assess.Input) {
		tail := &in.Model.Surfaces[1]
		tail.Role, tail.Controls[0].Role, tail.Controls[0].Name = assess.SurfaceRoleVTail, assess.ControlRoleRuddervator, "ruddervator"
		tail.Stations[1].LeadingEdgeZMeters = number(0.32)
		in.Model.Surfaces = in.Model.Surfaces[:2]
	}, "ruddervator"},
	{"tailless with elevons and winglets", "redshank_quarry_top", func(in *assess.Input) {
		wing, fin := in.Model.Surfaces[0], in.Model.Surfaces[2]
		wing.Stations[1].LeadingEdgeXMeters, wing.Stations[1].TwistDegrees = number(1.45), number(-4)
		for i := range wing.Stations {
			wing.Stations[i].Section = &assess.Section{Family: assess.SectionFamilyReflexed, ThicknessRatio: number(0.1), CamberRatio: number(0.015)}
		}
		for i := range fin.Stations {
			fin.Stations[i].LeadingEdgeYMeters = number(1.06)
			fin.Stations[i].LeadingEdgeXMeters = number(1.5 + 0.1*float64(i))
		}
		fin.Role = assess.SurfaceRoleWinglet
		in.Model.Surfaces = []assess.LiftingSurface{wing, fin}
		in.Model.Mass.EmptyBalanceXMeters, in.Model.Mass.Tanks[0].XMeters = quantity(1.16), number(1.16)
		in.Model.HandlingClass = assess.HandlingClassTailless
	}, "elevon"},
	{"canard", "redshank_quarry_top", func(*assess.Input) {}, "canard"},
	{"two wings", "dabchick_long_acre", func(in *assess.Input) {
		upper := in.Model.Surfaces[0]
		upper.Name, upper.Role, upper.Controls = "upper wing", assess.SurfaceRoleSecondWing, nil
		upper.Stations = []assess.Station{upper.Stations[0], upper.Stations[1]}
		for i := range upper.Stations {
			upper.Stations[i].LeadingEdgeZMeters = number(*upper.Stations[i].LeadingEdgeZMeters + 0.25)
		}
		in.Model.Surfaces = append(in.Model.Surfaces, upper)
		in.Model.Surfaces[3], in.Model.Surfaces[1] = in.Model.Surfaces[1], in.Model.Surfaces[3]
	}, "elevator"},
	{"twin fins", "nightjar_long_acre", func(*assess.Input) {}, "elevator"},
}

// TestLayoutsAreAnswered wants every finding of handling answered with a number that a flying model may have, whatever the layout.
func TestLayoutsAreAnswered(t *testing.T) {
	t.Parallel()
	bounds := map[string][2]float64{
		"stall.speed": {5, 40}, "stall.tip": {-1, 25}, "balance.margin_full": {-0.5, 0.6}, "balance.trim": {-1, 1}, "balance.launch_trim": {-1, 1},
		"pitch.sensitivity": {0.05, 30}, "pitch.damping": {0.1, 4}, "fin.stiffness": {-0.1, 0.5}, "roll.rate": {0.02, 0.4}, "roll.reversal": {0.1, 20},
	}
	for _, row := range layouts {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, row.document)
			row.change(&in)
			report := assessed(t, in)
			for id, between := range bounds {
				f := findingOf(t, report, id)
				if f.Value == nil {
					t.Errorf("%s: %s, missing %v, %s", id, f.Verdict, f.Missing, f.Note)
				} else if math.IsNaN(*f.Value) || *f.Value < between[0] || *f.Value > between[1] {
					t.Errorf("%s: %g is not within %v: %s", id, *f.Value, between, f.Note)
				}
			}
			if got := curveOf(t, report, "trim.elevator").YTitle; got != "Angle of the "+row.control {
				t.Errorf("trims with %q, want the %s", got, row.control)
			}
			wantChain(t, report)
		})
	}
}
