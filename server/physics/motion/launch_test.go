package motion

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"pitgate/server/physics/weather"
)

// jet is a wheeled jet of 12 kg, light a jet of 5 kg for ramp, bungee and hand; neither is anyone's model.
func jet() Aircraft {
	return Aircraft{
		Mass: 12, Area: 0.65, Span: 2, CD0: 0.035, InducedFactor: 0.069, CLMax: 1.1, CLGround: 0.3, GroundDrag: 0.01, WingHeight: 0.24,
		Thrust: func(v, t float64) float64 { return 100*min(1, 0.05+t/4) - 0.3*v },
	}
}

func light() Aircraft {
	a := jet()
	a.Mass, a.Area, a.CLMax = 5, 0.55, 1.0
	a.Thrust = func(v, _ float64) float64 { return 75 - 0.22*v }
	return a
}

// launches is one launch of each method that comes to something.
func launches() map[string]Launch {
	return map[string]Launch{
		"wheels":   {Method: Wheels, Friction: 0.08, LiftoffSpeed: 20, ThrustTime: 5},
		"ramp":     {Method: Ramp, Slope: 0.2, Friction: 0.05, Length: 6, EndHeight: 2.5, DollyMass: 1.5},
		"bungee":   {Method: Bungee, Slope: 0.05, Friction: 0.1, Stiffness: 40, Stretch: 12, Efficiency: 0.8, CordMass: 0.5},
		"hand":     {Method: Hand, HandSpeed: 10, HandHeight: 1.9, Slope: 0.1},
		"catapult": {Method: Catapult, Slope: 0.1, Friction: 0.05, DollyMass: 1, Forces: []ForcePoint{{0, 400}, {4, 200}}},
	}
}

// grass is the wind over open grass.
func grass(head, cross float64) Conditions {
	return Conditions{Density: 1.2, Headwind: head, Crosswind: cross, Profile: weather.NewProfile(weather.OpenGrass, 0)}
}

// modelOf returns the model the launches are made for.
func modelOf(name string) Aircraft {
	if name == "wheels" {
		return jet()
	}
	return light()
}

func TestEveryMethodReachesTheScreen(t *testing.T) {
	t.Parallel()
	for name, l := range launches() {
		r, err := l.Run(modelOf(name), grass(3, 1))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if r.NeverLiftsOff || r.TouchesGround || !r.ReachesScreen {
			t.Errorf("%s: does not reach the screen: %+v", name, r.End())
		}
		if r.Airspeed <= r.GroundSpeed {
			t.Errorf("%s: airspeed %g is not above ground speed %g in a headwind", name, r.Airspeed, r.GroundSpeed)
		}
		if end := r.End(); end.Drift >= 0 {
			t.Errorf("%s: wind from the right drifts the model to the right by %g", name, end.Drift)
		}
	}
}

func TestEnergyIsKeptWithoutDragAndThrust(t *testing.T) {
	t.Parallel()
	a := Aircraft{Mass: 5, Area: 0.6, CLMax: 1}
	l := Launch{Method: Hand, HandSpeed: 25, HandHeight: 60, Slope: 0.3, Distance: 120, Tolerance: 1e-12}
	r, err := l.Run(a, Conditions{Density: 1.2})
	if err != nil {
		t.Fatal(err)
	}
	want := 25*25/2.0 + Gravity*60
	for _, p := range r.Path {
		if got := p.Airspeed*p.Airspeed/2 + Gravity*p.Height; math.Abs(got-want) > 1e-9*want {
			t.Errorf("energy %.12g at %g m, want %.12g", got, p.Distance, want)
		}
	}
}

