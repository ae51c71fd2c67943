package assess_test

import (
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// findingValue returns the value of a finding that must have one.
func findingValue(t *testing.T, in assess.Input, id string) float64 {
	t.Helper()
	finding := findingOf(t, assessed(t, in), id)
	if finding.Value == nil {
		t.Fatalf("%s has no value: %s %s %v", id, finding.Verdict, finding.Note, finding.Missing)
	}
	return *finding.Value
}

// alongStrip sets a steady wind from a direction with gusts 1 m/s above it.
func alongStrip(in *assess.Input, from, speed float64) {
	in.Day.WindDirectionDegrees = quantity(from)
	in.Day.WindSpeedMetersPerSecond, in.Day.GustSpeedMetersPerSecond = quantity(speed), quantity(speed+1)
	in.Day.WindSpeedMetersPerSecond.Spread, in.Day.GustSpeedMetersPerSecond.Spread = number(0.2), number(0.2)
}

// landingAlong fixes the direction of the landing.
func landingAlong(in *assess.Input, heading float64) {
	in.LaunchPlan.Landing = &assess.LandingPlan{HeadingDegrees: &heading}
}

// TestLandingMonotone moves one input in steps and wants the landing and what happens without thrust never to move the wrong way.
func TestLandingMonotone(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name, document, finding string
		rising                  bool
		from, to                float64
		set                     func(*assess.Input, float64)
	}{
		{"more head wind never lengthens the landing", "dabchick_long_acre", "landing.distance", false, 0, 6,
			func(in *assess.Input, v float64) { alongStrip(in, 60, v); landingAlong(in, 60) }},
		{"more tail wind never shortens it", "dabchick_long_acre", "landing.distance", true, 0, 3,
			func(in *assess.Input, v float64) { alongStrip(in, 240, v); landingAlong(in, 60) }},
		{"heavier never shortens it", "sandmartin_long_acre_wet", "landing.distance", true, 7, 14,
			func(in *assess.Input, v float64) { in.Model.Mass.EmptyMassKg = quantity(v) }},
		{"more idle thrust never shortens it", "sandmartin_long_acre", "landing.distance", true, 0, 9,
			func(in *assess.Input, v float64) { in.Model.Engines[0].IdleThrustNewtons = quantity(v) }},
		{"more friction never lengthens the slide", "redshank_quarry_top", "landing.distance", false, 0.2, 0.8,
			func(in *assess.Input, v float64) { in.Model.Gear.SlidingFrictionRatio = quantity(v) }},
		{"a faster approach never shortens it", "dabchick_long_acre", "landing.distance", true, 1.2, 1.8,
			func(in *assess.Input, v float64) { in.LaunchPlan.Landing = &assess.LandingPlan{ApproachRatio: &v} }},
		{"a higher hedge before the threshold never shortens it", "dabchick_long_acre", "landing.distance", true, 1, 25,
			func(in *assess.Input, v float64) { in.Field.Obstacles[3].HeightMeters = quantity(v) }},
		{"a slower engine never lowers the go-around", "sandmartin_long_acre", "landing.go_around", true, 1, 8,
			func(in *assess.Input, v float64) { in.Model.Engines[0].SpoolUpSeconds = quantity(v) }},
		{"a stronger gust never raises the margin of a planned approach", "dabchick_long_acre", "approach.margin", false, 3, 9,
			func(in *assess.Input, v float64) {
				in.Day.GustSpeedMetersPerSecond, in.LaunchPlan.Landing = quantity(v), &assess.LandingPlan{ApproachRatio: number(1.5)}
			}},
		{"stronger brakes never leave less of the strip", "sandmartin_long_acre", "launch.abort", true, 0, 0.5,
			func(in *assess.Input, v float64) { in.Model.Gear.BrakingRatio = quantity(v) }},
		{"a higher circuit never lowers what is reached", "sandmartin_long_acre", "engine_out.reach", true, 15, 60,
			func(in *assess.Input, v float64) { in.LaunchPlan.Circuit.HeightMeters = quantity(v) }},
		{"a balance point farther forward never shortens the take-off", "sandmartin_long_acre", "launch.distance", false, 0.80, 0.98,
			func(in *assess.Input, v float64) { in.Model.Mass.EmptyBalanceXMeters = quantity(v) }},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			var values []float64
			for i := range 5 {
				in := demoInput(t, row.document)
				row.set(&in, row.from+(row.to-row.from)*float64(i)/4)
				values = append(values, findingValue(t, in, row.finding))
			}
			for i := 1; i < len(values); i++ {
				if change := values[i] - values[i-1]; row.rising && change < -2e-3 || !row.rising && change > 2e-3 {
					t.Errorf("step %d moves the wrong way: %v", i, values)
				}
			}
			if values[0] == values[4] {
				t.Errorf("the input does not move %s: %v", row.finding, values)
			}
		})
	}
}

