package footprint

import (
	"math"
	"slices"
	"testing"

	"pitgate/server/physics/sample"
)

// TestStridesComeDownWhereFineStepsDo flies losses of a plan by both integrations.
func TestStridesComeDownWhereFineStepsDo(t *testing.T) {
	t.Parallel()
	for _, action := range all {
		for _, height := range []float64{5, 60, 120} {
			apart := stridesApart(t, planned(action, height))
			n, grace := len(apart), 1.0
			if action == Hold { // it lasts five minutes
				grace = 8
			}
			if half, most, worst := apart[n/2], apart[n*19/20], apart[n-1]; half > 0.15*grace || most > 0.5*grace || worst > 3*grace {
				t.Errorf("%v from %g m: half within %.2f m, 19 of 20 within %.2f m, all within %.2f m", action, height, half, most, worst)
			}
		}
	}
}

// stridesApart returns the distances between where strides and fine steps come down, least first.
func stridesApart(t *testing.T, plan Plan) []float64 {
	t.Helper()
	points, err := sample.New(dimensions, 128, 7)
	if err != nil {
		t.Fatal(err)
	}
	route, fine, coarse := newRoute(plan.Path), newFlight(), newFlight()
	coarse.coarse, coarse.table = true, tabled(plan.Wind.Profile, plan.highest())
	var apart []float64
	for i := range points.Count() {
		loss, at := plan.Loss, plan.pointOf(points, i)
		release := plan.vary(&loss, &route, &at)
		loss.Precision = 1e-5
		a, errA := loss.fall(fine, release)
		b, errB := loss.fall(coarse, release)
		if errA != nil || errB != nil {
			t.Fatal(errA, errB)
		}
		apart = append(apart, a.Place.Distance(b.Place))
	}
	slices.Sort(apart)
	return apart
}

// TestStridesFollowASteepSpiral flies a spiral with 60 degrees of bank from a fast circuit, to either side.
func TestStridesFollowASteepSpiral(t *testing.T) {
	t.Parallel()
	plan := planned(CutSpiral, 80)
	plan.EitherSpiral = true
	plan.Model.SpiralBank, plan.Model.RollTime, plan.Model.SpiralLift, plan.Model.RunDown = math.Pi/3, 0, 0.6*plan.Model.CLMax, 1
	apart := stridesApart(t, plan)
	if n := len(apart); apart[n/2] > 0.5 || apart[n*19/20] > 1 {
		t.Errorf("half within %.2f m, 19 of 20 within %.2f m", apart[n/2], apart[n*19/20])
	}
}
