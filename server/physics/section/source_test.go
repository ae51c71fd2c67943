package section

import (
	"math"
	"testing"

	"pitgate/server/physics/planform"
)

func TestSectionTables(t *testing.T) {
	t.Parallel()
	limit := func(in inputs, reynolds float64) float64 {
		return MaximumLift(planform.Section{Family: planform.FamilyFourDigit, Designation: in["designation"]}, reynolds, Roughness{}).Value
	}
	checkPublished(t, "sand80_2114", map[string]formula{
		"limit": func(t *testing.T, _ string, in inputs) float64 { return limit(in, in.number(t, "reynolds")) },
		"per-decade": func(_ *testing.T, _ string, in inputs) float64 {
			return (limit(in, 1e6) - limit(in, 8e4)) / math.Log10(1e6/8e4)
		},
	})
	checkPublished(t, "low_reynolds_bands", map[string]formula{
		"band": func(t *testing.T, _ string, in inputs) float64 { return limit(in, in.number(t, "reynolds")) },
	})
}

func TestThinAerofoilTheory(t *testing.T) {
	t.Parallel()
	fourDigit := func(f func(planform.Section) float64) formula {
		return func(_ *testing.T, _ string, in inputs) float64 {
			return f(planform.Section{Family: planform.FamilyFourDigit, Designation: in["designation"]})
		}
	}
	checkPublished(t, "thin_aerofoil", map[string]formula{
		"zero-lift":          fourDigit(func(s planform.Section) float64 { return ZeroLiftAngle(s) * 180 / math.Pi }),
		"section-moment":     fourDigit(Moment),
		"flap-effectiveness": func(t *testing.T, _ string, in inputs) float64 { return FlapEffectiveness(in.number(t, "chord")) },
		"flap-moment":        func(t *testing.T, _ string, in inputs) float64 { return FlapMoment(in.number(t, "chord")) },
	})
}
