package assess_test

import (
	"slices"
	"testing"

	"pitgate/server/physics/assess"
)

func TestLooserNamesWhatLetsMorePass(t *testing.T) {
	t.Parallel()
	number := func(v float64) *float64 { return &v }
	rows := []struct {
		name   string
		limits assess.Limits
		want   []string
	}{
		{"nothing given", assess.Limits{}, nil},
		{"the core's own", assess.Limits{MinimumLiftoffRatio: number(1.2), MaximumStaticMarginRatio: number(0.20)}, nil},
		{"stricter", assess.Limits{MinimumClearanceMeters: number(5), MaximumStripUseRatio: number(0.35)}, nil},
		{"a least value lowered", assess.Limits{MinimumClearanceMeters: number(2.9)}, []string{"minimumClearanceMeters"}},
		{"a greatest value raised", assess.Limits{MaximumStripUseRatio: number(0.8)}, []string{"maximumStripUseRatio"}},
		{"any sink", assess.Limits{MaximumLaunchSinkMeters: number(0.1)}, []string{"maximumLaunchSinkMeters"}},
		{"two", assess.Limits{MinimumTurnRatio: number(1.1), MinimumLiftoffRatio: number(1)}, []string{"minimumLiftoffRatio", "minimumTurnRatio"}},
		{"handling", assess.Limits{MaximumLoadPerDegree: number(5), MinimumRollRatio: number(0.05), MinimumPitchReserveRatio: number(0.3),
			MinimumTipStallMarginDegrees: number(0), MinimumFinStiffnessPerRadian: number(0.03), MinimumPitchDampingRatio: number(0.3),
			MinimumReversalRatio: number(1.2), MaximumMassDifferenceRatio: number(0.05)},
			[]string{"minimumTipStallMarginDegrees", "maximumLoadPerDegree", "minimumFinStiffnessPerRadian", "minimumRollRatio",
				"minimumPitchDampingRatio", "minimumReversalRatio", "maximumMassDifferenceRatio"}},
		{"day", assess.Limits{MinimumSunOffsetDegrees: number(20), MaximumWeatherAgeMinutes: number(90), MaximumGustMetersPerSecond: number(60)},
			[]string{"minimumSunOffsetDegrees", "maximumWeatherAgeMinutes"}},
		{"landing and reach", assess.Limits{MinimumApproachRatio: number(1.2), MaximumLandingUseRatio: number(0.9), MinimumReachRatio: number(0.5),
			LandingDistanceFactor: number(1.5), TakeoffDistanceFactor: number(1)}, []string{"minimumApproachRatio", "maximumLandingUseRatio", "minimumReachRatio"}},
		{"figures the core has no own for", assess.Limits{MaximumMassKg: number(200), MaximumSpeedMetersPerSecond: number(300)}, nil},
	}
	for _, row := range rows {
		if got := row.limits.Looser(); !slices.Equal(got, row.want) {
			t.Errorf("%s: got %v, want %v", row.name, got, row.want)
		}
	}
}
