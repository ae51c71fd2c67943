package landing

import (
	"math"
	"testing"

	"pitgate/server/physics/motion"
	"pitgate/server/physics/weather"
)

// FuzzFly asks that any landing is refused or gives numbers.
func FuzzFly(f *testing.F) {
	f.Add(12.0, 0.65, 2.0, 0.05, 1.1, 3.0, 1.3, 0.09, 15.0, 0.1, 0.08, 0.0, 4.0)
	f.Add(2.0, 0.4, 1.4, 0.3, 0.9, -6.0, 1.0, 0.9, 0.0, 4.0, 0.0, -0.5, 200.0)
	f.Add(25.0, 1.0, 3.0, 0.0, 2.0, 0.0, 1.2, 0.0, 5.0, 0.01, 0.02, 0.02, -3.0)
	f.Fuzz(func(t *testing.T, mass, area, span, drag, lift, head, ratio, angle, screen, load, friction, slope, idle float64) {
		if mass < 0.1 || mass > 100 || area < 0.05 || ratio > 4 {
			return
		}
		a := motion.Aircraft{Mass: mass, Area: area, Span: span, CD0: drag, InducedFactor: 0.07, CLMax: lift, CLGround: 0.2, WingHeight: 0.2}
		air := motion.Conditions{Density: 1.2, Headwind: head, Profile: weather.NewProfile(weather.OpenGrass, 10)}
		plan := Plan{
			ApproachRatio: ratio, Angle: angle, ScreenHeight: screen, FlareLoad: load, Friction: friction, Slope: slope,
			Idle: func(float64) float64 { return idle }, Obstacles: []Obstacle{{Near: -40, Far: -30, Top: 2}},
		}
		if math.IsNaN(idle) || math.Abs(idle) > 1e4 {
			return
		}
		l, err := Fly(a, air, plan)
		if err != nil {
			return
		}
		for _, v := range []float64{l.Angle, l.Steepest, l.Thrust, l.Total, l.Approach, l.Flare, l.Float, l.Run, l.TouchdownSink, l.Stop.Distance} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%+v", l)
			}
		}
		for _, p := range l.Path(-50, 5) {
			if math.IsNaN(p.Distance + p.Height + p.Time + p.GroundSpeed + p.Sink) {
				t.Fatalf("path %+v", p)
			}
		}
		c, err := BreakOff(a, air, plan, GoAround{Reaction: 1}, 10)
		if err == nil && (math.IsNaN(c.HeightLost) || math.IsNaN(c.Clearance) || math.IsNaN(c.Length)) {
			t.Fatalf("%+v", c)
		}
	})
}

func TestRefusals(t *testing.T) {
	t.Parallel()
	for name, change := range map[string]func(*motion.Aircraft, *motion.Conditions, *Plan){
		"mass":        func(a *motion.Aircraft, _ *motion.Conditions, _ *Plan) { a.Mass = 0 },
		"area":        func(a *motion.Aircraft, _ *motion.Conditions, _ *Plan) { a.Area = 0 },
		"lift":        func(a *motion.Aircraft, _ *motion.Conditions, _ *Plan) { a.CLMax = 0 },
		"density":     func(_ *motion.Aircraft, c *motion.Conditions, _ *Plan) { c.Density = math.NaN() },
		"gale":        func(_ *motion.Aircraft, c *motion.Conditions, _ *Plan) { c.Headwind = 40 },
		"slow":        func(_ *motion.Aircraft, _ *motion.Conditions, p *Plan) { p.ApproachRatio = 0.9 },
		"slope":       func(_ *motion.Aircraft, _ *motion.Conditions, p *Plan) { p.Slope = 2 },
		"friction":    func(_ *motion.Aircraft, _ *motion.Conditions, p *Plan) { p.Friction = -0.1 },
		"obstacle":    func(_ *motion.Aircraft, _ *motion.Conditions, p *Plan) { p.Obstacles = []Obstacle{{Near: math.NaN()}} },
		"flare":       func(_ *motion.Aircraft, _ *motion.Conditions, p *Plan) { p.FlareLoad = math.NaN() },
		"brake delay": func(_ *motion.Aircraft, _ *motion.Conditions, p *Plan) { p.BrakeDelay = -1 },
	} {
		a, air, plan := jet(), still, usual()
		change(&a, &air, &plan)
		if _, err := Fly(a, air, plan); err == nil {
			t.Errorf("%s taken", name)
		}
	}
}

func BenchmarkFly(b *testing.B) {
	a, plan := jet(), usual()
	air := motion.Conditions{Density: 1.225, Headwind: 3, Profile: weather.NewProfile(weather.OpenGrass, 10)}
	for b.Loop() {
		if _, err := Fly(a, air, plan); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLeastGoAround(b *testing.B) {
	a, plan := jet(), usual()
	for b.Loop() {
		if _, _, err := LeastGoAround(a, still, plan, GoAround{Reaction: 1}); err != nil {
			b.Fatal(err)
		}
	}
}
