package footprint

import (
	"math"
	"testing"

	"pitgate/server/physics/field"
)

// cloudOf samples a plan.
func cloudOf(t *testing.T, plan Plan) Cloud {
	t.Helper()
	cloud, err := plan.Sample()
	if err != nil {
		t.Fatal(err)
	}
	return cloud
}

// outlineOf draws an outline.
func outlineOf(t *testing.T, cloud Cloud, share float64) field.Polygon {
	t.Helper()
	outline, err := cloud.Outline(share)
	if err != nil {
		t.Fatal(err)
	}
	return outline
}

func TestEveryOutlineHoldsItsShare(t *testing.T) {
	t.Parallel()
	for _, action := range all {
		for _, height := range []float64{5, 60} {
			t.Run(action.String(), func(t *testing.T) {
				t.Parallel()
				plan := planned(action, height)
				plan.Samples = 300
				cloud := cloudOf(t, plan)
				for _, share := range []float64{0.01, 0.5, 0.95, 1} {
					outline := outlineOf(t, cloud, share)
					if err := outline.Check(); err != nil {
						t.Fatal(err)
					}
					if inside := cloud.ShareInside(outline); inside < share {
						t.Errorf("%g m, outline of %g holds %g", height, share, inside)
					}
					if outline.SignedArea() <= 0 {
						t.Errorf("outline of %g does not run counter-clockwise", share)
					}
				}
			})
		}
	}
}

func TestOutlinesNest(t *testing.T) {
	t.Parallel()
	for _, action := range all {
		plan := planned(action, 60)
		plan.Samples = 200
		cloud := cloudOf(t, plan)
		inner := outlineOf(t, cloud, 0.5)
		outer := outlineOf(t, cloud, 0.95)
		for _, corner := range inner {
			if outer.SignedDistance(corner) < -1e-9*corner.Length()-1e-9 {
				t.Errorf("%v: corner %v of the outline of a half lies %g outside that of 95 %%", action, corner, -outer.SignedDistance(corner))
			}
		}
	}
}

func TestOutlinesGrowWithHeight(t *testing.T) {
	t.Parallel()
	for _, action := range []Action{FlyAway, CutNeutral, CutSpiral, IdleNeutral, Breakup} {
		before := 0.0
		for _, height := range []float64{20, 40, 80, 160} {
			plan := planned(action, height)
			plan.Samples = 300
			area := outlineOf(t, cloudOf(t, plan), 0.95).Area()
			if !(area > before) {
				t.Errorf("%v from %g m: %g m2 after %g", action, height, area, before)
			}
			before = area
		}
	}
}

func TestFootprintReachesFartherInMoreWind(t *testing.T) {
	t.Parallel()
	for _, action := range []Action{FlyAway, CutNeutral, CutSpiral, IdleNeutral, Breakup} {
		before := 0.0
		for _, wind := range []float64{0, 3, 6, 12} {
			plan := planned(action, 60)
			plan.Samples, plan.Wind.Speed, plan.Spread.WindSpeed = 300, wind, wind/5
			if action == FlyAway {
				// A few samples of a faster model reach farther than a little wind carries.
				plan.Spread.Drag, plan.Spread.GlideRatio = 0, 0
			}
			cloud := cloudOf(t, plan)
			if far := cloud.FarthestFrom(field.Point{}); !(far > before) {
				t.Errorf("%v in %g m/s: reaches %g m after %g", action, wind, far, before)
			} else {
				before = far
			}
		}
	}
}

func TestFootprintIsTheSameEveryTime(t *testing.T) {
	t.Parallel()
	plan := planned(CutNeutral, 60)
	plan.Samples = 100
	first, second := cloudOf(t, plan), cloudOf(t, plan)
	for i := range first.Impacts {
		if first.Impacts[i] != second.Impacts[i] {
			t.Fatalf("sample %d differs", i+1)
		}
	}
}

func TestSpreadWidensTheFootprint(t *testing.T) {
	t.Parallel()
	narrow := planned(CutNeutral, 60)
	narrow.Path = narrow.Path[:1]
	narrow.Samples = 300
	wide := narrow
	narrow.Spread = Spread{}
	without, with := outlineOf(t, cloudOf(t, narrow), 0.95), outlineOf(t, cloudOf(t, wide), 0.95)
	if without.Area() > 4 || with.Area() < 1000 {
		t.Errorf("areas %g m2 without spread and %g m2 with it", without.Area(), with.Area())
	}
}

