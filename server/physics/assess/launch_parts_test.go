package assess_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pitgate/server/physics/assess"
)

// rampOf is the short ramp of the Redshank with a change to it.
func rampOf(t *testing.T, change func(*assess.LaunchPlan)) assess.Report {
	t.Helper()
	in := demoInput(t, "redshank_quarry_top")
	change(in.LaunchPlan)
	report := assessed(t, in)
	wantChain(t, report)
	return report
}

func TestTailOverTheRails(t *testing.T) {
	t.Parallel()
	tail := func(x, height float64) assess.Report {
		return rampOf(t, func(plan *assess.LaunchPlan) {
			plan.Ramp.TailXMeters, plan.Ramp.TailHeightMeters = quantity(x), quantity(height)
		})
	}
	high, low := findingOf(t, tail(1.62, 0.16), "launch.tail_gap"), tail(1.62, -0.05)
	struck := findingOf(t, low, "launch.tail_gap")
	if high.Verdict != assess.VerdictHolds || struck.Verdict != assess.VerdictFails {
		t.Errorf("high: %s, low: %s (%s)", high.Verdict, struck.Verdict, struck.Note)
	}
	if fallen := *high.Value - *struck.Value; math.Abs(fallen-0.21) > 1e-6 {
		t.Errorf("a tail 0.21 m lower has %g m less room", fallen)
	}
	for _, id := range []string{"launch.end_speed", "launch.sink"} {
		if note := findingOf(t, low, id).Note; !strings.Contains(note, "strikes the rails") {
			t.Errorf("%s does not say that the tail strikes: %s", id, note)
		}
	}
	missing := findingOf(t, rampOf(t, func(plan *assess.LaunchPlan) { plan.Ramp.TailXMeters, plan.Ramp.TailHeightMeters = nil, nil }), "launch.tail_gap")
	if missing.Verdict != assess.VerdictUnknown || !slices.Equal(missing.Missing, []string{"launchPlan.ramp.tailXMeters", "launchPlan.ramp.tailHeightMeters"}) {
		t.Errorf("without the tail: %s, missing %v", missing.Verdict, missing.Missing)
	}
}

// TestDollyIsFollowed wants a dolly with more drag to come down nearer, and none told where none is used.
func TestDollyIsFollowed(t *testing.T) {
	t.Parallel()
	at := func(area float64) float64 {
		return toldOf(t, rampOf(t, func(plan *assess.LaunchPlan) { plan.Ramp.DollyDragAreaSquareMeters = quantity(area) }), "launch.dolly_distance")
	}
	if small, large := at(0), at(0.2); !(large < small) || !(large > 8) {
		t.Errorf("without drag %g m, with drag %g m", small, large)
	}
	bare := rampOf(t, func(plan *assess.LaunchPlan) { plan.Ramp.DollyMassKg = nil })
	if note := findingOf(t, bare, "launch.sink").Note; strings.Contains(note, "dolly") {
		t.Errorf("no dolly, but: %s", note)
	}
}

// TestReleaseForceHolds wants a model held to more thrust to leave faster, and never where the engine does not give it.
func TestReleaseForceHolds(t *testing.T) {
	t.Parallel()
	held := func(force float64) assess.Report {
		return rampOf(t, func(plan *assess.LaunchPlan) {
			plan.FullThrustBeforeRelease, plan.Ramp.ReleaseForceNewtons = nil, quantity(force)
		})
	}
	early, late := held(20), held(60)
	if a, b := toldOf(t, early, "launch.hold_time"), toldOf(t, late, "launch.hold_time"); !(a > 0) || !(b > a) {
		t.Errorf("held %g s to 20 N, %g s to 60 N", a, b)
	}
	if a, b := toldOf(t, early, "launch.end_speed"), toldOf(t, late, "launch.end_speed"); !(b > a) {
		t.Errorf("held to 20 N it leaves at %g m/s, to 60 N at %g", a, b)
	}
	if never := findingOf(t, held(200), "launch.end_speed"); never.Verdict != assess.VerdictFails || !strings.Contains(never.Note, "200 N") {
		t.Errorf("held to 200 N: %s (%s)", never.Verdict, never.Note)
	}
}

// TestPullTestReplacesStiffness wants a straight pull test to give what the stiffness gives, and a hook that lets go early to give less.
func TestPullTestReplacesStiffness(t *testing.T) {
	t.Parallel()
	cord := func(bungee assess.Bungee) float64 {
		return toldOf(t, rampOf(t, func(plan *assess.LaunchPlan) {
			bungee.StretchMeters, bungee.FrictionRatio = quantity(20), quantity(0.3)
			plan.Method, plan.Bungee = assess.LaunchMethodBungee, &bungee
		}), "launch.end_speed")
	}
	test := func(points ...float64) (out []assess.PullTestPoint) {
		for i := 0; i < len(points); i += 2 {
			out = append(out, assess.PullTestPoint{StretchMeters: &points[i], ForceNewtons: &points[i+1]})
		}
		return out
	}
	stiff := cord(assess.Bungee{StiffnessNewtonsPerMeter: quantity(12)})
	straight := cord(assess.Bungee{PullTest: test(10, 120, 25, 300)})
	if math.Abs(straight-stiff) > 1e-6 {
		t.Errorf("straight pull test %g m/s, stiffness %g", straight, stiff)
	}
	if soft := cord(assess.Bungee{PullTest: test(10, 80, 25, 300)}); !(soft < stiff) {
		t.Errorf("a softer cord gives %g m/s, the stiff one %g", soft, stiff)
	}
	if hook := cord(assess.Bungee{StiffnessNewtonsPerMeter: quantity(12), HookReleaseNewtons: quantity(150)}); !(hook < stiff) {
		t.Errorf("a hook that lets go at 150 N gives %g m/s, slack %g", hook, stiff)
	}
}