// TestVerdictsTurn changes one thing and wants the verdict to turn.
func TestVerdictsTurn(t *testing.T) {
	t.Parallel()
	wall := func(in *assess.Input, height float64) {
		in.Field.Obstacles[3].HeightMeters = quantity(height)
	}
	rows := []struct {
		name, document, finding string
		before, after           assess.Verdict
		set                     func(*assess.Input)
	}{
		{"a tail wind on the landing", "dabchick_long_acre", "landing.distance", assess.VerdictHolds, assess.VerdictFails,
			func(in *assess.Input) { alongStrip(in, 240, 4); landingAlong(in, 60) }},
		{"trees before the threshold", "dabchick_long_acre", "landing.distance", assess.VerdictHolds, assess.VerdictFails,
			func(in *assess.Input) { wall(in, 24) }},
		{"a factor of the limits on the landing", "sandmartin_long_acre", "landing.distance", assess.VerdictHolds, assess.VerdictFails,
			func(in *assess.Input) { in.Limits.LandingDistanceFactor = number(1.43) }},
		{"a factor of the limits on the take-off", "sandmartin_long_acre", "launch.distance", assess.VerdictHolds, assess.VerdictFails,
			func(in *assess.Input) { in.Limits.TakeoffDistanceFactor = number(1.33) }},
		{"a slow approach", "dabchick_long_acre", "approach.margin", assess.VerdictHolds, assess.VerdictFails,
			func(in *assess.Input) { in.LaunchPlan.Landing = &assess.LandingPlan{ApproachRatio: number(1.3)} }},
		{"a third of the strip", "nightjar_long_acre", "launch.abort", assess.VerdictHolds, assess.VerdictFails,
			func(in *assess.Input) {
				in.Field.Strips[0].Start.XMeters, in.Field.Strips[0].Start.YMeters = number(52), number(30)
			}},
		{"a keep-out under the departure", "redshank_quarry_top_long_ramp", "launch.engine_failure", assess.VerdictHolds, assess.VerdictFails,
			func(in *assess.Input) { in.Field.KeepOuts[0].Area = square(-60, -22, 25) }},
		{"a distance to people asked for", "dabchick_long_acre", "engine_out.footprint", assess.VerdictHolds, assess.VerdictFails,
			func(in *assess.Input) { in.Limits.MinimumPeopleDistanceMeters = number(80) }},
		{"no meadow beyond the hedge and a low circuit", "sandmartin_long_acre", "engine_out.reach", assess.VerdictHolds, assess.VerdictFails,
			func(in *assess.Input) {
				in.Field.LandingAreas, in.LaunchPlan.Circuit.HeightMeters = nil, quantity(20)
			}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, row.document)
			if got := findingOf(t, assessed(t, in), row.finding); got.Verdict != row.before {
				t.Errorf("before: %s, want %s (%s)", got.Verdict, row.before, got.Note)
			}
			row.set(&in)
			if got := findingOf(t, assessed(t, in), row.finding); got.Verdict != row.after {
				t.Errorf("after: %s, want %s (%s)", got.Verdict, row.after, got.Note)
			}
		})
	}
}

// square returns an area about a place.
func square(x, y, half float64) *assess.Polygon {
	corner := func(dx, dy float64) assess.Point {
		return assess.Point{XMeters: number(x + dx), YMeters: number(y + dy)}
	}
	return &assess.Polygon{Corners: []assess.Point{corner(-half, -half), corner(half, -half), corner(half, half), corner(-half, half)}}
}

// TestHedgeAtTheEndOfAWeakClimb puts a hedge of 2.4 m across the departure 140 m from the ramp: it turns the verdict of a model that climbs
// weakly and none of one that climbs well.
func TestHedgeAtTheEndOfAWeakClimb(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name   string
		thrust float64
		want   assess.Verdict
	}{{"weak", 40, assess.VerdictFails}, {"strong", 95, assess.VerdictHolds}}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, "redshank_quarry_top_long_ramp")
			in.Model.Engines[0].StaticThrustNewtons = quantity(row.thrust)
			in.LaunchPlan.Ramp.ReleaseForceNewtons = nil
			in.Field.Obstacles = nil
			if got := findingOf(t, assessed(t, in), "climb.clearance"); got.Verdict != assess.VerdictHolds {
				t.Fatalf("without the hedge: %s (%s)", got.Verdict, got.Note)
			}
			in.Field.Obstacles = []assess.Obstacle{{
				Name: "hedge", Kind: assess.ObstacleKindHedge, HeightMeters: quantity(2.4),
				Points: []assess.Point{{XMeters: number(-114.4), YMeters: number(-94.9)}, {XMeters: number(-148.7), YMeters: number(-0.9)}},
			}}
			if got := findingOf(t, assessed(t, in), "climb.clearance"); got.Verdict != row.want {
				t.Errorf("with the hedge: %s, want %s (%s)", got.Verdict, row.want, got.Note)
			}
		})
	}
}

