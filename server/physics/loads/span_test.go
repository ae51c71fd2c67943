package loads

import (
	"math"
	"testing"
)

func mustIntegrate(t testing.TB, strips []Strip, items []Item, axis Axis, places ...float64) []Load {
	t.Helper()
	at, err := Integrate(strips, items, axis, places)
	if err != nil {
		t.Fatal(err)
	}
	return at
}

func TestStripsFollowTheEllipseEverywhere(t *testing.T) {
	t.Parallel()
	strips, err := EllipticStrips(2, 100, 200)
	if err != nil {
		t.Fatal(err)
	}
	for _, share := range []float64{0, 0.1, 0.333, 0.5, 0.77, 0.9, 1} {
		at := mustIntegrate(t, strips, nil, Axis{}, share)[0]
		near(t, "shear", at.Shear.At(1), EllipticShear(100, share), 0.05)
		near(t, "bending", at.Bending.At(1), EllipticBending(100, 2, share), 0.005)
	}
}

// A place within a strip gives what a finer cut gives, because each strip's load is even.
func TestCuttingAStripChangesNothing(t *testing.T) {
	t.Parallel()
	whole := []Strip{{Y: 0.5, Width: 1, Force: Line{AtZero: -3, PerLoad: 10}, X: 0.1, Moment: Line{AtZero: 2}}}
	halves := []Strip{
		{Y: 0.25, Width: 0.5, Force: Line{AtZero: -1.5, PerLoad: 5}, X: 0.1, Moment: Line{AtZero: 1}},
		{Y: 0.75, Width: 0.5, Force: Line{AtZero: -1.5, PerLoad: 5}, X: 0.1, Moment: Line{AtZero: 1}},
	}
	for _, y := range []float64{0, 0.2, 0.5, 0.6, 0.99, 1, 2} {
		a, b := mustIntegrate(t, whole, nil, Axis{RootX: 0.15}, y)[0], mustIntegrate(t, halves, nil, Axis{RootX: 0.15}, y)[0]
		for _, n := range []float64{-2, 0, 1, 6} {
			near(t, "shear", a.Shear.At(n), b.Shear.At(n), 1e-12)
			near(t, "bending", a.Bending.At(n), b.Bending.At(n), 1e-12)
			near(t, "torsion", a.Torsion.At(n), b.Torsion.At(n), 1e-12)
		}
	}
}

func TestTwistComesFromLiftAheadOfTheAxis(t *testing.T) {
	t.Parallel()
	strips := []Strip{{Y: 0.5, Width: 1, Force: Line{PerLoad: 10}, X: 0.1, Moment: Line{AtZero: -0.3}}}
	items := []Item{{Y: 0.8, Mass: 0.2, X: 0.3}}
	at := mustIntegrate(t, strips, items, Axis{RootX: 0.12, Slope: 0.1}, 0)[0]
	// Lift 0.07 m ahead of the axis, the mass 0.1 m behind it, where its weight pulls the tail end down: both nose up.
	near(t, "torsion", at.Torsion.PerLoad, 10*0.07+0.2*StandardGravity*0.1, 1e-12)
	near(t, "own moment", at.Torsion.AtZero, -0.3, 1e-12)
	straight := mustIntegrate(t, strips[:1], nil, Axis{RootX: 0.1}, 0)[0]
	near(t, "on the axis", straight.Torsion.PerLoad, 0, 1e-12)
}

func TestMassRelievesAndScales(t *testing.T) {
	t.Parallel()
	cuts := []Cut{{0, 0.3}, {0.4, 0.26}, {1, 0.14}}
	strips, err := SchrenkStrips(cuts, 120, 40)
	if err != nil {
		t.Fatal(err)
	}
	items, err := SpreadMass(cuts, 1.5, 40, 0.4, func(y float64) float64 { return 0.1 * y })
	if err != nil {
		t.Fatal(err)
	}
	mass := 0.0
	for _, item := range items {
		mass += item.Mass
	}
	near(t, "half the mass", mass, 0.75, 1e-12)
	bare, relieved := mustIntegrate(t, strips, nil, Axis{}, 0)[0], mustIntegrate(t, strips, items, Axis{}, 0)[0]
	near(t, "half the lift", bare.Shear.At(3), 180, 1e-9)
	near(t, "less the weight", relieved.Shear.At(3), 180-3*0.75*StandardGravity, 1e-9)
	if relieved.Bending.PerLoad >= bare.Bending.PerLoad || relieved.Bending.PerLoad <= 0 {
		t.Errorf("bending %v of %v", relieved.Bending, bare.Bending)
	}
	last := math.Inf(1)
	for _, place := range mustIntegrate(t, strips, nil, Axis{}, 0, 0.1, 0.3, 0.5, 0.7, 0.9, 1) {
		if place.Bending.PerLoad > last {
			t.Errorf("bending rises outboard at %v", place.Y)
		}
		last = place.Bending.PerLoad
	}
}

func TestLine(t *testing.T) {
	t.Parallel()
	l := Line{AtZero: -2, PerLoad: 4}.Times(2).Plus(Line{AtZero: 1})
	near(t, "at 3", l.At(3), 21, 1e-12)
	n, found := l.Reaches(5)
	near(t, "reaches", n, 1, 1e-12)
	if _, flat := (Line{AtZero: 1}).Reaches(2); flat || !found {
		t.Error("a flat line reaches nothing else")
	}
}