func TestQuantilesAreOrdered(t *testing.T) {
	t.Parallel()
	cloud := cloudOf(t, planned(CutNeutral, 60))
	for name, at := range map[string]func(float64) float64{
		"energy": cloud.EnergyAt, "speed": cloud.SpeedAt, "time": cloud.TimeAt,
		"critical area": func(share float64) float64 {
			area, err := cloud.CriticalAreaAt(share, AnnexF())
			if err != nil {
				t.Error(err)
			}
			return area
		},
	} {
		before := math.Inf(-1)
		for _, share := range []float64{-1, 0, 0.05, 0.5, 0.95, 1, 2} {
			if value := at(share); value < before || math.IsNaN(value) {
				t.Errorf("%s at %g is %g after %g", name, share, value, before)
			} else {
				before = value
			}
		}
		if at(0.05) == at(0.95) {
			t.Errorf("%s does not vary", name)
		}
	}
}

func TestEmptyCloudRefusesOutlines(t *testing.T) {
	t.Parallel()
	if _, err := (Cloud{}).Outline(0.5); err == nil {
		t.Error("a cloud without impacts must have no outline")
	}
	cloud := cloudOf(t, planned(Breakup, 20))
	for _, share := range []float64{0, -1, 1.01, math.NaN()} {
		if _, err := cloud.Outline(share); err == nil {
			t.Errorf("an outline of %g must be refused", share)
		}
	}
}

func TestMoreSamplesDrawTheSameOutline(t *testing.T) {
	t.Parallel()
	for _, action := range []Action{CutNeutral, CutSpiral, Breakup} {
		plan := planned(action, 60)
		few := outlineOf(t, cloudOf(t, plan), 0.95)
		plan.Samples = 4000
		many := outlineOf(t, cloudOf(t, plan), 0.95)
		near(t, action.String()+" area over area of four times the samples", few.Area()/many.Area(), 1, 0.05)
		near(t, action.String()+" shift of the middle", few.Centroid().Distance(many.Centroid()), 0, 0.02*math.Sqrt(many.Area()))
	}
}

func TestEitherSpiralGoesToBothSides(t *testing.T) {
	t.Parallel()
	plan := planned(CutSpiral, 60)
	plan.Path = []Release{{Height: 60, Speed: 30}}
	plan.Wind = Wind{}
	right := cloudOf(t, plan)
	plan.EitherSpiral = true
	both := cloudOf(t, plan)
	side := func(c Cloud) float64 { return c.shareOf(func(place field.Point) bool { return place.X > 0 }) }
	if side(right) < 0.99 {
		t.Errorf("a spiral to the right goes right in %g", side(right))
	}
	near(t, "share to the right", side(both), 0.5, 0.02)
}

// TestChanceIsToldAsItIs wants the outlines within and beyond as far apart as outlines of other draws scatter: the mean of half that distance over the
// standard deviation, of the reach in four directions, is at least 1 and at most 2.5 in the mean of several plans, as even points scatter less than
// independent ones.
func TestChanceIsToldAsItIs(t *testing.T) {
	t.Parallel()
	const plans, draws, sides = 6, 16, 4
	sum := 0.0
	for i := range plans {
		plan := varied(i)
		plan.Samples = 1024
		var told, mean, square [sides]float64
		for seed := range draws {
			cloud, err := plan.Estimate(drawsOf(uint64(seed)), true)
			if err != nil {
				t.Fatal(err)
			}
			outlines, err := cloud.Outlines(0.95)
			if err != nil {
				t.Fatal(err)
			}
			for k := range sides {
				angle := 2 * math.Pi * float64(k) / sides
				inner, middle, outer := reachOf(outlines.Inner, angle), reachOf(outlines.Middle, angle), reachOf(outlines.Outer, angle)
				if inner > middle || middle > outer {
					t.Fatalf("plan %d: outlines reach %g, %g and %g m", i, inner, middle, outer)
				}
				told[k] += (outer - inner) / 2 / draws
				mean[k] += middle / draws
				square[k] += middle * middle / draws
			}
		}
		for k := range sides {
			sum += told[k] / math.Sqrt(square[k]-mean[k]*mean[k]) / (plans * sides)
		}
	}
	if sum < 1 || sum > 2.5 {
		t.Errorf("told chance is %.2f of the scatter", sum)
	}
}
