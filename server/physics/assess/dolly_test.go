package assess_test

import (
	"math"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

func pathOf(report assess.Report, id string) []assess.PathPoint {
	for _, path := range report.Paths {
		if path.ID == id {
			return path.Points
		}
	}
	return nil
}

// TestDollyFallIsDrawn wants the fall to begin where the rails end and to come down where it is told, on the profile and over the field.
func TestDollyFallIsDrawn(t *testing.T) {
	t.Parallel()
	report := rampOf(t, func(*assess.LaunchPlan) {})
	fall, plan := pathOf(report, "launch.dolly_fall"), pathOf(report, "launch.dolly_plan")
	if len(fall) < 3 || len(plan) != len(fall) {
		t.Fatalf("%d points from the side, %d from above", len(fall), len(plan))
	}
	end := fall[len(fall)-1]
	if told := toldOf(t, report, "launch.dolly_distance"); math.Abs(end.XMeters-told) > 1e-6 {
		t.Errorf("drawn to %g m, told %g m", end.XMeters, told)
	}
	if fall[0].ZMeters-end.ZMeters < 0.3 {
		t.Errorf("falls from %g m to %g m", fall[0].ZMeters, end.ZMeters)
	}
	for i := 1; i < len(fall); i++ {
		if fall[i].XMeters < fall[i-1].XMeters {
			t.Errorf("goes back from %g m to %g m", fall[i-1].XMeters, fall[i].XMeters)
		}
	}
	launch := pathOf(report, "launch.plan")
	if d := math.Hypot(plan[0].XMeters-launch[0].XMeters, plan[0].YMeters-launch[0].YMeters); math.Abs(d-fall[0].XMeters) > 0.05 {
		t.Errorf("begins %g m from the start over the field, %g m on the profile", d, fall[0].XMeters)
	}
	bare := rampOf(t, func(plan *assess.LaunchPlan) { plan.Ramp.DollyMassKg = nil })
	if pathOf(bare, "launch.dolly_fall") != nil {
		t.Error("no dolly, but one is drawn")
	}
}

// TestDollyAndPeople wants people laid under the fall of the dolly to fail it, and the same people aside of it not to.
func TestDollyAndPeople(t *testing.T) {
	t.Parallel()
	usual := demoInput(t, "redshank_quarry_top")
	report := assessed(t, usual)
	wantChain(t, report)
	free := findingOf(t, report, "launch.dolly")
	if free.Verdict != assess.VerdictHolds {
		t.Errorf("%s: %s", free.Verdict, free.Note)
	}
	plan := pathOf(report, "launch.dolly_plan")
	end := plan[len(plan)-1]
	box := func(side float64) []assess.Point {
		x, y := end.XMeters, end.YMeters
		return []assess.Point{
			{XMeters: number(x - side), YMeters: number(y - side)}, {XMeters: number(x + side), YMeters: number(y - side)},
			{XMeters: number(x + side), YMeters: number(y + side)}, {XMeters: number(x - side), YMeters: number(y + side)},
		}
	}
	usual.Field.Pits = append(usual.Field.Pits, assess.NamedArea{Name: "tent", Area: &assess.Polygon{Corners: box(1)}})
	hit := findingOf(t, assessed(t, usual), "launch.dolly")
	if hit.Verdict != assess.VerdictFails || !strings.Contains(hit.Note, "tent") || !(*hit.Value < 0) {
		t.Errorf("people under it: %s, %v (%s)", hit.Verdict, hit.Value, hit.Note)
	}
}

// TestLandingBand wants the approach drawn with its spread: wide where the slope is uncertain, none where the model stands.
func TestLandingBand(t *testing.T) {
	t.Parallel()
	points := pathOf(assessed(t, demoInput(t, "dabchick_long_acre")), "landing.profile")
	if len(points) < 4 {
		t.Fatalf("%d points", len(points))
	}
	first, last := points[0], points[len(points)-1]
	if !(first.HalfBandMeters > 0.3) || !(first.HalfBandMeters > 4*last.HalfBandMeters) {
		t.Errorf("half band %g m, %g m up, and %g m at the end", first.HalfBandMeters, first.ZMeters, last.HalfBandMeters)
	}
}
