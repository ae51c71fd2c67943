package footprint

import (
	"math"
	"slices"
	"testing"

	"pitgate/server/physics/field"
	"pitgate/server/physics/weather"
)

// estimateOf estimates a plan.
func estimateOf(t *testing.T, plan Plan, placesOnly bool) Cloud {
	t.Helper()
	cloud, err := plan.Estimate(NewDraws(), placesOnly)
	if err != nil {
		t.Fatal(err)
	}
	return cloud
}

// TestEstimatesComeDownWhereSamplesDo estimates many plans: other actions, heights, speeds, winds and masses. Half of the falls end within 3.5 m of the same
// in fine steps and the told error is of the size of the mean distance, within a factor of four. The outline reaches as far as that of fine steps in every direction, to 5 m in
// nine of ten plans and to 12 m in all: where a few falls just clear the ground and float on, no steps tell which.
func TestEstimatesComeDownWhereSamplesDo(t *testing.T) {
	t.Parallel()
	const plans = 48
	reaches := make([]float64, plans)
	for i := range plans {
		plan := varied(i)
		fine, rough := cloudOf(t, plan), estimateOf(t, plan, true)
		half, mean := distances(fine, rough)
		if half > 3.5 || rough.Error > mostError || rough.Error < mean/4 || rough.Error > 4*mean {
			t.Errorf("%d %v: half within %.2f m, mean %.2f m, told %.2f m", i, plan.Action, half, mean, rough.Error)
		}
		reaches[i] = reachApart(outlineOf(t, fine, 0.95), outlineOf(t, rough, 0.95))
	}
	slices.Sort(reaches)
	if most, worst := reaches[plans*9/10], reaches[plans-1]; most > 5 || worst > 12 {
		t.Errorf("outlines reach as far to %.1f m in nine of ten plans and to %.1f m in all", most, worst)
	}
}

// distances returns the middle and the mean distance of the places of two clouds.
func distances(a, b Cloud) (half, mean float64) {
	apart := make([]float64, len(b.Places()))
	for i, place := range b.Places() {
		apart[i] = place.Distance(a.Impacts[i].Place)
		mean += apart[i] / float64(len(apart))
	}
	slices.Sort(apart)
	return apart[len(apart)/2], mean
}

// TestFlyAwaysAreEstimated wants the disc of a fly-away, whose headings differ by half a layer.
func TestFlyAwaysAreEstimated(t *testing.T) {
	t.Parallel()
	plan := planned(FlyAway, 60)
	fine, rough := cloudOf(t, plan), estimateOf(t, plan, true)
	a, b := outlineOf(t, fine, 0.95), outlineOf(t, rough, 0.95)
	near(t, "area over area", b.Area()/a.Area(), 1, 0.001)
	if rough.Error > mostError || reachApart(a, b) > 15 {
		t.Errorf("error %.2f m, reach %.1f m apart", rough.Error, reachApart(a, b))
	}
}

// TestHeldCommandsAreEstimated holds the last command for minutes, circling, while half a layer of the wind's speed leads far.
func TestHeldCommandsAreEstimated(t *testing.T) {
	t.Parallel()
	plan := planned(Hold, 60)
	fine, rough := cloudOf(t, plan), estimateOf(t, plan, true)
	a, b := outlineOf(t, fine, 0.95), outlineOf(t, rough, 0.95)
	near(t, "area over area", b.Area()/a.Area(), 1, 0.02)
	if half, _ := distances(fine, rough); rough.Error > mostError || half > 10 {
		t.Errorf("error %.2f m, half within %.1f m", rough.Error, half)
	}
}

// TestPlacesAloneAreTheSame wants the same places with and without the rest.
func TestPlacesAloneAreTheSame(t *testing.T) {
	t.Parallel()
	for _, action := range all {
		plan := planned(action, 60)
		plan.Samples = 200
		alone, whole := estimateOf(t, plan, true), estimateOf(t, plan, false)
		if alone.Error != whole.Error || !slices.Equal(alone.Places(), whole.Places()) || len(alone.Impacts) != 0 {
			t.Errorf("%v: places differ", action)
		}
		for i, impact := range whole.Impacts {
			if impact.Place != whole.places[i] || !impact.Landed || !(impact.Energy > 0) || !(impact.Angle > -0.1) {
				t.Fatalf("%v: impact %d: %+v", action, i, impact)
			}
		}
	}
}

// TestImpossiblePlansAreNotEstimated wants the error of Sample.
func TestImpossiblePlansAreNotEstimated(t *testing.T) {
	t.Parallel()
	plan := planned(CutNeutral, 60)
	plan.Path = nil
	if _, err := plan.Estimate(NewDraws(), true); err == nil {
		t.Error("a plan without a path is estimated")
	}
}

// reachApart is the greatest difference of how far two outlines reach in any direction, m.
func reachApart(a, b field.Polygon) float64 {
	most := 0.0
	for k := range outlineSides {
		angle := 2 * math.Pi * float64(k) / outlineSides
		most = max(most, math.Abs(reachOf(a, angle)-reachOf(b, angle)))
	}
	return most
}

// reachOf is how far an outline reaches in a direction, m.
func reachOf(p field.Polygon, angle float64) float64 {
	toward, far := field.Point{X: math.Cos(angle), Y: math.Sin(angle)}, math.Inf(-1)
	for _, c := range p {
		far = max(far, toward.Dot(c))
	}
	return far
}

// varied is one of many plans: other actions, heights, speeds, winds, masses.
func varied(i int) Plan {
	share := func(k int) float64 { // of a lattice of good points
		_, f := math.Modf(float64(i+1) * []float64{0.7548776662466927, 0.5698402909980532, 0.8191725133961644, 0.6710436067037893, 0.5497004779019701, 0.45}[k])
		return f
	}
	action := []Action{CutSpiral, CutNeutral, IdleNeutral, Breakup}[i%4]
	height := 20 + 100*share(0)
	plan := planned(action, height)
	speed := 18 + 30*share(1)
	for k := range plan.Path {
		plan.Path[k].Speed = speed
		plan.Path[k].Bank = -min(0.87, math.Atan(speed*speed/9.81/150))
	}
	plan.Model.Mass = 2 + 18*share(2)
	plan.Model.Area = 2 * plan.Model.Mass * 9.81 / (1.2 * 0.25 * speed * speed) // level at a coefficient of 0.25
	plan.Wind = Wind{Speed: 15 * share(3), From: 6 * share(4), Profile: weather.NewProfile(weather.OpenGrass, 0)}
	plan.Spread.Height, plan.Spread.Speed, plan.Spread.Bank, plan.Spread.Lift = 0.1*height, 0.1*speed, 0.17, 0.1
	plan.Model.SpiralBank, plan.Model.RollTime, plan.Model.SpiralLift = math.Pi/3, 0, 0.6*plan.Model.CLMax
	plan.Model.LevelTime = []float64{0, 5, 30, 1e6}[i/4%4]
	plan.Model.IdleThrust = 0.03 * plan.Model.Mass * 9.81
	plan.Model.FullThrust = plan.Model.Mass * 9.81
	plan.EitherSpiral, plan.Samples = true, MostDraws
	return plan
}
