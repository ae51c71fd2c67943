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
