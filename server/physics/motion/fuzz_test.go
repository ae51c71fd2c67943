package motion

import (
	"math"
	"testing"

	"pitgate/server/physics/field"
	"pitgate/server/physics/weather"
)

func FuzzLaunch(f *testing.F) {
	f.Add(1, 12.0, 0.65, 0.035, 0.069, 1.1, 100.0, 0.0, 0.08, 20.0, 6.0, 3.0, 1.2)
	f.Add(2, 8.6, 0.55, 0.03, 0.07, 1.0, 80.0, 0.2, 0.05, 6.0, 2.5, -2.0, 1.1)
	f.Add(3, 5.0, 0.5, 0.03, 0.07, 1.0, 20.0, -0.1, 0.1, 12.0, 40.0, 8.0, 1.3)
	f.Add(4, 2.0, 0.3, 0.04, 0.08, 0.9, 15.0, 0.3, 0.0, 9.0, 1.8, 0.0, 1.0)
	f.Add(5, 5.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 3.0, 500.0, 30.0, 0.0)
	f.Fuzz(func(t *testing.T, method int, mass, area, drag, induced, lift, thrust, slope, friction, first, second, head, density float64) {
		a := Aircraft{Mass: mass, Area: area, Span: 2, CD0: drag, InducedFactor: induced, CLMax: lift, CLGround: lift / 4, WingHeight: 0.2}
		a.Thrust = func(v, s float64) float64 { return thrust*min(1, 0.1+s/4) - 0.2*v }
		if !(thrust >= 0 && thrust < 1e4) || mass < 0.05 || math.Abs(head) > 60 {
			return
		}
		l := Launch{
			Method: Method(method), Slope: slope, Friction: friction, LiftoffSpeed: first, Length: first, EndHeight: second, Stretch: first,
			Stiffness: second, HandSpeed: first, HandHeight: second, Forces: []ForcePoint{{0, second}, {3, second}}, Distance: 60,
		}
		air := Conditions{Density: density, Headwind: head, Crosswind: 1, Profile: weather.NewProfile(weather.LowCrops, 0)}
		r, err := l.Run(a, air)
		if err != nil {
			return
		}
		for _, v := range []float64{r.Airspeed, r.GroundSpeed, r.Run, r.Time, r.Sink, r.ScreenDistance, r.PeakAcceleration, r.LowestHeight} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("not finite: %+v", r.End())
			}
		}
		for _, p := range r.Path {
			if !(math.Abs(p.Distance)+math.Abs(p.Height)+math.Abs(p.Airspeed)+math.Abs(p.Drift) < 1e9) {
				t.Fatalf("path is not finite: %+v", p)
			}
		}
	})
}

func FuzzCircuit(f *testing.F) {
	f.Add(100.0, 24.0, 0.8, 1.0, 5.0, -3.0, 0.4, 10.0)
	f.Add(0.0, 90.0, 0.1, 3.0, 40.0, 0.0, 3.0, 0.0)
	f.Fuzz(func(t *testing.T, leg, speed, bank, reaction, head, cross, heading, distance float64) {
		c := Circuit{Leg: leg, Airspeed: speed, Bank: bank, Reaction: reaction, Headwind: head, Crosswind: cross, Heading: heading}
		if c.Check() != nil || !(math.Abs(distance) < 1e4) {
			return
		}
		area := field.Polygon{{X: -300, Y: -200}, {X: 300, Y: -200}, {X: 300, Y: 250}, {X: -300, Y: 250}}
		fit := c.Fit(area, distance)
		if math.IsNaN(fit.Distance) || math.IsNaN(fit.LargestSpeed) || fit.LargestSpeed > speed {
			t.Errorf("%+v for %+v", fit, c)
		}
		if fit.Fits != (fit.Distance >= distance) {
			t.Errorf("fits is %t at %g of %g", fit.Fits, fit.Distance, distance)
		}
	})
}

