package assess_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
	"pitgate/server/physics/landing"
	"pitgate/server/physics/motion"
)

// rollingOf is the Dabchick at Long Acre with rolling tests instead of the surface table.
func rollingOf(t *testing.T, tests ...assess.RollingTest) assess.Input {
	t.Helper()
	in := demoInput(t, "dabchick_long_acre")
	in.Model.Gear.RollingResistanceRatio, in.Model.Gear.RollingTests = nil, tests
	return in
}

// pulled is a steady pull of a mass that gives a friction, known to a share.
func pulled(friction, mass, spread float64) assess.RollingTest {
	force := friction * mass * motion.Gravity
	return assess.RollingTest{
		PullNewtons: &assess.Quantity{Value: &force, Basis: assess.BasisMeasured, Spread: number(spread * force)},
		MassKg:      &assess.Quantity{Value: &mass, Basis: assess.BasisMeasured, Spread: number(0)},
	}
}

// TestRollingTestsReplaceTheTable wants a pull test to give the launch of the same friction entered directly, its band included, and the report to say so.
func TestRollingTestsReplaceTheTable(t *testing.T) {
	t.Parallel()
	const friction, share = 0.13, 0.06
	by := assessed(t, rollingOf(t, pulled(friction, 7, share)))
	direct := rollingOf(t)
	direct.Model.Gear.RollingResistanceRatio = &assess.Quantity{Value: number(friction), Basis: assess.BasisMeasured, Spread: number(friction * share)}
	want := assessed(t, direct)
	for _, id := range []string{"launch.distance", "landing.distance"} {
		a, b := findingOf(t, by, id), findingOf(t, want, id)
		if math.Abs(*a.Value-*b.Value) > 1e-9 || math.Abs(*a.BandLow-*b.BandLow) > 1e-9 || math.Abs(*a.BandHigh-*b.BandHigh) > 1e-9 {
			t.Errorf("%s: %g [%g %g], entered directly %g [%g %g]", id, *a.Value, *a.BandLow, *a.BandHigh, *b.Value, *b.BandLow, *b.BandHigh)
		}
	}
	wantChain(t, by)
	used := quantityOf(t, by, "launch.rolling_friction")
	if !strings.Contains(used.Formula, "measured") || !slices.Equal(used.From, []string{"gear.rolling_friction"}) {
		t.Errorf("the friction used does not name the tests: %+v", used)
	}
	shares := findingOf(t, by, "launch.distance").SpreadShares
	if !slices.ContainsFunc(shares, func(s assess.SpreadShare) bool { return s.Input == "model.gear.rollingTests" }) {
		t.Errorf("the tests have no share in the spread: %+v", shares)
	}
	table := assessed(t, rollingOf(t))
	if q := quantityOf(t, table, "launch.rolling_friction"); strings.Contains(q.Formula, "measured") || *q.Value == friction {
		t.Errorf("without tests: %+v", q)
	}
}

func quantityOf(t *testing.T, report assess.Report, id string) assess.ReportQuantity {
	t.Helper()
	i := slices.IndexFunc(report.Quantities, func(q assess.ReportQuantity) bool { return q.ID == id })
	if i < 0 {
		t.Fatalf("no quantity %s", id)
	}
	return report.Quantities[i]
}

// TestRollingMean wants the mean of pulls, with their scatter as its spread where that is more than their own.
func TestRollingMean(t *testing.T) {
	t.Parallel()
	wide, err := assess.Rolling(rollingOf(t, pulled(0.10, 7, 0.001), pulled(0.12, 7, 0.001), pulled(0.14, 7, 0.001)))
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(*wide.FrictionRatio-0.12) > 1e-12 || math.Abs(*wide.SpreadRatio-0.02/math.Sqrt(3)) > 1e-12 {
		t.Errorf("mean %g, spread %g", *wide.FrictionRatio, *wide.SpreadRatio)
	}
	own, err := assess.Rolling(rollingOf(t, pulled(0.12, 7, 0.1), pulled(0.12, 7, 0.1)))
	if err != nil || math.Abs(*own.SpreadRatio-0.012/math.Sqrt2) > 1e-12 {
		t.Errorf("spread %v (%v), want that of the scale", own.SpreadRatio, err)
	}
}

// TestRollingWays wants the three ways of testing to agree on a roll without drag to speak of, and each to say which it was.
func TestRollingWays(t *testing.T) {
	t.Parallel()
	const friction, speed = 0.2, 1.0
	slowing := friction * motion.Gravity
	passes := func(x float64) float64 { return (speed - math.Sqrt(speed*speed-2*slowing*x)) / slowing }
	done, err := assess.Rolling(rollingOf(t, pulled(friction, 7, 0.01),
		assess.RollingTest{SpeedMetersPerSecond: quantity(speed), DistanceMeters: quantity(speed * speed / (2 * slowing))},
		assess.RollingTest{
			SecondMarkSeconds: quantity(passes(0.1)), ThirdMarkSeconds: quantity(passes(0.2)), SecondMarkMeters: number(0.1), ThirdMarkMeters: number(0.2),
		}))
	if err != nil {
		t.Fatal(err)
	}
	for i, way := range []string{"steady pull", "roll to rest", "roll past three marks"} {
		if test := done.Tests[i]; test.Way != way || math.Abs(*test.FrictionRatio-friction) > 2e-3 {
			t.Errorf("%s: %+v, friction %g", way, test, *test.FrictionRatio)
		}
	}
}

func TestRollingRefusals(t *testing.T) {
	t.Parallel()
	in := rollingOf(t, pulled(0.1, 7, 0), assess.RollingTest{PullNewtons: quantity(-1), MassKg: quantity(7)})
	var refused *assess.RollingError
	if _, err := assess.Run(in); !errors.As(err, &refused) || refused.Path != "model.gear.rollingTests[1]" || !errors.Is(err, landing.ErrPull) {
		t.Errorf("a pull below zero: %v", err)
	}
	begun := assessed(t, rollingOf(t, assess.RollingTest{SpeedMetersPerSecond: quantity(3)}))
	if f := findingOf(t, begun, "launch.distance"); f.Verdict != assess.VerdictUnknown || !slices.Contains(f.Missing, "model.gear.rollingTests[0].distanceMeters") {
		t.Errorf("a test half described: %s, missing %v", f.Verdict, f.Missing)
	}
	if _, err := assess.Rolling(rollingOf(t)); err == nil {
		t.Error("no test, no error")
	}
}