func TestSinkAgreesWithTheSmallAngleForm(t *testing.T) {
	t.Parallel()
	// V0 14, acceleration 6, lift that carries the weight at 18 m/s: the closed form for small angles sinks 1.152827 m.
	a := Aircraft{Mass: 10, Area: 0.5, CLMax: 2 * 10 * Gravity / (1.2 * 0.5 * 18 * 18), Thrust: func(float64, float64) float64 { return 60 }}
	l := Launch{Method: Hand, HandSpeed: 14, HandHeight: 20, ClimbLift: 1, HoldLift: true, Distance: 40}
	r, err := l.Run(a, Conditions{Density: 1.2})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(r.Sink-1.152827) > 0.12 {
		t.Errorf("sinks %g m, small angles say 1.152827", r.Sink)
	}
	if math.Abs(r.LowestDistance-22.990051) > 1.2 {
		t.Errorf("lowest at %g m, small angles say 22.99", r.LowestDistance)
	}
}

func TestCatapultWorkBecomesSpeed(t *testing.T) {
	t.Parallel()
	a := Aircraft{Mass: 4}
	l := Launch{Method: Catapult, DollyMass: 1, Forces: []ForcePoint{{0, 500}, {3, 100}}, Tolerance: 1e-11}
	r, err := l.Run(a, Conditions{})
	if err != nil {
		t.Fatal(err)
	}
	if want := math.Sqrt(2 * 900 / 5.0); math.Abs(r.GroundSpeed-want) > 1e-8*want {
		t.Errorf("leaves at %.10g, work says %.10g", r.GroundSpeed, want)
	}
	if math.Abs(r.PeakAcceleration-100) > 1e-9 {
		t.Errorf("peak acceleration %g, want 100", r.PeakAcceleration)
	}
}

func TestDollyAndThrustLineOnTheRails(t *testing.T) {
	t.Parallel()
	const mass, dolly, thrust, slope, friction, tilt = 8.0, 3.0, 70.0, 0.15, 0.2, 0.1
	a := Aircraft{Mass: mass, ThrustAngle: tilt, Thrust: func(float64, float64) float64 { return thrust }}
	l := Launch{Method: Ramp, Slope: slope, Friction: friction, Length: 5, DollyMass: dolly, Tolerance: 1e-11}
	r, err := l.Run(a, Conditions{})
	if err != nil {
		t.Fatal(err)
	}
	weight := (mass + dolly) * Gravity
	normal := weight*math.Cos(slope) - thrust*math.Sin(tilt)
	acceleration := (thrust*math.Cos(tilt) - friction*normal - weight*math.Sin(slope)) / (mass + dolly)
	if want := math.Sqrt(2 * acceleration * 5); math.Abs(r.GroundSpeed-want) > 1e-9 {
		t.Errorf("leaves at %.10g, constant forces say %.10g", r.GroundSpeed, want)
	}
}

func TestPullUpKeepsItsLimits(t *testing.T) {
	t.Parallel()
	for name, l := range launches() {
		l.Distance = 200
		r, err := l.Run(modelOf(name), grass(0, 0))
		if err != nil {
			t.Fatal(err)
		}
		f, s := r.trace.flight, &r.trace.flown
		highest, steepest := 0.0, 0.0
		for i := range 400 {
			at := s.start + (s.end-s.start)*float64(i)/400
			state := s.At(at)
			rate, m := f.rate(at, state), f.through(state)
			across := rate[atUpward]*m.cosine - rate[atForward]*m.sine
			highest = max(highest, across/Gravity+m.cosine)
			steepest = max(steepest, math.Atan2(state[atUpward], state[atForward]))
		}
		if highest > DefaultMaxLoad+1e-9 || highest < 1.1 {
			t.Errorf("%s: highest load factor %g, limit %g", name, highest, DefaultMaxLoad)
		}
		if steepest > DefaultMaxClimbAngle+0.005 && name != "ramp" {
			t.Errorf("%s: steepest climb %g, limit %g", name, steepest, DefaultMaxClimbAngle)
		}
	}
}