// TestSinkAtTheGroundDoesNotFailByARounding wants a strong cord on level ground not to fail by a rounding, and a ramp to keep half its
// end's height as its limit.
func TestSinkAtTheGroundDoesNotFailByARounding(t *testing.T) {
	t.Parallel()
	report := rampOf(t, func(plan *assess.LaunchPlan) {
		plan.Method = assess.LaunchMethodBungee
		plan.Bungee = &assess.Bungee{StiffnessNewtonsPerMeter: quantity(30), StretchMeters: quantity(25), FrictionRatio: quantity(0.3)}
	})
	sink := findingOf(t, report, "launch.sink")
	if sink.Value == nil || sink.Limit == nil || *sink.Limit < 0.02 || *sink.Value > *sink.Limit {
		t.Errorf("strong cord on level ground: %s, value %v, limit %v, %s", sink.Verdict, sink.Value, sink.Limit, sink.Note)
	}
	if ramp := findingOf(t, assessed(t, demoInput(t, "redshank_quarry_top")), "launch.sink"); ramp.Limit == nil || *ramp.Limit < 0.5 {
		t.Errorf("a ramp keeps half its end's height: %v", ramp.Limit)
	}
}

// TestStripProfileIsRolledAlong wants a straight profile to give what the thresholds' heights give, whichever way it is used, and a hump to lengthen the run.
func TestStripProfileIsRolledAlong(t *testing.T) {
	t.Parallel()
	run := func(reversed bool, rise float64, points ...float64) float64 {
		in := demoInput(t, "dabchick_long_acre")
		in.LaunchPlan.StripReversed = &reversed
		strip := &in.Field.Strips[0]
		strip.Start.ZMeters, strip.End.ZMeters = number(0), number(rise)
		for i := 0; i < len(points); i += 2 {
			strip.GroundProfile = append(strip.GroundProfile, assess.ProfilePoint{DistanceMeters: &points[i], HeightMeters: &points[i+1]})
		}
		return toldOf(t, assessed(t, in), "launch.ground_run")
	}
	length := math.Hypot(246.82, 142.5)
	for _, reversed := range []bool{false, true} {
		if sloped, along := run(reversed, 4), run(reversed, 4, 0, 0, length, 4); math.Abs(sloped-along) > 1e-3 {
			t.Errorf("reversed %v: along the profile %g m, by the thresholds %g m", reversed, along, sloped)
		}
	}
	level := run(false, 0)
	if up, down := run(false, 0, 0, 0, 60, 3, length, 0), run(false, 0, 0, 0, 60, -3, length, 0); !(up > level+1) || !(down < level-1) {
		t.Errorf("level %g m, uphill first %g m, downhill first %g m", level, up, down)
	}
}

// TestWireHangs wants a wire that sags under the path to leave more room, by no more than its sag.
func TestWireHangs(t *testing.T) {
	t.Parallel()
	room := func(sag *assess.Quantity) float64 {
		in := demoInput(t, "redshank_quarry_top_headwind")
		in.Field.Obstacles = []assess.Obstacle{{
			Name: "power line", Kind: assess.ObstacleKindWire, HeightMeters: quantity(9), SagMeters: sag,
			Points: []assess.Point{{XMeters: number(-114.4), YMeters: number(-94.9)}, {XMeters: number(-148.7), YMeters: number(-0.9)}},
		}}
		report := assessed(t, in)
		wantChain(t, report)
		return toldOf(t, report, "climb.clearance.1")
	}
	straight, barely, hanging := room(nil), room(quantity(1e-6)), room(quantity(2))
	if math.Abs(straight-barely) > 0.6 {
		t.Errorf("without sag %g m, with next to none %g m", straight, barely)
	}
	if gained := hanging - barely; gained < 0.3 || gained > 2 {
		t.Errorf("a sag of 2 m gives %g m more room", gained)
	}
}

// TestTailComesUp wants a tail-dragger to raise its tail before it leaves, and a longer run where the balance point is farther behind the wheels.
func TestTailComesUp(t *testing.T) {
	t.Parallel()
	report := func(wheels float64) assess.Report {
		in := demoInput(t, "dabchick_long_acre")
		gear := in.Model.Gear
		gear.Kind, gear.GroundAttitudeDegrees = assess.GearKindTailwheel, quantity(9)
		gear.Wheels[0].XMeters, gear.Wheels[0].ZMeters = number(1), number(-0.02)
		gear.Wheels[1].XMeters, gear.Wheels[2].XMeters = number(wheels), number(wheels)
		out := assessed(t, in)
		wantChain(t, out)
		return out
	}
	ahead, far := report(0.36), report(0.32)
	speed, later := toldOf(t, ahead, "launch.tail_up_speed"), toldOf(t, far, "launch.tail_up_speed")
	if leaves := toldOf(t, ahead, "liftoff.speed"); !(speed > 1) || !(later > speed) || !(speed < leaves) {
		t.Errorf("tail up at %g m/s, wheels farther ahead %g m/s, leaves at %g m/s", speed, later, leaves)
	}
	if up := toldOf(t, ahead, "launch.tail_up_distance"); !(up > 0) || !(up < toldOf(t, ahead, "launch.ground_run")) {
		t.Errorf("tail up after %g m", up)
	}
}