// TestLandingNamesWhatIsMissing takes one part away.
func TestLandingNamesWhatIsMissing(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name, document, finding, missing string
		lack                             func(*assess.Input)
	}{
		{"gear", "redshank_quarry_top", "landing.distance", "model.gear", func(in *assess.Input) { in.Model.Gear = nil }},
		{"sliding friction", "redshank_quarry_top", "landing.distance", "model.gear.slidingFrictionRatio",
			func(in *assess.Input) { in.Model.Gear.SlidingFrictionRatio = nil }},
		{"place", "redshank_quarry_top", "landing.distance", "launchPlan.landingPlace", func(in *assess.Input) { in.LaunchPlan.LandingPlace = "nowhere" }},
		{"field", "dabchick_long_acre", "landing.go_around", "field", func(in *assess.Input) { in.Field = nil }},
		{"surface", "dabchick_long_acre", "landing.distance", "field.strips[0].surface", func(in *assess.Input) { in.Field.Strips[0].Surface = "" }},
		{"spool-up", "sandmartin_long_acre", "landing.go_around", "model.engines[0].spoolUpSeconds",
			func(in *assess.Input) { in.Model.Engines[0].SpoolUpSeconds = nil }},
		{"height of the circuit", "dabchick_long_acre", "engine_out.reach", "launchPlan.circuit.heightMeters",
			func(in *assess.Input) { in.LaunchPlan.Circuit.HeightMeters = nil }},
		{"wind", "dabchick_long_acre", "engine_out.footprint", "day.windSpeedMetersPerSecond",
			func(in *assess.Input) { in.Day.WindSpeedMetersPerSecond = nil }},
		{"wind", "dabchick_long_acre", "approach.margin", "day.windSpeedMetersPerSecond",
			func(in *assess.Input) { in.Day.WindSpeedMetersPerSecond = nil }},
	}
	for _, row := range rows {
		t.Run(row.finding+" without "+row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, row.document)
			row.lack(&in)
			got := findingOf(t, assessed(t, in), row.finding)
			if got.Verdict != assess.VerdictUnknown || !slices.Contains(got.Missing, row.missing) {
				t.Errorf("%s, missing %v, want %s (%s)", got.Verdict, got.Missing, row.missing, got.Note)
			}
		})
	}
}

// TestWhatNeverEnds wants a failing verdict with a reason instead of a number.
func TestWhatNeverEnds(t *testing.T) {
	t.Parallel()
	rows := []struct {
		name, document, finding, note string
		set                           func(*assess.Input)
	}{
		{"idle thrust as high as the drag", "sandmartin_long_acre", "landing.distance", "does not come down",
			func(in *assess.Input) { in.Model.Engines[0].IdleThrustNewtons = quantity(60) }},
		{"a model that cannot climb", "sandmartin_long_acre", "landing.go_around", "climb away",
			func(in *assess.Input) {
				in.Model.Engines[0].StaticThrustNewtons, in.Model.Engines[0].IdleThrustNewtons = quantity(12), quantity(1)
			}},
		{"a wind faster than the approach", "dabchick_long_acre", "landing.distance", "cannot be flown",
			func(in *assess.Input) { alongStrip(in, 60, 30) }},
		{"a launch that comes to nothing", "dabchick_long_acre", "launch.abort", "never leaves",
			func(in *assess.Input) { in.Model.Gear.RollingResistanceRatio = quantity(2) }},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			in := demoInput(t, row.document)
			row.set(&in)
			got := findingOf(t, assessed(t, in), row.finding)
			if got.Verdict != assess.VerdictFails || got.Value != nil || !strings.Contains(got.Note, row.note) {
				t.Errorf("%s, value %v, note %q", got.Verdict, got.Value, got.Note)
			}
		})
	}
}

// TestLandingDrawings wants the lines and the diagram, the outline closed.
func TestLandingDrawings(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"sandmartin_long_acre", "redshank_quarry_top"} {
		report := assessed(t, demoInput(t, name))
		lines := map[string][]assess.PathPoint{}
		for _, path := range report.Paths {
			lines[path.ID] = path.Points
		}
		for _, id := range []string{"landing.profile", "landing.plan", "area.engine_out", "reach.none"} {
			if len(lines[id]) < 2 {
				t.Errorf("%s: path %s has %d points", name, id, len(lines[id]))
			}
		}
		area := lines["area.engine_out"]
		if len(area) > 0 && area[0] != area[len(area)-1] {
			t.Errorf("%s: the area is not closed", name)
		}
		if i := slices.IndexFunc(report.Curves, func(c assess.ReportCurve) bool { return c.ID == "engine_out.turn_back" }); i < 0 || len(report.Curves[i].Series) < 2 {
			t.Errorf("%s: no diagram of the turn back", name)
		}
		profile := lines["landing.profile"]
		if last := profile[len(profile)-1]; last.AirspeedMetersPerSecond > 10 || last.XMeters <= 0 {
			t.Errorf("%s: the landing ends at %+v", name, last)
		}
	}
}
