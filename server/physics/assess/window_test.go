package assess_test

import (
	"strings"
	"testing"

	"pitgate/server/physics/assess"
	"pitgate/server/physics/weather"
)

// windowOf finds the winds that hold for a demo document.
func windowOf(t *testing.T, name string) (assess.Input, assess.WindWindow) {
	t.Helper()
	in := demoInput(t, name)
	geometry, err := assess.Prepare(in)
	if err != nil {
		t.Fatal(err)
	}
	window, err := geometry.Window(in)
	if err != nil {
		t.Fatal(err)
	}
	return in, window
}

// TestWindowAgreesWithWholeReports assesses whole documents just below and above the greatest wind of some directions and wants the findings asked to
// hold, and one of them not to.
func TestWindowAgreesWithWholeReports(t *testing.T) {
	t.Parallel()
	in, window := windowOf(t, "sandmartin_long_acre")
	if len(window.Ways) != 2 {
		t.Fatalf("%d ways", len(window.Ways))
	}
	excess := *in.Day.GustSpeedMetersPerSecond.Value - *in.Day.WindSpeedMetersPerSecond.Value
	ground := weather.LeastGustFactor(weather.LowCrops) - 1
	asked := 0
	for i := 0; i < len(window.Ways[0].Ranges); i += 5 {
		r := window.Ways[0].Ranges[i]
		if !r.Holds || r.Open {
			continue
		}
		asked++
		for _, row := range []struct {
			speed float64
			holds bool
		}{{r.MostMetersPerSecond, true}, {r.MostMetersPerSecond + 0.3, false}} {
			windy := in
			day := *in.Day
			day.WindSpeedMetersPerSecond, day.GustSpeedMetersPerSecond, day.WindDirectionDegrees = quantity(row.speed), quantity(row.speed+max(excess, ground*row.speed)), quantity(r.FromDegrees)
			windy.Day = &day
			if got := failing(unbanded(t, windy), window.FindingIDs); (got == "") != row.holds {
				t.Errorf("%.1f m/s from %.0f degrees: %q fails, holds should be %v", row.speed, r.FromDegrees, got, row.holds)
			}
		}
	}
	if asked < 4 {
		t.Errorf("only %d directions could be asked", asked)
	}
}

// failing returns the first of some findings that fails.
func failing(report assess.Report, ids []string) string {
	for _, f := range report.Findings {
		for _, id := range ids {
			if f.ID == id && f.Verdict == assess.VerdictFails {
				return id
			}
		}
	}
	return ""
}

// TestWindowPrefersTheHeadwind wants the way that faces the wind, and the other one when the wind turns about.
func TestWindowPrefersTheHeadwind(t *testing.T) {
	t.Parallel()
	_, window := windowOf(t, "dabchick_long_acre")
	if !strings.HasPrefix(window.BestWay, "06/24 to 60 degrees") || window.Curve == nil || len(window.Curve.Series) != 2 || len(window.Curve.Series[0].Points) != 36 {
		t.Errorf("best %q: %s", window.BestWay, window.Note)
	}
	for i, way := range window.Ways {
		into, away := way.Ranges[(6+18*i)%36], way.Ranges[(24+18*i)%36]
		if into.MostMetersPerSecond < away.MostMetersPerSecond {
			t.Errorf("%s: %.1f m/s into the wind, %.1f m/s before it", way.Name, into.MostMetersPerSecond, away.MostMetersPerSecond)
		}
	}
}

// TestWindowOfARampNeedsWind wants the short ramp to hold in no calm.
func TestWindowOfARampNeedsWind(t *testing.T) {
	t.Parallel()
	_, window := windowOf(t, "redshank_quarry_top")
	if len(window.Ways) != 1 {
		t.Fatalf("%d ways", len(window.Ways))
	}
	for _, r := range window.Ways[0].Ranges {
		if r.Holds && r.LeastMetersPerSecond == 0 {
			t.Errorf("holds in calm air from %.0f degrees", r.FromDegrees)
		}
	}
}

func TestWindowNamesWhatIsMissing(t *testing.T) {
	t.Parallel()
	geometry, err := assess.Prepare(assess.Input{})
	if err != nil {
		t.Fatal(err)
	}
	window, err := geometry.Window(assess.Input{})
	if err != nil || len(window.Ways) != 0 || !strings.Contains(strings.Join(window.Missing, " "), "launchPlan.method") {
		t.Errorf("%+v, %v", window, err)
	}
}
