package reach

import (
	"math"
	"testing"

	"pitgate/server/physics/field"
)

// FuzzFrom asks that any model, wind and point is refused or gives numbers.
func FuzzFrom(f *testing.F) {
	f.Add(12.0, 0.65, 0.045, 1.1, 1.0, 0.785, 5.0, 2.0, 100.0, -50.0, 60.0, 1.0, 24.0, 0.3, 14.0)
	f.Add(1.0, 0.2, 0.3, 0.5, 0.0, 1.4, 40.0, -30.0, 1e5, 0.0, 1e4, -90.0, 0.0, -1.5, 0.0)
	f.Add(25.0, 1.5, 0.01, 2.0, 10.0, 0.02, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 900.0, 0.0, 400.0)
	f.Fuzz(func(t *testing.T, mass, area, drag, lift, reaction, bank, wx, wy, x, y, height, heading, speed, banked, run float64) {
		model := Model{
			Mass: mass, Area: area, CD0: drag, InducedFactor: 0.07, CLMax: lift, Density: 1.2, Reaction: reaction, BankLimit: bank, LandingRun: run,
			SpeedShare: 0.5, RollRate: 1,
		}
		wind := func(h float64) field.Point { return field.Point{X: wx, Y: wy + h/100} }
		m, err := New(model, wind, longAcre(), hedges())
		if err != nil {
			return
		}
		p := Point{At: field.Point{X: x, Y: y}, Height: height, Heading: heading, Airspeed: speed, Bank: banked}
		r := m.From(p)
		for _, v := range []float64{r.Needed, r.Margin, r.Heading, r.Turn, r.Obstacle} {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%+v", r)
			}
		}
		for _, place := range m.Path(p, r) {
			if !place.At.Finite() || math.IsNaN(place.Height) {
				t.Fatalf("path %+v", place)
			}
		}
		for _, place := range m.Fan(p) {
			if !place.Finite() {
				t.Fatalf("fan %+v", place)
			}
		}
		for _, b := range m.TurnBack(p.At, heading, speed, []float64{height}) {
			if math.IsNaN(b.Height) || math.IsInf(b.Height, 0) {
				t.Fatalf("%+v", b)
			}
		}
	})
}

func TestRefusals(t *testing.T) {
	t.Parallel()
	good := longAcre()
	for name, try := range map[string]func() error{
		"mass": func() error { m := sport(); m.Mass = math.NaN(); _, err := New(m, nil, good, nil); return err },
		"drag": func() error {
			m := sport()
			m.CD0, m.InducedFactor = 0, 0
			_, err := New(m, nil, good, nil)
			return err
		},
		"share":    func() error { m := sport(); m.SpeedShare = 2; _, err := New(m, nil, good, nil); return err },
		"area":     func() error { _, err := New(sport(), nil, []field.Polygon{{{X: 1}, {X: 2}}}, nil); return err },
		"obstacle": func() error { _, err := New(sport(), nil, good, []field.Obstacle{{Height: math.Inf(1)}}); return err },
		"place": func() error {
			_, err := New(sport(), nil, good, []field.Obstacle{{Points: []field.Point{{X: math.NaN()}}}})
			return err
		},
		"wind": func() error {
			_, err := New(sport(), func(float64) field.Point { return field.Point{X: math.NaN()} }, good, nil)
			return err
		},
		"point": func() error { return Point{Height: math.NaN()}.Check() },
	} {
		if try() == nil {
			t.Errorf("%s taken", name)
		}
	}
	m := prepare(t, sport(), nil, good, nil)
	if r := m.From(Point{Heading: math.Inf(1)}); r.Area != -1 || m.Path(Point{Heading: math.Inf(1)}, r) != nil {
		t.Errorf("impossible point: %+v", r)
	}
}
