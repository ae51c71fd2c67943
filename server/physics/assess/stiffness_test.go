package assess_test

import (
	"math"
	"testing"

	"pitgate/server/physics/assess"
)

// TestTorsionBoxStandsInForAMeasuredStiffness computes the box by hand: 60 by 20 mm, skin of 0.5 mm glass of 3.5 GPa, half span 0.66 m:
// A = 0.0012 m2, s = 0.16 m, G J = 4 A^2 G t/s = 63 N m2, K = 63/0.66 = 95.45 N m/rad.
func TestTorsionBoxStandsInForAMeasuredStiffness(t *testing.T) {
	t.Parallel()
	in := demoInput(t, "dabchick_long_acre")
	in.Model.Structure.WingTwistStiffnessNewtonMetersPerRadian = nil
	in.Model.Structure.TorsionBox = &assess.TorsionBox{
		WidthMeters: quantity(0.06), DepthMeters: quantity(0.02), SkinThicknessMeters: quantity(0.0005), Material: "Glass cloth, epoxy",
	}
	report := assessed(t, in)
	if got := toldOf(t, report, "roll.twist_stiffness"); math.Abs(got-63/0.66) > 1e-9 {
		t.Errorf("stiffness %g, want %g", got, 63/0.66)
	}
	wantChain(t, report)
	in.Model.Structure.TorsionBox.Material = "unobtainium"
	f := findingOf(t, assessed(t, in), "roll.reversal")
	if f.Verdict != assess.VerdictUnknown || len(f.Missing) != 1 || f.Missing[0] != "model.structure.torsionBox.material" {
		t.Errorf("%s, missing %v", f.Verdict, f.Missing)
	}
}
