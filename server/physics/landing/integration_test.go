package landing

import (
	"math"
	"testing"

	"pitgate/server/physics/motion"
	"pitgate/server/physics/weather"
)

// flying prepares a flight of jet in a wind over open grass without looking for a slope.
func flying(density, wind float64, plan Plan) *flight {
	a := jet()
	air := motion.Conditions{Density: density, Headwind: wind, Profile: weather.NewProfile(weather.OpenGrass, 10)}
	return &flight{model: &a, air: &air, plan: plan, weight: 12 * motion.Gravity, stall: 10}
}

// agree compares with a value of the other program to 1e-6 of it, or of one.
func agree(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-6*max(math.Abs(want), 1)) {
		t.Errorf("%s: got %.9f, integrated apart %.9f", what, got, want)
	}
}

// The same equations were written down and integrated apart from this program by a classical fourth-order method with steps of 0.2 to 0.5 ms and halving
// for the events.

func TestFlareIntegratedApart(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		height, forward, sink, load, idle, density, wind float64
		time, distance, end, speed                       float64
	}{
		{1.6, 21, 1.8, 0.1, 0, 1.225, 0, 1.762062322, 36.009757420, 0.032415883, 19.638789867},
		{2.5, 17, 2.0, 0.2, 4, 1.1, 4, 1.002551737, 16.903240297, 1.501350913, 16.521979900},
		{1.0, 19, 1.2, 0.15, 6, 1.225, -3, 1.210053806, 22.777104704, 0.289717118, 18.500129250},
	} {
		f := flying(c.density, c.wind, Plan{FlareLoad: c.load, Idle: func(float64) float64 { return c.idle }})
		arc, err := f.flare(Point{Height: c.height, GroundSpeed: c.forward, Sink: c.sink}, solver.Tolerance)
		if err != nil {
			t.Fatal(err)
		}
		time, s := arc.End()
		agree(t, "time", time, c.time)
		agree(t, "distance", s[atDistance], c.distance)
		agree(t, "height", s[atHeight], c.end)
		agree(t, "speed", s[atForward], c.speed)
	}
}

func TestFloatIntegratedApart(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ speed, wanted, idle, density, wind, time, distance float64 }{
		{19.5, 18.03, 0, 1.225, 0, 1.424588076, 26.728784067},
		{17, 18.03, 3, 1.2, 3, 0.056810235, 0.964527512},
	} {
		f := flying(c.density, c.wind, Plan{TouchdownRatio: c.wanted / 10, Idle: func(float64) float64 { return c.idle }})
		to, settles, err := f.float(Point{GroundSpeed: c.speed})
		if err != nil || !settles {
			t.Fatal(settles, err)
		}
		agree(t, "time", to.Time, c.time)
		agree(t, "distance", to.Distance, c.distance)
	}
}

func TestRollIntegratedApart(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ speed, friction, idle, density, wind, slope, time, travel float64 }{
		{17, 0.08, 0, 1.225, 4, 0.02, 15.020004109, 119.460629907},
		{20, 0.05, 3, 1.1, -2, -0.01, 80.791029195, 589.705277140},
	} {
		f := flying(c.density, c.wind, Plan{Friction: c.friction, Slope: c.slope, Idle: func(float64) float64 { return c.idle }})
		to, stops, err := f.roll(Point{GroundSpeed: c.speed})
		if err != nil || !stops {
			t.Fatal(stops, err)
		}
		agree(t, "time", to.Time, c.time)
		agree(t, "travel", to.Distance/math.Cos(c.slope), c.travel)
	}
}

func TestGoAroundIntegratedApart(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		height, forward, sink, open, full, tau, density, wind float64
		time, distance, lowest, speed                         float64
	}{
		{8, 20, 1.9, 0.7, 100, 1.2, 1.225, 0, 1.400964284, 14.275501143, 7.291621191, 20.991020280},
		{12, 17, 1.5, 1, 60, 2, 1.1, 5, 1.810407469, 13.845078694, 11.193281297, 17.232244943},
		{6, 22, 2.2, 0, 80, 0.5, 1.225, -2, 0.786271219, 17.945973853, 5.118113382, 24.095445703},
	} {
		f := flying(c.density, c.wind, Plan{Idle: func(float64) float64 { return 4 }})
		f.model.Thrust = lagged(c.full, c.tau)
		g := GoAround{Reaction: c.open}.withDefaults()
		path, err := f.climb(g, Point{Time: c.open, Height: c.height, GroundSpeed: c.forward, Sink: c.sink}, c.height)
		if err != nil {
			t.Fatal(err)
		}
		low, _ := path.First(goLowest)
		agree(t, "time", low.Time, c.time)
		agree(t, "distance", low.State[atDistance], c.distance)
		agree(t, "height", low.State[atHeight], c.lowest)
		agree(t, "speed", low.State[atForward], c.speed)
	}
}
