package motion

import (
	"math"
	"strings"
	"testing"
)

// run runs a launch that must be possible.
func mustRun(t *testing.T, l Launch, a Aircraft, air Conditions) Result {
	t.Helper()
	r, err := l.Run(a, air)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestRotationWaitsForTheControls(t *testing.T) {
	t.Parallel()
	l := launches()["wheels"]
	plain := mustRun(t, l, jet(), grass(2, 0))
	if !plain.Rotation.Reached || math.Abs(plain.Rotation.Airspeed-20) > 1e-9 || plain.WaitsForControl {
		t.Errorf("rotates at %+v", plain.Rotation)
	}
	last := 0.0
	for speed := 10.0; speed <= 30; speed += 2 {
		l.RotationSpeed = speed
		r := mustRun(t, l, jet(), grass(2, 0))
		if r.Run < last-1e-9 {
			t.Errorf("controls that lift the nose at %g m/s run %g m, after %g", speed, r.Run, last)
		}
		if want := max(20, speed); math.Abs(r.Rotation.Airspeed-want) > 1e-9 || r.WaitsForControl != (speed > 20) {
			t.Errorf("controls at %g m/s: rotates at %g", speed, r.Rotation.Airspeed)
		}
		if speed <= 20 && math.Abs(r.Run-plain.Run) > 1e-9 {
			t.Errorf("controls in time change the run to %g from %g", r.Run, plain.Run)
		}
		last = r.Run
	}
	l.RotationSpeed = 60
	floats := mustRun(t, l, jet(), grass(2, 0))
	carries := jet()
	carries.CLMax = carries.CLGround
	if want := carries.StallSpeed(grass(2, 0)); !floats.FloatsOff || math.Abs(floats.Airspeed-want) > 0.3 || floats.Airspeed > want+1e-6 {
		t.Errorf("a nose that stays down leaves at %g (%t), its standing lift and thrust line carry it at %g", floats.Airspeed, floats.FloatsOff, want)
	}
	l.RotationSpeed = 900
	heavy := jet()
	heavy.CLGround = 0
	if r := mustRun(t, l, heavy, grass(2, 0)); !r.NeverLiftsOff || r.Held {
		t.Errorf("controls that never lift the nose: %+v", r.End())
	}
}

func TestTailComesUpBeforeRotation(t *testing.T) {
	t.Parallel()
	l := launches()["wheels"]
	nose := mustRun(t, l, jet(), grass(1, 0))
	l.TailUpSpeed, l.CLTailDown = 9, 0.8
	tail := mustRun(t, l, jet(), grass(1, 0))
	if !tail.TailUp.Reached || math.Abs(tail.TailUp.Airspeed-9) > 1e-9 || tail.TailUp.Distance >= tail.Rotation.Distance {
		t.Errorf("tail up %+v, rotation %+v", tail.TailUp, tail.Rotation)
	}
	if tail.Run == nose.Run || math.Abs(tail.Run-nose.Run) > 3 {
		t.Errorf("tail first down: %g m, nose wheel %g m", tail.Run, nose.Run)
	}
	l.TailUpSpeed = 19.9
	if r := mustRun(t, l, jet(), grass(1, 0)); !r.FloatsOff || r.Rotation.Reached || r.Airspeed > 19.9 {
		t.Errorf("three-point lift-off: %g m/s, %+v", r.Airspeed, r.Rotation)
	}
}

func TestReleaseWaitsForThrust(t *testing.T) {
	t.Parallel()
	l := launches()["ramp"]
	a := light()
	a.Thrust = func(v, s float64) float64 { return 90*(1-math.Exp(-max(s, 0)/1.2)) - 0.2*v }
	l.ReleaseForce = 75
	r := mustRun(t, l, a, grass(0, 0))
	if want := -1.2 * math.Log(1-75.0/90); math.Abs(r.HoldTime-want) > 1e-6 {
		t.Errorf("held for %g s, the spool-up says %g", r.HoldTime, want)
	}
	later := l
	later.ReleaseForce, later.ThrustTime = 0, r.HoldTime
	if same := mustRun(t, later, a, grass(0, 0)); math.Abs(same.Airspeed-r.Airspeed) > 1e-9 || math.Abs(same.Time-r.Time) > 1e-9 {
		t.Errorf("released at %g m/s, let go at that time %g", r.Airspeed, same.Airspeed)
	}
	last := 0.0
	for _, force := range []float64{0, 20, 50, 80} {
		l.ReleaseForce = force
		if r := mustRun(t, l, a, grass(0, 0)); r.Airspeed < last {
			t.Errorf("held to %g N leaves at %g m/s, after %g", force, r.Airspeed, last)
		} else {
			last = r.Airspeed
		}
	}
	l.ReleaseForce = 91
	if r := mustRun(t, l, a, grass(0, 0)); !r.NeverReleased || !r.NeverLiftsOff {
		t.Errorf("let go without the thrust: %+v", r)
	}
}

func TestPullTestAndHook(t *testing.T) {
	t.Parallel()
	const mass = 6.0
	a := Aircraft{Mass: mass}
	linear := Launch{Method: Bungee, Stiffness: 40, Stretch: 15, Tolerance: 1e-11}
	tested := linear
	tested.Stiffness, tested.PullTest = 0, []ForcePoint{{5, 200}, {10, 400}, {20, 800}}
	first, second := mustRun(t, linear, a, Conditions{}), mustRun(t, tested, a, Conditions{})
	if math.Abs(first.Release.Airspeed-second.Release.Airspeed) > 1e-8 {
		t.Errorf("a straight pull test: %g m/s, its stiffness %g", second.Release.Airspeed, first.Release.Airspeed)
	}
	bent := linear
	bent.PullTest = []ForcePoint{{2, 150}, {8, 260}, {15, 420}}
	bent.Efficiency = 0.8
	energy := 0.8 * (2*150/2.0 + 6*(150+260)/2.0 + 7*(260+420)/2.0)
	if got := bent.StoredEnergy(); math.Abs(got-energy) > 1e-9 {
		t.Errorf("gives back %g J, its area says %g", got, energy)
	}
	r := mustRun(t, bent, a, Conditions{})
	if want := math.Sqrt(2 * energy / mass); math.Abs(r.Release.Airspeed-want) > 1e-5 {
		t.Errorf("leaves at %g m/s, its energy says %g", r.Release.Airspeed, want)
	}
	hooked := linear
	hooked.HookForce = 100
	h := mustRun(t, hooked, a, Conditions{})
	if want := math.Sqrt(40 / mass * (15*15 - 2.5*2.5)); math.Abs(h.Release.Airspeed-want) > 1e-7 || math.Abs(h.Release.Distance-12.5) > 1e-9 {
		t.Errorf("hook lets go at %g m and %g m/s, want 12.5 and %g", h.Release.Distance, h.Release.Airspeed, want)
	}
	for expect, points := range map[string][]ForcePoint{
		"launch stretch: 15 m is beyond the pull test, which ends at 10 m": {{5, 100}, {10, 300}},
		"launch pull test: stretch and force must rise to point 2":         {{5, 100}, {20, 90}},
		"launch pull test: point 1 is out of range":                        {{-1, 0}, {20, 90}},
	} {
		bad := linear
		bad.PullTest = points
		if _, err := bad.Run(a, Conditions{}); err == nil || err.Error() != expect {
			t.Errorf("got %v, want %s", err, expect)
		}
	}
}

func TestSlidingAfterAWeakBungee(t *testing.T) {
	t.Parallel()
	const thrust, friction = 45.0, 0.15
	a := Aircraft{Mass: 5, Area: 0.55, CLMax: 1, Thrust: func(float64, float64) float64 { return thrust }}
	air := Conditions{Density: 1.2}
	l := Launch{Method: Bungee, Stiffness: 20, Stretch: 3, Friction: friction, Tolerance: 1e-10}
	r := mustRun(t, l, a, air)
	lifts := math.Sqrt(2 * a.Mass * Gravity / (air.Density * a.Area * DefaultClimbLift * a.CLMax))
	acceleration := thrust/a.Mass - friction*Gravity
	released := math.Sqrt(20.0*9/a.Mass + 2*acceleration*3)
	if !r.Slides || math.Abs(r.Release.Airspeed-released) > 1e-6 || math.Abs(r.Airspeed-lifts) > 1e-6 {
		t.Fatalf("released at %g, lifts off at %g, slides %t; want %g and %g", r.Release.Airspeed, r.Airspeed, r.Slides, released, lifts)
	}
	if want := (lifts*lifts - released*released) / (2 * acceleration); math.Abs(r.SlideDistance-want) > 1e-6 {
		t.Errorf("slides %g m, constant forces say %g", r.SlideDistance, want)
	}
	a.Thrust = nil
	stops := mustRun(t, l, a, air)
	speed := math.Sqrt(20.0*9/a.Mass - 2*friction*Gravity*3)
	if want := speed * speed / (2 * friction * Gravity); !stops.NeverLiftsOff || !stops.Slides || math.Abs(stops.SlideDistance-want) > 1e-5 {
		t.Errorf("slides %g m to rest, want %g (%+v)", stops.SlideDistance, want, stops.Release)
	}
	l.Slope, l.Friction = 0.5, 1.5
	if held := mustRun(t, l, a, air); !held.Held || !held.NeverLiftsOff {
		t.Errorf("slope and friction beyond the cord's pull do not hold it: %+v", held.Release)
	}
}

func TestDollyFalls(t *testing.T) {
	t.Parallel()
	l := launches()["ramp"]
	r := mustRun(t, l, light(), grass(0, 0))
	fall, err := l.DollyFall(&r, grass(0, 0), Dolly{})
	if err != nil {
		t.Fatal(err)
	}
	v, s, c := r.GroundSpeed, math.Sin(0.2), math.Cos(0.2)
	time := (v*s + math.Sqrt(v*s*v*s+2*Gravity*2.5)) / Gravity
	if math.Abs(fall.Time-time) > 1e-6 || math.Abs(fall.Distance-(r.Distance+v*c*time)) > 1e-5 {
		t.Errorf("down after %g s at %g m, free fall says %g and %g", fall.Time, fall.Distance, time, r.Distance+v*c*time)
	}
	if want := 0.5*l.DollyMass*v*v + l.DollyMass*Gravity*2.5; math.Abs(fall.Energy-want) > 1e-3 {
		t.Errorf("%g J, free fall says %g", fall.Energy, want)
	}
	slowed, err := l.DollyFall(&r, grass(4, 3), Dolly{DragArea: 0.2, Kick: 1})
	if err != nil || slowed.Distance >= fall.Distance || slowed.Drift >= 0 {
		t.Errorf("drag, a catch and wind from ahead and the right: %g m, %g m to the right (%v)", slowed.Distance, slowed.Drift, err)
	}
	l.Ground = []ProfilePoint{{0, 0}, {6, 0}, {7, -20}, {100, -20}}
	deep, err := l.DollyFall(&r, grass(0, 0), Dolly{})
	if err != nil || deep.Distance <= fall.Distance || math.Abs(deep.Path[len(deep.Path)-1].Height+20) > 1e-4 {
		t.Errorf("over a drop: %+v (%v)", deep.Distance, err)
	}
	l.DollyMass = 0
	if _, err := l.DollyFall(&r, grass(0, 0), Dolly{}); err == nil {
		t.Error("no dolly, yet it falls")
	}
	if _, err := launches()["ramp"].DollyFall(&r, grass(0, 0), Dolly{DragArea: -1}); err == nil || !strings.HasPrefix(err.Error(), "dolly drag area") {
		t.Errorf("got %v", err)
	}
}

func TestTailOverTheEndOfTheRails(t *testing.T) {
	t.Parallel()
	// Without lift, thrust and drag the model falls off the line of the rails by g cos(s) t^2/2 and turns its nose down with its path.
	l := Launch{Method: Ramp, Slope: 0.2, Length: 6, EndHeight: 8}
	a := Aircraft{Mass: 5, Thrust: func(_, s float64) float64 {
		if s < 0.5 {
			return 200
		}
		return 0
	}}
	r := mustRun(t, l, a, Conditions{Density: 1.2})
	v := r.GroundSpeed
	want := math.Inf(1)
	for time := 0.0; time < 1; time += 1e-5 {
		down := math.Atan2(v*math.Sin(0.2)-Gravity*time, v*math.Cos(0.2)) - 0.2
		beyond := v*time - 0.5*Gravity*math.Sin(0.2)*time*time
		if beyond > 0.9*math.Cos(down) {
			break
		}
		want = min(want, 0.12-0.5*Gravity*math.Cos(0.2)*time*time-0.9*math.Sin(down))
	}
	gap, err := r.TailGap(Tail{Arm: 0.9, Height: 0.12})
	if err != nil || !gap.Over {
		t.Fatalf("%+v %v", gap, err)
	}
	if math.Abs(gap.Gap-want) > 1e-3 {
		t.Errorf("gap %g, want %g", gap.Gap, want)
	}
	winged := mustRun(t, launches()["ramp"], light(), grass(0, 0))
	last := math.Inf(1)
	for _, arm := range []float64{0.2, 0.5, 0.9, 1.4} {
		g, err := winged.TailGap(Tail{Arm: arm, Height: 0.05, LiftSlope: 4.5})
		if err != nil || g.Gap > last || g.Strikes != (g.Gap < 0) {
			t.Errorf("arm %g: %+v after %g (%v)", arm, g, last, err)
		}
		last = g.Gap
	}
	if last > 0 {
		t.Errorf("a long tail 5 cm over the rails clears them by %g while the model pitches up 6 degrees", last)
	}
	hand := mustRun(t, launches()["hand"], light(), grass(0, 0))
	if _, err := hand.TailGap(Tail{Arm: 1}); err == nil {
		t.Error("a thrown model has rails")
	}
}

func TestLeastClearanceOverTheGround(t *testing.T) {
	t.Parallel()
	l := launches()["ramp"]
	l.Length = 3
	l.Ground = []ProfilePoint{{0, 0}, {10, -1}, {18, 1.2}, {24, -2}, {200, -2}}
	r := mustRun(t, l, light(), grass(0, 0))
	got, ok := r.LeastClearance(0)
	if !ok {
		t.Fatal("no flight")
	}
	s, want, where := &r.trace.flown, math.Inf(1), 0.0
	for i := range 200001 {
		state := s.At(s.start + (s.end-s.start)*float64(i)/200000)
		if h := state[atHeight] - heightAlong(l.Ground, state[atDistance]); h < want {
			want, where = h, state[atDistance]
		}
	}
	if math.Abs(got.Height-want) > 1e-4 || math.Abs(got.Distance-where) > 0.01 {
		t.Errorf("least %g at %g, sampled %g at %g", got.Height, got.Distance, want, where)
	}
	if beyond, ok := r.LeastClearance(30); !ok || beyond.Distance < 30 || beyond.Height < got.Height {
		t.Errorf("beyond 30 m: %+v", beyond)
	}
	p, reached := r.FirstAbove(9)
	if !reached || math.Abs(p.Height-9) > 1e-6 {
		t.Errorf("reaches 9 m at %+v", p)
	}
	if _, reached := r.FirstAbove(500); reached {
		t.Error("reaches 500 m")
	}
}

// TestStripRolledAlongItsProfile wants a straight profile to give what the slope gives, and what the ground does to be felt where it is.
func TestStripRolledAlongItsProfile(t *testing.T) {
	t.Parallel()
	plain := launches()["wheels"]
	plain.Slope = 0.02
	along := launches()["wheels"]
	along.RailProfile = []ProfilePoint{{0, 0}, {1000, 1000 * math.Sin(0.02)}}
	along.Ground = []ProfilePoint{{0, 0}, {1000 * math.Cos(0.02), 1000 * math.Sin(0.02)}}
	a, b := mustRun(t, plain, jet(), grass(2, 0)), mustRun(t, along, jet(), grass(2, 0))
	if math.Abs(a.Run-b.Run) > 1e-5 || math.Abs(a.Height-b.Height) > 1e-6 {
		t.Errorf("by slope %g m to %g m up, along the profile %g m to %g m", a.Run, a.Height, b.Run, b.Height)
	}
	up, down := launches()["wheels"], launches()["wheels"]
	up.RailProfile = []ProfilePoint{{0, 0}, {30, 1.5}, {60, 0}, {61, 0}}
	down.RailProfile = []ProfilePoint{{0, 0}, {30, -1.5}, {60, 0}, {61, 0}}
	if x, y := mustRun(t, up, jet(), grass(2, 0)), mustRun(t, down, jet(), grass(2, 0)); !(x.Time > y.Time) {
		t.Errorf("over a hump %g s, through a dip %g s", x.Time, y.Time)
	}
}
