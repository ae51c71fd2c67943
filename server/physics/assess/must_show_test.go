package assess_test

import (
	"math"
	"testing"

	"pitgate/server/physics/assess"
)

// TestWindTurnsTheVerdict wants a strip that holds with the wind on the nose to fail with the same wind from behind, and to say why.
func TestWindTurnsTheVerdict(t *testing.T) {
	t.Parallel()
	with := func(from float64) assess.Finding {
		in := demoInput(t, "sandmartin_long_acre_wet")
		in.Day.WindSpeedMetersPerSecond, in.Day.WindDirectionDegrees, in.Day.GustSpeedMetersPerSecond = quantity(7), quantity(from), nil
		return findingOf(t, unbanded(t, in), "launch.distance")
	}
	nose, tail := with(60), with(240)
	if nose.Verdict != assess.VerdictHolds || tail.Verdict != assess.VerdictFails {
		t.Errorf("on the nose: %s at %g m, from behind: %s at %g m", nose.Verdict, *nose.Value, tail.Verdict, *tail.Value)
	}
}

// TestHedgeTurnsTheVerdict lays a hedge of 2.4 m across the launch, 140 m from its start: it turns the verdict where the path passes lower than the hedge
// and the clearance asked for, and it does not where the model has climbed by then.
func TestHedgeTurnsTheVerdict(t *testing.T) {
	t.Parallel()
	across := func(setting float64) (without, with assess.Finding) {
		in := demoInput(t, "sandmartin_long_acre_wet")
		in.Field.Obstacles, in.Limits, in.LaunchPlan.ThrustSettingRatio = nil, nil, &setting
		free := unbanded(t, in)
		in.Field.Obstacles = []assess.Obstacle{hedgeAcross(pathOf(free, "launch.plan"), 140)}
		return findingOf(t, free, "climb.clearance"), findingOf(t, unbanded(t, in), "climb.clearance")
	}
	for _, row := range []struct {
		setting float64
		want    assess.Verdict
	}{{1, assess.VerdictHolds}, {0.32, assess.VerdictFails}} {
		without, with := across(row.setting)
		if without.Verdict != assess.VerdictHolds || with.Verdict != row.want {
			t.Errorf("%.0f %% of the thrust: without %s, with %s, want %s (%s)", 100*row.setting, without.Verdict, with.Verdict, row.want, with.Note)
		}
	}
}

// hedgeAcross is a hedge of 2.4 m that crosses a path over the field at a distance from its start.
func hedgeAcross(path []assess.PathPoint, distance float64) assess.Obstacle {
	a, b := path[0], path[len(path)-1]
	dx, dy := b.XMeters-a.XMeters, b.YMeters-a.YMeters
	length := math.Hypot(dx, dy)
	dx, dy = dx/length, dy/length
	x, y := a.XMeters+distance*dx, a.YMeters+distance*dy
	end := func(side float64) assess.Point {
		return assess.Point{XMeters: number(x - side*dy), YMeters: number(y + side*dx), ZMeters: number(a.ZMeters)}
	}
	return assess.Obstacle{Name: "hedge", Kind: assess.ObstacleKindHedge, Points: []assess.Point{end(-60), end(60)}, HeightMeters: quantity(2.4)}
}
