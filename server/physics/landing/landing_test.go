package landing

import (
	"math"
	"testing"

	"pitgate/server/physics/motion"
	"pitgate/server/physics/weather"
)

// jet is a 12 kg model.
func jet() motion.Aircraft {
	return motion.Aircraft{
		Mass: 12, Area: 0.65, Span: 2, CD0: 0.05, InducedFactor: 0.069, CLMax: 1.1, CLGround: 0.3, GroundDrag: 0.01, WingHeight: 0.24,
		Thrust: func(_, time float64) float64 { return min(5+40*time, 100) },
	}
}

// still is air without wind.
var still = motion.Conditions{Density: 1.225}

// usual is a landing on grass.
func usual() Plan {
	return Plan{
		Angle: degrees(5), ScreenHeight: 15, AimPoint: 10, Friction: 0.08, Shutdown: true,
		Idle: func(float64) float64 { return 4 },
	}
}

// land flies a landing that must be possible.
func land(t *testing.T, a motion.Aircraft, air motion.Conditions, plan Plan) Landing {
	t.Helper()
	l, err := Fly(a, air, plan)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// pure is a model without induced drag and lift on the ground, so that closed forms hold.
func pure(drag float64) motion.Aircraft {
	return motion.Aircraft{Mass: 12, Area: 0.65, CD0: drag, CLMax: 1.1}
}

// ratio lands a light aeroplane with brakes twice, down a glide without thrust, and returns the second distance over the first.
func ratio(in inputs) float64 {
	value := func(name string, other float64) float64 {
		if v, ok := in[name]; ok {
			return v
		}
		return other
	}
	land := func(mass, density, slope, tailwind, brakes float64) float64 {
		a := motion.Aircraft{
			Mass: 1338 * mass, Area: 16.165, Span: 10.91, CD0: 0.075, InducedFactor: 0.054, CLMax: 1.8, CLGround: 0.4, WingHeight: 1.2,
		}
		air := motion.Conditions{Density: 1.225 * density}
		air.Headwind = -tailwind * 1.2 * a.StallSpeed(air)
		plan := Plan{
			ScreenHeight: 15.24, Friction: 0.05, BrakeFriction: brakes, BrakeDelay: 1, Slope: math.Atan(slope / 100),
		}
		l, err := Fly(a, air, plan)
		if err != nil || !l.Complete() {
			return math.NaN()
		}
		return l.Total
	}
	return land(value("mass", 1), value("density", 1), value("slope", 0), value("tailwind", 0), value("brakes", 0.4)) / land(1, 1, 0, 0, 0.4)
}

// rollRatio is the roll of a model that only friction stops, over that in still air at the same touchdown speed.
func rollRatio(in inputs) float64 {
	speed, head := 1.0, in["headwind"]
	if v, ok := in["speed"]; ok {
		speed = v
	}
	roll := func(speed, head float64) float64 {
		a, air := pure(0), still
		air.Headwind = head * 18
		f := &flight{model: &a, air: &air, plan: Plan{Friction: 0.3}, weight: 12 * motion.Gravity}
		stop, _, err := f.roll(Point{GroundSpeed: 18*speed - air.Headwind})
		if err != nil {
			return math.NaN()
		}
		return stop.Distance
	}
	return roll(speed, head) / roll(1, 0)
}

// smallJet rolls the aeroplane of a row by integration.
func smallJet(in inputs) float64 {
	a := motion.Aircraft{Mass: in["weight"] / in["gravity"], Area: in["area"], CD0: in["drag"], CLMax: in["max_lift"]}
	air := motion.Conditions{Density: in["density"], Gravity: in["gravity"]}
	f := &flight{model: &a, air: &air, plan: Plan{Friction: in["friction"]}, weight: in["weight"]}
	stop, _, err := f.roll(Point{GroundSpeed: 1.3 * a.StallSpeed(air)})
	if err != nil {
		return math.NaN()
	}
	return stop.Distance
}

// meanJet is its roll by the mean force.
func meanJet(in inputs) float64 {
	a := motion.Aircraft{Mass: in["weight"] / in["gravity"], Area: in["area"], CLMax: in["max_lift"]}
	v := 1.3 * a.StallSpeed(motion.Conditions{Density: in["density"], Gravity: in["gravity"]})
	drag := 0.5 * in["density"] * 0.49 * v * v * in["area"] * in["drag"]
	return MeanForceRoll(v, a.Mass, in["gravity"], drag, 0, in["friction"])
}

// closedRoll rolls to rest under drag with a factor and friction.
func closedRoll(in inputs) Point {
	a := pure(in["factor"] * 2 * 12 / (1.225 * 0.65))
	f := &flight{model: &a, air: &still, plan: Plan{Friction: in["friction"]}, weight: 12 * motion.Gravity}
	stop, _, err := f.roll(Point{GroundSpeed: in["speed"]})
	if err != nil {
		return Point{Distance: math.NaN(), Time: math.NaN()}
	}
	return stop
}

func TestDistancesAgainstPrint(t *testing.T) {
	t.Parallel()
	arc := func(in inputs) AirDistance {
		return ArcDistance(in["screen"], degrees(in["angle"]), in["speed"], in["load"], in["gravity"])
	}
	checkPublished(t, "landing_distance", map[string]method{
		"flare-height":    func(in inputs) float64 { return arc(in).FlareHeight },
		"approach":        func(in inputs) float64 { return arc(in).Approach },
		"flare":           func(in inputs) float64 { return arc(in).Flare },
		"mean-roll":       meanJet,
		"integrated-roll": smallJet,
		"slope": func(in inputs) float64 {
			f := &flight{slope: Slope{Angle: degrees(in["angle"])}}
			return -f.distance(in["screen"])
		},
		"roll-closed": func(in inputs) float64 { return closedRoll(in).Distance },
		"roll-time":   func(in inputs) float64 { return closedRoll(in).Time },
		"trend":       ratio,
		"roll-ratio":  rollRatio,
	})
}

func TestPartsAddUp(t *testing.T) {
	t.Parallel()
	l := land(t, jet(), still, usual())
	if !l.Complete() || !l.Levels {
		t.Fatalf("not complete: %+v", l.Slope)
	}
	if sum := l.Approach + l.Flare + l.Float + l.Run; math.Abs(sum-l.Total) > 1e-9 {
		t.Errorf("parts add up to %g, total %g", sum, l.Total)
	}
	if l.Flare <= 0 || l.Float <= 0 || l.Run <= 0 || math.Abs(l.FlareEnd.Height) > 1e-3 {
		t.Errorf("flare %g ending at %g, float %g, run %g", l.Flare, l.FlareEnd.Height, l.Float, l.Run)
	}
	if v := l.Touchdown.Airspeed / l.StallSpeed; math.Abs(v-DefaultTouchdownRatio) > 1e-6 {
		t.Errorf("touches down at %g times the stall speed", v)
	}
	if got := (15.0 - l.FlareStart.Height) / math.Tan(degrees(5)); math.Abs(got-l.Approach) > 1e-9 {
		t.Errorf("approach %g, plane trigonometry %g", l.Approach, got)
	}
}

// Without induced drag the float is pure drag: x = ln(v0/v1)/k.
func TestFloatAgainstClosedForm(t *testing.T) {
	t.Parallel()
	a := pure(0.08)
	l := land(t, a, still, Plan{Angle: degrees(4), ScreenHeight: 15, Friction: 0.05})
	k := motion.DragFactor(1.225, 0.65, 0.08, 12)
	want := math.Log(l.FlareEnd.Airspeed/l.Touchdown.Airspeed) / k
	if math.Abs(l.Float-want) > 1e-5*want {
		t.Errorf("float %g, closed form %g", l.Float, want)
	}
	speed := (l.FlareStart.Airspeed + l.FlareEnd.Airspeed) / 2
	arc := ArcDistance(15, degrees(4), speed, DefaultFlareLoad, motion.Gravity)
	if math.Abs(arc.Flare-l.Flare) > 0.03*l.Flare {
		t.Errorf("flare %g, arc at the mean speed %g", l.Flare, arc.Flare)
	}
}

// Energy: height and speed lost are the work of drag.
func TestEnergyOfTheFlare(t *testing.T) {
	t.Parallel()
	a := pure(0)
	l := land(t, a, still, Plan{Angle: degrees(4), ScreenHeight: 15, Idle: func(float64) float64 { return -9 }, Friction: 0.05})
	energy := func(p Point) float64 { return 6*p.Airspeed*p.Airspeed + 12*motion.Gravity*p.Height }
	end, _ := l.arc.End()
	work, before := 0.0, l.arc.At(0)
	for i := 1; i <= 2000; i++ {
		s := l.arc.At(end * float64(i) / 2000)
		work += 9 * math.Hypot(s[atDistance]-before[atDistance], s[atHeight]-before[atHeight])
		before = s
	}
	if lost := energy(l.FlareStart) - energy(l.FlareEnd); math.Abs(lost-work) > 1e-4*work {
		t.Errorf("energy lost %g J, work %g J", lost, work)
	}
}

func TestIdleThrustFlattensTheApproach(t *testing.T) {
	t.Parallel()
	plan := usual()
	before := math.Inf(1)
	for _, thrust := range []float64{0, 2, 4, 8, 11} {
		plan.Idle, plan.Angle = func(float64) float64 { return thrust }, 0
		l := land(t, jet(), still, plan)
		if !(l.Steepest < before) {
			t.Errorf("idle %g N: steepest %g after %g", thrust, l.Steepest, before)
		}
		sine := (l.Drag - thrust) / (12 * motion.Gravity)
		if l.Steepest < DefaultSteepest && math.Abs(math.Sin(l.Angle)-sine) > 1e-9 {
			t.Errorf("idle %g N: sin of %g is not %g", thrust, l.Angle, sine)
		}
		before = l.Steepest
	}
	plan.Angle = degrees(10)
	if l := land(t, jet(), still, plan); !l.Flattened || l.Angle >= degrees(10) {
		t.Errorf("11 N of idle thrust at 10 degrees: %+v", l.Slope)
	}
	plan.Idle = func(float64) float64 { return 30 }
	if l := land(t, jet(), still, plan); l.Descends || l.Complete() || l.Total != 0 {
		t.Errorf("30 N of idle thrust comes down: %+v", l.Slope)
	}
}

func TestLandingsThatDoNotEnd(t *testing.T) {
	t.Parallel()
	plan := usual()
	plan.Shutdown = false
	plan.Idle = func(v float64) float64 { return min(12, 240/v) }
	if l := land(t, jet(), still, plan); l.Stops || l.Total != 0 {
		t.Errorf("stops with idle thrust above friction: %+v", l.Stop)
	}
	plan.Idle = func(v float64) float64 { return max(0, 80-3.4*v) }
	if l := land(t, jet(), still, plan); !l.Descends || l.Settles {
		t.Errorf("settles with idle thrust above drag: descends %t, settles %t", l.Descends, l.Settles)
	}
	plan = usual()
	plan.Slope = -0.2
	if l := land(t, jet(), still, plan); l.Stops {
		t.Error("stops on a slope steeper than friction")
	}
}

func TestSlowSteepFlareIsHard(t *testing.T) {
	t.Parallel()
	plan := usual()
	plan.Angle, plan.Idle, plan.ApproachRatio = degrees(12), nil, 1.1
	a := jet()
	a.CD0 = 0.2
	l := land(t, a, still, plan)
	if l.Levels || l.TouchdownSink <= 0.5 {
		t.Errorf("levels %t, sink %g", l.Levels, l.TouchdownSink)
	}
	plan.ApproachRatio, plan.FlareLoad = 1.4, 0.5
	if l = land(t, a, still, plan); !l.Levels || l.TouchdownSink != 0 {
		t.Errorf("faster and firmer: levels %t, sink %g", l.Levels, l.TouchdownSink)
	}
}

func TestOrderOfLandings(t *testing.T) {
	t.Parallel()
	windy := func(head float64) motion.Conditions {
		return motion.Conditions{Density: 1.225, Headwind: head, Profile: weather.NewProfile(weather.OpenGrass, 10)}
	}
	heavier := func(mass float64) motion.Aircraft { a := jet(); a.Mass = mass; return a }
	planned := func(change func(*Plan)) Plan { p := usual(); change(&p); return p }
	cases := []struct {
		name  string
		total func(x float64) float64
		xs    []float64 // each longer than the one before
	}{
		{"headwind", func(x float64) float64 { return land(t, jet(), windy(-x), usual()).Total }, []float64{-8, -4, -1, 0, 2, 4}},
		{"mass", func(x float64) float64 { return land(t, heavier(x), still, usual()).Total }, []float64{9, 10, 12, 14, 16}},
		{"friction", func(x float64) float64 {
			return land(t, jet(), still, planned(func(p *Plan) { p.Friction = -x })).Total
		}, []float64{-0.3, -0.1, -0.05, -0.03}},
		{"slope", func(x float64) float64 { return land(t, jet(), still, planned(func(p *Plan) { p.Slope = -x })).Total }, []float64{-0.03, -0.01, 0, 0.01, 0.03}},
		{"screen", func(x float64) float64 {
			return land(t, jet(), still, planned(func(p *Plan) { p.ScreenHeight = x })).Total
		}, []float64{0.5, 2, 5, 10, 15, 20}},
		{"speed", func(x float64) float64 {
			return land(t, jet(), still, planned(func(p *Plan) { p.ApproachRatio = x })).Total
		}, []float64{1.2, 1.3, 1.4, 1.5}},
		{"flatter", func(x float64) float64 {
			return land(t, jet(), still, planned(func(p *Plan) { p.Angle = degrees(-x) })).Total
		}, []float64{-6, -5, -4, -3}},
	}
	for _, c := range cases {
		before := 0.0
		for _, x := range c.xs {
			total := c.total(x)
			if !(total > before) {
				t.Errorf("%s %g: %g m after %g m", c.name, x, total, before)
			}
			before = total
		}
	}
}

func TestBellySlidesWithoutBrakes(t *testing.T) {
	t.Parallel()
	plan := usual()
	plan.Belly, plan.Friction, plan.BrakeFriction = true, 0.5, 2
	a := pure(0)
	l, err := Fly(a, still, Plan{Angle: 0, Friction: 0.5, Belly: true, BrakeFriction: 2, Idle: func(float64) float64 { return -10 }, Shutdown: true})
	if err != nil {
		t.Fatal(err)
	}
	v := l.Touchdown.GroundSpeed
	if want := v * v / (2 * 0.5 * motion.Gravity); math.Abs(l.Run-want) > 1e-6*want {
		t.Errorf("slides %g m, closed form %g m", l.Run, want)
	}
	if slide, roll := land(t, jet(), still, plan).Run, land(t, jet(), still, usual()).Run; slide >= roll {
		t.Errorf("slides %g m, rolls %g m", slide, roll)
	}
}

func TestClearanceOverObstacles(t *testing.T) {
	t.Parallel()
	plan := usual()
	plan.Obstacles = []Obstacle{
		{Near: -60, Far: -50, Top: 2.4, PlaceSpread: 2, TopSpread: 0.3},
		{Near: -60, Far: -60, Top: 8},
	}
	l := land(t, jet(), still, plan)
	tan := math.Tan(degrees(5))
	want := 60*tan - 2.4
	if c := l.Clearances[0]; math.Abs(c.Height-want) > 1e-9 || c.Distance != -50 {
		t.Errorf("hedge: %+v, want %g at -50", c, want)
	}
	if c, spread := l.Clearances[0], math.Hypot(0.3, 2*tan); math.Abs(c.Height-c.Lower-1.645*spread) > 1e-9 {
		t.Errorf("hedge with spread: %+v", c)
	}
	if c := l.Clearances[1]; c.Height >= 0 {
		t.Errorf("a tree of 8 m at 60 m is cleared by %g m", c.Height)
	}
	if h := l.Height(l.FlareStart.Distance); math.Abs(h-l.FlareStart.Height) > 1e-9 {
		t.Errorf("height at the flare %g, want %g", h, l.FlareStart.Height)
	}
	if h := l.Height(l.FlareStart.Distance + l.Flare/2); !(h > 0 && h < l.FlareStart.Height) {
		t.Errorf("height in the flare %g", h)
	}
}

func TestPathRunsInOrder(t *testing.T) {
	t.Parallel()
	l := land(t, jet(), motion.Conditions{Density: 1.2, Headwind: 4, Profile: weather.NewProfile(weather.LowCrops, 10)}, usual())
	path := l.Path(-200, 12)
	for i := 1; i < len(path); i++ {
		if path[i].Time < path[i-1].Time || path[i].Distance < path[i-1].Distance {
			t.Errorf("point %d: %+v after %+v", i, path[i], path[i-1])
		}
	}
	if len(path) != 16 || path[len(path)-1] != l.Stop {
		t.Errorf("%d points, last %+v", len(path), path[len(path)-1])
	}
}

// TestFlareEndsOnTheGround holds that no landing rolls on from the air, in wind that falls off near the ground too: what levels does so along the
// ground, what does not meets it sinking.
func TestFlareEndsOnTheGround(t *testing.T) {
	t.Parallel()
	stalled := 0
	for _, head := range []float64{0, 2, 4, 5, 6, 7, 8} {
		for _, ratio := range []float64{1.15, 1.2, 1.3, 1.4} {
			air := motion.Conditions{Density: 1.225, Headwind: head, Profile: weather.NewProfile(weather.OpenGrass, 10)}
			plan := usual()
			plan.Angle, plan.Idle, plan.ApproachRatio = degrees(11), nil, ratio
			a := jet()
			a.CD0 = 0.15
			l := land(t, a, air, plan)
			if gap := math.Abs(l.FlareEnd.Height); gap > closeEnough {
				t.Errorf("head wind %g, %g times the stall: ends %.3f m off the ground, levels %t", head, ratio, gap, l.Levels)
			}
			if l.Levels != (l.TouchdownSink == 0) {
				t.Errorf("head wind %g, %g times the stall: levels %t with a sink of %g", head, ratio, l.Levels, l.TouchdownSink)
			}
			if !l.Levels {
				stalled++
			}
		}
	}
	if stalled == 0 {
		t.Error("no landing stalls in the shear: the rows do not try it")
	}
}

// TestFlareThatMeetsTheGroundStartsHighest wants, where the wind falls off too fast for a flare to end along the ground, the flare from the edge between
// those that meet it and those that end above it: the same start meets the ground, two millimetres higher does not.
func TestFlareThatMeetsTheGroundStartsHighest(t *testing.T) {
	t.Parallel()
	for _, row := range []struct {
		head, ratio, load, angle, drag float64
		ground                         weather.Roughness
	}{
		{2, 1.15, 0.1, 11, 0.05, weather.OpenGrass},
		{2, 1.2, 0.03, 3, 0.05, weather.OpenGrass},
		{2, 1.3, 0.03, 11, 0.05, weather.OpenGrass},
		{4, 1.1, 0.1, 3, 0.05, weather.LowCrops},
		{2, 1.6, 0.1, 20, 0.15, weather.LowCrops},
	} {
		plan, a := usual(), jet()
		plan.Angle, plan.Idle, plan.ApproachRatio, plan.FlareLoad, a.CD0 = degrees(row.angle), nil, row.ratio, row.load, row.drag
		l := land(t, a, motion.Conditions{Density: 1.225, Headwind: row.head, Profile: weather.NewProfile(row.ground, 10)}, plan)
		f := l.flight
		height := l.FlareStart.Height - f.ground(f.plan.AimPoint)
		_, _, meets, err := f.flareFrom(height)
		_, _, above, fault := f.flareFrom(height + 2*closeEnough)
		if err != nil || fault != nil {
			t.Fatal(err, fault)
		}
		if l.Levels || meets || !above {
			t.Errorf("%+v: from %.4f m levels %t, runs along %t; 2 mm higher %t", row, height, l.Levels, meets, above)
		}
	}
}
