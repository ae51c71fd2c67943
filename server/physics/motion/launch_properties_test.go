package motion

import (
	"math"
	"testing"
)

func TestHeadwindNeverLengthensTheRun(t *testing.T) {
	t.Parallel()
	last := math.Inf(1)
	for head := -3.0; head <= 12; head += 0.5 {
		r, err := launches()["wheels"].Run(jet(), grass(head, 0))
		if err != nil {
			t.Fatal(err)
		}
		if r.NeverLiftsOff || r.Run > last {
			t.Errorf("run of %g m at headwind %g after %g m", r.Run, head, last)
		}
		last = r.Run
	}
	for _, name := range []string{"ramp", "bungee", "catapult"} {
		calm, _ := launches()[name].Run(light(), grass(0, 0))
		windy, err := launches()[name].Run(light(), grass(5, 0))
		if err != nil || windy.Airspeed <= calm.Airspeed || windy.Sink > calm.Sink {
			t.Errorf("%s: headwind does not help: %g and %g m/s", name, calm.Airspeed, windy.Airspeed)
		}
	}
}

func TestMassNeverShortensTheRunNorLessensTheSink(t *testing.T) {
	t.Parallel()
	for name, l := range launches() {
		lastRun, lastSink, lastSpeed := 0.0, 0.0, math.Inf(1)
		for extra := 0.0; extra <= 4; extra += 0.5 {
			a := modelOf(name)
			a.Mass += extra
			if name == "wheels" {
				l.LiftoffSpeed = 1.2 * a.StallSpeed(grass(0, 0))
			}
			r, err := l.Run(a, grass(2, 0))
			if err != nil {
				t.Fatal(err)
			}
			if r.Run < lastRun-1e-9 || r.Sink < lastSink-1e-9 {
				t.Errorf("%s: %g kg more runs %g m and sinks %g m, after %g and %g", name, extra, r.Run, r.Sink, lastRun, lastSink)
			}
			if name != "wheels" && name != "hand" && r.Airspeed > lastSpeed {
				t.Errorf("%s: %g kg more leaves faster", name, extra)
			}
			lastRun, lastSink, lastSpeed = r.Run, r.Sink, r.Airspeed
		}
	}
}

func TestSpoolUpSlopeAndFrictionCostRun(t *testing.T) {
	t.Parallel()
	base := launches()["wheels"]
	reference, err := base.Run(jet(), grass(0, 0))
	if err != nil {
		t.Fatal(err)
	}
	changes := map[string]func(*Launch){
		"from idle": func(l *Launch) { l.ThrustTime = 0 },
		"uphill":    func(l *Launch) { l.Slope = 0.02 },
		"wet grass": func(l *Launch) { l.Friction = 0.16 },
		"faster":    func(l *Launch) { l.LiftoffSpeed = 22 },
	}
	for name, change := range changes {
		l := base
		change(&l)
		if r, err := l.Run(jet(), grass(0, 0)); err != nil || r.Time <= reference.Time {
			t.Errorf("%s: takes %g s, reference %g s (%v)", name, r.Time, reference.Time, err)
		}
	}
}

func TestHeadwindAndMassOverManyLaunches(t *testing.T) {
	t.Parallel()
	// Places of a sequence that fills the unit cube evenly stand in for chance.
	for i := 1; i <= 150; i++ {
		u := func(step float64) float64 { v := float64(i) * step; return v - math.Floor(v) }
		a := jet()
		a.Mass = 6 + 12*u(0.5545497)
		a.CD0, a.CLGround = 0.025+0.03*u(0.308517), 0.1+0.4*u(0.754877)
		thrust := a.Mass * Gravity * (0.35 + 0.6*u(0.569840))
		a.Thrust = func(v, s float64) float64 { return thrust*min(1, 0.2+s/2) - 0.3*v }
		air := grass(-3+10*u(0.819173), 0)
		l := Launch{
			Method: Wheels, Friction: 0.03 + 0.15*u(0.671044), Slope: -0.03 + 0.06*u(0.438579), LiftoffSpeed: 1.1 * a.StallSpeed(air),
			RotationSpeed: 1.3 * a.StallSpeed(air) * u(0.2360680), ThrustTime: 3 * u(0.6180340),
		}
		r := mustRun(t, l, a, air)
		if r.NeverLiftsOff {
			continue
		}
		more := air
		more.Headwind += 0.5 + 2*u(0.414214)
		if w := mustRun(t, l, a, more); w.NeverLiftsOff || w.Run > r.Run+1e-6 {
			t.Errorf("launch %d: headwind from %g to %g lengthens the run from %g to %g", i, air.Headwind, more.Headwind, r.Run, w.Run)
		}
		heavy := a
		heavy.Mass *= 1.02 + 0.2*u(0.732051)
		if h := mustRun(t, l, heavy, air); !h.NeverLiftsOff && h.Run < r.Run-1e-6 {
			t.Errorf("launch %d: mass from %g to %g shortens the run from %g to %g", i, a.Mass, heavy.Mass, r.Run, h.Run)
		}
	}
}