func BenchmarkLaunch(b *testing.B) {
	for name, l := range launches() {
		l.Distance = 200
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := l.Run(modelOf(name), grass(3, 1)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkCircuitThatDoesNotFit(b *testing.B) {
	c := racetrack()
	c.Airspeed = 60
	for b.Loop() {
		c.Fit(meadow, 20)
	}
}

func FuzzTrouble(f *testing.F) {
	f.Add(1, 20.0, 18.0, 9.0, 0.8, 0.0, 0.1, 1.0, 0.3, 3.0, 1.0)
	f.Add(2, 6.0, 0.0, 0.0, 0.0, 70.0, 0.05, 0.5, 0.0, -2.0, 0.0)
	f.Add(3, 12.0, 0.0, 0.0, 0.0, 10.0, 0.3, 2.0, 0.0, 5.0, 4.0)
	f.Add(5, 3.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 900.0)
	f.Fuzz(func(t *testing.T, method int, first, rotation, tail, down, release, friction, reaction, brakes, head, left float64) {
		if !(math.Abs(head) < 40 && left >= 0 && left < 1e3) || reaction > 5 {
			return
		}
		l := Launch{
			Method: Method(method), Slope: 0.1, Friction: friction, LiftoffSpeed: first, RotationSpeed: rotation, TailUpSpeed: tail, CLTailDown: down,
			ReleaseForce: release, Length: first, EndHeight: 2, Stretch: first, HookForce: release, PullTest: []ForcePoint{{1, 60}, {12, 500}},
			HandSpeed: first, HandHeight: 1.8, Forces: []ForcePoint{{0, 300}, {3, 100}}, Distance: 60, DollyMass: 1,
		}
		trouble := Trouble{Reaction: reaction, Brakes: brakes, Count: 4, Residual: func(float64, float64) float64 { return left / 50 }}
		air := Conditions{Density: 1.2, Headwind: head, Crosswind: 2, Profile: weather.NewProfile(weather.OpenGrass, 0)}
		sweep, err := l.FailureSweep(light(), air, trouble)
		if err != nil {
			return
		}
		for _, p := range sweep {
			if sum := p.Energy + p.EndDistance + p.EndDrift + p.Sink + p.EndTime; math.IsNaN(sum) || math.IsInf(sum, 0) || p.Energy < 0 || p.Sink < 0 {
				t.Fatalf("%+v", p)
			}
		}
		if l.Method == Wheels {
			abort, err := l.AbortPoint(light(), air, Stop{Available: 100, Reaction: reaction, Brakes: brakes, Live: true})
			if err == nil && (math.IsNaN(abort.Distance+abort.GroundSpeed+abort.AccelerateStop) || abort.Possible && abort.StopsAt > 100) {
				t.Fatalf("%+v", abort)
			}
		}
		r, err := l.Run(light(), air)
		if err != nil || l.Method != Ramp || r.NeverLiftsOff {
			return
		}
		gap, err := r.TailGap(Tail{Arm: 1, Height: 0.1, LiftSlope: 4})
		if err != nil || math.IsNaN(gap.Gap) {
			t.Fatalf("%+v %v", gap, err)
		}
		if fall, err := l.DollyFall(&r, air, Dolly{DragArea: 0.1}); err != nil || math.IsNaN(fall.Energy+fall.Distance) {
			t.Fatalf("%+v %v", fall, err)
		}
	})
}

func FuzzLay(f *testing.F) {
	f.Add(100.0, 24.0, 0.8, 1.0, 5.0, -3.0, 0.4, 10.0, 40.0, 100.0)
	f.Add(300.0, 90.0, 0.1, 3.0, 40.0, 0.0, 3.0, 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, leg, speed, bank, reaction, head, cross, heading, margin, least, along float64) {
		w := Wish{
			Circuit: Circuit{Leg: leg, Airspeed: speed, Bank: bank, Reaction: reaction, Headwind: head, Crosswind: cross, Heading: heading},
			Margin:  margin, LeastLeg: least, Along: along,
		}
		p, err := w.Lay(meadow)
		if err != nil {
			return
		}
		if math.IsNaN(p.Distance+p.LargestSpeed+p.StrongestWind+p.LeastBank+p.Moved) || p.Fits != (p.Distance >= margin) || p.Circuit.Leg > leg {
			t.Errorf("%+v of %+v", p, w)
		}
		if again := p.Circuit.clearance(meadow); again.Distance != p.Distance {
			t.Errorf("keeps %g m, said %g", again.Distance, p.Distance)
		}
	})
}
