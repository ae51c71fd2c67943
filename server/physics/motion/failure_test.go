package motion

import (
	"math"
	"strings"
	"testing"
)

func TestFailureOfABallisticLaunchKeepsItsEnergy(t *testing.T) {
	t.Parallel()
	a := Aircraft{Mass: 5, Area: 0.5, Thrust: func(float64, float64) float64 { return 60 }}
	l := Launch{Method: Hand, HandSpeed: 12, HandHeight: 3, Slope: 0.6, Distance: 10, ScreenHeight: 4, Tolerance: 1e-11}
	sweep, err := l.FailureSweep(a, Conditions{Density: 1.2}, Trouble{Reaction: 1, Count: 9})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range sweep {
		p := f.Path[0]
		want := 0.5*a.Mass*p.GroundSpeed*p.GroundSpeed + a.Mass*Gravity*f.Height
		if f.Stage != Flying || f.Stays || math.Abs(f.Energy-want) > 1e-5*want {
			t.Errorf("lost at %g s: %g J at the ground, %g where it was lost (%+v)", f.Time, f.Energy, want, f.Stage)
		}
	}
	last, ok := WorstFailure(sweep, func(f Failure) float64 { return f.Energy })
	if !ok || last.Time != sweep[8].Time {
		t.Errorf("most energy when lost at %g s", last.Time)
	}
	if _, ok := WorstFailure(nil, func(Failure) float64 { return 0 }); ok {
		t.Error("nothing has a worst")
	}
}

func TestFailureOnTheRails(t *testing.T) {
	t.Parallel()
	const slope, friction = 0.2, 0.05
	a := Aircraft{Mass: 5, Thrust: func(float64, float64) float64 { return 75 }}
	l := Launch{Method: Ramp, Slope: slope, Friction: friction, Length: 6, EndHeight: 2.5, Tolerance: 1e-10}
	sweep, err := l.FailureSweep(a, Conditions{}, Trouble{Count: 40})
	if err != nil {
		t.Fatal(err)
	}
	gain := 75/a.Mass - Gravity*(math.Sin(slope)+friction*math.Cos(slope))
	loss := Gravity * (math.Sin(slope) + friction*math.Cos(slope))
	seen := map[bool]int{}
	for _, f := range sweep {
		if f.Stage != OnLauncher {
			continue
		}
		travel := 0.5 * gain * f.Time * f.Time
		speed := gain * f.Time
		reach := travel + speed*speed/(2*loss)
		seen[f.Stays]++
		if f.Stays != (reach < 6) {
			t.Errorf("lost after %g m: stays %t, coasts to %g m", travel, f.Stays, reach)
		}
		if f.Stays && math.Abs(f.EndDistance-reach*math.Cos(slope)) > 1e-6 {
			t.Errorf("lost after %g m: rests at %g, want %g", travel, f.EndDistance, reach*math.Cos(slope))
		}
		if f.Stays {
			continue
		}
		left := speed*speed - 2*loss*(6-travel)
		if want := 0.5*a.Mass*left + a.Mass*Gravity*2.5; math.Abs(f.Energy-want) > 1e-3 {
			t.Errorf("lost after %g m: %g J, want %g", travel, f.Energy, want)
		}
	}
	if seen[true] < 3 || seen[false] < 3 {
		t.Errorf("the sweep has %v", seen)
	}
}

func TestFailureInTheClimbGlides(t *testing.T) {
	t.Parallel()
	l := launches()["wheels"]
	l.ScreenHeight, l.Distance = 60, 0
	a, air := jet(), Conditions{Density: 1.2}
	sweep, err := l.FailureSweep(a, air, Trouble{Reaction: 1})
	if err != nil {
		t.Fatal(err)
	}
	last := sweep[len(sweep)-1]
	if last.Stage != Flying || last.Stays || last.Aloft || last.Sink < 55 {
		t.Fatalf("lost at 60 m: %+v", last)
	}
	far := last.EndDistance - last.Distance
	if best := a.BestGlide(air, 0).Ratio * 75; far > best || far < 20 {
		t.Errorf("glides %g m from 60 m, at best %g", far, best)
	}
	ground := 0
	for _, f := range sweep {
		if f.Stage == OnGround {
			ground++
			if !f.Stays || f.EndHeight != 0 || f.Sink != 0 || f.EndSpeed != 0 {
				t.Errorf("lost on the ground: %+v", f)
			}
		}
		if math.IsNaN(f.Energy) || len(f.Path) == 0 {
			t.Errorf("lost at %g s: %+v", f.Time, f)
		}
	}
	if ground < 3 {
		t.Errorf("%d failures on the ground", ground)
	}
	idle, err := l.FailureSweep(a, air, Trouble{Reaction: 1, Residual: func(_, _ float64) float64 { return 3 }})
	if err != nil || idle[len(idle)-1].EndDistance <= last.EndDistance {
		t.Errorf("residual thrust does not carry it farther (%v)", err)
	}
	held, err := l.FailureSweep(a, air, Trouble{Residual: func(_, _ float64) float64 { return 60 }, Count: 2})
	if err != nil || !held[1].Aloft {
		t.Errorf("half the thrust left brings it down: %+v (%v)", held[1].EndTime, err)
	}
}