func FuzzDiagram(f *testing.F) {
	f.Add(12.0, 0.65, 0.325, 4.5, 1.1, -0.8, 1.2, 6.0, -3.0, 60.0, 75.0, 15.0, 7.0, 40.0)
	f.Add(1e300, 1e-300, 1e-300, 1e300, 1e300, -1e-300, 1e-300, 1.0000001, -1e300, 1e300, 0.0, 1e300, 0.0, 1e300)
	f.Add(math.NaN(), math.Inf(1), -1.0, 0.0, 1.0, 1.0, 1.0, 1.0, 1.0, -1.0, 5.0, math.NaN(), -2.0, math.Inf(-1))
	f.Fuzz(func(t *testing.T, mass, area, chord, slope, most, least, density, positive, negative, top, dive, gust, diveGust, speed float64) {
		a := Aircraft{mass, area, chord, slope, most, least, density}
		d, err := a.Diagram(Limits{positive, negative, top, dive, gust, diveGust})
		if err != nil {
			if !errorNames(err) {
				t.Errorf("%v", err)
			}
			return
		}
		sum := d.StallSpeed + d.ManoeuvringSpeed + d.InvertedSpeed + d.Greatest.LoadFactor + d.Least.LoadFactor
		if !finite(sum) {
			t.Errorf("%+v", d)
		}
		if use, err := CircuitLoad(a, top, []Turn{{1, speed}}, gust); err == nil && !finite(use.LoadFactor) {
			t.Errorf("%+v", use)
		}
	})
}

func FuzzIntegrate(f *testing.F) {
	f.Add(0.5, 0.1, 10.0, -2.0, 0.1, 0.2, 0.3, 0.2, 0.15, 0.1, 0.0)
	f.Add(1e300, 1e300, 1e300, 1e300, 1e300, 1e300, 1e300, 1e300, 1e300, 1e300, 1e299)
	f.Add(math.NaN(), -1.0, math.Inf(1), 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, -1.0)
	f.Fuzz(func(t *testing.T, y, width, force, zero, x, moment, itemY, mass, root, slope, place float64) {
		strips := []Strip{{y, width, Line{zero, force}, x, Line{moment, force}}, {width, 0, Line{force, zero}, root, Line{}}}
		at, err := Integrate(strips, []Item{{itemY, width, mass, x}}, Axis{root, slope}, []float64{0, place})
		if err != nil {
			if !errorNames(err) {
				t.Errorf("%v", err)
			}
			return
		}
		for _, l := range at {
			if l.check() != nil {
				t.Errorf("%+v", l)
			}
		}
		if strips, err := SchrenkStrips([]Cut{{0, x}, {y, width}}, force, 8); err == nil {
			for _, s := range strips {
				if !finite(s.Force.PerLoad) {
					t.Errorf("%+v", s)
				}
			}
		}
	})
}

// BenchmarkDiagram is one diagram and the loads of a wing of 24 strips at 12 places.
func BenchmarkDiagram(b *testing.B) {
	strips, err := EllipticStrips(2, 120, 24)
	if err != nil {
		b.Fatal(err)
	}
	places := make([]float64, 12)
	for i := range places {
		places[i] = float64(i) / 12
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := jet().Diagram(limits()); err != nil {
			b.Fatal(err)
		}
		if _, err := Integrate(strips, nil, Axis{}, places); err != nil {
			b.Fatal(err)
		}
	}
}

// Mass lies as the square of the chord between cuts that lie uneven, each item at its share of its own chord behind the leading edge.
func TestMassLiesInTheChord(t *testing.T) {
	t.Parallel()
	items, err := SpreadMass([]Cut{{0, 0.4}, {0.5, 0.4}, {1, 0.2}}, 1.4, 400, 0.25, func(y float64) float64 { return 0.3 * y })
	if err != nil {
		t.Fatal(err)
	}
	inner := 0.0
	for _, item := range items {
		chord := 0.4 - 0.4*max(0, item.Y-0.5)
		near(t, "place", item.X, 0.3*item.Y+0.25*chord, 1e-9)
		if item.Y < 0.5 {
			inner += item.Mass
		}
	}
	// The squares of the chord integrate to 0.5 0.16 and 0.5 (0.16 + 0.08 + 0.04)/3: twelve parts and seven.
	near(t, "mass of the inner half", inner, 0.7*12/19, 1e-5)
}

// A load factor just above one is met at a low speed: the increment goes straight with it.
func TestGustSpeedOfSmallLoads(t *testing.T) {
	t.Parallel()
	one, known, err := jet().GustSpeed(2, 5)
	if err != nil || !known {
		t.Fatal(known, err)
	}
	for _, load := range []float64{1.001, 1.05, 1.5, 3} {
		speed, known, err := jet().GustSpeed(load, 5)
		if err != nil || !known {
			t.Fatal(load, known, err)
		}
		near(t, "speed", speed, (load-1)*one, 1e-9)
	}
	if _, known, err := jet().GustSpeed(1, 5); known || err != nil {
		t.Errorf("a load factor of one: %v, %v", known, err)
	}
}