func TestStraightRailProfileIsTheSlope(t *testing.T) {
	t.Parallel()
	straight := launches()["ramp"]
	profiled := straight
	for s := 0.0; s <= 6; s += 2 {
		profiled.RailProfile = append(profiled.RailProfile, ProfilePoint{s, s * math.Sin(straight.Slope)})
	}
	curved := profiled
	curved.RailProfile = []ProfilePoint{{0, 0}, {3, 0.2}, {6, 6 * math.Sin(straight.Slope)}}
	results := make([]Result, 0, 3)
	for _, l := range []Launch{straight, profiled, curved} {
		r, err := l.Run(light(), grass(2, 0))
		if err != nil {
			t.Fatal(err)
		}
		results = append(results, r)
	}
	if d := math.Abs(results[0].Airspeed-results[1].Airspeed) + math.Abs(results[0].Sink-results[1].Sink); d > 1e-6 {
		t.Errorf("straight profile differs from the slope by %g", d)
	}
	if results[2].Path[19].ClimbAngle <= results[0].Path[19].ClimbAngle {
		t.Error("rails that turn up at the end do not leave steeper")
	}
	if math.Abs(results[2].Height-2.5) > 1e-9 {
		t.Errorf("curved rails end at %g m, want 2.5", results[2].Height)
	}
}

func TestLaunchesThatComeToNothing(t *testing.T) {
	t.Parallel()
	weak := jet()
	weak.Thrust = func(v, _ float64) float64 { return 5 - 0.01*v }
	slow := launches()["wheels"]
	stuck := launches()["ramp"]
	stuck.Slope = 0.9
	cases := []struct {
		name  string
		l     Launch
		model Aircraft
	}{
		{"too little thrust to roll", slow, weak},
		{"slides down its ramp", stuck, weak},
		{"no engine on wheels", slow, Aircraft{Mass: 12, Area: 0.65, CLMax: 1}},
		{"drag holds it below lift-off", slow, Aircraft{Mass: 12, Area: 0.65, CLMax: 1, CD0: 3, Thrust: jet().Thrust}},
	}
	for _, c := range cases {
		r, err := c.l.Run(c.model, grass(0, 0))
		if err != nil || !r.NeverLiftsOff || r.ReachesScreen {
			t.Errorf("%s: %+v %v", c.name, r, err)
		}
	}
	dropped, err := Launch{Method: Hand, HandSpeed: 4, HandHeight: 1.5}.Run(light(), grass(0, 0))
	if err != nil || !dropped.TouchesGround || dropped.ReachesScreen || dropped.Sink < 1.5 {
		t.Errorf("a throw far below stall does not touch the ground: %+v %v", dropped.End(), err)
	}
}

func TestGroundThatFallsAwaySavesASinkingModel(t *testing.T) {
	t.Parallel()
	l := launches()["ramp"]
	l.Length, l.EndHeight, l.Slope = 2.5, 0.6, 0.1
	level, err := l.Run(light(), grass(0, 0))
	if err != nil || !level.TouchesGround {
		t.Fatalf("short ramp over level ground does not touch: %+v %v", level.End(), err)
	}
	l.Ground = []ProfilePoint{{0, 0}, {3, 0}, {20, -12}, {200, -12}}
	falling, err := l.Run(light(), grass(0, 0))
	if err != nil || falling.TouchesGround || falling.Sink < level.Sink {
		t.Errorf("over falling ground: touches %t, sink %g after %g (%v)", falling.TouchesGround, falling.Sink, level.Sink, err)
	}
	l.Ground = []ProfilePoint{{0, 0}, {8, 0}, {8.5, 3}, {9, 0}}
	bank, err := l.Run(light(), grass(0, 0))
	if err != nil || !bank.TouchesGround || bank.ContactAt > 8.5 || bank.ContactAt < 8 {
		t.Errorf("a bank half a metre thick is missed: contact at %g (%v)", bank.ContactAt, err)
	}
}

