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