func TestFailureOfEveryMethodComesDown(t *testing.T) {
	t.Parallel()
	for name, l := range launches() {
		l.Distance = 120
		l.Ground = nil
		sweep, err := l.FailureSweep(modelOf(name), grass(3, 1), Trouble{Reaction: 0.8})
		if err != nil || len(sweep) != DefaultTroubles {
			t.Fatalf("%s: %d failures, %v", name, len(sweep), err)
		}
		nominal := mustRun(t, l, modelOf(name), grass(3, 1))
		for _, f := range sweep {
			if f.Stays == (f.Sink > 0) || f.Aloft || !(f.Energy >= 0) || f.EndTime < f.Time {
				t.Errorf("%s: lost at %g s: %+v", name, f.Time, f)
			}
			if at, reached := nominal.At(f.Distance); !reached || math.Abs(at.Height-f.Height) > 1e-6 {
				t.Errorf("%s: lost at %g m, %g m high, off the launch by %g", name, f.Distance, f.Height, at.Height-f.Height)
			}
		}
	}
	if _, err := launches()["hand"].FailureSweep(light(), grass(0, 0), Trouble{Reaction: -1}); err == nil || !strings.HasPrefix(err.Error(), "trouble reaction") {
		t.Errorf("got %v", err)
	}
}

// slab is a model of constant forces on wheels.
func slab() (Launch, Aircraft, Conditions) {
	a := Aircraft{Mass: 10, Area: 0.6, CLMax: 1, Thrust: func(float64, float64) float64 { return 60 }}
	return Launch{Method: Wheels, Friction: 0.08, LiftoffSpeed: 22, Tolerance: 1e-10, ClimbLift: 1}, a, Conditions{Density: 1.2}
}

func TestAbortPointAgainstConstantForces(t *testing.T) {
	t.Parallel()
	l, a, air := slab()
	const friction, brakes, reaction = 0.08, 0.3, 1.0
	gain := 60/a.Mass - friction*Gravity
	for _, c := range []struct {
		live bool
		rate float64
	}{{false, -friction * Gravity}, {true, gain}} {
		stops := func(v float64) float64 {
			after := v + c.rate*reaction
			return v*v/(2*gain) + v*reaction + c.rate*reaction*reaction/2 + after*after/(2*(friction+brakes)*Gravity)
		}
		stop := Stop{Available: 70, Reaction: reaction, Brakes: brakes, Live: c.live}
		got, err := l.AbortPoint(a, air, stop)
		if err != nil || !got.Possible || got.Whole {
			t.Fatalf("live %t: %+v %v", c.live, got, err)
		}
		if at := stops(got.GroundSpeed); math.Abs(at-70) > 1e-3 || math.Abs(got.StopsAt-70) > 1e-3 {
			t.Errorf("live %t: abort at %g m/s stops at %g m, constant forces say %g", c.live, got.GroundSpeed, got.StopsAt, at)
		}
		if want := got.GroundSpeed * got.GroundSpeed / (2 * gain); math.Abs(got.Distance-want) > 1e-6 {
			t.Errorf("live %t: abort point %g m, its speed says %g", c.live, got.Distance, want)
		}
		if want := stops(22); math.Abs(got.AccelerateStop-want) > 1e-3 {
			t.Errorf("live %t: accelerate-stop %g m, constant forces say %g", c.live, got.AccelerateStop, want)
		}
		stop.Available = got.AccelerateStop + 0.01
		if whole, err := l.AbortPoint(a, air, stop); err != nil || !whole.Whole {
			t.Errorf("live %t: not whole with all it needs: %+v %v", c.live, whole, err)
		}
	}
}

func TestAbortPointMovesTheRightWay(t *testing.T) {
	t.Parallel()
	l := launches()["wheels"]
	point := func(change func(*Stop, *Launch, *Conditions)) Abort {
		stop, launch, air := Stop{Available: 60, Reaction: 1, Brakes: 0.15, Live: true}, l, grass(0, 0)
		change(&stop, &launch, &air)
		a, err := launch.AbortPoint(jet(), air, stop)
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	base := point(func(*Stop, *Launch, *Conditions) {})
	if !base.Possible || base.Whole || base.AccelerateStop < 60 {
		t.Fatalf("%+v", base)
	}
	worse := map[string]Abort{
		"no brakes":   point(func(s *Stop, _ *Launch, _ *Conditions) { s.Brakes = 0 }),
		"slow pilot":  point(func(s *Stop, _ *Launch, _ *Conditions) { s.Reaction = 2 }),
		"short strip": point(func(s *Stop, _ *Launch, _ *Conditions) { s.Available = 40 }),
		"tailwind":    point(func(_ *Stop, _ *Launch, c *Conditions) { c.Headwind = -3 }),
		"idle thrust": point(func(s *Stop, _ *Launch, _ *Conditions) { s.Idle = func(_, _ float64) float64 { return 6 } }),
	}
	for name, a := range worse {
		if a.GroundSpeed > base.GroundSpeed && name != "tailwind" || a.AccelerateStop < base.AccelerateStop-1e-6 {
			t.Errorf("%s: %+v, without %+v", name, a, base)
		}
	}
	if a := point(func(s *Stop, _ *Launch, _ *Conditions) { s.Available = 0 }); a.Possible {
		t.Errorf("stops on nothing: %+v", a)
	}
	if a := point(func(s *Stop, _ *Launch, _ *Conditions) { s.Idle = func(_, _ float64) float64 { return 50 } }); !math.IsInf(a.AccelerateStop, 1) {
		t.Errorf("an engine that does not close stops it: %+v", a)
	}
	if _, err := launches()["ramp"].AbortPoint(light(), grass(0, 0), Stop{}); err == nil {
		t.Error("a ramp has an abort point")
	}
}

func BenchmarkFailureSweep(b *testing.B) {
	l := launches()["ramp"]
	l.Distance = 150
	for b.Loop() {
		if _, err := l.FailureSweep(light(), grass(3, 1), Trouble{Reaction: 1}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAbortPoint(b *testing.B) {
	for b.Loop() {
		if _, err := launches()["wheels"].AbortPoint(jet(), grass(3, 1), Stop{Available: 80, Reaction: 1, Brakes: 0.1, Live: true}); err != nil {
			b.Fatal(err)
		}
	}
}