func TestHeightAtFollowsTheDenseOutput(t *testing.T) {
	t.Parallel()
	l := launches()["wheels"]
	l.Distance = 150
	r, err := l.Run(jet(), grass(2, 0))
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range r.Path {
		got, reached := r.At(p.Distance)
		if !reached || math.Abs(got.Height-p.Height) > 1e-9 || math.Abs(got.Airspeed-p.Airspeed) > 1e-6 {
			t.Errorf("at %g m: %+v, path says %+v (%t)", p.Distance, got, p, reached)
		}
	}
	if _, reached := r.HeightAt(1e4); reached {
		t.Error("reaches a place it does not fly to")
	}
	if !r.ReachesFarthest || r.End().Distance < 150 {
		t.Errorf("ends at %g m, asked for 150", r.End().Distance)
	}
	if h, ok := r.LowestBetween(60, 90); !ok || h > mustHeight(t, &r, 60)+1e-9 {
		t.Errorf("lowest between 60 and 90 m is %g (%t)", h, ok)
	}
}

// mustHeight is the height a launch has at a distance.
func mustHeight(t *testing.T, r *Result, distance float64) float64 {
	t.Helper()
	h, reached := r.HeightAt(distance)
	if !reached {
		t.Fatalf("does not reach %g m", distance)
	}
	return h
}

func TestToleranceSettlesTheLaunch(t *testing.T) {
	t.Parallel()
	for name, l := range launches() {
		coarse, err := l.Run(modelOf(name), grass(3, 1))
		if err != nil {
			t.Fatal(err)
		}
		l.Tolerance = 1e-11
		fine, err := l.Run(modelOf(name), grass(3, 1))
		if err != nil {
			t.Fatal(err)
		}
		if d := math.Abs(coarse.ScreenDistance - fine.ScreenDistance); d > 1e-3 {
			t.Errorf("%s: screen distance moves %g m with the tolerance", name, d)
		}
	}
}

func TestSameLaunchSameBits(t *testing.T) {
	t.Parallel()
	for name, l := range launches() {
		first, _ := l.Run(modelOf(name), grass(3, 1))
		second, _ := l.Run(modelOf(name), grass(3, 1))
		if !reflect.DeepEqual(first.Path, second.Path) {
			t.Errorf("%s: two runs differ", name)
		}
	}
}

func TestLaunchCheckNamesTheField(t *testing.T) {
	t.Parallel()
	cases := []struct {
		change func(*Launch, *Aircraft, *Conditions)
		expect string
	}{
		{func(l *Launch, _ *Aircraft, _ *Conditions) { l.Method = 0 }, "launch method"},
		{func(l *Launch, _ *Aircraft, _ *Conditions) { l.Friction = -1 }, "launch friction"},
		{func(l *Launch, _ *Aircraft, _ *Conditions) { l.ClimbLift = 2 }, "launch climb lift"},
		{func(l *Launch, _ *Aircraft, _ *Conditions) { l.Ground = []ProfilePoint{{1, 0}, {1, 2}} }, "launch ground profile"},
		{func(l *Launch, _ *Aircraft, _ *Conditions) { l.Method = Catapult; l.Forces = nil }, "launch forces"},
		{func(_ *Launch, a *Aircraft, _ *Conditions) { a.Mass = -12 }, "aircraft mass"},
		{func(_ *Launch, a *Aircraft, _ *Conditions) { a.CD0 = math.NaN() }, "aircraft zero-lift drag"},
		{func(_ *Launch, _ *Aircraft, c *Conditions) { c.Headwind = math.Inf(1) }, "headwind"},
	}
	for _, c := range cases {
		l, a, air := launches()["wheels"], jet(), grass(0, 0)
		c.change(&l, &a, &air)
		if _, err := l.Run(a, air); err == nil || !strings.HasPrefix(err.Error(), c.expect) {
			t.Errorf("got %v, want an error about %s", err, c.expect)
		}
	}
}
