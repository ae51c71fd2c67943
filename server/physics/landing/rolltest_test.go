package landing

import (
	"errors"
	"math"
	"testing"

	"pitgate/server/physics/motion"
)

func TestPullFriction(t *testing.T) {
	t.Parallel()
	m, err := PullFriction(Measured{9.4, 0.5}, Measured{12, 0.05}, 0)
	if err != nil || math.Abs(m.Value-9.4/(12*motion.Gravity)) > 1e-12 {
		t.Errorf("%+v, %v", m, err)
	}
	if want := m.Value * math.Hypot(0.5/9.4, 0.05/12); math.Abs(m.Spread-want) > 1e-12 {
		t.Errorf("spread %g, want %g", m.Spread, want)
	}
	up, _ := PullFriction(Measured{9.4 + 12*motion.Gravity*math.Sin(0.02), 0}, Measured{12, 0}, 0.02)
	if math.Abs(up.Value-m.Value) > 2e-5 {
		t.Errorf("uphill %g, level %g", up.Value, m.Value)
	}
}

// A roll that this package integrates gives back the friction it was rolled with.
func TestRollOutGivesFrictionBack(t *testing.T) {
	t.Parallel()
	for _, mu := range []float64{0.03, 0.08, 0.2} {
		for _, slope := range []float64{-0.01, 0, 0.02} {
			a := jet()
			a.Span = 0
			air := RollDrag{Density: 1.225, Area: a.Area, Drag: a.DragCoefficient(a.CLGround, 0) + a.GroundDrag, Lift: a.CLGround}
			f := &flight{model: &a, air: &still, plan: Plan{Friction: mu, Slope: slope, Shutdown: true}, weight: 12 * motion.Gravity}
			stop, stops, err := f.roll(Point{GroundSpeed: 12})
			if err != nil || !stops {
				t.Fatal(stops, err)
			}
			got, err := RollOutFriction(Measured{12, 0.3}, Measured{stop.Distance / math.Cos(slope), 1}, 12, slope, air)
			if err != nil || math.Abs(got.Value-mu) > 1e-6 || !(got.Spread > 0) {
				t.Errorf("friction %g on slope %g comes back as %+v, %v", mu, slope, got, err)
			}
		}
	}
}

func TestRollOutWithoutDrag(t *testing.T) {
	t.Parallel()
	got, err := RollOutFriction(Measured{8, 0.2}, Measured{40, 1}, 12, 0, RollDrag{})
	want := 64 / (2 * motion.Gravity * 40)
	if err != nil || math.Abs(got.Value-want) > 1e-12 {
		t.Errorf("%+v, want %g, %v", got, want, err)
	}
	if spread := want * math.Hypot(2*0.2/8, 1.0/40); math.Abs(got.Spread-spread) > 1e-6 {
		t.Errorf("spread %g, want %g", got.Spread, spread)
	}
}

func TestTimedFriction(t *testing.T) {
	t.Parallel()
	mu, v := 0.07, 9.0
	at := func(time float64) float64 { return v*time - mu*motion.Gravity*time*time/2 }
	got, err := TimedFriction(Measured{1.5, 0.05}, Measured{4, 0.05}, at(1.5), at(4), 12, 0, RollDrag{})
	if err != nil || math.Abs(got.Value-mu) > 1e-9 || !(got.Spread > 0.001) {
		t.Errorf("%+v, %v", got, err)
	}
	slowed, err := TimedFriction(Measured{1.5, 0}, Measured{4, 0}, at(1.5), at(4), 12, 0, RollDrag{Density: 1.225, Area: 0.65, Drag: 0.05})
	if err != nil || slowed.Value >= got.Value {
		t.Errorf("drag taken off: %+v, %v", slowed, err)
	}
}

func TestRollingTestsRefuse(t *testing.T) {
	t.Parallel()
	one, nan := Measured{1, 0}, Measured{math.NaN(), 0}
	pull := func(force, mass Measured, slope float64) error {
		_, err := PullFriction(force, mass, slope)
		return err
	}
	out := func(v, x Measured, mass float64, d RollDrag) error {
		_, err := RollOutFriction(v, x, mass, 0, d)
		return err
	}
	timed := func(a, b Measured, x, y float64) error {
		_, err := TimedFriction(a, b, x, y, 1, 0, RollDrag{})
		return err
	}
	for name, c := range map[string]struct{ got, want error }{
		"pull":           {pull(nan, one, 0), ErrPull},
		"pull slope":     {pull(one, one, 2), ErrSlope},
		"pull spread":    {pull(Measured{1, -1}, one, 0), ErrPull},
		"speed":          {out(Measured{}, one, 1, RollDrag{}), ErrRollOut},
		"mass":           {out(one, one, 0, RollDrag{}), ErrRollOut},
		"drag":           {out(one, one, 1, RollDrag{Drag: -1}), ErrDrag},
		"marks":          {timed(one, one, 1, 2), ErrTimes},
		"gathering pace": {timed(Measured{1, 0}, Measured{2, 0}, 1, 3), ErrTimes},
	} {
		if !errors.Is(c.got, c.want) {
			t.Errorf("%s: %v", name, c.got)
		}
	}
}

// FuzzRollOut asks that any test is refused or gives numbers.
func FuzzRollOut(f *testing.F) {
	f.Add(9.0, 0.2, 50.0, 1.0, 12.0, 0.01, 0.06, 0.3)
	f.Add(1e-9, 0.0, 1e9, 0.0, 1e-3, -0.4, 20.0, 20.0)
	f.Fuzz(func(t *testing.T, v, vs, x, xs, mass, slope, drag, lift float64) {
		air := RollDrag{Density: 1.2, Area: 0.6, Drag: drag, Lift: lift}
		for _, run := range []func() (Measured, error){
			func() (Measured, error) { return RollOutFriction(Measured{v, vs}, Measured{x, xs}, mass, slope, air) },
			func() (Measured, error) {
				return TimedFriction(Measured{v, vs}, Measured{x, xs}, mass, drag, 12, slope, air)
			},
			func() (Measured, error) { return PullFriction(Measured{v, vs}, Measured{mass, xs}, slope) },
		} {
			if m, err := run(); err == nil && (math.IsNaN(m.Value) || math.IsNaN(m.Spread) || m.Spread < 0) {
				t.Errorf("%+v", m)
			}
		}
	})
}

// The factor of air drag on a roll runs smoothly through no drag at all: y/(exp(y) - 1) = 1 - y/2 + y^2/12.
func TestDecayIsSmoothAtZero(t *testing.T) {
	t.Parallel()
	for _, y := range []float64{-2e-5, -0.9e-5, 0, 1e-9, 0.9e-5, 1.1e-5, 1e-3} {
		if got := decay(y); math.Abs(got-(1-y/2+y*y/12)) > 1e-10 {
			t.Errorf("decay(%g) = %.15g", y, got)
		}
	}
}
